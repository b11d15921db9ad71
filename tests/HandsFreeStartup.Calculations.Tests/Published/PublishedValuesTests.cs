using System.Globalization;
using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Emissions;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Tests.Support;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Calculations.Water;
using Row = HandsFreeStartup.Calculations.Tests.Support.ReferenceTable.Row;

namespace HandsFreeStartup.Calculations.Tests.Published;

/// <summary>
/// Every row of Reference/published_values.csv. Its column source says: seen = document read, second = reprint read, memory = value from memory,
/// calculated = earlier calculation by other code. The band is the one stated there.
/// </summary>
public sealed class PublishedValuesTests
{
    /// <summary>One case a row, named by it: "item [source]".</summary>
    public static TheoryData<string> Items() =>
        [.. ReferenceTable.Rows("published_values").Select(row => $"{row.Text("item")} [{row.Text("source")}]")];

    [Theory]
    [MemberData(nameof(Items))]
    public void A_published_value_is_reproduced(string item)
    {
        Row row = ReferenceTable.Rows("published_values").Single(row => item == $"{row.Text("item")} [{row.Text("source")}]");
        double difference = Math.Abs(Ours(row.Text("item")) - row.Number("published"));

        // One value from memory is known to be off by 0.1 %: the table says so, and so do we.
        Assert.Equal(row.Text("agrees") == "1", difference <= row.Number("band"));
    }

    static double Ours(string item) =>
        item.StartsWith("gas analysis: ") ? GasAnalysis(item)
        : item.StartsWith("utility gas ") ? UtilityGas(item)
        : item.StartsWith("textbook ") ? Textbook(item)
        : item.StartsWith("golden ") ? Golden(item)
        : item.StartsWith("enthalpy increment ") ? EnthalpyIncrement(item)
        : item.StartsWith("ordinance loss ") ? NetLossOfOrdinanceRow(item)
        : item.StartsWith("Fd ") || item.StartsWith("Fc ") || item.StartsWith("Fo ") ? Factor(item)
        : item.Contains("saturation pressure") || item.StartsWith("dry share") ? Saturation(item)
        : item.EndsWith("psia ideal") || item.EndsWith(" 25 C") || item.EndsWith(" 15 C") || item.StartsWith("typical natural gas") ? HeatingValues(item)
        : item.StartsWith("altitude factor") || item.StartsWith("standard air") || item.StartsWith("sensible factor") || item.StartsWith("meter factor") ? Air(item)
        : item.StartsWith("CO air-free") || item.StartsWith("same: ") || item.Contains("probability") ? Uncertainty(item)
        : item.StartsWith("excess air") ? ExcessAir(item)
        : item.StartsWith("maximum condensate") ? MaximumCondensate()
        : Stoichiometric(item);

    static double GasAnalysis(string item)
    {
        Fuel gas = AnalysedGases.Worked;
        (Temperature temperature, AbsolutePressure pressure) = MeterCorrection.Base60F1473;
        return item["gas analysis: ".Length..] switch
        {
            "molar mass g/mol" => gas.MolarMass * 1000,
            "ideal relative density" => gas.RelativeDensity,
            "real relative density" => RealGas.RelativeDensity(gas, temperature, pressure),
            "compressibility factor" => RealGas.CompressibilityFactor(gas, temperature, pressure),
            "gross Btu/ft3 real, 14.73 psia" => RealGas.HeatingValue(gas, temperature, pressure, gross: true).BtuPerCubicFoot,
            "net Btu/ft3 real, 14.73 psia" => RealGas.HeatingValue(gas, temperature, pressure, gross: false).BtuPerCubicFoot,
            _ => WobbeIndex.Real(gas, temperature, pressure).BtuPerCubicFoot,
        };
    }

    static double UtilityGas(string item)
    {
        Fuel gas = item.Contains(" A:") ? AnalysedGases.UtilityA : AnalysedGases.UtilityB;
        (Temperature temperature, AbsolutePressure pressure) = MeterCorrection.Base15C;
        HeatingValue gross = RealGas.HeatingValue(gas, temperature, pressure, gross: true);
        return item.Contains("relative density") ? gas.RelativeDensity
            : item.Contains("Wobbe") ? WobbeIndex.Of(gross, gas.RelativeDensity).MegajoulesPerCubicMetre
            : gross.MegajoulesPerCubicMetre;
    }

