using System.CommandLine;
using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Compute;

/// <summary>The command <c>compute reading</c>: one combustion reading as a sheet for people.</summary>
static class ReadingCommand
{
    static readonly Option<double?> Oxygen = NumberOption.Of("--oxygen", 0, 20.9);
    static readonly Option<double?> CarbonDioxide = NumberOption.Of("--co2", 0, 40);
    static readonly Option<double?> Monoxide = NumberOption.Of("--co", 0, 100_000);
    static readonly Option<string> Flue = new("--flue") { Description = "Flue temperature with its unit: 328F or 164C.", HelpName = "TEMPERATURE", Required = true };
    static readonly Option<string> Air = new("--air") { Description = "Temperature of the combustion air with its unit: 70F or 21C.", HelpName = "TEMPERATURE", Required = true };
    static readonly Option<string> FuelName = new("--fuel") { Description = $"{string.Join(", ", Fuel.Presets.Select(fuel => fuel.Id))}, or one of --fuels.", HelpName = "FUEL", Required = true };
    static readonly Option<string?> Fuels = new("--fuels") { Description = "CSV file with fuels of your own: fuel, component, mole_fraction.", HelpName = "FILE" };
    static readonly Option<double?> Humidity = NumberOption.Of("--humidity", 0, 100);
    static readonly Option<string?> Height = new("--altitude") { Description = "Altitude with its unit: 1500ft or 460m; sea level if left out.", HelpName = "ALTITUDE" };

    public static Command Build()
    {
        Describe(Oxygen, "PERCENT", "Dry O2, %.");
        Describe(CarbonDioxide, "PERCENT", "Dry CO2, %, instead of the O2 or to check it.");
        Describe(Monoxide, "PPM", "Dry CO, ppm.");
        Describe(Humidity, "PERCENT", "Relative humidity of the combustion air, %; half saturated is assumed, and said, if left out.");
        Monoxide.Required = true;
        Command command = new("reading", "One combustion reading as a sheet, with uncertainties.")
        {
            Oxygen, CarbonDioxide, Monoxide, Flue, Air, FuelName, Fuels, Humidity, Height,
        };
        command.SetAction(parsed =>
        {
            (FlueReading reading, Fuel fuel) = Read(parsed);
            CombustionEvaluation evaluation = CombustionEvaluation.Of(reading, fuel);
            if (evaluation.Refusal is { } refusal)
            {
                throw new WrongUseException(refusal);
            }
            double? carbonDioxide = parsed.GetValue(Oxygen) is null ? null : parsed.GetValue(CarbonDioxide);
            parsed.InvocationConfiguration.Output.Write(ReadingSheet.Of(reading, fuel, evaluation, carbonDioxide));
            return ExitCode.Done;
        });
        return command;
    }

    static void Describe(Option option, string value, string description) => (option.HelpName, option.Description) = (value, description);

    static (FlueReading, Fuel) Read(ParseResult parsed)
    {
        string name = parsed.GetValue(FuelName)!;
        Fuel fuel = FuelBook.Open(parsed.GetValue(Fuels)).Find(name) ?? throw new WrongUseException($"'{name}' is no known fuel; give one of {string.Join(", ", Fuel.Presets.Select(known => known.Id))}, or its composition with --fuels.");
        Fraction monoxide = Fraction.FromPartsPerMillion(parsed.GetValue(Monoxide)!.Value);
        Temperature flue = TemperatureOf("--flue", parsed.GetValue(Flue)!);
        FlueReading reading = new(OxygenOf(parsed, fuel, monoxide), monoxide, flue, TemperatureOf("--air", parsed.GetValue(Air)!))
        {
            AirRelativeHumidity = parsed.GetValue(Humidity) is { } humidity ? Fraction.FromPercent(humidity) : FlueReading.AssumedHumidity,
            Pressure = StandardAtmosphere.Pressure(AltitudeOf(parsed.GetValue(Height))),
            Uncertainty = FlueUncertainty.OfErrorLimits(monoxide, flue) with
            {
                AirRelativeHumidity = parsed.GetValue(Humidity) is null ? FlueReading.AssumedHumidityUncertainty : default,
            },
        };
        return (reading, fuel);
    }

    static Fraction OxygenOf(ParseResult parsed, Fuel fuel, Fraction monoxide) => (parsed.GetValue(Oxygen), parsed.GetValue(CarbonDioxide)) switch
    {
        ({ } oxygen, _) => Fraction.FromPercent(oxygen),
        (null, > 0 and { } carbonDioxide) when fuel.Atoms.Carbon > 0 =>
            new(FlueGas.OxygenFromCarbonDioxide(fuel, DryAir.Conventional, carbonDioxide / 100, monoxide.Value).Value),
        _ => throw new WrongUseException("Give the O2 with --oxygen, or a CO2 above 0 % with --co2 for a fuel with carbon."),
    };

    /// <summary>As far as the gas data reach.</summary>
    static Temperature TemperatureOf(string option, string text) => Split(option, text, "328F") switch
    {
        ( >= -99 and <= 1338 and var value, "F") => Temperature.FromFahrenheit(value),
        ( >= -73 and <= 726 and var value, "C") => Temperature.FromCelsius(value),
        (_, "F" or "C") => throw new WrongUseException($"{option}: '{text}' is out of range; give -99F to 1338F, or -73C to 726C."),
        _ => throw new WrongUseException($"{option}: '{text}' is no temperature; write it with its unit, as 328F or 164C."),
    };

    static Altitude AltitudeOf(string? text) => text is null ? Altitude.SeaLevel : Split("--altitude", text, "1500ft") switch
    {
        ( >= -1000 and <= 36000 and var value, "FT") => Altitude.FromFeet(value),
        ( >= -300 and <= 11000 and var value, "M") => Altitude.FromMetres(value),
        _ => throw new WrongUseException($"--altitude: '{text}' is no altitude up to 11000 m; write it with its unit, as 1500ft or 460m."),
    };

    static (double, string) Split(string option, string text, string example)
    {
        string trimmed = text.Replace("°", "", StringComparison.Ordinal).Trim();
        int unit = trimmed.Length;
        while (unit > 0 && char.IsLetter(trimmed[unit - 1]))
        {
            unit--;
        }

        return TypedNumber.ReadDouble(trimmed.AsSpan(0, unit), out string reason, example) is { } value
            ? (value, trimmed[unit..].ToUpperInvariant())
            : throw new WrongUseException($"{option}: {reason}.");
    }
}
