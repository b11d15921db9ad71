using System.Globalization;
using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Derivations;
using HandsFreeStartup.Calculations.Emissions;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Calculations.Water;

namespace HandsFreeStartup.Calculations.Tests.Outside;

/// <summary>How each check of the table asks the product. Nothing here knows an expected value.</summary>
static class OutsideChecks
{
    static readonly Dictionary<string, Func<string[], double>> All = new()
    {
        ["gross_heat"] = a => Pure(a[0]).MolarHeatingValue(Temperature.FromCelsius(N(a[1])), gross: true) / 1000,
        ["vaporisation"] = a => (Species.Water.Heat.Enthalpy(N(a[0]) + 273.15) - LiquidWater.Heat.Enthalpy(N(a[0]) + 273.15)) / 1000,
        ["saturation_mpa"] = a => SaturationLine.Pressure(N(a[0])) / 1e6,
        ["saturation_kpa"] = a => SaturationLine.Pressure(N(a[0])) / 1e3,
        ["saturation_pa"] = a => SaturationLine.Pressure(N(a[0]) + 273.15),
        ["saturation_kelvin"] = a => SaturationLine.Temperature(N(a[0]) * 1e6),
        ["saturated_humidity_ratio"] = a => MoistAir.At(Temperature.FromCelsius(N(a[0])), new(1), AbsolutePressure.StandardAtmosphere).HumidityRatio,
        ["dry_air_volume"] = a => 1 / MoistAir.At(Temperature.FromCelsius(N(a[0])), new(0), AbsolutePressure.StandardAtmosphere).Density,
        ["air_water_fraction"] = a => CombustionEvaluation.Of(
            new(Fraction.FromPercent(7), Fraction.FromPartsPerMillion(10), Temperature.FromCelsius(150), Temperature.FromCelsius(N(a[1])))
            {
                AirRelativeHumidity = Fraction.FromPercent(N(a[0])),
                Pressure = AbsolutePressure.FromPascals(N(a[2])),
            },
            Fuel.NaturalGas).AirWaterFraction.Value,
        ["humidity_ratio"] = a => Air(a).HumidityRatio,
        ["moist_density"] = a => Air(a).Density,
        ["steam_heat"] = a => (Species.Water.Heat.Enthalpy(N(a[0])) - Species.Water.Heat.Enthalpy(298.15)) / 1000,
        ["air_heat"] = a => (DryHeat(N(a[0])) - DryHeat(298.15)) / 1000,
        ["molar_mass"] = a => Species.Find(a[0])!.MolarMass * 1000,
        ["normal_above"] = a => NormalDistribution.Above(N(a[0])),
        ["t_quantile"] = a => StudentDistribution.Quantile((1 + N(a[0]) / 100) / 2, int.Parse(a[1], CultureInfo.InvariantCulture)),
        ["unit"] = a => OneUnit(a[0]),
        ["carbon_per_heat_pure"] = a => CarbonDioxideKilogramsPerMillionBtu(Pure(a[0])),
        ["u"] = StandardUncertainty,
        ["isa_pa"] = a => StandardAtmosphere.Pressure(Altitude.FromMetres(N(a[0]))).Pascals,
        ["isa_celsius"] = a => StandardAtmosphere.Temperature(Altitude.FromMetres(N(a[0]))).Celsius,
        ["isa_psi"] = a => StandardAtmosphere.Pressure(Altitude.FromFeet(N(a[0]))).Psi,
        ["isa_fahrenheit"] = a => StandardAtmosphere.Temperature(Altitude.FromFeet(N(a[0]))).Fahrenheit,
        ["carbon_per_heat"] = a => CarbonDioxideKilogramsPerMillionBtu(Preset(a[0])),
        ["default_heating_value"] = _ => Fuel.NaturalGas.VolumetricHeatingValue(Temperature.FromFahrenheit(60), AbsolutePressure.FromPsi(14.73), gross: true).BtuPerCubicFoot / 1000,
        ["nox_k"] = _ => Pollutant.NitrogenOxides.PoundsPerCubicFootPerPpm * 1e7,
        ["nox_largest_oxygen"] = _ => EmissionRate.LargestOxygenPercent,
        ["nox_pair"] = a => EmissionRate.FromDryOxygen(Pollutant.NitrogenOxides, FuelFFactors.NaturalGas.Dry, N(a[1]), 3).Value * EmissionRate.NanogramsPerJoule / N(a[0]),
        ["fd"] = a => FuelFFactors.Of(Preset(a[0])).Dry,
        ["fc"] = a => FuelFFactors.Of(Preset(a[0])).CarbonDioxide,
        ["fo_national"] = _ => FuelFFactors.NaturalGas.FuelFactor,
        ["fo_low"] = a => FuelFactor.AcceptRange(Preset(a[0]))!.Lower!.Value,
        ["fo_high"] = a => FuelFactor.AcceptRange(Preset(a[0]))!.Upper!.Value,
        ["siegert_a"] = a => Law(a[0]).A2,
        ["siegert_b"] = a => Law(a[0]).B,
        ["german_air"] = _ => OxygenCorrection.Germany,
        ["orifice"] = a => Orifice.Flow(Length.FromInches(N(a[0])), Pressure.FromInchesOfWater(N(a[1])), N(a[2])).CubicFeetPerHour,
        ["clock"] = a => MeterClocking.Flow(Volume.FromCubicFeet(N(a[0])), 1, TimeSpan.FromSeconds(N(a[1]))).CubicFeetPerHour,
        ["air_free"] = a => AirFree.FromOxygen(N(a[0]), N(a[1])).Value,
        ["derate"] = a => AltitudeDerate.CodeDefault.Factor(Altitude.FromFeet(N(a[0]))),
        ["trade_factor"] = _ => AirFlow.TradeFactor,
        ["method3b"] = a => ExcessAirByMethod3B.Percent(N(a[0]), N(a[1]), N(a[2])).Value,
        ["class_oxygen"] = _ => FlueUncertainty.OfErrorLimits(new(0), new(400)).Oxygen.Percent * Math.Sqrt(3),
        ["class_monoxide"] = a => FlueUncertainty.OfErrorLimits(Fraction.FromPartsPerMillion(N(a[0])), new(400)).CarbonMonoxide.PartsPerMillion * Math.Sqrt(3),
    };

