using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Calculations.Water;

namespace HandsFreeStartup.Calculations.Combustion;

/// <summary>Where the heat of one mole of fuel goes, J per mole of fuel, and what is left of it in three conventions.</summary>
/// <remarks>
/// Sensible: Σ n (h(flue) − h(from)), all water as vapour, species enthalpies from NASA TM-4513. CO: n(CO) (h(CO) + h(O2)/2 − h(CO2)) at 25 °C,
/// 282.978 kJ/mol. Condensate: n · 44.0037 kJ/mol at 25 °C, or the vapour − liquid difference at flue temperature.
/// </remarks>
readonly struct Losses
{
    /// <summary>Heat of combustion of CO at 25 °C, J/mol.</summary>
    public static readonly double HeatOfMonoxide = Species.CarbonMonoxide.Heat.Enthalpy(MolarGas.ReferenceKelvin)
        + 0.5 * Species.Oxygen.Heat.Enthalpy(MolarGas.ReferenceKelvin) - Species.CarbonDioxide.Heat.Enthalpy(MolarGas.ReferenceKelvin);

    public Uncertain SensibleAboveAir { get; private init; }
    public Uncertain SensibleAbove25 { get; private init; }
    public Uncertain AirSensible { get; private init; }
    public Uncertain CarbonMonoxide { get; private init; }
    public Uncertain LatentRecovered25 { get; private init; }
    public Uncertain LatentRecoveredAtFlue { get; private init; }

    /// <summary>What the all-vapour convention charges too much: vapour sensible heat of the condensate less its liquid sensible heat, both above air.</summary>
    public Uncertain HotCondensateCorrection { get; private init; }

    public static Losses Of(
        in FlueGas flue, DryAir air, in Uncertain flueKelvin, in Uncertain airKelvin, in Uncertain waterPerDryAir, in Uncertain condensate)
    {
        Uncertain atFlue = flue.Enthalpy(flueKelvin);
        Uncertain at25 = flue.Enthalpy(MolarGas.ReferenceKelvin);
        Uncertain waterAtFlue = Species.Water.Heat.Enthalpy(flueKelvin);
        Uncertain vapourSensible = waterAtFlue - Species.Water.Heat.Enthalpy(airKelvin);
        Uncertain liquidSensible = LiquidWater.HeatCapacity25 * (flueKelvin - airKelvin);
        bool condensing = condensate.Value > 0;
        return new()
        {
            SensibleAboveAir = atFlue - flue.Enthalpy(airKelvin),
            SensibleAbove25 = atFlue - at25,
            AirSensible = flue.DryAir * (AirEnthalpy(air, airKelvin, waterPerDryAir) - AirEnthalpy(air, MolarGas.ReferenceKelvin, waterPerDryAir)),
            CarbonMonoxide = HeatOfMonoxide * flue.CarbonMonoxide,
            LatentRecovered25 = LiquidWater.HeatOfVaporisation25 * condensate,
            LatentRecoveredAtFlue = condensing ? condensate * (waterAtFlue - LiquidWater.Heat.Enthalpy(flueKelvin)) : 0,
            HotCondensateCorrection = condensing ? condensate * (vapourSensible - liquidSensible) : 0,
        };
    }

    public Uncertain HeatAboveAir(Fuel fuel) => fuel.LowerHeatingValue - SensibleAboveAir - CarbonMonoxide + LatentRecovered25;

    public Uncertain HeatHotCondensate(Fuel fuel) => HeatAboveAir(fuel) + HotCondensateCorrection;

    public Uncertain HeatFirstLaw(Fuel fuel) =>
        fuel.LowerHeatingValue - SensibleAbove25 + AirSensible - CarbonMonoxide + LatentRecoveredAtFlue;

    static Uncertain AirEnthalpy(DryAir air, in Uncertain kelvin, in Uncertain waterPerDryAir) =>
        air.Oxygen * Species.Oxygen.Heat.Enthalpy(kelvin) + air.Nitrogen * Species.Nitrogen.Heat.Enthalpy(kelvin)
        + air.Argon * Species.Argon.Heat.Enthalpy(kelvin) + air.CarbonDioxide * Species.CarbonDioxide.Heat.Enthalpy(kelvin)
        + waterPerDryAir * Species.Water.Heat.Enthalpy(kelvin);
}
