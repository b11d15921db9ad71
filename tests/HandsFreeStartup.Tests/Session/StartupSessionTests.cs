using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Tests.Support;
using Microsoft.Extensions.Time.Testing;

namespace HandsFreeStartup.Tests.Session;

public sealed class StartupSessionTests
{
    static readonly SpeechClip Clip = new(new float[16_000], 0, 0, 16_000);
    static readonly Phrase Red = new Phrase.NotUnderstood(Some.Heard(Certainty.Red));

    readonly List<string> _notes = [];

    [Fact]
    public async Task Each_event_is_logged_before_it_is_shown_and_the_sound_is_kept_before_the_event_that_names_it()
    {
        (StartupSession session, NotedLog log, _) = Session(new Phrase.Answer(AnswerWord.No, Some.Heard()));

        await Take(session, new Input.Spoken(Clip));

        int answered = _notes.IndexOf("log AnswerGiven");
        Assert.True(_notes.IndexOf("clip") < answered);
        Assert.True(answered < _notes.LastIndexOf("show Title of papers"));
        Assert.Equal("clip.wav", log.Events.OfType<AnswerGiven>().Single().Evidence.Clip);
    }

    [Fact]
    public async Task A_command_whose_events_tell_nothing_of_how_it_was_heard_is_tied_to_its_sound_by_an_event_before_them()
    {
        (StartupSession session, NotedLog log, _) = Session(new Phrase.Command(CommandWord.WhatIsOpen, Some.Heard()));

        await Take(session, new Input.Spoken(Clip));

        Assert.Equal("clip.wav", Assert.IsType<UtteranceHeard>(log.Events[^2]).Evidence.Clip);
        Assert.IsType<QuestionAsked>(log.Events[^1]);
    }

    [Fact]
    public async Task The_sound_of_a_doubtful_reading_and_of_its_confirmation_are_both_kept()
    {
        NotedLog empty = new(_notes);
        StartupProcedure procedure = new LiveJob().GoTo("combustion").Procedure;
        StartupSession doubting = new(procedure, empty, new NotedDisplay(_notes), new SilentVoice(),
            new ScriptedEar(new Phrase.Reading(Fields.Find("oxygen")!, 7.6m, Some.Heard(Certainty.Amber)), new Phrase.Answer(AnswerWord.Confirm, Some.Heard())),
            new FakeTimeProvider(Some.Morning));

        await Take(doubting, new Input.Spoken(Clip), new Input.Spoken(Clip with { Samples = new float[16_000] }));

        Assert.Equal("clip.wav", Assert.Single(empty.Events.OfType<ConfirmationAsked>()).Reading.Evidence.Clip);
        Assert.Equal("clip.wav", Assert.Single(empty.Events.OfType<ReadingEntered>()).Reading.Evidence.Clip);
    }

    /// <summary>Who hears nothing for a while says it again: on a slow machine both are understood, one after the other.</summary>
    [Fact]
    public async Task An_answer_said_twice_does_not_answer_the_next_question_too()
    {
        (StartupSession session, NotedLog log, NotedDisplay display) = Session(new Phrase.Answer(AnswerWord.No, Some.Heard()), new Phrase.Answer(AnswerWord.No, Some.Heard()));

        await Take(session, new Input.SpeechBegan(), new Input.Spoken(Clip), new Input.SpeechBegan(), new Input.Spoken(Clip with { Samples = new float[16_000] }));

        Assert.Single(log.Events.OfType<AnswerGiven>());
        Assert.Equal("It was said before this was asked.", display.Heard[^1].Why);
        Assert.Contains(display.Said, said => said.Text == "Say it again.");
    }

    [Fact]
    public async Task A_recording_was_made_before_and_its_answers_count_in_their_order()
    {
        (StartupSession session, NotedLog log, _) = Session(new Phrase.Answer(AnswerWord.No, Some.Heard()), new Phrase.Command(CommandWord.GoBack, Some.Heard()));

        await Take(session, new Input.SpeechBegan(IsLive: false), new Input.Spoken(Clip), new Input.SpeechBegan(IsLive: false), new Input.Spoken(Clip with { Samples = new float[16_000] }));

        Assert.Equal(3, log.Events.OfType<StepEntered>().Count());
    }

    [Theory]
    [InlineData(CommandWord.Done)]
    [InlineData(CommandWord.Next)]
    [InlineData(CommandWord.GoBack)]
    [InlineData(CommandWord.SkipStep)]
    [InlineData(CommandWord.Finish)]
    public async Task A_command_about_the_step_that_began_before_it_does_not_move_the_next_one(CommandWord word)
    {
        (StartupSession session, NotedLog log, _) = Session(new Phrase.Command(word, Some.Heard()));

        await Take(session, new Input.SpeechBegan(), new Input.Typed("no"), new Input.Spoken(Clip));

        Assert.IsNotType<UtteranceHeard>(log.Events[^1]);
        Assert.Single(log.Events.OfType<StepDone>());
        Assert.Equal(2, log.Events.OfType<StepEntered>().Count());
    }

