using HandsFreeStartup.Languages;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Session;
using HandsFreeStartup.Showing;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Tests.Support;
using Microsoft.Extensions.Time.Testing;

namespace HandsFreeStartup.Tests.Session;

/// <summary>What is heard while the tool speaks, by profile.</summary>
public sealed class NeverDeafTests
{
    const string Valve = "¿Cerró la válvula de gas, y se bloqueó?";

    const string Prompt = "Papers. Read the papers of the furnace. Do you smell gas?";

    static readonly SpeechClip Clip = new(new float[16_000], 0, 0, 16_000);

    readonly NotedLog _log = new([]);
    readonly NotedDisplay _display = new([]);
    readonly TalkingVoice _voice = new();

    [Fact]
    public async Task A_safety_phrase_is_taken_over_the_voice_unless_the_prompt_itself_asks_for_it()
    {
        await Take(HearingProfile.EchoCancelled, Heard(CommandWord.EmergencyStop, "stop stop stop"));
        Assert.Single(_log.Events.OfType<StartupStopped>());
    }

    /// <summary>Its understanding ends whenever it likes, also between two looks of the loop.</summary>
    [Fact]
    public async Task A_safety_phrase_is_taken_over_the_voice_whenever_it_is_understood()
    {
        for (int spins = 0; spins < 2000; spins++)
        {
            NotedLog log = new([]);
            StartupSession session = new(new StartupProcedure(Some.Plan()), log, _display, new TalkingVoice(), new SlowEar(10 * spins, Heard(CommandWord.EmergencyStop, "stop stop stop")), new FakeTimeProvider(Some.Morning)) { Profile = HearingProfile.EchoCancelled };
            session.Begin(Some.Job);
            session.Post(new Input.Spoken(Clip, null, Prompt));
            session.Close();
            await session.Run(CancellationToken.None);

            Assert.Single(log.Events.OfType<StartupStopped>());
        }
    }

    [Fact]
    public async Task An_echo_of_the_question_for_gas_does_not_stop()
    {
        await Take(HearingProfile.EchoCancelled, Heard(CommandWord.GasSmell, "smell gas"));
        Assert.Empty(_log.Events.OfType<StartupStopped>());
    }

    [Fact]
    public async Task With_a_headset_there_is_no_echo_and_everything_is_heard()
    {
        await Take(HearingProfile.Headset, Heard(CommandWord.GasSmell, "smell gas"));
        Assert.Single(_log.Events.OfType<StartupStopped>());
    }

    [Fact]
    public async Task Words_of_the_prompt_neither_count_nor_end_it()
    {
        int before = await Take(HearingProfile.EchoCancelled, Heard(CommandWord.Next, "read the papers"));
        Assert.Equal((before, 0), (_log.Events.Count, _voice.Broken));
    }

    [Fact]
    public async Task Other_speech_ends_the_prompt_and_is_not_taken()
    {
        int before = await Take(HearingProfile.EchoCancelled, new Phrase.Answer(AnswerWord.No, Some.Heard() with { Words = "no" }));
        Assert.Equal(before, _log.Events.Count);
        Assert.True(_voice.Broken > 0);
        Assert.Contains(_display.Heard, heard => heard is { Certainty: Certainty.Red, Why: "The tool was talking: say it again." });
    }

    [Theory]
    [InlineData(HearingProfile.EchoCancelled)]
    [InlineData(HearingProfile.Headset)]
    public async Task Stop_talking_ends_what_is_said_and_changes_nothing_else(HearingProfile profile)
    {
        int before = await Take(profile, Heard(CommandWord.StopTalking, "stop talking"));
        Assert.Equal(before, _log.Events.Count);
        Assert.True(_voice.Broken > 0);
    }

    [Fact]
    public async Task With_a_headset_speech_ends_the_voice_at_once()
    {
        await Take(HearingProfile.Headset, null, new Input.SpeechBegan());
        Assert.True(_voice.Broken > 0);
    }

