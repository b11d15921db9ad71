using System.Globalization;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Storage.UserFiles;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.NewJob;

/// <summary>The questions of <c>new job</c>, answered as a process, up to the first own reading.</summary>
public sealed class NewJobTests : IDisposable
{
    static readonly string Yesterday = DateTime.Today.AddDays(-1).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
    static readonly string[] Instruments = ["", Yesterday, "20 5%", "0.3", "4 1.5%", "2", "0.008", "", "", "", ""];
    static readonly string[] Place = ["A. Owner", "why", "14 Pond Lane", "650", "basement, kitchen", "2", "", "1200"];
    static readonly string[] Furnace = ["Attic furnace", "natural-gas", "1", "I", "no", "clockwise", "cap", "5-7", "1", "3.2-3.8", "", .. Enumerable.Repeat("", 11)];
    readonly TemporaryFolder _data = new();

    [Fact]
    public async Task A_newcomer_answers_the_questions_and_says_the_first_own_reading()
    {
        ProgramResult result = await Run([.. Instruments, .. Place, .. Furnace, "", "Go back.", "T. Echnician", "yes", "done", "no", "done", "monoxide 2"]);

        Assert.Equal("", result.Error);
        Assert.Contains("question 5 of", result.Output, StringComparison.Ordinal);
        Assert.Contains("That is a command, not a name", result.Output, StringComparison.Ordinal);
        Assert.Equal("T. Echnician", (await File.ReadAllTextAsync(Path.Combine(_data.Path, "technician.txt"))).Trim());
        Assert.Contains("It stands on every copy.", result.Output, StringComparison.Ordinal);
        Assert.Contains("[1/", result.Output, StringComparison.Ordinal);
        Assert.Contains("CO in room", result.Output, StringComparison.Ordinal);
        Site site = UserFile.ReadSite(UserFile.Copy(Assert.Single(Directory.GetFiles(Path.Combine(_data.Path, "sites")))));
        Assert.Equal(("A. Owner", 650m, 2m, 1200m), (site.Customer, site.AltitudeFeet, site.MeterDialCubicFeet, site.BurningHours));
        Assert.Equal("basement, kitchen", string.Join(", ", site.Rooms));
        Assert.Contains(new InstrumentUncertainty("flue_co", 20m, 5m, $"data sheet; calibrated {Yesterday}"), site.Instruments);
        ApplianceSheet sheet = UserFile.ReadApplianceSheet(UserFile.Copy(Assert.Single(Directory.GetFiles(Path.Combine(_data.Path, "appliances")))));
        Assert.Equal("3.2 to 3.8 in. w.c.", sheet.Limits.Single(limit => limit.Name == "manifold_pressure/high").Text);
    }

