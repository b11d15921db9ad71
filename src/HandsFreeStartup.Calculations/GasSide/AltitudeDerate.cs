using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.GasSide;

/// <summary>How much of its rated input an appliance may burn at altitude.</summary>
/// <remarks>
/// Above a threshold the rating shrinks by a share per 1000 ft counted from SEA LEVEL, so the rule is a step, not a ramp. The listed appliance's own
/// instructions and the authority come first.
/// </remarks>
/// <param name="Threshold">Up to here the full rating holds.</param>
/// <param name="SharePer1000Feet">Loss for each 1000 ft above sea level, a fraction of one.</param>
/// <param name="Source">Who says so.</param>
public sealed record AltitudeDerate(Altitude Threshold, double SharePer1000Feet, string Source)
{
    /// <summary>4 % per 1000 ft above 2000 ft.</summary>
    public static AltitudeDerate CodeDefault { get; } = new(Altitude.FromFeet(2000), 0.04, "UMC 2009 Appendix B.1.2, NFPA 54-2002 chapter 11");

    /// <summary>2 % per 1000 ft above 2000 ft, as makers of sealed or fan-assisted units often state.</summary>
    public static AltitudeDerate FanAssisted { get; } = new(Altitude.FromFeet(2000), 0.02, "common practice, no source");

    /// <summary>Allowed input over rated input, 0 to 1.</summary>
    public double Factor(Altitude altitude) =>
        altitude.Metres <= Threshold.Metres ? 1 : Math.Max(0, Formula<Exact>(1, SharePer1000Feet, altitude.Feet).Value);

    /// <summary>Largest input above the threshold, of numbers of any kind: rated · (1 − share · ft/1000).</summary>
    /// <param name="rated">Input of the rating plate.</param>
    /// <param name="share">Loss for each 1000 ft above sea level, a fraction of one.</param>
    /// <param name="feet">Altitude, ft.</param>
    public static T Formula<T>(in T rated, in T share, in T feet) where T : struct, IFormulaNumber<T> => rated * (1 - share * (feet / 1000));

    /// <summary>Largest input at an altitude.</summary>
    public HeatRate LargestInput(HeatRate rated, Altitude altitude) => new(rated.Watts * Factor(altitude));
}