    [Fact]
    public async Task The_line_of_the_ear_says_when_nothing_can_be_heard()
    {
        await Take(HearingProfile.HalfDuplex, null, new Input.Voice(true));
        Assert.StartsWith("Speaking, cannot hear", Words.Of(_display.Last!.Ear, isPaused: false), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_line_of_the_ear_says_why_nothing_is_heard_and_since_when_and_the_voice_says_it_too()
    {
        await Take(HearingProfile.HalfDuplex, null, new Input.Sound(-100, SoundState.Lost, CaptureCommand.Missing(null)));
        Assert.Equal($"{CaptureCommand.Missing(null)} (0:00)", Words.Of(_display.Last!.Ear, isPaused: false));
        Assert.Contains(_voice.Said, said => said.Contains("No program that records sound", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(HearingProfile.Headset)]
    [InlineData(HearingProfile.EchoCancelled)]
    public async Task Another_microphone_may_hear_the_voice_and_is_not_listened_to_meanwhile(HearingProfile profile)
    {
        Input.Sound moved = new(-100, SoundState.Moved, "The microphone is gone; another one is heard now: room.monitor.");
        await Take(profile, null, moved, new Input.Sound(-30, SoundState.Good, ""), new Input.Voice(true));

        Assert.StartsWith("Speaking, cannot hear", Words.Of(_display.Last!.Ear, isPaused: false), StringComparison.Ordinal);
        Assert.Contains(_voice.Said, said => said.Contains("nothing is heard while the tool speaks", StringComparison.Ordinal));
        Assert.Equal(0, _voice.Broken);
    }

    static Phrase.Command Heard(CommandWord word, string words) => new(word, Some.Heard() with { Words = words });

    [Theory]
    [InlineData("room monoxide ninety", true)]
    [InlineData("room monoxide four hundred", true)]
    [InlineData("room monoxide zero", false)]
    [InlineData("oxygen six point five", false)]
    public async Task Bad_air_is_taken_over_the_voice_and_no_other_reading(string words, bool isTaken)
    {
        await Take(HearingProfile.EchoCancelled, PhraseText.Typed(words, Expectation.Open) with { Evidence = Some.Heard() with { Words = words } });
        Assert.Equal(isTaken, _log.Events.OfType<ReadingEntered>().Any());
    }

    /// <summary>Seen: "emergency stop" over the voice was heard as "room C O four hundred seven", with a mean of -1.7, and stopped the job for carbon monoxide.</summary>
    [Fact]
    public async Task Doubtful_bad_air_over_the_voice_is_asked_for_again_aloud()
    {
        await Take(HearingProfile.EchoCancelled, PhraseText.Typed("room monoxide 407", Expectation.Open) with { Evidence = Some.Heard() with { Words = "room C O four hundred seven", Certainty = Certainty.Amber } });
        Assert.DoesNotContain(_log.Events, happened => happened is ReadingEntered or StartupStopped);
        Assert.Contains("Say it again.", _voice.Said);
    }

    /// <summary>"With one decimal (inches)" was heard as "with one gas smell inches"; a call may also cover the word.</summary>
    [Theory]
    [InlineData("number with one gas smell inches", -0.33, false)]
    [InlineData("number with one gas smell inches", -0.17, true)]
    [InlineData("number with one gas smell", -0.33, true)]
    public async Task A_call_that_stands_where_the_tool_says_something_else_is_asked_for_again_aloud(string words, double score, bool stops)
    {
        Phrase.Command call = Heard(CommandWord.GasSmell, words);
        await Take(HearingProfile.EchoCancelled, call with { Evidence = call.Evidence with { Score = score } }, over: "Manifold pressure plus number with one decimal (inches), go back.");

        Assert.Equal(stops, _log.Events.OfType<StartupStopped>().Any());
        Assert.Equal(!stops, _voice.Said.Contains("Say it again."));
    }

    /// <summary>Asked for again, it stands no longer where the tool says something else, however unclear it still is.</summary>
    [Fact]
    public async Task A_call_that_was_asked_for_again_stops_when_it_is_said_again()
    {
        Phrase.Command call = Heard(CommandWord.GasSmell, "number with one gas smell inches");
        Phrase unclear = call with { Evidence = call.Evidence with { Score = -0.33 } };
        StartupSession session = new(new StartupProcedure(Some.Plan()), _log, _display, _voice, new ScriptedEar([unclear, unclear]), new FakeTimeProvider(Some.Morning)) { Profile = HearingProfile.EchoCancelled };
        session.Begin(Some.Job);
        session.Post(new Input.Spoken(Clip, null, "Manifold pressure plus number with one decimal (inches), go back."));
        session.Post(new Input.Spoken(new SpeechClip(new float[16_000], 0, 0, 16_000), null, "Say it again."));
        session.Close();
        await session.Run(CancellationToken.None);

        Assert.Equal(StopCause.GasSmell, Assert.Single(_log.Events.OfType<StartupStopped>()).Cause);
    }

    /// <summary>Out of a radio and of others' talk an ear makes a call that nobody made; somebody who calls does so again when he is asked.</summary>
    [Theory]
    [InlineData(null, 0, 1, false)]
    [InlineData(null, 24, 2, true)]
    [InlineData(null, 8, 2, false)]
    [InlineData(null, 400, 2, false)]
    [InlineData("stand by", 24, 2, true)]
    public async Task An_unclear_call_is_asked_for_again_and_stops_when_it_is_said_again(string? typed, int later, int calls, bool stops)
    {
        Phrase.Command call = Heard(CommandWord.GasSmell, "yes there's a gas leak in the basement");
        Phrase unclear = call with { Evidence = call.Evidence with { Score = -0.5, Certainty = Certainty.Amber } };
        StartupSession session = new(new StartupProcedure(Some.Plan()), _log, _display, _voice, new ScriptedEar([.. Enumerable.Repeat(unclear, calls)]), new FakeTimeProvider(Some.Morning)) { Profile = HearingProfile.Headset };
        session.Begin(Some.Job);
        if (typed == "stand by")
        {
            session.Post(new Input.Typed(typed));
        }

        foreach (int number in Enumerable.Range(0, calls))
        {
            long start = (long)number * later * 1000;
            session.Post(new Input.Spoken(new SpeechClip(new float[16_000], start, start, start + 16_000), null, null));
        }

        session.Close();
        await session.Run(CancellationToken.None);

        Assert.Contains("Say it again.", _voice.Said);
        Assert.Contains(_display.Heard, heard => heard is { Certainty: Certainty.Red, Why: "It may have been a call for help: say it again." });
        Assert.Equal(stops, _log.Events.OfType<StartupStopped>().Any());
        Assert.Equal(TimesAsked, _log.Events.OfType<DangerAsked>().Count(asked => asked.Evidence is { Words: "yes there's a gas leak in the basement", Certainty: Certainty.Amber, Clip: "clip.wav" }));
    }

    /// <summary>While speech goes on, what was cut short is asked for; the next stretch, which overlaps with it, shows the call whole.</summary>
    [Fact]
    public async Task A_clear_call_in_the_next_stretch_after_an_unclear_one_stops_without_being_said_again()
    {
        Phrase Call(Certainty certainty) => Heard(CommandWord.GasSmell, "a gas leak") with { Evidence = Some.Heard() with { Words = "a gas leak", Score = -0.5, Certainty = certainty } };
        StartupSession session = new(new StartupProcedure(Some.Plan()), _log, _display, _voice, new ScriptedEar([Call(Certainty.Amber), Call(Certainty.Green)]), new FakeTimeProvider(Some.Morning)) { Profile = HearingProfile.Headset };
        session.Begin(Some.Job);
        session.Post(new Input.Spoken(new SpeechClip(new float[38_400], 0, 0, 38_400), null, null));
        session.Post(new Input.Spoken(new SpeechClip(new float[38_400], 9_600, 9_600, 48_000), null, null));
        session.Close();
        await session.Run(CancellationToken.None);

        Assert.Equal(StopCause.GasSmell, Assert.Single(_log.Events.OfType<StartupStopped>()).Cause);
        Assert.Single(_display.Heard, heard => heard is { Certainty: Certainty.Red, Why: "It may have been a call for help: say it again." });
    }

    /// <summary>Between two unclear calls somebody types or talks, the second is another danger, or a microphone that was plugged in again counts its samples from nothing.</summary>
    [Theory]
    [InlineData("say again", 24_000, CommandWord.GasSmell, true)]
    [InlineData("stand by", 24_000, CommandWord.EmergencyStop, true)]
    [InlineData("what is open", 0, CommandWord.GasSmell, false)]
    public async Task What_comes_between_two_unclear_calls_does_not_keep_the_second_from_stopping(string between, long start, CommandWord second, bool stops)
    {
        Phrase Unclear(CommandWord word) => Heard(word, word == CommandWord.GasSmell ? "a gas leak" : "stop everything") with { Evidence = Some.Heard() with { Words = "a gas leak", Score = -0.5, Certainty = Certainty.Amber } };
        StartupSession session = new(new StartupProcedure(Some.Plan()), _log, _display, _voice, new ScriptedEar([Unclear(CommandWord.GasSmell), Unclear(second), Unclear(second)]), new FakeTimeProvider(Some.Morning)) { Profile = HearingProfile.Headset };
        session.Begin(Some.Job);
        session.Post(new Input.Spoken(Clip, null, null));
        session.Post(new Input.Typed(between));
        session.Post(new Input.Spoken(new SpeechClip(new float[16_000], start, start, start + 16_000), null, null));
        if (!stops)
        {
            session.Post(new Input.Spoken(new SpeechClip(new float[16_000], 48_000, 48_000, 64_000), null, null));
        }

        session.Close();
        await session.Run(CancellationToken.None);

        Assert.Equal(second == CommandWord.GasSmell ? StopCause.GasSmell : StopCause.Emergency, Assert.Single(_log.Events.OfType<StartupStopped>()).Cause);
        Assert.Equal(stops ? 1 : 2, _display.Heard.Count(heard => heard is { Certainty: Certainty.Red, Why: "It may have been a call for help: say it again." }));
    }

    static FaintCall Faint(string read, bool isByItself = true, CommandWord word = CommandWord.GasSmell) =>
        new([new Phrase.Command(word, Some.Heard(Certainty.Amber) with { Words = isByItself ? "gas leak" : read, Why = "It was not clear." })], [read, read], isByItself);

    static Phrase Refused(string read) => new Phrase.NotUnderstood(Some.Heard(Certainty.Red) with { Words = read, Why = "It was not clear enough to guess." }) { Faint = Faint(read) };

    static Phrase Unclear(string read, bool isByItself, CommandWord word = CommandWord.GasSmell) =>
        Heard(word, "a gas leak") with { Evidence = Some.Heard(Certainty.Amber) with { Words = "a gas leak", Score = -0.5 }, Faint = Faint(read, isByItself, word) };

    /// <summary>Each phrase is said so many seconds after the one before it, and takes one.</summary>
    async Task Say(int every, params Phrase[] phrases)
    {
        StartupSession session = new(new StartupProcedure(Some.Plan()), _log, _display, _voice, new ScriptedEar(phrases), new FakeTimeProvider(Some.Morning)) { Profile = HearingProfile.Headset };
        session.Begin(Some.Job);
        foreach (int number in Enumerable.Range(0, phrases.Length))
        {
            long start = (long)number * every * 16_000;
            session.Post(new Input.Spoken(new SpeechClip(new float[16_000], start, start, start + 16_000), null, null));
        }

        session.Close();
        await session.Run(CancellationToken.None);
    }

    int TimesAsked => _display.Heard.Count(heard => heard is { Certainty: Certainty.Red, Why: "It may have been a call for help: say it again." });

    /// <summary>An accent beside a running tap: both ears refuse every call, and read the same each time.</summary>
    [Fact]
    public async Task A_call_that_is_refused_twice_alike_is_asked_for_aloud()
    {
        await Say(6, Refused("draft me"), Refused("draft me"));
        Assert.Contains("Say it again.", _voice.Said);
        Assert.Equal(1, TimesAsked);
        Assert.Equal("gas leak", Assert.Single(_log.Events.OfType<DangerAsked>()).Evidence.Words);
        Assert.DoesNotContain(_log.Events, happened => happened is StartupStopped);
    }

    [Fact]
    public async Task The_third_refused_call_alike_stops_and_is_logged_as_doubtful()
    {
        await Say(6, Refused("draft me"), Refused("draft me"), Refused("draft me now"));
        Assert.Equal((StopCause.GasSmell, Certainty.Amber), Assert.Single(_log.Events.OfType<StartupStopped>()) is var stopped ? (stopped.Cause, stopped.Evidence.Certainty) : default);
    }

    /// <summary>Somebody types, or a reading waits to be confirmed, or the microphone is plugged in again and counts its samples from nothing.</summary>
    [Theory]
    [InlineData("say again", 0, 6, 12, true)]
    [InlineData("stand by", 0, 6, 12, true)]
    [InlineData("what is open", 60, 0, 6, false)]
    public async Task What_comes_between_refused_calls_takes_nothing_from_those_that_follow(string between, int first, int second, int third, bool stops)
    {
        StartupSession session = new(new StartupProcedure(Some.Plan()), _log, _display, _voice, new ScriptedEar([Refused("draft me"), Refused("draft me"), Refused("draft me")]), new FakeTimeProvider(Some.Morning)) { Profile = HearingProfile.Headset };
        session.Begin(Some.Job);
        foreach (int at in (int[])[first, second, third])
        {
            session.Post(new Input.Spoken(new SpeechClip(new float[16_000], at * 16_000L, at * 16_000L, (at + 1) * 16_000L), null, null));
            session.Post(new Input.Typed(between));
        }

        session.Close();
        await session.Run(CancellationToken.None);

        Assert.Equal((1, stops), (TimesAsked, _log.Events.OfType<StartupStopped>().Any()));
    }

    [Fact]
    public async Task After_an_unclear_call_one_that_is_refused_and_sounds_alike_stops()
    {
        await Say(6, Unclear("just drink", isByItself: true), Refused("just drink"));
        Assert.Single(_log.Events.OfType<StartupStopped>());
    }

    /// <summary>What a technician says who is not understood either: readings, another thing each time, the same too late, or one utterance heard twice.</summary>
    [Theory]
    [InlineData(6, "draft me", "copy")]
    [InlineData(25, "draft me", "draft me")]
    [InlineData(0, "draft me", "draft me")]
    public async Task What_is_refused_and_sounds_otherwise_or_comes_too_late_is_not_asked_for_as_a_call(int every, string first, string second)
    {
        await Say(every, Refused(first), Refused(second));
        Assert.Equal(0, TimesAsked);
    }

    /// <summary>Dense talk beside tools makes two unclear calls in 20 s, each another one; somebody who calls in the middle of it calls the same.</summary>
    [Theory]
    [InlineData("it smells of gas", "we call it a day", CommandWord.GasSmell, false)]
    [InlineData("it smells of gas", "it smells of paint", CommandWord.EmergencyStop, false)]
    [InlineData("it smells of gas", "it smells of gas now", CommandWord.GasSmell, true)]
    public async Task In_speech_that_goes_on_a_second_unclear_call_stops_only_where_it_is_the_same(string first, string second, CommandWord word, bool stops)
    {
        await Say(6, Unclear(first, isByItself: false), Unclear(second, isByItself: false, word));
        Assert.Equal((stops ? 1 : 2, stops), (TimesAsked, _log.Events.OfType<StartupStopped>().Any()));
    }

    [Fact]
    public async Task Between_two_calls_in_speech_that_goes_on_another_unclear_one_takes_nothing_from_them()
    {
        await Say(6, Unclear("it smells of gas", isByItself: false), Unclear("we call it a day", isByItself: false), Unclear("it smells of gas", isByItself: false));
        Assert.Single(_log.Events.OfType<StartupStopped>());
    }

    [Fact]
    public async Task Whoever_answers_the_question_in_silence_may_call_anything()
    {
        await Say(6, Unclear("it smells of gas", isByItself: false), Unclear("stop", isByItself: true, CommandWord.EmergencyStop));
        Assert.Equal(StopCause.Emergency, Assert.Single(_log.Events.OfType<StartupStopped>()).Cause);
    }

    /// <summary>What was asked for again over the voice is doubtful in silence, too, and is said again all the same.</summary>
    [Fact]
    public async Task An_unclear_call_over_the_voice_and_one_in_silence_stop_and_two_over_the_voice_do_not()
    {
        Phrase.Command call = Heard(CommandWord.GasSmell, "number with one gas smell inches");
        Phrase unclear = call with { Evidence = call.Evidence with { Score = -0.33, Certainty = Certainty.Amber } };
        const string Said = "Manifold pressure plus number with one decimal (inches), go back.";
        foreach ((string? second, bool stops) in ((string?, bool)[])[(Said, false), (null, true)])
        {
            NotedLog log = new([]);
            StartupSession session = new(new StartupProcedure(Some.Plan()), log, _display, new TalkingVoice(), new ScriptedEar([unclear, unclear]), new FakeTimeProvider(Some.Morning)) { Profile = HearingProfile.EchoCancelled };
            session.Begin(Some.Job);
            session.Post(new Input.Spoken(Clip, null, Said));
            session.Post(new Input.Spoken(new SpeechClip(new float[16_000], 32_000, 32_000, 48_000), null, second));
            session.Close();
            await session.Run(CancellationToken.None);

            Assert.Equal(stops, log.Events.OfType<StartupStopped>().Any());
        }
    }

    /// <summary>While it stands by, other talk is none of its business; danger is.</summary>
    [Fact]
    public async Task Danger_in_doubt_is_asked_for_again_aloud_while_the_tool_stands_by()
    {
        Phrase air = PhraseText.Typed("room monoxide 407", Expectation.Open) with { Evidence = Some.Heard() with { Words = "room C O four hundred seven", Certainty = Certainty.Amber } };
        StartupSession session = new(new StartupProcedure(Some.Plan()), _log, _display, _voice, new ScriptedEar([air]), new FakeTimeProvider(Some.Morning)) { Profile = HearingProfile.EchoCancelled };
        session.Begin(Some.Job);
        session.Post(new Input.Typed("stand by"));
        session.Post(new Input.Spoken(Clip, null, Prompt));
        session.Close();
        await session.Run(CancellationToken.None);

        Assert.True(_display.Last!.View.IsPaused);
        Assert.Contains("Say it again.", _voice.Said);
    }

    [Fact]
    public async Task Bad_air_in_the_words_of_the_tool_is_not_taken()
    {
        await Take(HearingProfile.EchoCancelled, PhraseText.Typed("room monoxide ninety", Expectation.Open) with { Evidence = Some.Heard() with { Words = "room monoxide ninety" } }, over: "Room monoxide 90 ppm? Confirm, or say no.");
        Assert.DoesNotContain(_log.Events, happened => happened is ReadingEntered);
    }

    /// <summary>It may be somebody's word or the tool's own, misheard: the tool's value, and no other, may pass in silence.</summary>
    [Theory]
    [InlineData("room monoxide ninety", "CO in the room (kitchen) 4 ppm. Pass: room monoxide at most 9 ppm.", true)]
    [InlineData("room monoxide four hundred", "Room monoxide 4 ppm. Pass.", true)]
    [InlineData("room monoxide ninety", "Room monoxide 4 ppm. Flue temperature 90 degrees?", true)]
    [InlineData("room carbon monoxide forty", "Room carbon monoxide 4 ppm. Confirm, or say no.", true)]
    [InlineData("room monoxide ninety", "Room monoxide 90 ppm? Confirm, or say no.", false)]
    [InlineData("room monoxide four", "Room monoxide 4 ppm. Pass.", false)]
    public async Task Bad_air_that_may_be_an_echo_is_asked_for_again_aloud(string words, string over, bool isAsked)
    {
        await Take(HearingProfile.EchoCancelled, PhraseText.Typed(words, Expectation.Open) with { Evidence = Some.Heard() with { Words = words } }, over);
        Assert.DoesNotContain(_log.Events, happened => happened is ReadingEntered);
        Assert.Equal(isAsked, _voice.Said.Contains("Say it again."));
        Assert.Equal(isAsked, _display.Heard.Any(heard => heard.Why == "The tool was talking: say it again."));
    }

    /// <summary>The ear makes "we have a gas leak" of "válvula de gas, y": eight of 183 Spanish prompts stopped the job, most with means of -0.61 to -0.83.</summary>
    [Theory]
    [InlineData("es", Valve, CommandWord.GasSmell, -0.24, Certainty.Green, false)]
    [InlineData("es", Valve, CommandWord.GasSmell, -0.09, Certainty.Green, true)]
    [InlineData("es", Valve, CommandWord.GasSmell, -0.09, Certainty.Amber, false)]
    [InlineData("es", Valve, CommandWord.EmergencyStop, -0.29, Certainty.Green, true)]
    [InlineData("es", "Cepille cada junta.", CommandWord.GasSmell, -0.29, Certainty.Green, true)]
    [InlineData("es", "Cepille cada junta.", CommandWord.GasSmell, -0.33, Certainty.Green, false)]
    [InlineData("en", Valve, CommandWord.GasSmell, -0.33, Certainty.Green, true)]
    [InlineData("en", Valve, CommandWord.GasSmell, -0.34, Certainty.Amber, true)]
    public async Task Over_a_Spanish_voice_a_faint_call_is_asked_for_again_and_a_clear_one_stops(string language, string over, CommandWord word, double score, Certainty certainty, bool stops)
    {
        Phrase call = Heard(word, word == CommandWord.GasSmell ? "we have a gas leak" : "stop everything");
        Language spoken = LanguageFiles.Find(language);
        ScriptedEar ear = new([call with { Evidence = call.Evidence with { Score = score, Certainty = certainty } }]);
        StartupSession session = new(new StartupProcedure(Some.Plan()), _log, _display, _voice, ear, new FakeTimeProvider(Some.Morning), new LanguagesInUse(spoken, spoken)) { Profile = HearingProfile.EchoCancelled };
        session.Begin(Some.Job);
        session.Post(new Input.Spoken(Clip, null, over));
        session.Close();
        await session.Run(CancellationToken.None);

        Assert.Equal(stops, _log.Events.OfType<StartupStopped>().Any());
        Assert.Equal(!stops, _voice.Said.Contains("Dígalo otra vez."));
    }

    [Fact]
    public async Task After_two_faint_calls_over_a_Spanish_voice_a_third_that_is_clear_stops()
    {
        Phrase.Command call = Heard(CommandWord.GasSmell, "we have a gas leak");
        Phrase faint = call with { Evidence = call.Evidence with { Score = -0.7 } }, clear = call with { Evidence = call.Evidence with { Score = -0.1 } };
        Language spanish = LanguageFiles.Find("es");
        StartupSession session = new(new StartupProcedure(Some.Plan()), _log, _display, _voice, new ScriptedEar([faint, faint, clear]), new FakeTimeProvider(Some.Morning), new LanguagesInUse(spanish, spanish)) { Profile = HearingProfile.EchoCancelled };
        session.Begin(Some.Job);
        foreach (int _ in Enumerable.Range(0, 3))
        {
            session.Post(new Input.Spoken(new SpeechClip(new float[16_000], 0, 0, 16_000), null, "Válvula de gas."));
        }

        session.Close();
        await session.Run(CancellationToken.None);

        Assert.Equal(StopCause.GasSmell, Assert.Single(_log.Events.OfType<StartupStopped>()).Cause);
    }

    /// <summary>Where it is known, a call among its words must be heard by both ears or by the surer one.</summary>
    [Theory]
    [InlineData(HearingProfile.HalfDuplex, false)]
    [InlineData(HearingProfile.Headset, false)]
    [InlineData(HearingProfile.EchoCancelled, true)]
    public void What_the_tool_says_matters_only_where_the_microphone_may_hear_it(HearingProfile profile, bool matters)
    {
        StartupSession session = new(new StartupProcedure(Some.Plan()), _log, _display, _voice, new ScriptedEar([]), new FakeTimeProvider(Some.Morning)) { Profile = profile };
        session.Begin(Some.Job);

        Assert.Equal(matters, session.Saying is not null);
    }

    /// <returns>How many events there were before.</returns>
    Task<int> Take(HearingProfile profile, Phrase? heard, params Input[] inputs) => Take(profile, heard, Prompt, inputs);

    async Task<int> Take(HearingProfile profile, Phrase? heard, string over, params Input[] inputs)
    {
        StartupSession session = new(new StartupProcedure(Some.Plan()), _log, _display, _voice, new ScriptedEar(heard is null ? [] : [heard]), new FakeTimeProvider(Some.Morning)) { Profile = profile };
        session.Begin(Some.Job);
        int before = _log.Events.Count;
        foreach (Input input in heard is null ? inputs : [new Input.Spoken(Clip, null, over)])
        {
            session.Post(input);
        }

        session.Close();
        await session.Run(CancellationToken.None);
        return before;
    }

    sealed class SlowEar(int spins, Phrase phrase) : IEar
    {
        public Phrase Hear(SpeechClip clip, Expectation expectation, CancellationToken cancellation = default)
        {
            Thread.SpinWait(spins);
            return phrase;
        }
    }

    /// <summary>A voice that speaks until it is broken off.</summary>
    sealed class TalkingVoice : IVoice
    {
        public int Broken { get; private set; }

        public List<string> Said { get; } = [];

        public ValueTask Say(string text, CancellationToken cancellation)
        {
            Said.Add(text);
            TaskCompletionSource said = new();
            cancellation.Register(() =>
            {
                Broken++;
                said.TrySetResult();
            });
            return new ValueTask(said.Task);
        }

        public ValueTask Warn(string text, CancellationToken cancellation) => Say(text, cancellation);

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}
