using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Deciding;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Procedure.Showing;

/// <summary>Which way to turn, and how far the value has to go, while a reading is adjusted.</summary>
static class Advice
{
    /// <summary>One sentence for the current step, or empty when it is no adjustment or the reading is where it belongs.</summary>
    public static string For(StartupState state) =>
        state.Step is { Kind: StepKind.Adjust } step && state.Reading(step.Readings[0].FieldId, step.Scope)?.Reading is { } reading ? For(reading, state.Plan.Appliance) : "";

    static string For(EnteredReading reading, ApplianceSheet appliance) => reading switch
    {
        { Limit: null } or { Verdict: Verdict.Pass or Verdict.ConditionalPass } => "",
        { Limit.Upper: { } upper } when reading.Value > upper => Turn(reading, (reading.Limit.Lower + upper) / 2 ?? upper, Other(appliance.TurnToRaise), "too high"),
        { Limit.Lower: { } lower } when reading.Value < lower => Turn(reading, (reading.Limit.Upper + lower) / 2 ?? lower, appliance.TurnToRaise, "too low"),
        _ => "",
    };

    static string Turn(EnteredReading reading, decimal aim, string direction, string fault) =>
        $"{Numbers.Text(reading.Value)} {reading.UnitSymbol} is {fault}: turn {direction}, about {Numbers.Text(Math.Abs(reading.Value - aim))} {reading.UnitSymbol} to go.";

    static string Other(string direction) => direction == "clockwise" ? "counter-clockwise" : "clockwise";
}
