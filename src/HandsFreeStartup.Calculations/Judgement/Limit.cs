namespace HandsFreeStartup.Calculations.Judgement;

/// <summary>Where a value must lie, in the unit of the value that is compared.</summary>
/// <param name="Lower">Smallest allowed value, itself allowed; null if there is none.</param>
/// <param name="Upper">Largest allowed value, itself allowed; null if there is none.</param>
/// <param name="Source">Who says so: rating plate, maker's instructions, a standard with section, or "common practice, no source".</param>
/// <param name="IsSafety">Whether being wrong can hurt someone; then only <see cref="Verdict.Pass"/> counts as proven.</param>
public sealed record Limit(double? Lower, double? Upper, string Source, bool IsSafety);
