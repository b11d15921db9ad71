using System.Collections.Immutable;
using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>What a value means: its verdict, and the results that can be worked out now that it is known.</summary>
sealed class Meaning(StartupState state)
{
    /// <summary>The reading with its uncertainty, limit and verdict.</summary>
    public EnteredReading Judge(Phrase.Reading reading, ReadingDemand demand, string? scope)
    {
        bool isEarly = state.WaitBefore(state.Step, reading.Field.Id) is not null;
        DeclaredLimit? limit = isEarly ? null : state.Limit(demand.LimitName, scope)?.In(reading.Field.Unit);
        decimal? expanded = state.Plan.Site.ExpandedOf(reading.Field, reading.Value, state.Day);
        return new EnteredReading(new ReadingKey(reading.Field.Id, scope ?? ""), reading.Value, reading.Field.Unit.Symbol, reading.Evidence)
        {
            Limit = limit,
            Verdict = limit is null ? null : Verdict((double)reading.Value, (double?)expanded, limit),
            ExpandedUncertainty = expanded,
            IsEarly = isEarly,
            IsOver = reading.IsOver,
        };
    }

    /// <summary>A value that nothing judges, such as a bound of a limit.</summary>
    public static EnteredReading Unjudged(Phrase.Reading reading, string scope) =>
        new(new ReadingKey(reading.Field.Id, scope), reading.Value, reading.Field.Unit.Symbol, reading.Evidence);

    /// <summary>The results that <paramref name="entered"/> completes; none while a reading that they need is missing or void.</summary>
    public ImmutableArray<CalculatedResult> Results(EnteredReading entered)
    {
        if (entered.IsEarly)
        {
            return [];
        }

        string scope = entered.Key.Scope;
        ImmutableSortedDictionary<string, EnteredReading> readings = state.Keys.Select(key => state.Reading(key)!)
            .Where(kept => kept.Reading.Key.Scope == scope && kept.Counts)
            .Select(kept => kept.Reading)
            .Where(reading => reading.Key != entered.Key)
            .Append(entered)
            .ToImmutableSortedDictionary(reading => reading.Key.FieldId, reading => reading, StringComparer.Ordinal);
        ResultInputs inputs = new(readings, state.Plan)
        {
            Scope = scope,
            Stages = state.Stages.SetItem(scope, readings),
            FirstSets = readings.Values.Where(reading => First(reading, entered) is not null).ToImmutableDictionary(reading => reading.Key.FieldId, reading => First(reading, entered)!.Value),
        };
        return
        [
            .. ResultRule.All
                .Where(rule => rule.FollowsFrom(entered.Key.FieldId) && rule.Needs.All(readings.ContainsKey))
                .SelectMany(rule => Result(rule, inputs)),
            .. Expected(entered),
        ];
    }

    /// <summary>What was read in the first of two sets, where the second agrees with it.</summary>
    decimal? First(EnteredReading reading, EnteredReading entered) => reading != entered ? state.FirstOf(reading.Key)
        : state.PairOf(state.Step.Id, reading.Key.FieldId) is { } settles && state.IsSecond(state.Step.Id, reading, settles) ? state.FirstSet[reading.Key] : null;

    IEnumerable<CalculatedResult> Result(ResultRule rule, ResultInputs given)
    {
        (ImmutableSortedDictionary<string, EnteredReading> readings, string scope) = (given.Readings, given.Scope);
        ImmutableSortedDictionary<string, decimal> inputs = rule.Needs.ToImmutableSortedDictionary(id => id, id => readings[id].Value, StringComparer.Ordinal);
        bool isStated = rule.Needs.All(id => readings[id].ExpandedUncertainty is not null);
        ImmutableArray<string> over = [.. rule.Needs.Where(id => readings[id].IsOver)];
        foreach (Calculated calculated in rule.Calculate(given))
        {
            (Unit? unit, string symbol, int decimals) = calculated.Kind.Under(state.Plan.Settings);
            DeclaredLimit? limit = state.Limit(calculated.Kind.Id, scope)?.In(unit, calculated.Kind.IsDifference);
            CalculatedResult result = new(calculated.Kind.Id, calculated.Kind.Label)
            {
                UnitSymbol = symbol,
                Decimals = decimals,
                Formula = rule.Formula,
                Inputs = inputs,
                Limit = limit,
                Verdict = limit is null ? null : Calculations.Judgement.Verdict.CannotTell,
                Remark = calculated.Remark,
                Over = over,
            };
            Estimate shown = InUnit(calculated, unit);
            yield return !over.IsEmpty ? MoreThan(result, readings[over[0]])
                : !shown.IsKnown ? result
                : result with
                {
                    Value = shown.Value,
                    // The doubt of the other instruments alone would be too small, and a wrong number.
                    ExpandedUncertainty = isStated ? shown.ExpandedUncertainty : null,
                    Verdict = limit is null ? null : Verdict(shown.Value, isStated ? shown.ExpandedUncertainty : null, limit),
                    Remark = calculated.Kind.Id == ResultId.InputRate ? Adjusting.Firing.Of(shown.Value, limit) : calculated.Remark,
                };
        }
    }

