using System.Collections.Immutable;
using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Calculations.Water;

namespace HandsFreeStartup.Calculations.Derivations;

/// <summary>The flue gas of one mole of fuel, on paper.</summary>
sealed class FlueWork
{
    public const string Balance = "element balances of dry air with 20.95 % O2";

    /// <summary>What is taken where nobody measured the humidity: half saturated, anything between dry and saturated being possible.</summary>
    static readonly Given AssumedHumidity = new(
        100 * FlueReading.AssumedHumidity.Value, 100 * FlueReading.AssumedHumidityUncertainty.Value, "assumed, not measured", "50");

    readonly GivenInputs _given;

    public FlueWork(GivenInputs given)
    {
        _given = given;
        OxygenPercent = Sheet.Input("O2", "the O2", "%", given[FieldId.Oxygen]);
        Term ppm = Sheet.Input("CO", "the CO", "ppm", given[FieldId.FlueCo]);
        Sheet.Correlate("O2", "CO", given.AnalyzerCorrelation);
        Oxygen = Sheet.Step("o", "", OxygenPercent / 100);
        Monoxide = Sheet.Step("c", "", ppm / 1_000_000);
        Dry = Sheet.Step("D", "mol/mol", FlueGas.DryFormula(Fuel, Air, Oxygen, Monoxide));
        DryAirMoles = Sheet.Step("A", "mol/mol", FlueGas.AirFormula(Air, Inert, Dry, Oxygen * Dry));
    }

    /// <summary>What the state of the combustion air needs.</summary>
    public static ImmutableArray<NeededInput> OfAir { get; } =
        [new(FieldId.AirTemperature, "°F"), new("air_humidity", "%", AssumedHumidity), new("altitude", "ft", new(0, 0, "assumed", "0"))];

    public static DryAir Air => DryAir.Conventional;

    public Worksheet Sheet { get; } = new();

    public Fuel Fuel => _given.Fuel;

    public Term OxygenPercent { get; }

    public Term Oxygen { get; }

    public Term Monoxide { get; }

    public Term Dry { get; }

    public Term DryAirMoles { get; }

    /// <summary>Whether a flue gas like this can exist.</summary>
    public bool IsPossible => _given[FieldId.Oxygen].Value >= 0 && _given[FieldId.Oxygen].Value < AirFree.AirOxygenPercent && _given[FieldId.FlueCo].Value >= 0
        && Fuel.Atoms.Carbon - Monoxide.Value.Value * Dry.Value.Value >= 0 && Possible(FieldId.FlueTemperature) && Possible(FieldId.AirTemperature);

    double Inert => Fuel.Atoms.Carbon + Fuel.Atoms.Nitrogen / 2 + Fuel.Atoms.Argon;

    public Term ExcessAir()
    {
        Term theory = Sheet.Lookup("A0", "dry air for complete combustion", "mol/mol", Stoichiometry.Of(Fuel, Air).DryAir, $"composition of {Fuel.Name}");
        return 100 * (DryAirMoles / theory - 1);
    }

    public Term CarbonDioxide() => Sheet.Step("nCO2", "mol/mol", Sheet.Lookup("C", "carbon of the fuel", "mol/mol", Fuel.Atoms.Carbon, $"composition of {Fuel.Name}") - Monoxide * Dry);

    public Term CarbonDioxidePercent() => 100 * (CarbonDioxide() / Dry);

    public Term Fahrenheit(string name, string symbol, string words) =>
        Sheet.Input(symbol, words, "°F", _given[name]);

    public static Uncertain Kelvin(in Term fahrenheit) => (fahrenheit.Value + Temperature.FahrenheitZeroRankine) / 1.8;

    public Term Pressure() => Sheet.Lookup("p", "pressure of the standard atmosphere", "Pa",
        StandardAtmosphere.Pressure(Altitude.FromFeet(_given["altitude"].Value)).Pascals, $"standard atmosphere at {_given["altitude"].Value:0} ft, {_given["altitude"].Origin}");

    /// <summary>Water vapour per mole of dry combustion air.</summary>
    public Term AirWater(in Term airTemperature, in Term pressure)
    {
        Term humidity = Sheet.Input("RH", "the humidity of the combustion air", "%", _given["air_humidity"]);
        Term saturation = Sheet.Lookup("psat", "saturation pressure at the air temperature", "Pa", SaturationLine.Pressure(Kelvin(airTemperature)), "IAPWS-IF97");
        Term share = Sheet.Step("y", "", humidity / 100 * saturation / pressure);
        return Sheet.Step("w", "mol/mol", share / (1 - share));
    }

    /// <summary>Water of the flue, that of the air included.</summary>
    public Term Water(in Term airWater) => Sheet.Step("nH2O", "mol/mol",
        Sheet.Lookup("H/2", "water that the fuel makes", "mol/mol", Fuel.Atoms.Hydrogen / 2, $"composition of {Fuel.Name}") + airWater * DryAirMoles);

    public Term DewPoint()
    {
        Term pressure = Pressure();
        Term water = Water(AirWater(Fahrenheit(FieldId.AirTemperature, "Tair", "the combustion air temperature"), pressure));
        Term partial = Sheet.Step("pw", "Pa", water / (Dry + water) * pressure);
        return partial.Through("Tsat", SaturationLine.Temperature(partial.Value) * 1.8 - Temperature.FahrenheitZeroRankine);
    }

    bool Possible(string name) => !_given.Has(name) || Temperature.FromFahrenheit(_given[name].Value).Kelvin is >= 200 and <= 1000;
}
