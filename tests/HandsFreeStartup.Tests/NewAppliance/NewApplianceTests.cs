using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Storage.UserFiles;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.NewAppliance;

/// <summary>The questions of <c>checklist new-appliance</c>, answered as a process.</summary>
public sealed class NewApplianceTests : IDisposable
{
    static readonly string[] OneStage = ["Attic furnace", "propane", "1", "IV", "yes", "clockwise", "threaded cap"];

    readonly TemporaryFolder _folder = new();

    string Sheet => Path.Combine(_folder.Path, "attic-furnace.yaml");

    [Fact]
    public async Task A_sheet_is_written_by_questions_and_the_reader_accepts_it()
    {
        ProgramResult result = await Ask(
            [
                .. OneStage,
                "11 13", "", "9.7 to 10.3", "2", "", "54000 60000", "conversion label",
                "co2 8.5 10.5", "2", "100", "2", "85 130", "2", "-0.02 0.12", "2", "1.5 8.0", "2", "max 150", "1", "35 65", "1", "0.60", "1", "", "yes",
            ]);

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        ApplianceSheet sheet = UserFile.ReadApplianceSheet(UserFile.Copy(Sheet));
        Assert.Equal(("attic-furnace", "Attic furnace", "propane", 1, VentCategory.IV, true), (sheet.Id, sheet.Title, sheet.FuelId, sheet.Stages, sheet.Venting, sheet.IsCondensing));
        Assert.Equal(("clockwise", "threaded cap"), (sheet.TurnToRaise, sheet.SealFor));
        Assert.Equal(new DeclaredLimit("inlet_pressure", 11m, 13m, "in. w.c.", "rating plate", false), sheet.Limits[0]);
        Assert.Equal("9.7 to 10.3 in. w.c.", sheet.Limits[1].Text);
        Assert.Equal(("maker's instructions", "conversion label"), (sheet.Limits[1].Source, sheet.Limits[2].Source));
        Assert.Equal(
            ["inlet_pressure", "manifold_pressure/high", "input_rate/high", "oxygen/high", "co_air_free", "flue_temperature/high", "draft", "flame_current", "supply_temperature", "temperature_rise/high", "external_static"],
            sheet.Limits.Select(limit => limit.Name));
        Assert.Equal(["co_air_free", "supply_temperature"], sheet.Limits.Where(limit => limit.IsSafety).Select(limit => limit.Name));
    }

    [Fact]
    public async Task A_window_of_carbon_dioxide_becomes_one_of_oxygen()
    {
        await Ask([.. OneStage, "", "", "", "", "co2 8.5 10.5", "2", "", "", "", "", "", "", "", "", "yes"]);

        // Computed: propane, dry air with 20.95 % O2, CO2 at most 13.72 % (stoichiometry): 20.95 (1 - 10.5/13.72) = 4.9; 20.95 (1 - 8.5/13.72) = 8.0.
        DeclaredLimit oxygen = Assert.Single(UserFile.ReadApplianceSheet(UserFile.Copy(Sheet)).Limits);
        Assert.Equal(("oxygen/high", 4.9m, 8.0m, "maker's instructions, stated there as CO2 8.5 to 10.5 %"), (oxygen.Name, oxygen.Lower, oxygen.Upper, oxygen.Source));
    }

    [Theory]
    [InlineData("10.3 9.7", "lower 10.3 is above upper 9.7. Exchange them.")]
    [InlineData("97 103", "97 in. w.c. is no possible manifold pressure. Expected 0 to 15; look at the decimal point.")]
    [InlineData("10.5 11.5", "The manifold pressure reaches 11.5 in. w.c., but the inlet may be as low as 11, and a regulator only lowers pressure.")]
    [InlineData("9,7 10,3", "'9,7' has a comma, which can mean two things: type a point before the decimals")]
    [InlineData("10", "Expected the lowest and the highest, two numbers such as 3.2 3.8.")]
    [InlineData("about ten", "Expected two numbers such as 3.2 3.8; leave it empty to skip.")]
    [InlineData("9.7 10.3 furlongs", "The unit furlongs is not known here. Type the number as in. w.c.")]
    [InlineData("co2 9 10", "Carbon dioxide is no answer here.")]
    public async Task A_wrong_answer_is_told_at_once_and_asked_again(string answer, string message)
    {
        ProgramResult result = await Ask([.. OneStage, "11 13", "1", answer, "24.2 25.6 mbar", "1", "", "", "", "", "", "", "", "", "", "", "", "yes"]);

        Assert.Contains(message, result.Output, StringComparison.Ordinal);
        Assert.Equal(0, result.ExitCode);
        DeclaredLimit manifold = UserFile.ReadApplianceSheet(UserFile.Copy(Sheet)).Limits[1];
        Assert.Equal(("manifold_pressure/high", 9.715m, 10.28m, "rating plate, stated there as 24.2 to 25.6 mbar"), (manifold.Name, manifold.Lower, manifold.Upper, manifold.Source));
    }