    [Fact]
    public async Task A_reading_for_one_room_is_not_entered_for_the_next()
    {
        LiveJob job = new LiveJob().GoTo("combustion");
        NotedLog log = new(_notes);
        StartupSession session = new(job.Procedure, log, new NotedDisplay(_notes), new SilentVoice(), new ScriptedEar(new Phrase.Reading(Fields.Find("oxygen")!, 7.6m, Some.Heard())), new FakeTimeProvider(Some.Morning));

        await Take(session, new Input.SpeechBegan(), new Input.Typed("go back"), new Input.Spoken(Clip));

        Assert.Empty(log.Events.OfType<ReadingEntered>());
    }

    [Theory]
    [InlineData(CommandWord.EmergencyStop)]
    [InlineData(CommandWord.GasSmell)]
    public async Task A_call_for_help_counts_whenever_it_began(CommandWord word)
    {
        (StartupSession session, NotedLog log, _) = Session(new Phrase.Command(word, Some.Heard()));

        await Take(session, new Input.SpeechBegan(), new Input.Typed("no"), new Input.Spoken(Clip));

        Assert.Single(log.Events.OfType<StartupStopped>());
    }

    /// <summary>The alarm on the belt is nobody's answer: asked again, the value would be hidden for as long as nobody says it again.</summary>
    [Theory]
    [InlineData(Certainty.Green)]
    [InlineData(Certainty.Amber)]
    public async Task Bad_air_in_the_room_counts_whenever_it_began(Certainty certainty)
    {
        (StartupSession session, NotedLog log, _) = Session(new Phrase.Reading(Fields.Find("room_co")!, 90m, Some.Heard(certainty)));

        await Take(session, new Input.SpeechBegan(), new Input.Typed("no"), new Input.Spoken(Clip));

        Assert.Contains(log.Events, happened => certainty == Certainty.Green ? happened is StartupStopped { Cause: StopCause.CarbonMonoxide } : happened is ConfirmationAsked { Reading.Value: 90m });
    }

    [Fact]
    public async Task What_was_said_to_somebody_else_during_a_pause_is_no_answer_after_it()
    {
        (StartupSession session, NotedLog log, _) = Session(new Phrase.Answer(AnswerWord.No, Some.Heard()));

        await Take(session, new Input.Typed("stand by"), new Input.SpeechBegan(), new Input.Typed("go ahead"), new Input.Spoken(Clip));

        Assert.Empty(log.Events.OfType<AnswerGiven>());
    }

    [Fact]
    public async Task A_question_to_the_tool_counts_whenever_it_began()
    {
        (StartupSession session, NotedLog log, _) = Session(new Phrase.Command(CommandWord.WhatIsOpen, Some.Heard()));

        await Take(session, new Input.SpeechBegan(), new Input.Typed("no"), new Input.Spoken(Clip));

        Assert.Single(log.Events.OfType<QuestionAsked>());
    }

    [Fact]
    public async Task Talk_during_a_pause_leaves_neither_an_event_nor_a_sound()
    {
        (StartupSession session, NotedLog log, _) = Session(new Phrase.Answer(AnswerWord.No, Some.Heard()));

        await Take(session, new Input.Typed("stand by"), new Input.Spoken(Clip));

        Assert.IsType<ListeningPaused>(log.Events[^1]);
        Assert.DoesNotContain("clip", _notes);
    }

    [Fact]
    public async Task A_log_that_fails_stops_the_start_up_and_nothing_unlogged_is_shown()
    {
        (StartupSession session, NotedLog log, NotedDisplay display) = Session(new Phrase.Answer(AnswerWord.No, Some.Heard()));
        log.FailsAfter = 2;

        await Assert.ThrowsAsync<IOException>(() => Take(session, new Input.Spoken(Clip)));

        Assert.Equal("Title of smell", display.Last!.View.StepTitle);
    }

    [Fact]
    public async Task What_is_not_understood_is_asked_again_and_logs_nothing_and_the_second_time_opens_the_keys()
    {
        (StartupSession session, NotedLog log, NotedDisplay display) = Session(Red, Red);
        int before = log.Events.Count;

        await Take(session, new Input.Spoken(Clip), new Input.Spoken(Clip));

        Assert.Equal(before, log.Events.Count);
        Assert.True(display.Last!.Ear.OffersKeys);
        Assert.DoesNotContain("clip", _notes);
    }

    [Fact]
    public async Task A_microphone_that_is_lost_is_shown_and_said_at_once_and_so_is_its_return()
    {
        (StartupSession session, _, NotedDisplay display) = Session();

        await Take(session, new Input.Sound(-100, SoundState.Lost, "No sound from the microphone."));

        Assert.Equal((SoundState.Lost, "No sound from the microphone."), (display.Last!.Ear.Sound, display.Last.Ear.Message));
        Assert.Equal("No sound from the microphone.", Assert.Single(display.Last.Said).Text);
    }

