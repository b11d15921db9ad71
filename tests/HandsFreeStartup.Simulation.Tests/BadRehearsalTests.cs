using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Simulation.Critiques;
using HandsFreeStartup.Simulation.Tests.Support;

namespace HandsFreeStartup.Simulation.Tests;

/// <summary>Rehearsals that are ideal but for one thing: the critique names it. Those that are ideal get no word of blame.</summary>
public sealed class BadRehearsalTests
{
    const string Propane = "furnace-one-stage-propane", TwoStage = "furnace-two-stage-altitude", Modulating = "furnace-modulating", Natural = "furnace-natural-draft";

    sealed record Bad(string Name, string StepId, string Sheet, Func<IdealRun, Deed, IEnumerable<Deed>> Slip, params Fault[] Faults);

    static IReadOnlyList<Bad> All { get; } =
    [
        new("wrong-value", "combustion-high", Propane, Saying("combustion-high", "oxygen", run => [Shown(run, "oxygen", 2.0m)])),
        new("wrong-value", "manifold-high", TwoStage, Saying("manifold-high", "manifold", run => [Shown(run, "manifold_pressure", 0.10m)])),
        new("wrong-value", "room-before", Natural, Saying("room-before", "monoxide", run => [Shown(run, "room_co", 4m)])),
        new("wrong-value", "inlet-standing", Modulating, Saying("inlet-standing", "inlet", run => [Shown(run, "inlet_pressure", -0.5m)])),
        new("wrong-value", "flame-current", Propane, Saying("flame-current", "flame", run => [Shown(run, "flame_current", 1.0m)])),
        new("value-too-early", "inlet-running", TwoStage, Hand("inlet-running", "others on", _ => [new Deed.ByHand("others on"), new Deed.Patience(1)], run => [Shown(run, "inlet_pressure")])),
        new("value-too-early", "combustion-high", Modulating, Hand("combustion-high", "press hose", _ => [new Deed.ByHand("press hose"), new Deed.Patience(8)], run => [Shown(run, "oxygen")]), Fault.LeakingProbe),
        new("value-from-nowhere", "combustion-high", Natural, Saying("combustion-high", "flue", run => [new Deed.ByHand("pull probe"), new Deed.Patience(20), Said(run, "flue_temperature", 400), new Deed.ByHand("insert probe")])),
        new("probe-out", "combustion-high", Propane, Saying("combustion-high", "oxygen", run => [new Deed.ByHand("pull probe"), new Deed.Patience(60), Said(run, "oxygen", 20.9m), new Deed.ByHand("insert probe")])),
        new("wrong-fire", "manifold-high", TwoStage, Saying("manifold-high", "manifold", run => [new Deed.ByHand("low fire"), Shown(run, "manifold_pressure"), new Deed.ByHand("high fire")])),
        new("others-off", "inlet-running", Modulating, Saying("inlet-running", "inlet", run => [new Deed.ByHand("others off"), Shown(run, "inlet_pressure"), new Deed.ByHand("others on")])),
        new("others-on", "manifold-high", Natural, Saying("manifold-high", "manifold", run => [new Deed.ByHand("others on"), Shown(run, "manifold_pressure"), new Deed.ByHand("others off")])),
        new("burner-on", "inlet-standing", Propane, Saying("inlet-standing", "inlet", run => [new Deed.ByHand("call for heat"), Shown(run, "inlet_pressure"), new Deed.ByHand("heat off")])),
        new("wrong-room", "room-walk/kitchen", Modulating, Saying("room-walk/kitchen", "monoxide", run => [new Deed.ByHand("go to furnace"), Shown(run, "room_co")])),
        new("no-fire", "rise-high", Natural, Saying("rise-high", "supply", run => [new Deed.ByHand("heat off"), Shown(run, "supply_temperature")])),
        new("not-clocked", "meter-low", TwoStage, Hand("meter-low", "clock meter", run => [Shown(run, "meter_time"), new Deed.ByHand("clock meter")])),
        new("not-opened", "open-duct-ports", Propane, Hand("open-duct-ports", "open duct ports", _ => [Order(CommandWord.Done)])),
        new("closing-missed", "close-duct-ports", Natural, Hand("close-duct-ports", "plug duct ports", _ => [Order(CommandWord.Done)])),
        new("left-open", "sign", Natural, Hand("close-duct-ports", "plug duct ports", _ => [Order(CommandWord.Done)])),
        new("closed-late", "close-duct-ports", Modulating, Hand("close-duct-ports", "plug duct ports", _ => [Order(CommandWord.Done), new Deed.ByHand("plug duct ports")])),
        new("not-zeroed", "unpack", TwoStage, Hand("unpack", "go outside", _ => [Order(CommandWord.Done)])),
        new("filter-not-changed", "filter", Propane, Hand("filter", "change filter", _ => [Order(CommandWord.Done)])),
        new("not-done", "light", Modulating, Hand("light", "call for heat", _ => [Order(CommandWord.Done)])),
        new("wrong-answer", "flame-blower", Propane, Saying("flame-blower", "yes", _ => [Answer(AnswerWord.No)]), Fault.CrackedExchanger),
        new("signed-with-fault", "sign", Natural, Saying("prove-ports", "no", _ => [Answer(AnswerWord.Yes)]), Fault.PortLeftOpen),
        new("wrong-answer", "leak-check", Natural, Saying("leak-check", "no", _ => [Answer(AnswerWord.Yes)]), Fault.GasLeak),
        new("wrong-answer", "clearances", TwoStage, Saying("clearances", "yes", _ => [Answer(AnswerWord.No)])),
        new("answered-unseen", "leak-check", Modulating, Hand("leak-check", "open gas", _ => [Answer(AnswerWord.Yes)])),
        new("answered-unseen", "limit", Propane, First("limit", _ => [Answer(AnswerWord.Yes)])),
        new("needless-turn", "combustion-high", Natural, First("combustion-high", _ => [new Deed.ByHand("turn left a little")])),
        new("turned-wrong-way", "adjust-high", TwoStage, Hand("adjust-high", "turn ", _ => [new Deed.ByHand("turn right an eighth")]), Fault.RegulatorHigh),
        new("turned-too-far", "adjust-high", Natural, Hand("adjust-high", "turn ", _ => [new Deed.ByHand("turn left a whole turn"), new Deed.Patience(5)]), Fault.RegulatorHigh),
        new("port-under-pressure", "open-gas-ports", Propane, Hand("open-gas-ports", "open inlet", _ => [new Deed.ByHand("open gas"), new Deed.Patience(5), new Deed.ByHand("open inlet")])),
        new("zeroed-in-bad-air", "unpack", Modulating, Hand("unpack", "zero analyzer", _ => [new Deed.ByHand("go to furnace"), new Deed.ByHand("zero analyzer")])),
        new("out-of-order", "leak-check", TwoStage, Hand("leak-check", "open gas", _ => [new Deed.ByHand("open gas"), new Deed.ByHand("call for heat"), new Deed.ByHand("heat off")])),
        new("lit-with-gas", "leak-check", Natural, Hand("leak-check", "open gas", _ => [new Deed.ByHand("open gas"), new Deed.Patience(90), new Deed.ByHand("call for heat"), new Deed.ByHand("heat off")]), Fault.GasLeak),
        new("skipped", "owner", Propane, Saying("owner", "done", _ => [Order(CommandWord.SkipStep)])),
        new("too-soon", "warm-up", Modulating, First("warm-up", _ => [Order(CommandWord.Next)])),
        new("trap-full", "combustion-high", Propane, First("combustion-high", _ => [new Deed.Patience(9500)])),
        new("denied-danger", "flame-blower", Natural, Saying("flame-blower", "confirm", _ => [Answer(AnswerWord.No)]), Fault.CrackedExchanger),
        new("others-left-on", "sign", TwoStage, First("sign", _ => [new Deed.ByHand("others on")])),
        new("healthy-ended", "safe-tag", Propane, First("warm-up", _ => [Order(CommandWord.Finish)])),
    ];

