using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Rehearse;
using HandsFreeStartup.Session;
using HandsFreeStartup.Simulation;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Rehearse;

/// <summary>Hands that are moved by words: only in a rehearsal, and never a word to the procedure.</summary>
public sealed class SpokenHandsTests
{
    static readonly Lazy<Furnace> Furnace = new(() => Simulation.Furnace.From(ShippedPlans.Plan("gas-furnace", "furnace-two-stage-altitude", "site-mountain", "new"), [], 5));

    [Fact]
    public async Task What_is_said_to_the_hands_moves_them_and_is_no_event()
    {
        RehearsalStage stage = Stage();
        (List<StartupEvent> log, _) = await Heard(stage, stage, "open window", "turn left a quarter", "wait two minutes");

        Assert.True(stage.Bench.Hands.WindowsOpen);
        Assert.Equal(1, stage.Bench.Hands.Turnings);
        Assert.True(stage.Bench.At >= TimeSpan.FromMinutes(2));
        Assert.Equal(["open window", "turn left a quarter"], stage.Bench.Journal.Select(entry => entry.Hand).OfType<string>());
        Assert.DoesNotContain(log, happened => happened is not (StartupBegan or RunBegan or StepEntered or TimerStarted));
    }

    [Fact]
    public async Task Outside_of_a_rehearsal_there_are_no_hands_to_be_told()
    {
        RehearsalStage stage = Stage();
        (_, StartupSession session) = await Heard(stage, null, "open window");

        Assert.Empty(session.Expected.Choices);
        Assert.Empty(stage.Bench.Journal.Where(entry => entry.Hand is not null).Select(entry => entry.Hand));
    }

    [Fact]
    public void Where_words_are_dictated_listening_rests_or_a_signature_is_wanted_the_hands_rest_too()
    {
        RehearsalStage stage = Stage();
        Expectation asking = new([], [CommandWord.Done, CommandWord.Help], []);

        Assert.Contains(stage.With(asking).Choices, choice => choice.Says == "open window");
        Assert.All([new Expectation([], [], [], Dictation: true), new([], [CommandWord.GoAhead], []), new([], [CommandWord.Disregard], [AnswerWord.Confirm])],
            expectation => Assert.Empty(stage.With(expectation).Choices));
    }

    [Fact]
    public void No_word_of_the_hands_is_a_command_an_answer_a_reading_or_a_call_for_help()
    {
        Expectation open = Expectation.Open with { Answers = [.. Answers.All.Select(answer => answer.Word)] };

        Assert.All(HandWords.All(Furnace.Value.Plan), words => Assert.Empty(Speech.Phrases.PhraseText.Read(words, open).Meanings));
    }

    static RehearsalStage Stage() => new(new Bench(Furnace.Value), new RehearsalClock(null, 1, new DateTimeOffset(2026, 1, 5, 8, 0, 0, TimeSpan.Zero)));

    /// <summary>A session whose ear hears each of these words plainly.</summary>
    static async Task<(List<StartupEvent> Log, StartupSession Session)> Heard(RehearsalStage stage, IHands? hands, params string[] words)
    {
        NotedLog log = new([]);
        StartupSession session = new(new StartupProcedure(Furnace.Value.Plan), stage.Watch(log), stage.Beside(new NotedDisplay([]), asLines: false), new SilentVoice(), new ReadingEar(words), TimeProvider.System) { Hands = hands };
        FileCopy none = new("", "", "");
        session.Begin(new JobDescription("hands", none, none, none) { Technician = "", ProgramVersion = "", Recogniser = "", IsDemonstration = true, TimerFactor = 1 });
        for (int i = 0; i < words.Length; i++)
        {
            session.Post(new Input.Spoken(new SpeechClip([0], i, 0, 0)));
        }

        session.Close();
        Assert.Equal(SessionEnd.InputOver, await session.Run(CancellationToken.None));
        return ([.. log.Events], session);
    }

    sealed class ReadingEar(string[] words) : IEar
    {
        public Phrase Hear(SpeechClip clip, Expectation expectation, CancellationToken cancellation = default) =>
            Speech.Phrases.PhraseText.Typed(words[(int)clip.Start], expectation);
    }
}
