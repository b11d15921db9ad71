using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Calculations.Water;

namespace HandsFreeStartup.Calculations.Derivations;

/// <summary>Where the heat of one mole of fuel goes, on paper, kJ/mol; tested against the evaluation of the core.</summary>
sealed class FlueHeat
{
    readonly FlueWork _work;
    readonly Uncertain _flue, _air;
    readonly Term _airWater, _pressure, _water;

    public FlueHeat(FlueWork work)
    {
        _work = work;
        Term flue = work.Fahrenheit(FieldId.FlueTemperature, "Tflue", "the flue temperature");
        Term air = work.Fahrenheit(FieldId.AirTemperature, "Tair", "the combustion air temperature");
        _flue = FlueWork.Kelvin(flue);
        _air = FlueWork.Kelvin(air);
        _pressure = work.Pressure();
        _airWater = work.AirWater(air, _pressure);
        _water = work.Water(_airWater);
    }

    public Term HeatingValue(bool higher) => _work.Sheet.Lookup(higher ? "HHV" : "LHV", higher ? "higher heating value at 25 °C" : "lower heating value at 25 °C", "kJ/mol",
        (higher ? _work.Fuel.HigherHeatingValue : _work.Fuel.LowerHeatingValue) / 1000, $"composition of {_work.Fuel.Name}");

    /// <summary>Above the combustion air: LHV − sensible − CO + latent recovered at 25 °C.</summary>
    public Term AboveAir()
    {
        Term recovered = Recovered("r25", "heat of vaporization at 25 °C", LiquidWater.HeatOfVaporisation25);
        return Lower() - Sensible("q", "flue less air", _air) - Monoxide() + recovered;
    }

    /// <summary>First law: LHV − sensible above 25 °C + what the air brings − CO + latent recovered at flue temperature.</summary>
    public Term FirstLaw()
    {
        Uncertain latent = Species.Water.Heat.Enthalpy(_flue) - LiquidWater.Heat.Enthalpy(_flue);
        return Lower() - Sensible("q25", "flue less 25 °C", MolarGas.ReferenceKelvin) + AirBrings() - Monoxide() + Recovered("rT", "heat of vaporization at flue temperature", latent);
    }

    Term Lower() => _work.Sheet.Lookup("LHVm", "lower heating value at 25 °C", "kJ/mol", _work.Fuel.LowerHeatingValue / 1000, $"composition of {_work.Fuel.Name}");

    Term Sensible(string symbol, string between, in Uncertain from)
    {
        Term nitrogen = _work.Sheet.Lookup("N/2", "nitrogen of the fuel", "mol/mol", _work.Fuel.Atoms.Nitrogen / 2, $"composition of {_work.Fuel.Name}") + FlueWork.Air.Nitrogen * _work.DryAirMoles;
        Term sum = _work.CarbonDioxide() * Heat(Species.CarbonDioxide, symbol, between, from)
            + _work.Monoxide * _work.Dry * Heat(Species.CarbonMonoxide, symbol, between, from)
            + _work.Oxygen * _work.Dry * Heat(Species.Oxygen, symbol, between, from)
            + nitrogen * Heat(Species.Nitrogen, symbol, between, from)
            + _water * Heat(Species.Water, symbol, between, from);
        return _work.Sheet.Step(symbol, "kJ/mol", sum);
    }

    Term AirBrings()
    {
        Term perAir = FlueWork.Air.Oxygen * Brought(Species.Oxygen) + FlueWork.Air.Nitrogen * Brought(Species.Nitrogen) + _airWater * Brought(Species.Water);
        return _work.Sheet.Step("qair", "kJ/mol", _work.DryAirMoles * perAir);
    }

    Term Monoxide() => _work.Sheet.Step("qCO", "kJ/mol",
        _work.Sheet.Lookup("hCO", "heat of combustion of CO at 25 °C", "kJ/mol", Losses.HeatOfMonoxide / 1000, "NASA TM-4513") * (_work.Monoxide * _work.Dry));

    // Nothing condenses at and above the dew point; the line is printed all the same, as zero.
    Term Recovered(string symbol, string words, in Uncertain latent)
    {
        Uncertain dewPoint = SaturationLine.Temperature(_water.Value / (_work.Dry.Value + _water.Value) * _pressure.Value);
        Term heat = _work.Sheet.Lookup("L", words, "kJ/mol", latent / 1000, "NASA TM-4513");
        if (_flue.Value >= dewPoint.Value)
        {
            return _work.Sheet.Step(symbol, "kJ/mol", 0 * heat);
        }

        Term saturation = _work.Sheet.Lookup("ps", "saturation pressure at the flue temperature", "Pa", SaturationLine.Pressure(_flue), "IAPWS-IF97");
        Term condensate = _work.Sheet.Step("liquid", "mol/mol", _water - _work.Dry * saturation / (_pressure - saturation));
        return _work.Sheet.Step(symbol, "kJ/mol", condensate * heat);
    }

    Term Heat(Species species, string symbol, string between, in Uncertain from) => _work.Sheet.Lookup(
        $"Δh{species.Symbol}", $"heat of {species.Name}, {between}", "kJ/mol", (species.Heat.Enthalpy(_flue) - species.Heat.Enthalpy(from)) / 1000, $"NASA TM-4513, {symbol}");

    Term Brought(Species species) => _work.Sheet.Lookup(
        $"Δa{species.Symbol}", $"heat of {species.Name}, air less 25 °C", "kJ/mol", (species.Heat.Enthalpy(_air) - species.Heat.Enthalpy(MolarGas.ReferenceKelvin)) / 1000, "NASA TM-4513, qair");
}
