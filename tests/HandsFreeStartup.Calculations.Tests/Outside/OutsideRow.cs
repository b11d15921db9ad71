using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;

namespace HandsFreeStartup.Calculations.Tests.Outside;

/// <summary>One row of outside-checks.tsv: what is claimed, who says so, and how this code is asked.</summary>
/// <param name="Claim">In words, with unit.</param>
/// <param name="Source">Where it can be looked up, and whether it was read.</param>
/// <param name="Kind">What sort of source that is.</param>
/// <param name="Value">The value that the source gives.</param>
/// <param name="Tolerance">Largest difference that still agrees.</param>
/// <param name="Check">Name and arguments of the check; empty for a rule that lives in a checklist and has no formula here.</param>
sealed record OutsideRow(string Claim, string Source, string Kind, double Value, double Tolerance, string Check)
{
    /// <summary>Kinds that count as truly outside, and after them those that do not.</summary>
    public static readonly ImmutableArray<string> Outside = ["standard's text", "handbook table", "open dataset", "reference library"];

    public static readonly ImmutableArray<string> NotOutside = ["trade page", "upload site", "worked out", "common practice", "memory"];

    public static ImmutableArray<OutsideRow> All { get; } =
        [.. File.ReadLines(Path.Combine(Folder(), "outside-checks.tsv")).Skip(1).Select(line => Of(line.Split('\t')))];

    public bool IsOutside => Outside.Contains(Kind) && Check.Length > 0;

    /// <summary>The folder of this source file, where table and page lie.</summary>
    public static string Folder([CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;

    static OutsideRow Of(string[] cells) => new(
        cells[0], cells[1], cells[2], double.Parse(cells[3], CultureInfo.InvariantCulture), double.Parse(cells[4], CultureInfo.InvariantCulture), cells[5]);
}
