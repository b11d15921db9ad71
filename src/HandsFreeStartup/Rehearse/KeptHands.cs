using System.Globalization;

namespace HandsFreeStartup.Rehearse;

/// <summary>What the hands have done, kept beside the record of a rehearsal: with the events it is all that is needed to go on with it.</summary>
/// <param name="record">Path of the record.</param>
sealed class KeptHands(string record)
{
    readonly string _file = FileOf(record);

    /// <summary>The file beside a record.</summary>
    public static string FileOf(string record) => Path.ChangeExtension(record, ".hands");

    /// <summary>Keeps one more.</summary>
    /// <param name="at">By the clock of the rehearsal.</param>
    /// <param name="words">As in the list of hands; also a wait, whose end this is, and a hint.</param>
    public void Keep(DateTimeOffset at, string words) => File.AppendAllText(_file, string.Create(CultureInfo.InvariantCulture, $"{at.UtcTicks}\t{words}\n"));

    /// <summary>All of them, in their order; a last one that was not written whole is left out.</summary>
    public IReadOnlyList<(DateTimeOffset At, string Words)> Read() => File.Exists(_file)
        ? [.. File.ReadAllText(_file).Split('\n')[..^1].Select(line => line.Split('\t')).Where(cells => cells.Length == 2)
            .Select(cells => (new DateTimeOffset(long.Parse(cells[0], CultureInfo.InvariantCulture), TimeSpan.Zero), cells[1]))]
        : [];
}
