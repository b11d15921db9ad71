using System.Collections.Immutable;
using System.Globalization;

namespace HandsFreeStartup.Procedure.Hearing;

/// <summary>A way to say one of the two safety phrases.</summary>
/// <param name="Word"><see cref="CommandWord.EmergencyStop"/> or <see cref="CommandWord.GasSmell"/>.</param>
/// <param name="IsFire">Whether it tells of a fire: an emergency stop with its own instructions.</param>
/// <param name="Words">As written in the table.</param>
/// <param name="MostAround">With how many other words around it the way still counts; null for any number.</param>
public sealed record SafetyWay(CommandWord Word, bool IsFire, string Words, int? MostAround)
{
    /// <summary>Whether the recognizer looks for it; else it counts where it is read freely, or typed.</summary>
    public bool IsLookedFor { get; init; } = true;
}

/// <summary>The ways to say the safety phrases, and what is like them and is none; one table, <c>safety-words.tsv</c>. A new way is one line there.</summary>
public static class SafetyWords
{
    const string Read = "read ";

    static readonly ImmutableArray<(string What, string Words, int? Most)> Table = Load();

    /// <summary>Every way to stop.</summary>
    public static ImmutableArray<SafetyWay> Ways { get; } =
    [
        .. from row in Table
           where row.What is not ("-" or "around" or "lead" or "thing" or "told")
           let isLookedFor = !row.What.StartsWith(Read, StringComparison.Ordinal)
           let what = isLookedFor ? row.What : row.What[Read.Length..]
           let isFire = what == "fire"
           select new SafetyWay(isFire ? CommandWord.EmergencyStop : Commands.Find(what)!.Word, isFire, row.Words, row.Most) { IsLookedFor = isLookedFor },
    ];

    /// <summary>Phrases that hold a way, or sound like one, and must not stop.</summary>
    public static ImmutableArray<string> NotMeant { get; } =
    [
        .. Table.Where(row => row.What == "-").Select(row => row.Words),
        .. from way in Ways
           where way.Words.EndsWith(" a fire", StringComparison.Ordinal)
           from thing in WordsOf("thing")
           select $"{way.Words} {thing}",
    ];

    /// <summary>A way with what follows where something is told of it: heard so, it is asked for before it stops anything; typed, it stops.</summary>
    public static ImmutableArray<string> Told { get; } = [.. Table.Where(row => row.What == "told").Select(row => row.Words)];

    /// <summary>Words that may stand around a way while free speech is dictated; among others it is a part of what is told.</summary>
    public static ImmutableArray<string> Around { get; } = WordsOf("around");

    /// <summary>Words with which a call begins; before a way they do not count as words around it.</summary>
    public static ImmutableArray<string> Lead { get; } = WordsOf("lead");

    static ImmutableArray<string> WordsOf(string what) => [.. Table.Where(row => row.What == what).SelectMany(row => row.Words.Split(' '))];

    static ImmutableArray<(string What, string Words, int? Most)> Load()
    {
        using Stream file = typeof(SafetyWords).Assembly.GetManifestResourceStream("safety-words.tsv")!;
        using StreamReader reader = new(file);
        return
        [
            .. from line in reader.ReadToEnd().ReplaceLineEndings("\n").Split('\n')
               where line.Length > 0 && line[0] != '#'
               let cells = line.Split('\t')
               select (cells[0], cells[1], cells.Length > 2 ? int.Parse(cells[2], CultureInfo.InvariantCulture) : (int?)null),
        ];
    }
}
