using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.ChecklistCommand;

public sealed class ChecklistCommandTests : IDisposable
{
    readonly string _folder = Directory.CreateTempSubdirectory("handsfree-").FullName;

    static string Shipped(string name)
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "HandsFreeStartup.sln")))
        {
            folder = folder.Parent;
        }
        return Path.Combine(folder!.FullName, "checklists", name);
    }

    [Fact]
    public async Task The_shipped_files_are_without_mistakes_and_fit_together()
    {
        ProgramResult result = await ProgramProcess.Run(
            "checklist", Shipped("two-stage-natural-gas.yaml"), "--appliance", Shipped("demo-furnace.yaml"), "--site", Shipped("demo-site.yaml"));

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.Contains("opens inlet pressure port (gas side)", result.Output, StringComparison.Ordinal);
        Assert.Contains("room_co                  at most 9 ppm, safety", result.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("demo-furnace.yaml", "fuel natural-gas, stages 2")]
    [InlineData("demo-site.yaml", "rooms: basement, kitchen, bedroom")]
    public async Task An_appliance_sheet_or_a_site_is_printed_too(string file, string expected)
    {
        ProgramResult result = await ProgramProcess.Run("checklist", Shipped(file));

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.Contains(expected, result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_steps_are_drawn_with_the_way_back_after_an_adjustment()
    {
        ProgramResult result = await ProgramProcess.Run("checklist", Shipped("two-stage-natural-gas.yaml"), "--mermaid");

        Assert.StartsWith("flowchart TD\n", result.Output, StringComparison.Ordinal);
        Assert.Contains("step-adjust-high -. measure again .-> step-combustion-high", result.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("gas-furnace")]
    [InlineData("two-stage-natural-gas")]
    public async Task The_drawing_in_the_documentation_is_the_one_that_the_program_draws(string checklist)
    {
        ProgramResult result = await ProgramProcess.Run("checklist", Shipped($"{checklist}.yaml"), "--mermaid");

        string page = await File.ReadAllTextAsync(Shipped($"{checklist}.md"));
        Assert.True(
            page.Contains($"```mermaid\n{result.Output}```\n", StringComparison.Ordinal),
            $"The drawing in checklists/{checklist}.md is stale. Replace it by the output of: checklist checklists/{checklist}.yaml --mermaid");
    }

    [Fact]
    public void Every_shipped_checklist_has_its_drawing() =>
        Assert.All(
            Directory.GetFiles(Path.GetDirectoryName(Shipped("README.md"))!, "*.yaml").Where(file => File.ReadAllText(file).Contains("\nsections:", StringComparison.Ordinal)),
            file => Assert.True(File.Exists(Path.ChangeExtension(file, ".md")), file));

    [Theory]
    [InlineData("new", "79 steps", "Purge the line", "Look at the heat exchanger")]
    [InlineData("repair", "80 steps", "What was repaired", "Purge the line")]
    [InlineData("seasonal", "78 steps", "Look at the heat exchanger", "Orifices")]
    public async Task With_a_furnace_and_a_site_the_steps_of_that_job_are_printed(string occasion, string count, string shown, string leftOut)
    {
        ProgramResult result = await ProgramProcess.Run(
            "checklist", Shipped("gas-furnace.yaml"), "--appliance", Shipped("furnace-two-stage-altitude.yaml"), "--site", Shipped("site-mountain.yaml"), "--occasion", occasion);

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.Contains(count, result.Output, StringComparison.Ordinal);
        Assert.Contains(shown, result.Output, StringComparison.Ordinal);
        Assert.DoesNotContain(leftOut, result.Output, StringComparison.Ordinal);
        Assert.Contains("room-walk/living-room", result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Mistakes_are_told_with_their_places_and_exit_code_2()
    {
        string file = Path.Combine(_folder, "mine.yaml");
        File.WriteAllText(file, File.ReadAllText(Shipped("demo-furnace.yaml")).Replace("stages: 2", "stages: 5", StringComparison.Ordinal).Replace("unit: µA", "unit: mA", StringComparison.Ordinal));

        ProgramResult result = await ProgramProcess.Run("checklist", file);

        Assert.Equal((2, ""), (result.ExitCode, result.Output));
        string[] lines = result.Error.Trim().Split('\n');
        Assert.Equal(2, lines.Length);
        Assert.Matches("^mine.yaml:5:9: '5' is not known as stages.", lines[0]);
        Assert.Matches("^mine.yaml:[0-9]+:[0-9]+: The unit 'mA' does not fit flame_current. Write lower: 1000, upper: 10000, unit: µA.", lines[1]);
    }

    [Fact]
    public async Task An_option_for_checklists_is_refused_for_other_files()
    {
        ProgramResult result = await ProgramProcess.Run("checklist", Shipped("demo-site.yaml"), "--mermaid");

        Assert.Equal((2, ""), (result.ExitCode, result.Output));
        Assert.Contains("belong to a checklist", result.Error, StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
