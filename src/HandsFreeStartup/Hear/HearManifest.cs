using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Languages;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Hear;

/// <summary>One labeled recording.</summary>
/// <param name="File">As written in the manifest.</param>
/// <param name="Path">Full path.</param>
/// <param name="Expected">As written: <c>oxygen=7.6</c>, <c>command=done</c>, or <c>nothing</c>.</param>
/// <param name="Expectation">What may be said there.</param>
/// <param name="Context">The same, as written.</param>
/// <param name="Speaker">The fourth column, or empty.</param>
/// <param name="Words">The fifth column, or empty.</param>
sealed record HearCase(string File, string Path, string Expected, Expectation Expectation, string Context = "", string Speaker = "", string Words = "")
{
    /// <summary>What the tool says meanwhile, or empty.</summary>
    public string Over { get; init; } = "";

    /// <summary>The language in which it does.</summary>
    public Language Spoken { get; init; } = Language.English;
}

/// <summary>
/// Reads the manifest of a measurement: tab-separated path (relative to the manifest), expected, context; a fourth and fifth
/// column may name the speaker and the words; more are ignored, but for one that tells what the tool says meanwhile, and in
/// which language: "over en: When it is off, say done."
/// Context: <c>open</c>, or field ids separated by commas; <c>answer</c> among them makes confirm, yes and no legal.
/// </summary>
static partial class HearManifest
{
    /// <summary>Commands of the first versions, which are called otherwise now: whoever says them says nothing to the tool.</summary>
    static readonly ImmutableArray<string> Retired = ["command=repeat that", "command=scratch that", "command=pause listening", "command=listen again"];

    const int MostBytes = 16 << 20;

    /// <exception cref="WrongUseException">The manifest is missing, or a line of it is wrong.</exception>
    public static ImmutableArray<HearCase> Read(string path)
    {
        string[] lines = LinesOf(path);
        string folder = System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(path))!;
        ImmutableArray<HearCase> cases =
        [
            .. lines
                .Select((line, index) => (line, place: FormattableString.Invariant($"{path}:{index + 1}")))
                .Where(entry => entry.line.Length > 0 && entry.line[0] != '#')
                .Select(entry => Case(entry.line.Split('\t'), folder, entry.place)),
        ];
        return cases.IsEmpty ? throw new WrongUseException($"The manifest {path} names no recordings: write a line for each.") : cases;
    }

    static string[] LinesOf(string path)
    {
        try
        {
            return Encoding.UTF8.GetString(RegularFile.ReadAll(path, MostBytes)).TrimStart('\uFEFF').Split('\n').Select(line => line.TrimEnd('\r')).ToArray();
        }
        catch (Exception e) when (FileTrouble.Is(e))
        {
            throw new WrongUseException(FileTrouble.Sentence(e, $"The manifest {path} cannot be read", "name another one"));
        }
    }

    static HearCase Case(string[] cells, string folder, string place)
    {
        if (cells.Length < 3)
        {
            throw new WrongUseException($"{place}: a line needs a WAV path, what is expected and the context, separated by tabs.");
        }

        string? meanwhile = cells.Skip(5).FirstOrDefault(cell => cell.StartsWith("over ", StringComparison.Ordinal));
        Match over = SaidMeanwhile().Match(meanwhile ?? "");
        if (meanwhile is not null && !LanguageFiles.Codes.Contains(over.Groups[1].Value))
        {
            throw new WrongUseException($"{place}: '{TextLength.Shortened(meanwhile)}' must name a language ({string.Join(", ", LanguageFiles.Codes)}) and what the tool says in it, as in 'over en: Say done.'");
        }

        return new HearCase(cells[0], System.IO.Path.Combine(folder, cells[0]), Label(cells[1], place), Context(cells[2], place), cells[2], cells.ElementAtOrDefault(3) ?? "", cells.ElementAtOrDefault(4) ?? "")
        {
            Over = over.Groups[2].Value,
            Spoken = LanguageFiles.Find(over.Success ? over.Groups[1].Value : null),
        };
    }

    [GeneratedRegex("^over ([a-z]+): *(.+)$")]
    private static partial Regex SaidMeanwhile();

    static string Label(string text, string place)
    {
        string[] parts = text.Split('=', 2);
        bool isKnown = text == "nothing" || (parts.Length == 2 && (parts[0] == "command"
            ? Commands.Find(parts[1]) is not null || Answers.Find(parts[1]) is not null
            : Fields.Find(parts[0]) is { } field && (field.MayBeOver && parts[1] == "over" || TypedNumber.Read(parts[1], out _) is not null)));
        return Retired.Contains(text) ? "nothing" : isKnown ? text : throw new WrongUseException($"{place}: '{TextLength.Shortened(text)}' must be field=value, command=words, or nothing.");
    }

    static Expectation Context(string text, string place)
    {
        string[] ids = [.. text.Split(',').Where(id => id is not "answer" and not "open")];
        ImmutableArray<AnswerWord> answers = text.Split(',').Contains("answer") ? [.. Enum.GetValues<AnswerWord>()] : [];
        if (text.Split(',').Contains("open"))
        {
            return Expectation.Open with { Answers = answers };
        }

        return Expectation.Open with
        {
            Answers = answers,
            Readings = [.. ids.Select(id => ExpectedReading.Of(Fields.Find(id)
                ?? throw new WrongUseException($"{place}: '{TextLength.Shortened(id)}' is no field; write 'open' or field ids separated by commas.")))],
        };
    }
}