    static double Textbook(string item)
    {
        bool first = item.StartsWith("textbook a");
        DryAnalysis analysis = first
            ? DryAnalysis.Of(AnalysedGases.TextbookA, 0.0920, 0.0064, 0.0384, DryAnalysis.TextbookNitrogenPerOxygen)
            : DryAnalysis.Of(ReferenceFuels.Get("n_butane"), 0.110, 0.010, 0.035, DryAnalysis.TextbookNitrogenPerOxygen);
        AbsolutePressure pressure = first ? AbsolutePressure.FromPsi(14.7) : AbsolutePressure.FromPascals(1e5);
        Temperature dewPoint = Temperature.FromKelvin(SaturationLine.Temperature(analysis.WaterFraction * pressure.Pascals));
        return item.Contains("theoretical air") ? 100 * analysis.TheoreticalAirRatio
            : item.Contains("fraction") ? analysis.WaterFraction
            : first ? dewPoint.Fahrenheit : dewPoint.Celsius;
    }

    static double Golden(string item)
    {
        string[] words = item.Split(' ', ':');
        int oxygen = Array.IndexOf(words, "O2");
        int flue = Array.IndexOf(words, "flue");
        int air = Array.IndexOf(words, "air");
        CombustionEvaluation evaluation = CombustionEvaluation.Of(
            Reading(Number(words[oxygen + 1]), Number(words[flue + 1]), air < 0 ? 20 : Number(words[air + 1])), ReferenceFuels.Get(words[oxygen - 1]));
        Fuel fuel = ReferenceFuels.Get(words[oxygen - 1]);
        return words[^1] switch
        {
            "lambda" => evaluation.Lambda.Value,
            "carbon_dioxide_dry_percent" => evaluation.CarbonDioxidePercent.Value,
            "dew_point_C" => evaluation.DewPointCelsius.Value,
            "sensible_loss_above_air_percent_HHV" => evaluation.SensibleLossPercent.Value,
            "latent_loss_percent_HHV" => evaluation.LatentLossPercent.Value,
            "efficiency_above_air_percent_HHV" => evaluation.EfficiencyPercent.Value,
            "efficiency_above_air_percent_LHV" => evaluation.EfficiencyLowerPercent.Value,
            "condensate_fraction_of_flue_water" => evaluation.CondensateFraction.Value,
            "latent_recovered_25C_percent_HHV" => evaluation.LatentRecoveredPercent.Value,
            "efficiency_hot_condensate_percent_HHV" => evaluation.EfficiencyHotCondensatePercent.Value,
            "efficiency_hot_condensate_percent_LHV" => evaluation.EfficiencyHotCondensatePercent.Value * fuel.HigherHeatingValue / fuel.LowerHeatingValue,
            string other => throw new InvalidOperationException(other),
        };
    }

    static double EnthalpyIncrement(string item)
    {
        string[] words = item.Split(' ');
        NasaPolynomial heat = words[2] == "H2O" ? Species.Water.Heat : Species.Find(words[2])!.Heat;
        return (heat.Enthalpy(Number(words[3])) - heat.Enthalpy(298.15)) / 1000;
    }

    static double NetLossOfOrdinanceRow(string item)
    {
        string[] words = item.Split(' ', ',');
        Fuel fuel = ReferenceFuels.Get(item.Contains("LPG") ? "propane" : "typical_natural_gas");
        CombustionEvaluation evaluation = CombustionEvaluation.Of(Reading(Number(words[Array.IndexOf(words, "O2") + 1]), Number(words[^1]), 20), fuel);
        return evaluation.SensibleLossPercent.Value * fuel.HigherHeatingValue / fuel.LowerHeatingValue;
    }

    static double Factor(string item)
    {
        Fuel fuel = ReferenceFuels.Get(item.Contains("methane") ? "methane" : item.Contains("propane") ? "propane" : item.Contains("butane") ? "n_butane" : "typical_natural_gas");
        FuelFFactors factors = FuelFFactors.Of(fuel);
        return item.StartsWith("Fd") ? factors.Dry : item.StartsWith("Fc") ? factors.CarbonDioxide : FoAtSixPercent(fuel);
    }

    static double FoAtSixPercent(Fuel fuel)
    {
        FlueGas flue = FlueGas.FromOxygen(fuel, DryAir.WithTradeOxygen, 0.06, 0, 0);
        return FuelFactor.Of(6, 100 * (flue.CarbonDioxide / flue.Dry), 0).Value;
    }

    static double Saturation(string item)
    {
        double psiAt60F = SaturationLine.Pressure(Temperature.FromFahrenheit(60).Kelvin) / Pressure.PascalsPerPsi;
        string[] words = item.Split(' ');
        return item.StartsWith("water saturation") ? psiAt60F
            : item.StartsWith("dry share") ? 1 - psiAt60F / 14.7346
            : item.StartsWith("IF97") ? SaturationLine.Pressure(Number(words[^2])) / 1e6
            : SaturationLine.Pressure(Number(words[^2]) + 273.15);
    }

