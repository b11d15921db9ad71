using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.AirSide;

/// <summary>How much the worst case pulls a combustion zone below its baseline.</summary>
/// <remarks>
/// Net = worst case − baseline, both zone against outdoors, negative when the zone is pulled down. Doors and air handler stand in whichever position makes it
/// more negative; the smallest appliance is fired first (building-performance guides, seen in slides). Guide values by vent type are legacy and informational.
/// </remarks>
public static class Depressurization
{
    /// <summary>Worst case less baseline.</summary>
    public static Pressure Net(Pressure worstCase, Pressure baseline) => worstCase - baseline;

    /// <summary>The same with uncertainties; any one unit of pressure.</summary>
    public static Uncertain Net(in Uncertain worstCase, in Uncertain baseline) => Formula(worstCase, baseline);

    /// <summary>The net of numbers of any kind.</summary>
    /// <param name="worstCase">Zone against outdoors in the worst case.</param>
    /// <param name="baseline">Zone against outdoors with everything off, in the same unit.</param>
    public static T Formula<T>(in T worstCase, in T baseline) where T : struct, IFormulaNumber<T> => worstCase - baseline;

    /// <summary>The most negative of several zone pressures, or null for none.</summary>
    public static Pressure? WorstOf(params ReadOnlySpan<Pressure> configurations)
    {
        Pressure? worst = null;
        foreach (Pressure pressure in configurations)
        {
            worst = worst is { } known && known.Pascals <= pressure.Pascals ? known : pressure;
        }
        return worst;
    }
}
