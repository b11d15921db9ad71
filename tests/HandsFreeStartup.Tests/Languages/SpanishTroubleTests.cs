using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Languages;

/// <summary>What is wrong with a file, in Spanish: the place is the same as in English, and a key that must be written so stays.</summary>
public sealed class SpanishTroubleTests
{
    [Theory]
    [InlineData("title:", "titel:", "Clave desconocida «titel» en una hoja de datos del aparato. Se espera uno de estos: «")]
    [InlineData("fuel: natural-gas", "fuel: coal", "«coal» no se conoce como «fuel». Se espera uno de estos: «natural-gas, ")]
    [InlineData("fuel: natural-gas", "fuel:", "'fuel' no tiene valor. Escriba un texto después, o quítelo.")]
    [InlineData("fuel: natural-gas\n", "", "Falta la clave «fuel» en una hoja de datos del aparato.")]
    [InlineData("fuel: natural-gas\n", "fuel: natural-gas\nfuel: natural-gas\n", "La clave «fuel» está dos veces en una hoja de datos del aparato. Deje una.")]
    [InlineData("lower: 4.5", "lower: x4.5", "«x4.5» no es un número: escriba sus cifras, como ")]
    [InlineData("lower: 4.5", "lower: \"4,5\"", "«4,5» tiene una coma")]
    [InlineData("lower: 4.5", "lower: 4.", "no tiene decimales después del punto")]
    public async Task A_faulty_sheet_is_told_with_its_place_and_a_remedy(string sound, string faulty, string spanish)
    {
        using TemporaryFolder folder = new();
        string sheet = Path.Combine(folder.Path, "furnace.yaml");
        string text = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "checklists", "demo-furnace.yaml"));
        int at = text.IndexOf(sound, StringComparison.Ordinal);
        Assert.True(at >= 0, text);
        await File.WriteAllTextAsync(sheet, $"{text[..at]}{faulty}{text[(at + sound.Length)..]}");

        string[] english = await Told(folder, sheet, "en");
        string[] told = await Told(folder, sheet, "es");

        Assert.Contains(spanish, string.Join('\n', told), StringComparison.Ordinal);
        Assert.Equal(english.Select(line => line[..line.IndexOf(": ", StringComparison.Ordinal)]), told.Select(line => line[..line.IndexOf(": ", StringComparison.Ordinal)]));
        Assert.DoesNotContain(told, line => line.Contains("Expected", StringComparison.Ordinal) || line.Contains(" the ", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_file_that_is_not_there_is_told_in_the_language_of_the_settings()
    {
        using TemporaryFolder folder = new();
        await File.WriteAllTextAsync(Path.Combine(folder.Path, "settings.yaml"), "language: es\n");

        ProgramResult result = await InProcess.Run("start", "--keys", "--plain", "--mute", "--data", folder.Path, "--technician", "T", "--appliance", Path.Combine(folder.Path, "none.yaml"), "--site", Path.Combine(folder.Path, "none.yaml"));

        Assert.Equal($"{Path.Combine(folder.Path, "none.yaml")}: No existe ese archivo. Revise el nombre y la carpeta.", result.Error.Trim());
    }

    static async Task<string[]> Told(TemporaryFolder folder, string sheet, string language)
    {
        ProgramResult result = await InProcess.Run(
            "start", "--keys", "--plain", "--mute", "--data", Path.Combine(folder.Path, language), "--technician", "T", "--appliance", sheet, "--site", Path.Combine(AppContext.BaseDirectory, "checklists", "demo-site.yaml"), "--language", language);
        Assert.Equal(2, result.ExitCode);
        return result.Error.Trim().Split('\n');
    }
}
