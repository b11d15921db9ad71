using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Speech.Tests.Support;

namespace HandsFreeStartup.Speech.Tests.Speaking;

public sealed class PlayCommandTests
{
    [Theory]
    [InlineData(Platform.Linux, "pw-play paplay", null, "/bin/paplay a.wav")]
    [InlineData(Platform.Linux, "paplay", "desk", "/bin/paplay --device=desk a.wav")]
    [InlineData(Platform.MacOS, "afplay sox", null, "/bin/afplay a.wav")]
    [InlineData(Platform.MacOS, "afplay sox", "desk", "/bin/sox -q a.wav -t coreaudio desk")]
    [InlineData(Platform.MacOS, "afplay", "desk", null)]
    [InlineData(Platform.Windows, "paplay", null, "/opt/handsfree/HandsFreeStartup sound play a.wav")]
    [InlineData(Platform.Windows, "", "desk", "/opt/handsfree/HandsFreeStartup sound play --device=desk a.wav")]
    [InlineData(Platform.Linux, "", null, null)]
    public void Each_platform_has_its_player(Platform platform, string installed, string? speaker, string? line)
    {
        PlayCommand? player = PlayCommand.Find(speaker, Machines.With(platform, installed.Split(' ')));

        Assert.Equal(line, player is null ? null : string.Join(' ', [player.Program, .. player.Arguments("a.wav")]));
    }

    [Theory]
    [InlineData(Platform.Linux, "paplay")]
    [InlineData(Platform.MacOS, "brew install sox")]
    [InlineData(Platform.Windows, "full path")]
    public void What_is_missing_is_told_with_the_remedy_of_the_platform(Platform platform, string remedy) => Assert.Contains(remedy, PlayCommand.Missing(platform), StringComparison.Ordinal);
}
