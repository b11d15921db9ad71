using System.Collections.Immutable;
using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Reports.Review.Rules;

/// <summary>Values that do not fit one another: each may be possible, all together are not.</summary>
static class ConsistencyRules
{
    /// <summary>Efficiency worked out anew may differ by rounding only.</summary>
    const double EfficiencyTolerance = 0.1;

    /// <summary>Where no uncertainty is stated, meter and manifold agree within this ratio (common practice, no source).</summary>
    const double RatioTolerance = 0.05;

    /// <summary>So many equal values of two stages are no chance (common practice, no source).</summary>
    const int FewestEqual = 2;

    static readonly ImmutableArray<string> DiffersByStage = [FieldId.Oxygen, FieldId.CarbonDioxide, FieldId.FlueCo, FieldId.FlueTemperature, FieldId.ManifoldPressure];

    public static IEnumerable<ReviewFinding> FuelFactorOutOfRange(ReviewedJob job)
    {
        if (Fuel.Find(job.Plan.Appliance.FuelId) is not { } fuel || FuelFactor.AcceptRange(fuel) is not { } range)
        {
            yield break;
        }

        foreach (string scope in job.Scopes)
        {
            if (All(job, scope, FieldId.Oxygen, FieldId.CarbonDioxide) is [var oxygen, var dioxide] && dioxide.Reading.Value > 0)
            {
                ReadingFate? monoxide = job.Counting(FieldId.FlueCo, scope);
                Estimate factor = FuelFactor.Of(Input(oxygen, 0), Input(dioxide, 1), monoxide is null ? 0 : Input(monoxide, 2) / 10_000).Estimate;
                if (factor.Value < range.Lower || factor.Value > range.Upper)
                {
                    yield return Found("fuel-factor", FormattableString.Invariant(
                        $"Fuel factor{Labels.In(scope)} {factor.Value:F3} is outside of {range.Lower:F3} to {range.Upper:F3} ({range.Source}): oxygen, carbon dioxide and fuel do not fit."), oxygen, dioxide);
                }
            }
        }
    }

    public static IEnumerable<ReviewFinding> EfficiencyAgainstFlueTemperature(ReviewedJob job)
    {
        foreach (string scope in job.Scopes)
        {
            if (Fuel.Find(job.Plan.Appliance.FuelId) is { } fuel && job.Result(ResultId.Efficiency, scope) is { } recorded
                && All(job, scope, FieldId.Oxygen, FieldId.FlueCo, FieldId.FlueTemperature, FieldId.AirTemperature) is [var oxygen, var monoxide, var flue, var air])
            {
                double anew = CombustionEvaluation.Of(
                    new FlueReading(new Fraction(Si(oxygen)), new Fraction(Si(monoxide)), new Temperature(Si(flue)), new Temperature(Si(air)))
                    {
                        Pressure = StandardAtmosphere.Pressure(Altitude.FromFeet((double)job.Plan.Site.AltitudeFeet)),
                    },
                    fuel).EfficiencyPercent.Value;
                if (!(Math.Abs(anew - recorded) <= EfficiencyTolerance))
                {
                    yield return Found(ResultId.Efficiency, FormattableString.Invariant(
                        $"Efficiency{Labels.In(scope)} {recorded:F1} % does not follow from flue temperature {ShownValue.Of(flue.Reading).Plain} and oxygen {ShownValue.Of(oxygen.Reading).Plain}: that would be {anew:F1} %."), flue, oxygen);
                }
            }
        }
    }

    /// <summary>Heat goes from the warm to the cold: the flue gas cannot be cooled below the air that cools it.</summary>
    public static IEnumerable<ReviewFinding> FlueCoolerThanAir(ReviewedJob job) =>
        from scope in job.Scopes
        let both = All(job, scope, FieldId.FlueTemperature, FieldId.ReturnTemperature)
        where both.Length == 2 && both[0].Reading.Value <= both[1].Reading.Value
        select Found("flue-cooler-than-air", $"Flue temperature{Labels.In(scope)} {ShownValue.Of(both[0].Reading).Plain} is not above return temperature {ShownValue.Of(both[1].Reading).Plain}: one of them is wrong.", [.. both]);

    public static IEnumerable<ReviewFinding> CondensingAgainstKind(ReviewedJob job) =>
        from scope in job.Scopes
        let flue = job.Counting(FieldId.FlueTemperature, scope)
        let dewPoint = job.Result(ResultId.DewPoint, scope)
        where flue is not null && dewPoint is not null && job.Plan.Appliance.IsCondensing is { } condenses
            && condenses == ((double)flue.Reading.Value > dewPoint)
        select Found("condensing", FormattableString.Invariant(
            $"Flue temperature{Labels.In(scope)} {ShownValue.Of(flue.Reading).Plain} is {(job.Plan.Appliance.IsCondensing!.Value ? "above" : "below")} the dew point {dewPoint:F0} {flue.Reading.UnitSymbol}, but the furnace {(job.Plan.Appliance.IsCondensing.Value ? "condenses" : "does not condense")} by its sheet."), flue);