    [Fact]
    public async Task A_strange_limit_is_asked_twice_and_stands_with_its_reason_in_a_sheet_that_the_reader_accepts()
    {
        ProgramResult result = await Ask([.. OneStage, "11 13", "1", "1.0 1.5", "1.0 1.5", "", "low-pressure burner, kit sheet 4", "2", .. Enumerable.Repeat("", 11), "yes"]);

        Assert.Contains("Manifold pressure 1.0 to 1.5 in. w.c. is strange for this furnace", result.Output, StringComparison.Ordinal);
        Assert.Contains("A reason is needed.", result.Output, StringComparison.Ordinal);
        DeclaredLimit manifold = UserFile.ReadApplianceSheet(UserFile.Copy(Sheet)).Limits[1];
        Assert.Equal(("manifold_pressure/high", 1.5m, "low-pressure burner, kit sheet 4", "maker's instructions"), (manifold.Name, manifold.Upper, manifold.Unusual, manifold.Source));
        Assert.Equal(0, (await ProgramProcess.Run("checklist", Sheet)).ExitCode);
    }

    [Theory]
    [InlineData("9.7 10.3", "2", "9.7 to 10.3 in. w.c.")]
    [InlineData("", null, null)]
    public async Task A_strange_limit_that_was_a_slip_leaves_no_trace(string then, string? source, string? limit)
    {
        await Ask([.. OneStage, "11 13", "1", "1.0 1.5", then, .. source is null ? [] : new[] { source }, .. Enumerable.Repeat("", 11), "yes"]);

        ApplianceSheet sheet = UserFile.ReadApplianceSheet(UserFile.Copy(Sheet));
        Assert.Equal(limit, sheet.Limits.Skip(1).SingleOrDefault()?.Text);
        Assert.All(sheet.Limits, taken => Assert.Null(taken.Unusual));
    }

    [Fact]
    public async Task Back_asks_the_question_before_again()
    {
        ProgramResult result = await Ask(["Attic furnace", "wood", "natural-gas", "back", "propane", "1", "", "", "clockwise", "cap", "11 13", "back", "11 14", "1", .. Enumerable.Repeat("", 12), "yes"]);

        ApplianceSheet sheet = UserFile.ReadApplianceSheet(UserFile.Copy(Sheet));
        Assert.Equal(("propane", null, null), (sheet.FuelId, sheet.Venting, sheet.IsCondensing));
        Assert.Equal("11 to 14 in. w.c.", Assert.Single(sheet.Limits).Text);
        Assert.Contains("Expected one of natural-gas, propane", result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_rest_is_left_out_at_once_but_what_is_needed_is_asked_and_back_takes_it_back()
    {
        ProgramResult result = await Ask(["skip the rest", "Attic furnace", "propane", "skip the rest", "1", "skip the rest", "back", "IV", "SKIP THE REST", "clockwise", "cap", "yes"]);

        ApplianceSheet sheet = UserFile.ReadApplianceSheet(UserFile.Copy(Sheet));
        Assert.Equal((0, 2), (result.ExitCode, result.Output.Split("This one is needed.").Length - 1));
        Assert.Equal((VentCategory.IV, null, "clockwise", "cap"), (sheet.Venting, sheet.IsCondensing, sheet.TurnToRaise, sheet.SealFor));
        Assert.Empty(sheet.Limits);
    }

    [Theory]
    [InlineData("no")]
    [InlineData("maybe", "no")]
    [InlineData]
    public async Task A_file_that_is_there_is_never_overwritten_unasked(params string[] answers)
    {
        await File.WriteAllTextAsync(Sheet, "mine");

        ProgramResult result = await Ask(answers);

        Assert.Equal(2, result.ExitCode);
        Assert.Contains("Nothing was written.", result.Error, StringComparison.Ordinal);
        Assert.Equal("mine", await File.ReadAllTextAsync(Sheet));
    }

    [Fact]
    public async Task It_is_overwritten_when_the_answer_is_yes()
    {
        await File.WriteAllTextAsync(Sheet, "mine");

        ProgramResult result = await Ask(["yes", .. OneStage, .. Enumerable.Repeat("", 13), "yes"]);

        Assert.Equal(0, result.ExitCode);
        Assert.Empty(UserFile.ReadApplianceSheet(UserFile.Copy(Sheet)).Limits);
    }

    [Theory]
    [InlineData("stop")]
    [InlineData]
    public async Task Answers_that_end_early_write_nothing(params string[] last)
    {
        ProgramResult result = await Ask([.. OneStage, "11 13", .. last]);

        Assert.Equal(2, result.ExitCode);
        Assert.Contains("Nothing was written.", Assert.Single(result.Error.Trim().Split('\n')), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(_folder.Path));
    }

    [Theory]
    [InlineData("My Furnace.yaml")]
    [InlineData("furnace.txt")]
    [InlineData("no/such/folder/furnace.yaml")]
    public async Task A_name_that_cannot_be_written_is_one_sentence(string name)
    {
        ProgramResult result = await ProgramProcess.RunTyping([.. OneStage, .. Enumerable.Repeat("", 13), "yes"], "checklist", "new-appliance", Path.Combine(_folder.Path, name));

        Assert.Equal(2, result.ExitCode);
        Assert.Contains(name, Assert.Single(result.Error.Trim().Split('\n')), StringComparison.Ordinal);
    }

    Task<ProgramResult> Ask(IEnumerable<string> answers) => ProgramProcess.RunTyping(answers, "checklist", "new-appliance", Sheet);

    public void Dispose() => _folder.Dispose();
}