    [Fact]
    public async Task The_next_job_asks_only_what_is_new_and_offers_the_unfinished_one()
    {
        await Run([.. Instruments, .. Place, .. Furnace, "", "T. Echnician", "yes", "done"]);

        ProgramResult fresh = await Run(["", "1", "1", "", "", "yes", "done"]);
        ProgramResult resumed = await Run(["1", "no"]);

        Assert.Contains("Not finished yet:", fresh.Output, StringComparison.Ordinal);
        Assert.Contains("Who does the work and signs? [T. Echnician]", fresh.Output, StringComparison.Ordinal);
        Assert.Equal(2, Directory.GetFiles(Path.Combine(_data.Path, "jobs"), "*.db").Length);
        Assert.Contains("Resuming.", resumed.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_old_calibration_is_told()
    {
        ProgramResult result = await Run(["", "2020-01-01", "0.3", .. Enumerable.Repeat("", 8), .. Place, .. Furnace, "", "", "no"]);

        Assert.Contains("An instrument was calibrated on 2020-01-01", result.Output, StringComparison.Ordinal);
        Assert.Equal(0, result.ExitCode);
    }

    [Fact]
    public async Task The_photo_of_the_plate_is_attached_at_the_beginning()
    {
        string photo = Path.Combine(_data.Path, "plate.jpg");
        await File.WriteAllBytesAsync(photo, [0xFF, 0xD8, 0xFF, 0xE0, 0, 16, (byte)'J', (byte)'F', (byte)'I', (byte)'F', 0, 1, 0xFF, 0xD9]);

        ProgramResult result = await Run([.. Instruments, .. Place, .. Furnace, photo, "", "yes", "done"]);

        Assert.Contains("hoto", result.Output[result.Output.IndexOf("[1/", StringComparison.Ordinal)..], StringComparison.Ordinal);
    }

    /// <summary>With keys one types what one would say: none of it becomes a name.</summary>
    [Fact]
    public async Task What_would_be_said_to_the_tool_may_be_typed_to_it()
    {
        ProgramResult result = await Run([.. Instruments[..^1], "Skip step", "Tell me more", "Why?", "A. Owner", "Go back", "BACK", "skip step", "Pat Owner", "14 Pond Lane", "650", "kitchen", "go back", "basement", "SKIP THE REST", .. Furnace, "", "T. Echnician", "no"]);

        Assert.Equal(("", 0), (result.Error, result.ExitCode));
        Site site = UserFile.ReadSite(UserFile.Copy(Assert.Single(Directory.GetFiles(Path.Combine(_data.Path, "sites")))));
        Assert.Equal(("Pat Owner", "14 Pond Lane", "basement", null), (site.Customer, site.Address, Assert.Single(site.Rooms), site.MeterDialCubicFeet));
    }

    [Fact]
    public async Task An_uncertainty_that_no_instrument_has_is_refused()
    {
        ProgramResult result = await Run([Yesterday, "0", "-1", "1e9", "1000000000", "10000", "3 3", "101%", "0.0000000001", "NaN", "3", .. Enumerable.Repeat("", 4), .. Place, .. Furnace, "", "", "no"]);

        Assert.Equal(9, result.Output.Split("Expected a number in ppm").Length - 1);
        InstrumentUncertainty kept = Assert.Single(UserFile.ReadSite(UserFile.Copy(Assert.Single(Directory.GetFiles(Path.Combine(_data.Path, "sites"))))).Instruments);
        Assert.Equal(("room_co", 3m, 0m), (kept.FieldId, kept.Expanded, kept.ExpandedPercent));
    }

    [Fact]
    public async Task Keys_that_are_no_letters_become_no_part_of_a_name()
    {
        ProgramResult result = await Run([.. Instruments, "A\u001b[D Owner", "A. Owner", "14 \u202ePond Lane", .. Place[2..], .. Furnace, "", "T\u0007", "T. Echnician", "no"]);

        Assert.Equal(3, result.Output.Split("Some keys were no letters").Length - 1);
        Assert.Equal(0, result.ExitCode);
        Assert.Equal("T. Echnician", await File.ReadAllTextAsync(Path.Combine(_data.Path, "technician.txt")));
    }

    [Fact]
    public async Task A_kept_file_that_was_spoiled_is_named_and_keeps_nobody_from_a_new_job()
    {
        foreach (string folder in (string[])["sites", "appliances"])
        {
            await File.WriteAllTextAsync(Path.Combine(Directory.CreateDirectory(Path.Combine(_data.Path, folder)).FullName, "spoiled.yaml"), "::::");
        }

        ProgramResult result = await Run([.. Instruments, .. Place, .. Furnace, "", "", "no"]);

        Assert.Equal(("", 0), (result.Error, result.ExitCode));
        Assert.Equal(2, result.Output.Split("Not offered, because it cannot be read").Length - 1);
    }

    [Theory]
    [InlineData("instruments: [ { field: nonsense", "instruments.yaml:")]
    [InlineData("instruments:\n  - { field: flue_co, expanded: -1, source: x }", "instruments.yaml:2")]
    public async Task A_spoiled_list_of_instruments_is_told_before_anything_is_asked(string text, string told)
    {
        await File.WriteAllTextAsync(Path.Combine(_data.Path, "instruments.yaml"), text);

        ProgramResult result = await Run([.. Place, .. Furnace, "", "", "no"]);

        Assert.Equal(2, result.ExitCode);
        Assert.Contains(told, Assert.Single(result.Error.Trim().Split('\n')), StringComparison.Ordinal);
        Assert.DoesNotContain("question 1", result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_data_folder_that_keeps_nothing_is_told_before_anything_is_asked()
    {
        string file = Path.Combine(_data.Path, "file");
        await File.WriteAllTextAsync(file, "");

        ProgramResult result = await ProgramProcess.RunTyping(Instruments, "new", "job", "--keys", "--plain", "--mute", "--data", Path.Combine(file, "data"));

        Assert.Equal(2, result.ExitCode);
        Assert.Single(result.Error.Trim().Split('\n'));
        Assert.DoesNotContain("instrument 1", result.Output, StringComparison.Ordinal);
    }

    Task<ProgramResult> Run(IEnumerable<string> answers) => ProgramProcess.RunTyping(answers, "new", "job", "--keys", "--plain", "--mute", "--data", _data.Path);

    public void Dispose() => _data.Dispose();
}