    /// <summary>The gas flow of two stages by the meter against the square-root law of the manifold pressures, see <see cref="StageConsistency"/>.</summary>
    public static IEnumerable<ReviewFinding> InputAgainstManifold(ReviewedJob job)
    {
        if (All(job, "low", FieldId.MeterTime, FieldId.ManifoldPressure) is not [var lowTime, var lowPressure]
            || All(job, "high", FieldId.MeterTime, FieldId.ManifoldPressure) is not [var highTime, var highPressure]
            || new[] { lowTime, highTime, lowPressure, highPressure }.Any(fate => fate.Reading.Value <= 0))
        {
            yield break;
        }

        StageConsistency stages = StageConsistency.Of(1 / Input(lowTime, 0), 1 / Input(highTime, 1), Input(lowPressure, 2), Input(highPressure, 3));
        if (Math.Abs(stages.Difference.Value) > Math.Max(stages.Difference.ExpandedUncertainty, RatioTolerance))
        {
            yield return Found("input-against-manifold", FormattableString.Invariant(
                $"By the meter low fire is {stages.ClockedRatio.Value:P0} of high fire, by the manifold pressures {stages.PressureRatio.Value:P0}: a misread dial, another appliance running, or a wrong pressure."),
                lowTime, highTime, lowPressure, highPressure);
        }
    }

    public static IEnumerable<ReviewFinding> IdenticalStages(ReviewedJob job)
    {
        (ReadingFate Low, ReadingFate High)[] equal =
        [
            .. from fieldId in DiffersByStage
               let both = (Low: job.Counting(fieldId, "low"), High: job.Counting(fieldId, "high"))
               where both.Low is not null && both.High is not null && both.Low.Reading.Value != 0 && both.Low.Reading.Value == both.High.Reading.Value
               select (both.Low, both.High),
        ];
        return equal.Length < FewestEqual ? [] : [Found("identical-stages",
            $"Low and high fire have the same readings: {string.Join(", ", equal.Select(pair => $"{Fields.Find(pair.Low.Reading.Key.FieldId)!.Label} {ShownValue.Of(pair.Low.Reading).Plain}"))}. Was the stage changed?",
            [.. equal.SelectMany(pair => new[] { pair.Low, pair.High })])];
    }

    /// <summary>Little air makes a large rise. A duct that resists more than it may lets little air through, so the rise cannot be too small there.</summary>
    public static IEnumerable<ReviewFinding> RiseAgainstAir(ReviewedJob job)
    {
        foreach (string scope in job.Facts.Results.Select(fate => fate.Scope).Distinct())
        {
            ResultFate? rise = job.Facts.Results.LastOrDefault(fate => fate.Scope == scope && fate.Result is { Id: ResultId.TemperatureRise, Value: not null });
            ResultFate? resistance = job.Facts.Results.LastOrDefault(fate => fate.Scope == scope && fate.Result is { Id: ResultId.ExternalStatic, Value: not null });
            if (rise is null || resistance is null)
            {
                continue;
            }

            if (resistance.Result.Value <= 0)
            {
                yield return Found("rise-against-air", $"External static{Labels.In(scope)} {ResultWords.Of(resistance.Result)} means that no air is moved, but the air is warmed by {ResultWords.Of(rise.Result)}: static pressures may be exchanged.");
            }
            else if (rise.Result.Verdict is Verdict.Fail or Verdict.ConditionalFail && rise.Result.Value < (double?)rise.Result.Limit?.Lower
                && resistance.Result.Verdict is Verdict.Fail or Verdict.ConditionalFail && resistance.Result.Value > (double?)resistance.Result.Limit?.Upper)
            {
                yield return Found("rise-against-air", $"Temperature rise{Labels.In(scope)} {ResultWords.Of(rise.Result)} is too small and external static {ResultWords.Of(resistance.Result)} too large: little air makes a large rise.");
            }
        }
    }

    static ReviewFinding Found(string rule, string text, params ReadingFate[] readings) => new(rule, Weight.Doubt, text)
    {
        At = readings.FirstOrDefault()?.At,
        StepId = readings.FirstOrDefault()?.StepId ?? "",
        Clips = ReviewedJob.Clips(readings.Select(fate => fate.Reading.Evidence)),
    };

    /// <summary>The readings of these fields that count in a stage; empty where one is missing.</summary>
    static ImmutableArray<ReadingFate> All(ReviewedJob job, string scope, params string[] fieldIds)
    {
        ReadingFate?[] fates = [.. fieldIds.Select(id => job.Counting(id, scope))];
        return fates.Contains(null) ? [] : [.. fates.OfType<ReadingFate>()];
    }

    static double Si(ReadingFate fate) => (Unit.Find(fate.Reading.UnitSymbol) ?? Fields.Find(fate.Reading.Key.FieldId)!.Unit).ToSi(fate.Reading.Value);

    static Uncertain Input(ReadingFate fate, int number) =>
        Uncertain.Input((double)fate.Reading.Value, (double)(fate.Reading.ExpandedUncertainty ?? 0) / Estimate.CoverageFactor, number);
}
