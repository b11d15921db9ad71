using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Calculations.Water;

namespace HandsFreeStartup.Calculations.Combustion;

/// <summary>Water that condenses from flue gas in equilibrium at flue temperature.</summary>
/// <remarks>
/// Below the dew point the remaining vapour is saturated at flue temperature: vapour left = D ps/(p − ps), D moles of dry flue.
/// An upper bound: real equipment does not reach equilibrium; prove a gain with collected condensate. Acid dew point not considered.
/// </remarks>
public static class Condensation
{
    /// <summary>Mole fraction of water in the wet flue.</summary>
    public static Uncertain WaterFraction(in FlueGas flue) => flue.Water / flue.Wet;

    /// <summary>Water dew point, K: saturation temperature (IAPWS-IF97) at the partial pressure of the water.</summary>
    /// <param name="flue">The flue gas.</param>
    /// <param name="pressure">Of the flue gas, Pa.</param>
    public static Uncertain DewPoint(in FlueGas flue, in Uncertain pressure) => SaturationLine.Temperature(WaterFraction(flue) * pressure);

    /// <summary>Moles of condensate per mole of fuel; exactly zero at and above the dew point.</summary>
    /// <param name="flue">The flue gas.</param>
    /// <param name="flueKelvin">Its temperature, K.</param>
    /// <param name="pressure">Its pressure, Pa.</param>
    /// <param name="dewPoint">Its dew point, K.</param>
    public static Uncertain Amount(in FlueGas flue, in Uncertain flueKelvin, in Uncertain pressure, double dewPoint)
    {
        if (flueKelvin.Value >= dewPoint)
        {
            return 0;
        }
        Uncertain saturation = SaturationLine.Pressure(flueKelvin);
        return flue.Water - flue.Dry * saturation / (pressure - saturation);
    }
}
