using System.Collections.Immutable;
using System.Text.RegularExpressions;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Speech.Speaking;

/// <summary>A voice that the system brings.</summary>
/// <param name="Name">As the system calls it.</param>
/// <param name="Language">The code of its language: "en".</param>
/// <param name="Place">Where it is spoken so: "US".</param>
readonly partial record struct InstalledVoice(string Name, string Language, string Place)
{
    /// <summary>Plain voices of macOS among many that sing or whisper (value from memory).</summary>
    static readonly ImmutableArray<string> PlainVoices = ["Samantha", "Alex", "Daniel", "Paulina", "Mónica"];

    static readonly ImmutableArray<string> NearPlaces = ["US", "MX"];

    /// <summary>The voice for a language: a plain one, else one of America, else any; null where there is none.</summary>
    public static string? Choose(IEnumerable<InstalledVoice> voices, Language language) => voices
        .Where(voice => voice.Language.Equals(language.Code, StringComparison.OrdinalIgnoreCase))
        .OrderBy(voice => PlainVoices.Contains(voice.Name) ? PlainVoices.IndexOf(voice.Name) : PlainVoices.Length)
        .ThenBy(voice => NearPlaces.Contains(voice.Place) ? 0 : 1)
        .Select(voice => voice.Name)
        .FirstOrDefault();

    /// <summary>The list that <c>say</c> prints: "Samantha            en_US    # Hello! My name is Samantha."</summary>
    public static IEnumerable<InstalledVoice> OfMac(string list) => Of(MacLine(), list);

    /// <summary>The list of the Windows voice: "en-US Microsoft Zira Desktop".</summary>
    public static IEnumerable<InstalledVoice> OfWindows(string list) => Of(WindowsLine(), list);

    static IEnumerable<InstalledVoice> Of(Regex form, string list) =>
        from line in list.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
        let match = form.Match(line)
        where match.Success
        select new InstalledVoice(match.Groups["name"].Value, match.Groups["language"].Value, match.Groups["place"].Value);

    [GeneratedRegex(@"^(?<name>\S.*?)\s+(?<language>[a-z]{2,3})[_-](?<place>\w+)\s+#")]
    private static partial Regex MacLine();

    [GeneratedRegex(@"^(?<language>[a-z]{2,3})-(?:\w+-)?(?<place>\w+) (?<name>.+)$")]
    private static partial Regex WindowsLine();
}
