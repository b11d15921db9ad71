using System.CommandLine;
using System.Text.RegularExpressions;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Start;

/// <summary>What is wrong with a file or a wish, in the language of the user; it is found in English, and translated where it is shown.</summary>
static partial class TroubleInLanguage
{
    /// <summary>The sentences, line by line; the place before each stays.</summary>
    /// <param name="parsed">Tells the language: that of the command line, or else of the settings.</param>
    /// <param name="sentences">In English.</param>
    public static string Shown(ParseResult parsed, string sentences)
    {
        Language language = LanguageOf(parsed);
        return language.IsEnglish ? sentences : string.Join('\n', sentences.Split('\n').Select(line => Line(language, line)));
    }

    internal static string Line(Language language, string line) => BehindLineNumber().Match(line) is { Success: true } numbered ? $"{numbered.Groups[1].Value}{language.Recorded(numbered.Groups[2].Value)}"
        : language.Recorded(line) is var whole && whole != line ? whole
        : BehindPlace().Match(line) is { Success: true } match ? $"{match.Groups[1].Value}{language.Recorded(match.Groups[2].Value)}" : line;

    /// <summary>English where the settings are what is wrong.</summary>
    static Language LanguageOf(ParseResult parsed)
    {
        try
        {
            return OpenJob.LanguageOf(new StartOptions { Data = DataFolder.Of(parsed), Language = Given(parsed, "--language"), Files = new JobFiles { Settings = Given(parsed, "--settings") } });
        }
        catch (Exception e) when (e is ChecklistFileException or WrongUseException)
        {
            return Language.English;
        }
    }

    static string? Given(ParseResult parsed, string option) => parsed.GetResult(option) is System.CommandLine.Parsing.OptionResult result ? result.GetValueOrDefault<string?>() : null;

    [GeneratedRegex(@"^(.*?:[0-9]+:[0-9]+: )(.+)$", RegexOptions.CultureInvariant)]
    private static partial Regex BehindLineNumber();

    [GeneratedRegex(@"^(.*?: )(.+)$", RegexOptions.CultureInvariant)]
    private static partial Regex BehindPlace();
}
