using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Tests.Support;

namespace HandsFreeStartup.Speech.Tests.Listening;

public sealed class CaptureCommandTests
{
    static CaptureCommand? OnLinux(string? microphone, params string[] installed) => CaptureCommand.Find(microphone, Machines.With(Platform.Linux, installed));

    [Theory]
    [InlineData("parec pw-record arecord", "parec")]
    [InlineData("arecord pw-record", "pw-record")]
    [InlineData("arecord", "arecord")]
    public void The_first_recorder_that_is_installed_is_used(string installed, string chosen) => Assert.Equal(chosen, OnLinux(null, installed.Split(' '))?.Name);

    [Theory]
    [InlineData(Platform.Linux, "sox")]
    [InlineData(Platform.MacOS, "parec")]
    public void Without_a_recorder_of_the_platform_there_is_none(Platform platform, string installed) => Assert.Null(CaptureCommand.Find(machine: Machines.With(platform, installed)));

    [Theory]
    [InlineData("parec", "--device=headset")]
    [InlineData("pw-record", "--target=headset")]
    [InlineData("arecord", "headset")]
    public void A_word_that_is_no_program_names_a_device(string recorder, string argument) => Assert.Contains(argument, OnLinux("headset", recorder)!.Arguments);

    [Fact]
    public void A_command_line_is_taken_as_it_is()
    {
        CaptureCommand command = OnLinux("rec -t raw \"my file\" '' -", "rec", "parec")!;

        Assert.Equal("/bin/rec", command.Program);
        Assert.Equal<string>(["-t", "raw", "my file", "", "-"], command.Arguments);
    }

    [Fact]
    public void A_command_line_whose_program_is_missing_is_not_taken_for_a_device() => Assert.Null(OnLinux("rec -t raw", "parec"));

    [Theory]
    [InlineData("sox ffmpeg", "sox", "coreaudio Built-in")]
    [InlineData("ffmpeg", "ffmpeg", "-i :Built-in")]
    public void On_macOS_a_program_that_must_be_installed_records(string installed, string chosen, string device)
    {
        CaptureCommand command = CaptureCommand.Find("Built-in", Machines.With(Platform.MacOS, installed.Split(' ')))!;

        Assert.Equal(chosen, command.Name);
        Assert.Contains(device, string.Join(' ', command.Arguments), StringComparison.Ordinal);
    }

    [Fact]
    public void On_Windows_the_program_itself_records_in_a_process_of_its_own()
    {
        CaptureCommand command = CaptureCommand.Find(machine: Machines.With(Platform.Windows, "parec", "sox"))!;

        Assert.Equal(Machines.Program[0], command.Program);
        Assert.Equal<string>(["sound", "record"], command.Arguments);
    }

    [Theory]
    [InlineData("Microphone (2- USB Audio)")]
    [InlineData("Mikrofon \"Höhe\" $(x)")]
    [InlineData("--help")]
    public void A_device_of_Windows_stays_one_word_whatever_is_in_its_name(string name) =>
        Assert.Equal<string>(["sound", "record", $"--device={name}"], CaptureCommand.Find(name, Machines.With(Platform.Windows))!.Arguments);

    [Fact]
    public void On_Windows_a_whole_command_may_be_given_with_the_path_of_its_program()
    {
        CaptureCommand command = CaptureCommand.Find(@"""C:\My Programs\rec.exe"" -t raw", new Machine(Platform.Windows, name => name.Contains('\\') ? name : null, Machines.Program))!;

        Assert.Equal(@"C:\My Programs\rec.exe", command.Program);
        Assert.Equal<string>(["-t", "raw"], command.Arguments);
    }

    [Theory]
    [InlineData(Platform.Linux, null, "pulseaudio-utils")]
    [InlineData(Platform.MacOS, null, "brew install sox")]
    [InlineData(Platform.MacOS, "Built-in Microphone", "brew install sox")]
    [InlineData(Platform.Windows, null, "full path")]
    [InlineData(Platform.Linux, "rec -t raw", "\"rec -t raw\" is not installed")]
    public void What_is_missing_is_told_with_the_remedy_of_the_platform(Platform platform, string? microphone, string remedy) =>
        Assert.Contains(remedy, CaptureCommand.Missing(microphone, Machines.With(platform)), StringComparison.Ordinal);
}
