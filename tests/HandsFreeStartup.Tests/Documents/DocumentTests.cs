using System.Text.RegularExpressions;
using HandsFreeStartup.Screen;
using HandsFreeStartup.Tests.Screen;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Documents;

/// <summary>What the documents say is so.</summary>
/// <remarks>HANDSFREE_APPROVE=FOLDER writes the picture of the console as it is now.</remarks>
[Trait("Speed", "Fast")]
public sealed partial class DocumentTests
{
    const int LongestLine = 120;
    static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "Documents");

    [Fact]
    public void The_picture_of_the_console_is_as_the_console_is()
    {
        string picture = ConsoleSvg.Of(ConsolePage.Of(Situations.Of("measured-good"), 100, 30), new Looks(hasColours: true));
        if (Environment.GetEnvironmentVariable("HANDSFREE_APPROVE") is { Length: > 0 } folder)
        {
            File.WriteAllText(Path.Combine(folder, "console.svg"), picture);
            return;
        }

        Assert.Equal(File.ReadAllText(Path.Combine(Folder, "console.svg")), picture);
    }

    [Theory]
    [InlineData("README.md")]
    [InlineData("DEVELOPERS.md")]
    [InlineData("CHANGELOG.md")]
    [InlineData("field-guide.md")]
    [InlineData("writing-a-checklist.md")]
    [InlineData("how-certainty-works.md")]
    [InlineData("record-and-privacy.md")]
    public void No_line_is_longer_than_a_page_is_wide(string document) =>
        Assert.All(File.ReadLines(Path.Combine(Folder, document)), line => Assert.True(line.Length <= LongestLine, $"{line.Length}: {line}"));

    [Fact]
    public void Every_command_in_the_readme_is_one_of_the_program()
    {
        string[] commands = [.. Commands().Matches(File.ReadAllText(Path.Combine(Folder, "README.md"))).Select(match => match.Groups["words"].Value.ReplaceLineEndings(" "))];

        Assert.True(commands.Length >= 20, $"{commands.Length}");
        Assert.All(commands, command => Assert.Empty(CommandLine.Build().Parse(command).Errors));
    }

    [Fact]
    public async Task The_computed_examples_of_the_readme_run()
    {
        string[] examples = [.. Commands().Matches(await File.ReadAllTextAsync(Path.Combine(Folder, "README.md"))).Select(match => match.Groups["words"].Value.ReplaceLineEndings(" "))
            .Where(command => command.StartsWith("compute reading", StringComparison.Ordinal) || command.StartsWith("compute explain", StringComparison.Ordinal))];

        Assert.NotEmpty(examples);
        foreach (string example in examples)
        {
            ProgramResult result = await InProcess.Run(example.Split(' ', StringSplitOptions.RemoveEmptyEntries));
            Assert.Equal((0, ""), (result.ExitCode, result.Error));
        }
    }

    [Fact]
    public async Task The_checklist_of_the_guide_is_one()
    {
        using TemporaryFolder folder = new();
        string guide = await File.ReadAllTextAsync(Path.Combine(Folder, "writing-a-checklist.md"));
        string firm = Path.Combine(folder.Path, "firm.yaml");
        await File.WriteAllTextAsync(firm, guide.Split("```yaml")[1].Split("```")[0]);

        ProgramResult result = await InProcess.Run("checklist", firm);

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.Contains("Photograph the plate", result.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("strat --demo", "start")]
    [InlineData("start --dmeo", "--demo")]
    [InlineData("reveiw JOB", "review")]
    public async Task A_slip_of_the_keys_is_answered_with_what_was_meant(string line, string meant)
    {
        ProgramResult result = await InProcess.Run(line.Split(' '));

        Assert.Equal(2, result.ExitCode);
        Assert.Contains($"Did you mean {meant}?", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Version_tells_commit_models_and_checklists()
    {
        ProgramResult result = await InProcess.Run("--version");

        Assert.Contains("commit ", result.Output, StringComparison.Ordinal);
        Assert.Equal(4, result.Output.Split('\n').Count(line => line.StartsWith("model ", StringComparison.Ordinal)));
        Assert.Contains("gas-furnace.yaml sha256 ", result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Completion_for_the_shell_asks_the_program_itself()
    {
        ProgramResult script = await InProcess.Run("completion", "bash");
        ProgramResult words = await InProcess.Run("[suggest:3]", "sta");

        Assert.Equal(7, script.Output.Split('\n').Length);
        Assert.Contains("\ncomplete -F", script.Output, StringComparison.Ordinal);
        Assert.Contains("start", words.Output, StringComparison.Ordinal);
    }

    [GeneratedRegex(@"`(HandsFreeStartup |DIR/HandsFreeStartup )?(?<words>(start|new|checklist|sound|hear|compute|copies|verify|review|forget|rehearse|publish|fleet|completion) [^`]*)`")]
    private static partial Regex Commands();
}
