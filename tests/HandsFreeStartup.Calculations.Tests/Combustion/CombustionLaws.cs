using FsCheck.Xunit;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Tests.Support;

namespace HandsFreeStartup.Calculations.Tests.Combustion;

/// <summary>What must hold for any fuel and any reading.</summary>
[Properties(Arbitrary = [typeof(Readings)], MaxTest = 500)]
public sealed class CombustionLaws
{
    [Property]
    public bool Element_balances_close(AnyCase any)
    {
        DryAir air = DryAir.Conventional;
        FlueGas flue = FlueGas.FromOxygen(any.Fuel, air, any.Reading.Oxygen.Value, any.Reading.CarbonMonoxide.Value, 0.01);
        Atoms inFlow = any.Fuel.Atoms + flue.DryAir.Value * new Atoms(Oxygen: 2 * air.Oxygen + 0.01, Nitrogen: 2 * air.Nitrogen, Hydrogen: 0.02);
        Atoms outFlow = flue.CarbonDioxide.Value * Species.CarbonDioxide.Atoms + flue.CarbonMonoxide.Value * Species.CarbonMonoxide.Atoms
            + flue.Oxygen.Value * Species.Oxygen.Atoms + flue.Nitrogen.Value * Species.Nitrogen.Atoms + flue.Water.Value * Species.Water.Atoms;
        return Near(inFlow.Carbon, outFlow.Carbon) && Near(inFlow.Hydrogen, outFlow.Hydrogen) && Near(inFlow.Oxygen, outFlow.Oxygen)
            && Near(inFlow.Nitrogen, outFlow.Nitrogen) && Near(flue.Oxygen.Value / flue.Dry.Value, any.Reading.Oxygen.Value);
    }

    [Property]
    public bool Excess_air_falls_as_carbon_dioxide_rises(AnyCase any, Share other)
    {
        CombustionEvaluation one = CombustionEvaluation.Of(any.Reading, any.Fuel);
        CombustionEvaluation two = CombustionEvaluation.Of(any.Reading with { Oxygen = new(0.15 * other.Value) }, any.Fuel);
        return Math.Sign(one.ExcessAirPercent.Value - two.ExcessAirPercent.Value) == -Math.Sign(one.CarbonDioxidePercent.Value - two.CarbonDioxidePercent.Value);
    }

    [Property]
    public bool Efficiency_on_the_higher_heating_value_is_below_that_on_the_lower(AnyCase any)
    {
        CombustionEvaluation evaluation = CombustionEvaluation.Of(any.Reading, any.Fuel);
        return Math.Sign(evaluation.EfficiencyLowerPercent.Value - evaluation.EfficiencyPercent.Value) == Math.Sign(evaluation.EfficiencyPercent.Value)
            && Near(evaluation.EfficiencyLowerPercent.Value * any.Fuel.LowerHeatingValue, evaluation.EfficiencyPercent.Value * any.Fuel.HigherHeatingValue);
    }

    [Property]
    public bool Dew_point_rises_with_the_water(AnyCase any, Share humidity)
    {
        CombustionEvaluation dry = CombustionEvaluation.Of(any.Reading with { AirRelativeHumidity = new(0) }, any.Fuel);
        CombustionEvaluation humid = CombustionEvaluation.Of(any.Reading with { AirRelativeHumidity = new(humidity.Value) }, any.Fuel);
        return humid.WaterFraction.Value >= dry.WaterFraction.Value && humid.DewPointCelsius.Value >= dry.DewPointCelsius.Value - 1e-9;
    }

    [Property]
    public bool The_first_law_identity_holds(AnyCase any)
    {
        CombustionEvaluation e = CombustionEvaluation.Of(any.Reading, any.Fuel);
        double withoutCondensate = 100 - e.SensibleLossAbove25Percent.Value + e.AirSensiblePercent.Value - e.LatentLossPercent.Value - e.CarbonMonoxideLossPercent.Value;
        return e.IsCondensing ? e.EfficiencyFirstLawPercent.Value > withoutCondensate : Near(e.EfficiencyFirstLawPercent.Value, withoutCondensate);
    }

    [Property]
    public bool Condensate_never_exceeds_the_water_and_is_zero_above_the_dew_point(AnyCase any)
    {
        CombustionEvaluation e = CombustionEvaluation.Of(any.Reading, any.Fuel);
        return e.CondensateFraction.Value is >= 0 and <= 1 && (e.IsCondensing || e.CondensateMoles.Value == 0);
    }

    [Property]
    public bool Oxygen_from_carbon_dioxide_is_the_inverse(AnyCase any)
    {
        CombustionEvaluation e = CombustionEvaluation.Of(any.Reading, any.Fuel);
        double oxygen = FlueGas.OxygenFromCarbonDioxide(any.Fuel, DryAir.Conventional, e.CarbonDioxidePercent.Value / 100, any.Reading.CarbonMonoxide.Value).Value;
        return Math.Abs(oxygen - any.Reading.Oxygen.Value) < 1e-12;
    }

    [Property]
    public bool A_hotter_flue_loses_more(AnyCase any, Share more)
    {
        FlueReading hotter = any.Reading with { FlueTemperature = new(any.Reading.FlueTemperature.Kelvin + 1 + 100 * more.Value) };
        return CombustionEvaluation.Of(hotter, any.Fuel).SensibleLossPercent.Value > CombustionEvaluation.Of(any.Reading, any.Fuel).SensibleLossPercent.Value
            && CombustionEvaluation.Of(hotter, any.Fuel).EfficiencyPercent.Value < CombustionEvaluation.Of(any.Reading, any.Fuel).EfficiencyPercent.Value;
    }

    [Property]
    public bool Uncertainty_never_shrinks_when_an_input_gets_worse(AnyCase any, Share more)
    {
        FlueUncertainty u = new(new(0.002), new(5e-6), new(1), new(0.5));
        CombustionEvaluation better = CombustionEvaluation.Of(any.Reading with { Uncertainty = u }, any.Fuel);
        CombustionEvaluation worse = CombustionEvaluation.Of(any.Reading with { Uncertainty = u with { Oxygen = new(0.002 + 0.01 * more.Value) } }, any.Fuel);
        return worse.EfficiencyPercent.StandardUncertainty >= better.EfficiencyPercent.StandardUncertainty - 1e-15
            && worse.ExcessAirPercent.StandardUncertainty >= better.ExcessAirPercent.StandardUncertainty - 1e-12;
    }

    static bool Near(double one, double other) => Math.Abs(one - other) <= 1e-9 * Math.Max(1, Math.Abs(one));
}
