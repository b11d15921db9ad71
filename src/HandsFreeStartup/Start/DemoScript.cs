using System.Collections.Immutable;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Start;

/// <summary>One recording of the demonstration.</summary>
/// <param name="Path">The WAV file.</param>
/// <param name="AfterTimers">It is played only when no timer runs.</param>
sealed record DemoLine(string Path, bool AfterTimers);

/// <summary>The recordings of the demonstration, in the order of its list.</summary>
static class DemoScript
{
    const int FileColumn = 0;
    const int WhenColumn = 4;

    public static ImmutableArray<DemoLine> Read() =>
    [
        .. File.ReadLines(Path.Combine(ShippedFiles.Demo, "recordings.tsv"))
            .Where(line => line.Length > 0 && line[0] != '#')
            .Select(line => line.Split('\t'))
            .Select(cells => new DemoLine(Path.Combine(ShippedFiles.Demo, "Recordings", cells[FileColumn]), cells[WhenColumn] == "timer-over")),
    ];
}
