using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Speech.Tests.Listening;

public sealed class InstalledProgramTests
{
    static string? Windows(string variable) => variable switch
    {
        "PATH" => @"C:\Tools;""C:\With Space\"";",
        "ProgramFiles" => @"C:\Program Files",
        "SystemRoot" => @"C:\Windows",
        _ => null,
    };

    [Fact]
    public void Programs_are_found_on_the_search_path_and_by_path_but_only_if_they_can_run()
    {
        Assert.Equal("/bin/sh", InstalledProgram.Find("/bin/sh"));
        Assert.EndsWith("/sh", InstalledProgram.Find("sh"));
        Assert.Null(InstalledProgram.Find("/etc/passwd"));
        Assert.Null(InstalledProgram.Find("no-such-program-anywhere"));
    }

    [Fact]
    public void On_Windows_a_program_has_its_ending_and_the_places_of_installers_are_looked_at_last() => Assert.Equal(
        [
            @"C:\Tools\espeak-ng.exe", @"C:\Tools\espeak-ng.com", @"C:\With Space\espeak-ng.exe", @"C:\With Space\espeak-ng.com",
            @"C:\Program Files\eSpeak NG\espeak-ng.exe", @"C:\Program Files\eSpeak NG\espeak-ng.com",
            @"C:\Windows\System32\WindowsPowerShell\v1.0\espeak-ng.exe", @"C:\Windows\System32\WindowsPowerShell\v1.0\espeak-ng.com",
        ],
        InstalledProgram.Places("espeak-ng", Platform.Windows, Windows));

    [Theory]
    [InlineData(@"C:\x\rec", @"C:\x\rec.exe")]
    [InlineData(@"C:\x\rec.EXE", @"C:\x\rec.EXE")]
    [InlineData("C:/x/rec.exe", "C:/x/rec.exe")]
    public void On_Windows_a_path_is_taken_with_and_without_its_ending(string path, string first) => Assert.Equal(first, InstalledProgram.Places(path, Platform.Windows, Windows).First());

    [Fact]
    public void A_batch_file_is_no_program() => Assert.DoesNotContain(@"C:\Tools\rec.bat", InstalledProgram.Places("rec", Platform.Windows, Windows));

    [Fact]
    public void On_macOS_what_package_collections_bring_is_found_without_a_search_path() =>
        Assert.Contains("/opt/homebrew/bin/sox", InstalledProgram.Places("sox", Platform.MacOS, _ => null));

    [Theory]
    [InlineData("/usr/bin/dotnet", "/app/HandsFreeStartup.dll", "/usr/bin/dotnet /app/HandsFreeStartup.dll")]
    [InlineData("/app/HandsFreeStartup", "/app/HandsFreeStartup.dll", "/app/HandsFreeStartup")]
    [InlineData(null, "/app/HandsFreeStartup.dll", "")]
    public void The_program_knows_how_it_is_started_once_more(string? process, string firstWord, string words) =>
        Assert.Equal(words, string.Join(' ', Machine.OwnWords(process, firstWord)));
}
