using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests;

public sealed class CommandLineTests
{
    [Fact]
    public async Task The_help_names_the_commands_and_who_decides()
    {
        ProgramResult result = await ProgramProcess.Run("--help");

        Assert.Equal(0, result.ExitCode);
        Assert.Contains("start", result.Output);
        Assert.Contains("licensed practice decide", result.Output);
        Assert.Empty(result.Error);
    }

    [Fact]
    public async Task A_word_that_begins_with_at_is_a_word_and_no_file_of_words()
    {
        string file = Path.GetTempFileName();
        await File.WriteAllTextAsync(file, $"@{file}\n");

        ProgramResult result = await ProgramProcess.Run("verify", $"@{file}");
        File.Delete(file);

        Assert.Equal(2, result.ExitCode);
        Assert.Contains($"There is no record '@{file}'", result.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("strat")]
    [InlineData("start", "--applianze", "x.yaml")]
    [InlineData("start", "--ears", "3")]
    [InlineData()]
    public async Task Wrong_use_is_one_sentence_and_exit_code_2(params string[] arguments)
    {
        ProgramResult result = await ProgramProcess.Run(arguments);

        Assert.Equal(2, result.ExitCode);
        Assert.Empty(result.Output);
        Assert.Contains("--help", Assert.Single(result.Error.Trim().Split('\n')));
    }
}
