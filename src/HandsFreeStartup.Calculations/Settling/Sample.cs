namespace HandsFreeStartup.Calculations.Settling;

/// <summary>One value of a series.</summary>
/// <param name="At">When, counted from any fixed moment.</param>
/// <param name="Value">In the unit of the series.</param>
public readonly record struct Sample(TimeSpan At, double Value);
