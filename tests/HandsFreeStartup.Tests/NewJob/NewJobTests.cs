using System.Globalization;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Storage.UserFiles;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.NewJob;

/// <summary>The questions of <c>new job</c>, answered as a process, up to the first own reading.</summary>
public sealed class NewJobTests : IDisposable
{
    static readonly string Yesterday = DateTime.Today.AddDays(-1).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
    static readonly string[] Instruments = [Yesterday, "0.3", "", "20 5%", "4 1.5%", "2", "0.008", "", "", "", ""];
    static readonly string[] Place = ["A. Owner", "why", "14 Pond Lane", "650", "basement, kitchen", "2", "", "1200"];
    static readonly string[] Furnace = ["Attic furnace", "natural-gas", "1", "I", "no", "clockwise", "cap", "5-7", "1", "3.2-3.8", "", .. Enumerable.Repeat("", 11)];
    readonly TemporaryFolder _data = new();

    [Fact]
    public async Task A_newcomer_answers_the_questions_and_says_the_first_own_reading()
    {
        ProgramResult result = await Run([.. Instruments, .. Place, .. Furnace, "", "T. Echnician", "yes", "done", "no", "done", "monoxide 2"]);

        Assert.Equal("", result.Error);
        Assert.Contains("question 5 of", result.Output, StringComparison.Ordinal);
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
        Assert.Contains("Who works and signs? [T. Echnician]", fresh.Output, StringComparison.Ordinal);
        Assert.Equal(2, Directory.GetFiles(Path.Combine(_data.Path, "jobs"), "*.db").Length);
        Assert.Contains("Resuming.", resumed.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_old_calibration_is_told()
    {
        ProgramResult result = await Run(["2020-01-01", "0.3", .. Enumerable.Repeat("", 9), .. Place, .. Furnace, "", "", "no"]);

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

    Task<ProgramResult> Run(IEnumerable<string> answers) => ProgramProcess.RunTyping(answers, "new", "job", "--keys", "--plain", "--mute", "--data", _data.Path);

    public void Dispose() => _data.Dispose();
}
