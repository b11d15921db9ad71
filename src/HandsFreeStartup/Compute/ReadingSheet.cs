using System.Globalization;
using System.Text;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Compute;

/// <summary>One combustion reading as text: what was read, what it means, how sure that is.</summary>
static class ReadingSheet
{
    /// <summary>The sheet.</summary>
    /// <param name="reading">As read, with uncertainties.</param>
    /// <param name="fuel">What burns.</param>
    /// <param name="evaluation">What it means.</param>
    /// <param name="carbonDioxidePercent">A CO2 reading to check the others with, or null.</param>
    public static string Of(in FlueReading reading, Fuel fuel, in CombustionEvaluation evaluation, double? carbonDioxidePercent)
    {
        StringBuilder sheet = new();
        Text(sheet, $"Combustion reading, {fuel.Name}");
        Text(sheet, "");
        Text(sheet, "Read                                         value   ± U (k = 2)");
        FlueUncertainty u = reading.Uncertainty;
        Line(sheet, "O2, dry", "%", new(reading.Oxygen.Percent, u.Oxygen.Percent));
        Line(sheet, "CO, dry", "ppm", new(reading.CarbonMonoxide.PartsPerMillion, u.CarbonMonoxide.PartsPerMillion));
        Line(sheet, "Flue temperature", "°F", new(reading.FlueTemperature.Fahrenheit, u.FlueTemperature.Fahrenheit));
        Line(sheet, "Combustion air", "°F", new(reading.AirTemperature.Fahrenheit, u.AirTemperature.Fahrenheit));
        Line(sheet, "Humidity of the combustion air", "%", new(reading.AirRelativeHumidity.Percent, 0));
        Text(sheet, u.AirRelativeHumidity.Value > 0
            ? "  ASSUMED, not measured: anything between dry and saturated is in the uncertainties below; give it with --humidity"
            : "  as given");
        if (reading.FlueTemperature.Kelvin < reading.AirTemperature.Kelvin)
        {
            Text(sheet, "LOOK AGAIN: the flue is colder than the combustion air, as hardly any furnace makes it. Were the two exchanged, or is the probe not in the flue? What is worked out below rests on it.");
        }
        Text(sheet, "");
        Text(sheet, "Worked out                                   value   ± U (k = 2)");
        Results(sheet, evaluation);
        AirFreeLines(sheet, reading, evaluation);
        SecondOpinion(sheet, reading, fuel);
        Consistency(sheet, reading, fuel, carbonDioxidePercent);
        Text(sheet, "");
        Text(sheet, "Efficiency and losses are of this moment, in % of the higher heating value; jacket, cycling and blower are not in them. None is seasonal.");
        Text(sheet, "Uncertainties: error limits of EN 50379-2 (value from memory, low confidence) as rectangular distributions; the instrument's certificate comes first.");
        Text(sheet, "Local codes, the maker's instructions and licensed practice decide.");
        return sheet.ToString();
    }

    static void Results(StringBuilder sheet, in CombustionEvaluation evaluation)
    {
        Line(sheet, "Excess air", "%", evaluation.ExcessAirPercent);
        Line(sheet, "CO2, dry, that goes with the O2", "%", evaluation.CarbonDioxidePercent);
        Line(sheet, "Water dew point of the flue gas", "°F", InFahrenheit(evaluation.DewPointCelsius));
        Line(sheet, "Sensible loss above combustion air", "%", evaluation.SensibleLossPercent);
        Line(sheet, "Latent loss", "%", evaluation.LatentLossPercent);
        Line(sheet, "Loss by CO", "%", evaluation.CarbonMonoxideLossPercent);
        if (evaluation.IsCondensing)
        {
            Line(sheet, "Condensate, at most, of the flue's water", "%", new(100 * evaluation.CondensateFraction.Value, 100 * evaluation.CondensateFraction.StandardUncertainty));
            Line(sheet, "Latent heat recovered, at most", "%", evaluation.LatentRecoveredPercent);
        }
        Line(sheet, "Efficiency above combustion air", "%", evaluation.EfficiencyPercent);
    }

