using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Speech.Tests.Listening;

public sealed class CaptureCommandTests
{
    static Func<string, string?> Installed(params string[] names) => name => names.Contains(name) ? $"/bin/{name}" : null;

    [Theory]
    [InlineData("parec pw-record arecord", "parec")]
    [InlineData("arecord pw-record", "pw-record")]
    [InlineData("arecord", "arecord")]
    public void The_first_recorder_that_is_installed_is_used(string installed, string chosen)
    {
        CaptureCommand? command = CaptureCommand.Find(find: Installed(installed.Split(' ')));

        Assert.Equal(chosen, command?.Name);
    }

    [Fact]
    public void Without_a_recorder_there_is_none() => Assert.Null(CaptureCommand.Find(find: Installed()));

    [Theory]
    [InlineData("parec", "--device=headset")]
    [InlineData("pw-record", "--target=headset")]
    [InlineData("arecord", "headset")]
    public void A_word_that_is_no_program_names_a_device(string recorder, string argument) =>
        Assert.Contains(argument, CaptureCommand.Find("headset", Installed(recorder))!.Arguments);

    [Fact]
    public void A_command_line_is_taken_as_it_is()
    {
        CaptureCommand command = CaptureCommand.Find("rec -t raw \"my file\" '' -", Installed("rec", "parec"))!;

        Assert.Equal("/bin/rec", command.Program);
        Assert.Equal<string>(["-t", "raw", "my file", "", "-"], command.Arguments);
    }

    [Fact]
    public void A_command_line_whose_program_is_missing_is_not_taken_for_a_device() => Assert.Null(CaptureCommand.Find("rec -t raw", Installed("parec")));

    [Fact]
    public void Programs_are_found_on_the_search_path_and_by_path_but_only_if_they_can_run()
    {
        Assert.Equal("/bin/sh", InstalledProgram.Find("/bin/sh"));
        Assert.EndsWith("/sh", InstalledProgram.Find("sh"));
        Assert.Null(InstalledProgram.Find("/etc/passwd"));
        Assert.Null(InstalledProgram.Find("no-such-program-anywhere"));
    }
}
