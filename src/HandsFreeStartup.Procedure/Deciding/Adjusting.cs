using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>Where an adjustment stands after the last reading: which way to turn and how far, or why not to turn.</summary>
/// <param name="Sentence">As told; empty where there is nothing to say.</param>
/// <param name="Stop">Why the adjustment must stop though the reading is outside; null while it may go on.</param>
/// <param name="Direction">More gas or less.</param>
/// <param name="Change">How far the next turn goes, in the reading's unit, signed; 0 where nothing is to be turned.</param>
sealed record Adjusting(Message Sentence, Message? Stop, AdjustmentDirection Direction, decimal Change)
{
    /// <summary>A hand errs by up to three tenths of what it means to turn (common practice, no source); a turn is kept so short that even then it does not pass the far limit.</summary>
    const decimal HandError = 0.3m;

    static readonly Adjusting Nothing = new("", null, AdjustmentDirection.Leave, 0);

    /// <summary>Of the current step; nothing where it is no adjustment or nothing was measured.</summary>
    public static Adjusting Of(StartupState state) =>
        state.Step is { Kind: StepKind.Adjust } step && state.Reading(step.Readings[0].FieldId, step.Scope) is { Counts: true, Reading.Limit: { } limit } kept
            ? Of(state, kept, limit)
            : Nothing;

    static Adjusting Of(StartupState state, KeptReading kept, DeclaredLimit limit)
    {
        EnteredReading reading = kept.Reading;
        string? scope = state.Step.Scope;
        bool isPressure = reading.Key.FieldId == FieldId.ManifoldPressure;
        if (isPressure && state.Limit(LimitNames.ReplaceValve, scope)?.In(Unit.Find(reading.UnitSymbol)) is { Upper: { } most } replace && reading.Value > most)
        {
            return Stopped($"Over {Short(most, reading)} the valve is to be replaced ({replace.Source}). Stop adjusting.");
        }

        bool isHigh = limit.Upper is { } upper && reading.Value > upper;
        bool isLow = limit.Lower is { } lower && reading.Value < lower;
        if (!isHigh && !isLow)
        {
            return kept.StepId == state.Step.Id ? Nothing with { Sentence = "Within its range: stop turning." } : Nothing;
        }

        // More gas raises the pressure, and leaves less oxygen.
        AdjustmentDirection direction = isLow == isPressure ? AdjustmentDirection.Raise : AdjustmentDirection.Lower;
        return FiringOf(state, scope) is { } firing && Contradicts(firing, direction)
            ? Stopped($"The meter says {firing}: do not turn {Turn(state.Plan.Appliance, direction)}, whatever the {(isPressure ? "pressure" : "oxygen")} says. Look at the orifices, the dial and the gas, then clock the meter again.")
            : Advice(state.Plan.Appliance, reading, limit, isHigh, direction, isPressure);
    }

    static Adjusting Advice(ApplianceSheet appliance, EnteredReading reading, DeclaredLimit limit, bool isHigh, AdjustmentDirection direction, bool isPressure)
    {
        decimal aim = (limit.Lower + limit.Upper) / 2 ?? limit.Upper ?? limit.Lower!.Value;
        decimal half = (limit.Upper - limit.Lower) / 2 ?? 0;
        decimal whole = Math.Abs(reading.Value - aim);
        decimal first = Math.Min(whole, Math.Round((whole + half) / (1 + HandError), 2));
        Message togo = first < whole ? (Message)$"about {new ShownValue(Numbers.Short(first), "", "", "")} of {Short(whole, reading)} first" : $"about {Short(whole, reading)} to go";
        string oxygen = !isPressure ? "" : direction == AdjustmentDirection.Raise ? " Oxygen will fall." : " Oxygen will rise.";
        return new Adjusting(
            $"{ShownValue.Of(reading)} is too {(isHigh ? "high" : "low")}: turn {Turn(appliance, direction)}, {togo}.{oxygen}",
            null, direction, isHigh ? -first : first);
    }

    static ShownValue Short(decimal distance, EnteredReading reading) => new(Numbers.Short(distance), "", "", reading.UnitSymbol);

    static Adjusting Stopped(Message why) => new(why, why, AdjustmentDirection.Leave, 0);

    /// <summary>"over-fire" or "under-fire" where the input rate by the meter is outside of its limit.</summary>
    static string? FiringOf(StartupState state, string? scope) =>
        state.Results(scope).FirstOrDefault(result => result.Id == ResultId.InputRate) is { Remark.Shown: Firing.Over or Firing.Under } input ? input.Remark.Shown : null;

    static bool Contradicts(string firing, AdjustmentDirection direction) =>
        firing == Firing.Over ? direction == AdjustmentDirection.Raise : direction == AdjustmentDirection.Lower;

    static string Turn(ApplianceSheet appliance, AdjustmentDirection direction) =>
        direction == AdjustmentDirection.Raise ? appliance.TurnToRaise : appliance.TurnToRaise == "clockwise" ? "counter-clockwise" : "clockwise";

    /// <summary>The words of the trade for an input rate outside of its limit.</summary>
    public static class Firing
    {
        public const string Over = "over-fire";
        public const string Under = "under-fire";

        /// <summary>The word for a value outside of its limit; empty where it is inside.</summary>
        public static string Of(double input, DeclaredLimit? limit) =>
            limit?.Upper is { } upper && input > (double)upper ? Over : limit?.Lower is { } lower && input < (double)lower ? Under : "";
    }
}

/// <summary>What the oxygen was before an adjustment, and how far the pressure went since.</summary>
/// <param name="Oxygen">Before.</param>
/// <param name="From">Pressure at that oxygen.</param>
/// <param name="To">Pressure now.</param>
sealed record PendingOxygen(EnteredReading Oxygen, decimal From, decimal To);
