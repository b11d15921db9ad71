using System.Collections.Immutable;

namespace HandsFreeStartup.Procedure.Hearing;

/// <summary>A quantity that a technician reads from an instrument and says.</summary>
/// <param name="Id">Stable name used in files, in the log and in test manifests.</param>
/// <param name="Label">As shown.</param>
/// <param name="SpokenNames">Trade terms by which it is called; one of them is always said before the number. Single capital letters are spelled.</param>
/// <param name="Unit">The unit of <see cref="Lowest"/> and all numbers below.</param>
public sealed record Field(string Id, string Label, ImmutableArray<string> SpokenNames, Unit Unit)
{
    /// <summary>Lowest physical value; below it the number was misheard.</summary>
    public required decimal Lowest { get; init; }

    /// <summary>Highest physical value.</summary>
    public required decimal Highest { get; init; }

    /// <summary>Below it a value is legal but read back for confirmation (common practice, no source).</summary>
    public required decimal UsualLowest { get; init; }

    /// <summary>Above it a value is legal but read back for confirmation (common practice, no source).</summary>
    public required decimal UsualHighest { get; init; }

    /// <summary>Decimals that must at least be said: a reading with fewer has probably lost its tail.</summary>
    public required int FewestDecimals { get; init; }

    /// <summary>Decimals that may at most be said.</summary>
    public required int MostDecimals { get; init; }

    /// <summary>Whether a value above <see cref="Highest"/> is entered as "over" instead of being refused: what is too much for the field is too much for people.</summary>
    public bool MayBeOver { get; init; }

    /// <summary>Whether it is asked only where the site names an instrument for it: not every kit has one.</summary>
    public bool NeedsInstrument { get; init; }

    /// <summary>Whether <paramref name="value"/> is physically possible for this field.</summary>
    public bool IsPossible(decimal value) => value >= Lowest && value <= Highest;

    /// <summary>Whether <paramref name="value"/> is what a furnace normally shows.</summary>
    public bool IsUsual(decimal value) => value >= UsualLowest && value <= UsualHighest;
}