    static void AirFreeLines(StringBuilder sheet, in FlueReading reading, in CombustionEvaluation evaluation)
    {
        if (evaluation.CarbonMonoxideAirFreePpm is not { } airFree)
        {
            Text(sheet, $"CO air-free: not stated above {AirFree.LargestOxygenPercent} % O2, where it says nothing.");
            return;
        }
        Line(sheet, "CO air-free", "ppm", airFree);
        PropagatedDistribution drawn = MonteCarlo.Propagate(
            x => AirFree.OfDraw(x[0], x[1]),
            [
                new(reading.CarbonMonoxide.PartsPerMillion, reading.Uncertainty.CarbonMonoxide.PartsPerMillion, Distribution.Rectangular),
                new(reading.Oxygen.Percent, reading.Uncertainty.Oxygen.Percent, Distribution.Rectangular),
            ], seed: 1, draws: 200_000);
        if (!FirstOrderValidity.Holds(airFree, drawn.Low, drawn.High))
        {
            (string low, int decimals) = Rounded(new(drawn.Low, airFree.StandardUncertainty));
            Text(sheet, $"  by Monte Carlo, since first order does not hold: {low} to {drawn.High.ToString($"F{decimals}", CultureInfo.InvariantCulture)} ppm in 95 % of cases");
        }
    }

    static void SecondOpinion(StringBuilder sheet, in FlueReading reading, Fuel fuel)
    {
        Siegert? formula = fuel.Id switch { "natural-gas" => Siegert.NaturalGas, "propane" => Siegert.LiquefiedGas, _ => null };
        bool condensing = reading.FlueTemperature.Celsius < 60;
        if (formula is { } siegert && !condensing)
        {
            FlueUncertainty u = reading.Uncertainty;
            Line(sheet, "Siegert loss, of the lower heating value", "%", siegert.LossPercent(
                Uncertain.Input(reading.Oxygen.Percent, u.Oxygen.Percent, 0),
                Uncertain.Input(reading.FlueTemperature.Celsius, u.FlueTemperature.Kelvin, 1),
                Uncertain.Input(reading.AirTemperature.Celsius, u.AirTemperature.Kelvin, 2)).Estimate);
        }
    }

    static void Consistency(StringBuilder sheet, in FlueReading reading, Fuel fuel, double? carbonDioxidePercent)
    {
        if (carbonDioxidePercent is not { } carbonDioxide || FuelFactor.AcceptRange(fuel) is not { } range)
        {
            return;
        }
        // CO2 has the same error limit as O2 in EN 50379-2 (value from memory, low confidence).
        Estimate factor = FuelFactor.Of(
            Uncertain.Input(reading.Oxygen.Percent, reading.Uncertainty.Oxygen.Percent, 0),
            Uncertain.Input(carbonDioxide, reading.Uncertainty.Oxygen.Percent, 1),
            Uncertain.Input(reading.CarbonMonoxide.Percent, reading.Uncertainty.CarbonMonoxide.Percent, 2)).Estimate;
        Line(sheet, "Fuel factor Fo", "", factor);
        Text(sheet, string.Create(CultureInfo.InvariantCulture, $"  accepted {range.Lower:0.000} to {range.Upper:0.000} ({range.Source}): {Said(Judge.Verdict(factor, range))}"));
    }

    static string Said(Verdict verdict) => verdict switch
    {
        Verdict.Pass => "O2, CO2 and fuel belong together",
        Verdict.ConditionalPass => "probably fits; measure again to be sure",
        Verdict.ConditionalFail => "probably does not fit; check fuel setting, cells and sample",
        Verdict.Fail => "does not fit; check fuel setting, cells and sample",
        _ => "cannot be told",
    };

    static Estimate InFahrenheit(Estimate celsius) => new(celsius.Value * 1.8 + 32, celsius.StandardUncertainty * 1.8);

    static void Line(StringBuilder sheet, string name, string unit, Estimate estimate)
    {
        (string value, int decimals) = Rounded(estimate);
        string expanded = estimate.StandardUncertainty == 0 ? "" : $"± {estimate.ExpandedUncertainty.ToString($"F{decimals}", CultureInfo.InvariantCulture)}";
        Text(sheet, $"{name,-42} {value,9} {unit,-4} {expanded}".TrimEnd());
    }

    // Only what is shown is rounded: the uncertainty to two digits, the value to the same place.
    static (string Value, int Decimals) Rounded(Estimate estimate)
    {
        double expanded = estimate.ExpandedUncertainty;
        int decimals = expanded > 0 ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(expanded)), 0, 6) : 2;
        return (estimate.Value.ToString($"F{decimals}", CultureInfo.InvariantCulture), decimals);
    }

    static void Text(StringBuilder sheet, string line) => sheet.Append(line).Append('\n');
}