    [Fact]
    public async Task A_phrase_begun_in_a_pause_and_finished_after_it_is_heard_under_what_may_be_said_then()
    {
        (StartupSession session, NotedLog log, _) = Session(new Phrase.Answer(AnswerWord.No, Some.Heard()));
        HeardAhead inThePause = HeardAhead.Begin(new ScriptedEar(Red), Clip, new Expectation([], [CommandWord.GoAhead], []));

        await Take(session, new Input.Pressed(CommandWord.StandBy), new Input.Pressed(CommandWord.GoAhead), new Input.Spoken(Clip, inThePause));

        Assert.Single(log.Events.OfType<AnswerGiven>());
    }

    [Fact]
    public async Task One_unclear_utterance_does_not_open_the_keys()
    {
        (StartupSession session, _, NotedDisplay display) = Session(Red);

        await Take(session, new Input.Spoken(Clip));

        Assert.False(display.Last!.Ear.OffersKeys);
    }

    [Fact]
    public async Task A_resumed_session_shows_what_the_broken_off_one_showed()
    {
        (StartupSession session, NotedLog log, NotedDisplay first) = Session();
        await Take(session, new Input.Typed("no"), new Input.Typed("done"));

        NotedDisplay second = new(_notes);
        StartupSession resumed = new(new StartupProcedure(Some.Plan()), log, second, new SilentVoice(), null, new FakeTimeProvider(Some.Morning));
        resumed.Resume();

        Assert.Equal(first.Last!.View.StepTitle, second.Last!.View.StepTitle);
        Assert.Equal(first.Last.View.Open.AsEnumerable(), second.Last.View.Open.AsEnumerable());
        Assert.Equal(first.Last.View.Expectation, second.Last.View.Expectation);
    }

    [Fact]
    public async Task Typed_text_that_is_not_legal_here_is_explained_and_changes_nothing()
    {
        (StartupSession session, NotedLog log, NotedDisplay display) = Session();
        int before = log.Events.Count;

        await Take(session, new Input.Typed("oxygen 7.6"));

        Assert.Equal(before, log.Events.Count);
        Assert.NotEmpty(display.Last!.Said[0].Text);
    }

    [Fact]
    public async Task An_alarm_that_stands_is_told_again_every_half_minute()
    {
        NotedDisplay display = new(_notes);
        FakeTimeProvider clock = new(Some.Morning) { AutoAdvanceAmount = TimeSpan.FromSeconds(7) };
        StartupSession session = new(new StartupProcedure(Some.Plan()), new NotedLog(_notes), display, new SilentVoice(), null, clock);
        session.Begin(Some.Job);

        await Take(session, [new Input.Pressed(CommandWord.GasSmell), .. Enumerable.Repeat(new Input.Tick(), 20)]);

        Assert.InRange(display.Said.Count(said => said.IsUrgent && said.Text.StartsWith("GAS SMELL", StringComparison.Ordinal)), 3, 30);
    }

    [Fact]
    public async Task What_is_said_after_the_end_of_a_wait_counts_as_said_after_it_even_before_a_tick_has_told_of_that_end()
    {
        NotedLog log = new(_notes);
        FakeTimeProvider clock = new(Some.Morning);
        LiveJob warm = new LiveJob(steady: Now.Of(clock).Steady).GoTo("warm-up");
        StartupSession session = new(warm.Procedure, log, new NotedDisplay(_notes), new SilentVoice(), null, clock);
        clock.Advance(TimeSpan.FromHours(1));

        await Take(session, new Input.Typed("next"));

        Assert.Equal(["TimerEnded", "StepEntered"], log.Events.Select(happened => happened.GetType().Name).Where(kind => kind is "TimerEnded" or "StepEntered"));
    }

    [Fact]
    public async Task The_events_of_one_decision_are_recorded_all_or_none()
    {
        (StartupSession session, NotedLog log, _) = Session();
        log.FailsAfter = log.Events.Count + 1;
        int before = log.Events.Count;

        await Assert.ThrowsAsync<IOException>(() => Take(session, new Input.Typed("no")));

        Assert.Equal(before, log.Events.Count);
    }

    (StartupSession Session, NotedLog Log, NotedDisplay Display) Session(params Phrase[] heard)
    {
        NotedLog log = new(_notes);
        NotedDisplay display = new(_notes);
        StartupSession session = new(
            new StartupProcedure(Some.Plan()), log, display, new SilentVoice(), new ScriptedEar(heard), new FakeTimeProvider(Some.Morning));
        session.Begin(Some.Job);
        return (session, log, display);
    }

    static async Task Take(StartupSession session, params Input[] inputs)
    {
        foreach (Input input in inputs)
        {
            session.Post(input);
        }

        session.Close();
        Assert.Equal(SessionEnd.InputOver, await session.Run(CancellationToken.None));
    }
}