    /// <summary>From a reading over its range nothing can be worked out, but that air-free carbon monoxide is never less than the measured one.</summary>
    static CalculatedResult MoreThan(CalculatedResult result, EnteredReading over) => result.Id == ResultId.CoAirFree
        ? result with { Value = (double)over.Value, Verdict = result.Limit is { Upper: { } upper } && over.Value >= upper ? Calculations.Judgement.Verdict.Fail : result.Verdict, Remark = "" }
        : result with { Remark = $"{Fields.Find(over.Key.FieldId)!} is {ShownValue.Of(over)}" };

    static Estimate InUnit(Calculated calculated, Unit? unit) =>
        unit is null || Unit.Find(calculated.Kind.UnitSymbol) is not { } own || own == unit ? calculated.Estimate : new Estimate(
            own.Convert(calculated.Estimate.Value, unit, calculated.Kind.IsDifference),
            own.Convert(calculated.Estimate.StandardUncertainty, unit, isDifference: true));

    /// <summary>Whether the oxygen measured after an adjustment is what the change of pressure lets expect. Told only now that it was measured.</summary>
    IEnumerable<CalculatedResult> Expected(EnteredReading entered)
    {
        if (entered.Key.FieldId != FieldId.Oxygen || state.PendingOxygen.GetValueOrDefault(entered.Key.Scope) is not { } pending)
        {
            yield break;
        }

        Uncertain before = Uncertain.Input((double)pending.Oxygen.Value, (double)(pending.Oxygen.ExpandedUncertainty ?? 0) / Estimate.CoverageFactor, 0);
        Uncertain ratio = ManifoldPressure.FlowRatio(Pressure(pending.From, 1), Pressure(pending.To, 2));
        Estimate? expected = Adjustment.OxygenAfterPercent(state.Plan.Fuel, before, ratio)?.Estimate;
        ResultKind kind = ResultKind.Find(ResultId.OxygenExpected)!;
        yield return new CalculatedResult(kind.Id, kind.Label)
        {
            Value = expected?.Value,
            ExpandedUncertainty = expected?.ExpandedUncertainty,
            UnitSymbol = kind.UnitSymbol,
            Decimals = kind.Decimals,
            Formula = "oxygen-after-adjustment/1",
            Inputs = ImmutableSortedDictionary<string, decimal>.Empty.WithComparers(StringComparer.Ordinal).Add(FieldId.ManifoldPressure, pending.To).Add(FieldId.Oxygen, entered.Value),
            Remark = Remark(entered, expected),
        };
    }

    static Message Remark(EnteredReading measured, Estimate? expected) => expected is not { } known
        ? (Message)"the air would not suffice for complete combustion"
        : Math.Abs((double)measured.Value - known.Value) <= Math.Sqrt(Square(known.ExpandedUncertainty) + Square((double)(measured.ExpandedUncertainty ?? 0)))
            ? (Message)$"measured {measured.Value}: agrees"
            : $"measured {measured.Value}: does not agree, measure again";

    static double Square(double value) => value * value;

    Uncertain Pressure(decimal value, int input) => Uncertain.Input(
        (double)value, (double)(state.Plan.Site.ExpandedOf(state.Plan.FieldOf(FieldId.ManifoldPressure), value, state.Day) ?? 0) / Estimate.CoverageFactor, input);

    /// <summary>Without a stated uncertainty nothing can be proven about a safety limit; other limits are then compared as they stand.</summary>
    static Verdict Verdict(double value, double? expanded, DeclaredLimit limit) => (expanded, limit.IsSafety) switch
    {
        (null, true) => Calculations.Judgement.Verdict.CannotTell,
        _ => Calculations.Judgement.Judge.Verdict(
            new Estimate(value, (expanded ?? 0) / Estimate.CoverageFactor),
            limit.ToJudge()),
    };
}