    public static TheoryData<int, string, string, string> Rows
    {
        get
        {
            TheoryData<int, string, string, string> rows = [];
            foreach ((Bad bad, int index) in All.Select((bad, index) => (bad, index)))
            {
                rows.Add(index, bad.Name, bad.StepId, bad.Sheet);
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_one_thing_that_was_done_badly_is_named(int index, string name, string stepId, string sheet)
    {
        Furnace furnace = Made.Furnace(sheet, 7, All[index].Faults);
        IdealRun run = new IdealRun(furnace, All[index].Slip).Run();

        Critique critique = Critique.Of(run.Bench);

        Mistake found = critique.Mistakes.FirstOrDefault(mistake => mistake.Name == name && mistake.StepId == stepId)
            ?? throw new Xunit.Sdk.XunitException($"not found among: {string.Join("; ", critique.Mistakes.Select(mistake => $"{mistake.Name} {mistake.StepId}"))}; last done: {string.Join(" | ", run.Done.TakeLast(8))}");
        Assert.NotEmpty(found.What);
        Assert.NotEmpty(found.Instead);
        Assert.True(critique.Score < 100);
    }

    [Fact]
    public void At_least_thirty_ways_to_do_badly_are_tried_with_twenty_names() => Assert.True(All.Count >= 30 && All.Select(bad => bad.Name).Distinct().Count() >= 20);

    [Theory]
    [InlineData(Propane)]
    [InlineData(TwoStage)]
    [InlineData(Modulating)]
    [InlineData(Natural)]
    [InlineData("demo-furnace")]
    public void The_ideal_rehearsal_of_each_kind_of_furnace_gets_no_word_of_blame(string sheet)
    {
        Critique critique = Critique.Of(new IdealRun(Made.Furnace(sheet)).Run().Bench);

        Assert.Equal("", string.Join("; ", critique.Mistakes.Select(mistake => $"{mistake.Name} {mistake.StepId}: {mistake.What}")));
        Assert.Equal((100, true), (critique.Score, critique.IsSigned));
    }

    [Fact]
    public void The_score_rises_with_every_mistake_that_is_left_out_and_never_by_speed()
    {
        Critique bad = Critique.Of(new IdealRun(Made.Furnace(Propane), All[0].Slip).Run().Bench);
        foreach (Mistake mistake in bad.Mistakes)
        {
            Assert.True((bad with { Mistakes = bad.Mistakes.Remove(mistake) }).Score > bad.Score || bad.Score == 100);
        }

        Assert.Equal(bad.Score, (bad with { Time = TimeSpan.FromMinutes(1) }).Score);
        Assert.True((bad with { StepsRight = bad.StepsRight - 1 }).Score < bad.Score);
        Assert.True((bad with { Hints = 3 }).Score < bad.Score);
    }

    /// <summary>Once: in that step, instead of the hand that begins so.</summary>
    static Func<IdealRun, Deed, IEnumerable<Deed>> Hand(string stepId, string words, Func<IdealRun, IEnumerable<Deed>> instead, Func<IdealRun, IEnumerable<Deed>>? then = null) =>
        Once(stepId, deed => deed is Deed.ByHand && deed.Words.StartsWith(words, StringComparison.Ordinal), instead, then);

    /// <summary>Once: in that step, instead of what is said that begins so.</summary>
    static Func<IdealRun, Deed, IEnumerable<Deed>> Saying(string stepId, string words, Func<IdealRun, IEnumerable<Deed>> instead) =>
        Once(stepId, deed => deed is Deed.BySpeech && deed.Words.StartsWith(words, StringComparison.Ordinal), instead);

    /// <summary>Once: the first thing that is done in that step.</summary>
    static Func<IdealRun, Deed, IEnumerable<Deed>> First(string stepId, Func<IdealRun, IEnumerable<Deed>> instead) => Once(stepId, _ => true, instead);

    static Func<IdealRun, Deed, IEnumerable<Deed>> Once(string stepId, Func<Deed, bool> on, Func<IdealRun, IEnumerable<Deed>> instead, Func<IdealRun, IEnumerable<Deed>>? then = null)
    {
        IdealRun? last = null;
        int times = 0;
        return (run, deed) =>
        {
            (last, times) = ReferenceEquals(last, run) ? (last, times) : (run, 0);
            if (times == 1 && then is not null)
            {
                times++;
                return then(run);
            }

            if (times > 0 || run.Bench.Step.Id != stepId || !on(deed))
            {
                return [deed];
            }

            times++;
            return instead(run);
        };
    }

    static Deed Shown(IdealRun run, string fieldId, decimal more = 0) => Said(run, fieldId, (run.Bench.DisplayOf(fieldId)?.Value ?? 0) + more);

    static Deed Said(IdealRun run, string fieldId, decimal value)
    {
        Field field = run.Bench.Furnace.Plan.FieldOf(fieldId);
        return new Deed.BySpeech($"{field.SpokenNames[0]} {value}", new Phrase.Reading(field, value, Evidence.Typed(field.SpokenNames[0])));
    }

    static Deed Order(CommandWord word) => new Deed.BySpeech(Commands.Of(word).Id, new Phrase.Command(word, Evidence.Typed(Commands.Of(word).Id)));

    static Deed Answer(AnswerWord word) => new Deed.BySpeech(Answers.Of(word).Ways[0], new Phrase.Answer(word, Evidence.Typed(Answers.Of(word).Ways[0])));
}