    /// <summary>What the product says to a check.</summary>
    public static double Ask(string check)
    {
        string[] words = check.Split(' ');
        return All[words[0]](words[1..]);
    }

    static MoistAir Air(string[] a) => MoistAir.At(Temperature.FromCelsius(N(a[0])), Fraction.FromPercent(N(a[1])), AbsolutePressure.FromPascals(N(a[2])));

    // Air with its argon, J/kg: what is checked is the heat of the gases, not the convention that counts argon as nitrogen.
    static double DryHeat(double kelvin) =>
        (0.20946 * Species.Oxygen.Heat.Enthalpy(kelvin) + 0.78084 * Species.Nitrogen.Heat.Enthalpy(kelvin)
            + 0.00934 * Species.Argon.Heat.Enthalpy(kelvin) + 0.0004 * Species.CarbonDioxide.Heat.Enthalpy(kelvin)) / DryAir.MolarMass;

    static double OneUnit(string unit) => unit switch
    {
        "in_wc" => Pressure.FromInchesOfWater(1).Pascals,
        "in_hg" => AbsolutePressure.FromInchesOfMercury(1).Pascals,
        "psi" => Pressure.FromPsi(1).Pascals,
        "btu" => HeatRate.JoulesPerBtu,
        "ft" => Length.FromFeet(1).Metres,
        "in" => Length.FromInches(1).Metres,
        _ => Volume.FromCubicFeet(1).CubicMetres,
    };

    /// <summary>"co_air_free 0.5 flue_co=43/11.5 oxygen=6.4/0.17": result, correlation of the analyzer's cells, inputs with their u.</summary>
    static double StandardUncertainty(string[] a) => Explanation.Find(a[0])!.Derive(new(a[2..].Select(input => input.Split('=', '/'))
        .Select(input => KeyValuePair.Create(input[0], new Given(N(input[1]), N(input[2]), "said"))))
    { AnalyzerCorrelation = N(a[1]) })!.Result.StandardUncertainty;

    static double CarbonDioxideKilogramsPerMillionBtu(Fuel fuel) =>
        fuel.Atoms.Carbon * Species.CarbonDioxide.MolarMass / fuel.HigherHeatingValue * 1e6 * HeatRate.JoulesPerBtu;

    static Siegert Law(string fuel) => fuel switch
    {
        "NaturalGas" => Siegert.NaturalGas,
        "LiquefiedGas" => Siegert.LiquefiedGas,
        "HeatingOil" => Siegert.HeatingOil,
        _ => Siegert.CokeOvenGas,
    };

    static Fuel Pure(string symbol) => Fuel.FromComposition(symbol, symbol, new FuelComponent(Species.Find(symbol)!, 1));

    static Fuel Preset(string id) => Fuel.Find(id)!;

    static double N(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