    static double HeatingValues(string item)
    {
        string[] words = item.Split(' ');
        bool net = words.Contains("net");
        AbsolutePressure standard = AbsolutePressure.FromPsi(14.696);
        Temperature sixty = Temperature.FromFahrenheit(60);
        if (item.StartsWith("typical natural gas"))
        {
            Fuel gas = ReferenceFuels.Get("typical_natural_gas");
            return item.Contains("molar mass") ? gas.MolarMass * 1000
                : item.Contains("relative density") ? gas.RelativeDensity
                : gas.VolumetricHeatingValue(sixty, standard, !net).BtuPerCubicFoot;
        }
        Fuel pure = ReferenceFuels.Get(words[0]);
        return item.EndsWith("ideal") ? pure.VolumetricHeatingValue(sixty, standard, !net).BtuPerCubicFoot
            : pure.MolarHeatingValue(Temperature.FromCelsius(Number(words[^2])), gross: true) / 1000;
    }

    static double Air(string item)
    {
        MoistAir dry70 = MoistAir.At(Temperature.FromFahrenheit(70), new(0), AbsolutePressure.StandardAtmosphere);
        MoistAir dry20 = MoistAir.At(Temperature.FromCelsius(20), new(0), AbsolutePressure.StandardAtmosphere);
        AbsolutePressure meter = AbsolutePressure.FromInchesOfMercury(29.0) + Pressure.FromInchesOfWater(7);
        return item.StartsWith("standard air") ? dry70.Density / 0.45359237 * Volume.CubicMetresPerCubicFoot
            : item.StartsWith("sensible factor") ? dry20.SensibleFactor
            : item.StartsWith("meter factor") ? MeterCorrection.RealFactor(ReferenceFuels.Get("methane"), meter, Temperature.FromFahrenheit(70), (Temperature.FromFahrenheit(60), AbsolutePressure.FromInchesOfMercury(30)))
            : StandardAtmosphere.PressureRatio(Altitude.FromFeet(Number(item.Split(' ')[2])));
    }

    static double Uncertainty(string item)
    {
        if (item.Contains("probability"))
        {
            string measured = item[(item.IndexOf("measured ", StringComparison.Ordinal) + 9)..].Split(',')[0];
            return Conformity.Of(new(Number(measured), 16.3), new(null, 400, "example", IsSafety: true))!.Value.Nonconforming;
        }
        Uncertain airFree = AirFree.FromOxygen(Uncertain.Input(100, 20, 0), Uncertain.Input(8, 0.3, 1));
        return item.Contains("Monte Carlo")
            ? MonteCarlo.Propagate(x => AirFree.OfDraw(x[0], x[1]), [new(100, 20, Distribution.Normal), new(8, 0.3, Distribution.Normal)], 3, 200_000).StandardDeviation
            : item.Contains("uncertainty") ? airFree.StandardUncertainty : airFree.Value;
    }

    static double ExcessAir(string item)
    {
        string words = item[(item.IndexOf("O2 ", StringComparison.Ordinal) + 3)..].Split(' ')[0];
        return CombustionEvaluation.Of(Reading(Number(words), 180, 20), ReferenceFuels.Get("methane"), DryAir.WithTradeOxygen).ExcessAirPercent.Value;
    }

    static double MaximumCondensate()
    {
        Fuel gas = ReferenceFuels.Get("typical_natural_gas");
        return Stoichiometry.Of(gas, DryAir.Conventional).Water * Species.Water.MolarMass / gas.HigherHeatingValue * 1e5 * HeatRate.JoulesPerBtu;
    }

    static double Stoichiometric(string item)
    {
        int space = item.IndexOf(' ');
        Stoichiometry theory = Stoichiometry.Of(ReferenceFuels.Get(item[..space]), DryAir.Conventional);
        return item[(space + 1)..] switch
        {
            "theoretical air" => theory.DryAir,
            "dry flue" => theory.DryFlue,
            "wet flue" => theory.WetFlue,
            "CO2 maximum %" => 100 * theory.CarbonDioxideMaximum,
            "stoichiometric dew point C" => SaturationLine.Temperature(theory.Water / theory.WetFlue * 101325) - 273.15,
            string other => throw new InvalidOperationException(other),
        };
    }

    static FlueReading Reading(double oxygenPercent, double flueCelsius, double airCelsius) => new(
        Fraction.FromPercent(oxygenPercent), default, Temperature.FromCelsius(flueCelsius), Temperature.FromCelsius(airCelsius));

    static double Number(string text) => double.Parse(text.TrimEnd(','), CultureInfo.InvariantCulture);
}
