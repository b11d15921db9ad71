using HandsFreeStartup.Simulation.Critiques;
using HandsFreeStartup.Simulation.Tests.Support;

namespace HandsFreeStartup.Simulation.Tests;

/// <summary>Fault against the step of the shipped procedure that first shows it to a technician who does everything right. A fault that no step shows would make the procedure wrong.</summary>
public sealed class FaultTableTests
{
    public static TheoryData<string, string, string> Table => new()
    {
        { "regulator-high", "furnace-two-stage-altitude", "manifold-high" },
        { "valve-not-holding", "furnace-modulating", "manifold-high" },
        { "wrong-orifice", "furnace-modulating", "meter-high" },
        { "wrong-orifice", "furnace-one-stage-propane", "conversion" },
        { "blocked-vent", "furnace-natural-draft", "draft-high" },
        { "blocked-vent", "furnace-one-stage-propane", "combustion-high" },
        { "cracked-exchanger", "furnace-natural-draft", "flame-blower" },
        { "dirty-filter", "demo-furnace", "filter" },
        { "undersized-duct", "furnace-modulating", "rise-high" },
        { "reversed-polarity", "furnace-natural-draft", "polarity" },
        { "badly-zeroed", "furnace-one-stage-propane", "unpack" },
        { "leaking-probe", "furnace-two-stage-altitude", "combustion-high" },
        { "port-left-open", "furnace-modulating", "prove-ports" },
        { "not-derated", "furnace-two-stage-altitude", "orifices" },
        { "short-of-air", "furnace-natural-draft", "clearances" },
        { "short-of-air", "furnace-modulating", "vent-pushing" },
        { "low-supply", "furnace-one-stage-propane", "inlet-running" },
        { "gas-leak", "furnace-natural-draft", "leak-check" },
    };

    [Theory]
    [MemberData(nameof(Table))]
    public void The_procedure_as_it_stands_shows_each_fault(string fault, string sheet, string stepId)
    {
        IdealRun run = new IdealRun(Made.Furnace(sheet, 7, NamedFault.Find(fault)!.Fault)).Run();

        FaultFate fate = Assert.Single(Critique.Of(run.Bench).Faults);

        Assert.Equal((stepId, true), (fate.FoundAt, fate.IsSettled));
    }

    [Fact]
    public void Every_fault_stands_in_the_table() =>
        Assert.Equal(NamedFault.All.Select(fault => fault.Name).Order(), Table.Select(row => (string)row[0]).Distinct().Order());

    /// <summary>Whoever answers "no" to the smoke, or denies what the polarity shows, still meets these faults later: the second line of defense.</summary>
    [Theory]
    [InlineData("reversed-polarity", "furnace-natural-draft", "polarity", "flame-current")]
    [InlineData("short-of-air", "furnace-natural-draft", "clearances", "flame")]
    [InlineData("not-derated", "furnace-two-stage-altitude", "orifices", "flame")]
    public void A_fault_that_is_passed_over_once_is_shown_again(string fault, string sheet, string passedOver, string again)
    {
        IdealRun run = new IdealRun(Made.Furnace(sheet, 7, NamedFault.Find(fault)!.Fault), (run, deed) =>
            deed is Deed.BySpeech { Phrase: Procedure.Hearing.Phrase.Answer } && run.Bench.Step.Id == passedOver
                ? [new Deed.BySpeech("yes", new Procedure.Hearing.Phrase.Answer(Procedure.Hearing.AnswerWord.Yes, Procedure.Hearing.Evidence.Typed("yes")))]
                : [deed]).Run();

        Critique critique = Critique.Of(run.Bench);

        Assert.Contains(critique.Mistakes, mistake => mistake.Name == "wrong-answer" && mistake.StepId == passedOver);
        Assert.Equal((false, again), (run.Procedure.IsSigned, critique.Faults[0].FoundAt));
    }
}
