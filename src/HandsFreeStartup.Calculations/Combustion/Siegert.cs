using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Combustion;

/// <summary>Flue loss by the Siegert formula: a second opinion beside the first-principles loss.</summary>
/// <remarks>
/// qA = (tA − tL)(A2/(21 − O2) + B), % of the LOWER heating value; the 21 belongs to the formula. Coefficients and formula: German ordinance
/// 1. BImSchV, annex 2, no. 3.4.1 (seen). Natural gas: within 0.10 points of first principles. Liquefied gas: 0.25 to 0.41 points low for pure propane.
/// Dry flue only: not for condensing appliances. Range: O2 below 21 %, tA above tL.
/// </remarks>
/// <param name="A2">Coefficient of 1/(21 − O2).</param>
/// <param name="B">Constant coefficient.</param>
public readonly record struct Siegert(double A2, double B)
{
    /// <summary>Mains natural gas.</summary>
    public static Siegert NaturalGas { get; } = new(0.66, 0.009);

    /// <summary>Liquefied petroleum gas and its mixtures with air.</summary>
    public static Siegert LiquefiedGas { get; } = new(0.63, 0.008);

    /// <summary>Coke-oven gas.</summary>
    public static Siegert CokeOvenGas { get; } = new(0.60, 0.011);

    /// <summary>Light heating oil; for checking the formula only, no furnace here burns it.</summary>
    public static Siegert HeatingOil { get; } = new(0.68, 0.007);

    /// <summary>Flue loss, % of the lower heating value.</summary>
    /// <param name="oxygenPercent">O2, % dry, below 21.</param>
    /// <param name="flueCelsius">tA, °C.</param>
    /// <param name="airCelsius">tL, °C.</param>
    public Uncertain LossPercent(in Uncertain oxygenPercent, in Uncertain flueCelsius, in Uncertain airCelsius) =>
        Formula(oxygenPercent, flueCelsius, airCelsius);

    /// <summary>Flue loss of numbers of any kind, % of the lower heating value.</summary>
    /// <param name="oxygenPercent">O2, % dry, below 21.</param>
    /// <param name="flueCelsius">tA, °C.</param>
    /// <param name="airCelsius">tL, °C.</param>
    public T Formula<T>(in T oxygenPercent, in T flueCelsius, in T airCelsius) where T : struct, IFormulaNumber<T> =>
        (flueCelsius - airCelsius) * (A2 / (21 - oxygenPercent) + B);

    /// <summary>Flue loss of exact numbers, % of the lower heating value: the model of a Monte Carlo draw.</summary>
    /// <param name="oxygenPercent">O2, % dry, below 21.</param>
    /// <param name="flueCelsius">tA, °C.</param>
    /// <param name="airCelsius">tL, °C.</param>
    public double OfDraw(double oxygenPercent, double flueCelsius, double airCelsius) =>
        Formula<Exact>(oxygenPercent, flueCelsius, airCelsius).Value;
}
