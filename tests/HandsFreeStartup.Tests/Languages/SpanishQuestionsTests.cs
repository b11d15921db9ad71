using HandsFreeStartup.Storage.UserFiles;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Languages;

/// <summary>The questions of <c>new job</c> in Spanish: every line that is told is another one than in English, and what is kept is the same.</summary>
public sealed class SpanishQuestionsTests
{
    static readonly string[] Instruments = ["", "2999-01-01", "why", "2020-01-01", "much", "why", "20 5%", "0.3", "4 1.5%", "2", "0.008", "", "", "", ""];
    static readonly string[] Place = ["", "why", "A. Owner", "why", "14 Pond Lane", "why", "650", "why", "basement, kitchen", "why", "2", "why", "", "why", "1200"];
    static readonly string[] Sheet = ["why", "", "Attic furnace", "why", "coal", "natural-gas", "why", "2", "why", "I", "why", "no", "why", "clockwise", "why", "cap"];
    static readonly string[] Limits = ["why", "5", "12 9 8", "5-7", "why", "1", "why", "3.2-3.8", "", "co2 7 9", "2 furlong", "4.1 to 4.8 mbar", "2", "why", "1 2", "", "why", "", "", "why", "co2 70 90", "", .. Enumerable.Repeat((string[])["why", ""], 11).SelectMany(both => both)];
    static readonly string[] End = ["no-such-file.jpg", "", "say again", "T. Echnician", "perhaps", "no"];

    [Fact]
    public async Task Each_line_is_Spanish_and_what_is_kept_is_the_same()
    {
        (string[] english, string sheet, string site) = await Asked("en");
        (string[] spanish, string sameSheet, string sameSite) = await Asked("es");

        Assert.Equal(english.Length, spanish.Length);
        Assert.Empty(english.Zip(spanish).Where(pair => pair.First == pair.Second && pair.First.Any(char.IsLetter)).Select(pair => pair.First).Distinct());
        Assert.DoesNotContain(spanish.Select(line => line.Replace("\"skip the rest\"", "", StringComparison.Ordinal)), line => line.Contains(" the ", StringComparison.Ordinal) || line.Contains(" is ", StringComparison.Ordinal));
        Assert.Equal((sheet, site), (sameSheet, sameSite));
        Assert.Equal("3.2 to 3.8 in. w.c.", UserFile.ReadApplianceSheet(UserFile.Copy("sheet", sheet)).Limits.Single(limit => limit.Name == "manifold_pressure/high").Text);
    }

    [Fact]
    public async Task The_settings_choose_the_language_of_the_instruments_too()
    {
        using TemporaryFolder data = new();
        await File.WriteAllTextAsync(Path.Combine(data.Path, "settings.yaml"), "language: es\n");

        ProgramResult result = await ProgramProcess.RunTyping(Enumerable.Repeat("", 5), "new", "instruments", "--data", data.Path);

        Assert.Contains("instrumento 5 de 5: Multímetro", result.Output, StringComparison.Ordinal);
    }

    static async Task<(string[] Lines, string Sheet, string Site)> Asked(string language)
    {
        using TemporaryFolder data = new();
        ProgramResult result = await ProgramProcess.RunTyping([.. Instruments, .. Place, .. Sheet, .. Limits, .. End], "new", "job", "--keys", "--plain", "--mute", "--data", data.Path, "--language", language);
        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        string[] kept = [.. new[] { "appliances", "sites" }.Select(folder => File.ReadAllText(Assert.Single(Directory.GetFiles(Path.Combine(data.Path, folder)))))];
        return (result.Output.Replace(data.Path, "DATA", StringComparison.Ordinal).Split('\n'), kept[0], kept[1]);
    }
}
