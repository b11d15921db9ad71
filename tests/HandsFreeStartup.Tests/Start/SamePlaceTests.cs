using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Start;

/// <summary>A second furnace at the same address knows of the first one, and both share a customer copy.</summary>
public sealed class SamePlaceTests : IDisposable
{
    const string Told = "Started up at this address already: ";

    static readonly string Checklists = Path.Combine(AppContext.BaseDirectory, "checklists");

    readonly TemporaryFolder _data = new();

    [Fact]
    public async Task What_was_signed_here_today_is_told_and_runs_while_the_rooms_are_walked()
    {
        Signed("first", "furnace-natural-draft", TimeSpan.FromHours(1));

        (ProgramResult result, JobDescription job) = await Begun();

        Assert.Contains($"{Told}{Title("furnace-natural-draft")}, job first.", result.Output, StringComparison.Ordinal);
        Assert.Equal(new ApplianceBeside("first", Title("furnace-natural-draft")), Assert.Single(job.Beside!.Value));
        Assert.Contains("Others running", Titles(job), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("demo-site", 25, false)]
    [InlineData("site-farm", 1, false)]
    [InlineData("demo-site", 1, true)]
    public async Task Another_address_another_visit_and_a_demonstration_are_no_reason(string site, int hours, bool isDemonstration)
    {
        Signed("first", "furnace-natural-draft", TimeSpan.FromHours(hours), site, isDemonstration);

        (ProgramResult result, JobDescription job) = await Begun();

        Assert.DoesNotContain(Told, result.Output, StringComparison.Ordinal);
        Assert.Null(job.Beside);
    }

    [Fact]
    public async Task Two_jobs_of_one_customer_share_a_customer_copy_which_forget_removes_with_either()
    {
        Signed("first", "furnace-natural-draft", TimeSpan.FromHours(1));
        string second = (await Begun()).Job.JobId;

        ProgramResult copies = await ProgramProcess.Run("copies", "first", second, "--data", _data.Path);

        string shared = Path.Combine(_data.Path, "jobs", $"first+{second}-customer.pdf");
        Assert.Equal(7, copies.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
        Assert.EndsWith(shared, copies.Output.TrimEnd(), StringComparison.Ordinal);
        Assert.True(File.Exists(shared));

        Assert.Equal(0, (await ProgramProcess.Run("forget", second, "--keep-readings", "--by", "O. Ffice", "--data", _data.Path)).ExitCode);
        Assert.False(File.Exists(shared));
    }

    [Fact]
    public async Task Jobs_of_two_customers_share_nothing()
    {
        Signed("first", "furnace-natural-draft", TimeSpan.FromHours(1), "site-farm");
        string second = (await Begun()).Job.JobId;

        ProgramResult copies = await ProgramProcess.Run("copies", "first", second, "--data", _data.Path);

        Assert.Equal(2, copies.ExitCode);
        Assert.Contains("are not of one customer at one address", Assert.Single(copies.Error.Trim().Split('\n')), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(Path.Combine(_data.Path, "jobs"), "*.pdf"));
    }

    async Task<(ProgramResult Result, JobDescription Job)> Begun()
    {
        ProgramResult result = await ProgramProcess.RunTyping(
            ["done"], "start", "--keys", "--plain", "--mute", "--data", _data.Path, "--appliance", Sheet("demo-furnace"), "--site", Sheet("demo-site"), "--technician", "T. Echnician");
        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        string path = Assert.Single(Directory.GetFiles(Path.Combine(_data.Path, "jobs"), "2*.db"));
        return (result, ((StartupBegan)StoredJob.Read(path).Events[0]).Job);
    }

    void Signed(string id, string appliance, TimeSpan ago, string site = "demo-site", bool isDemonstration = false)
    {
        string folder = Path.Combine(_data.Path, "jobs");
        Directory.CreateDirectory(folder);
        DateTimeOffset at = DateTimeOffset.UtcNow - ago;
        using StartupLog log = StartupLog.Create(Path.Combine(folder, $"{id}.db"));
        log.Append([
            new StartupBegan(at, new JobDescription(id, UserFile.Copy(Sheet("gas-furnace")), UserFile.Copy(Sheet(appliance)), UserFile.Copy(Sheet(site)))
            {
                Technician = "T. Echnician",
                ProgramVersion = "0",
                Recogniser = "keys",
                IsDemonstration = isDemonstration,
                TimerFactor = 1,
            }),
            new StartupSigned(at, "T. Echnician"),
        ]);
    }

    static string Titles(JobDescription job) => string.Join('\n', UserFile.PlanOf(job).Steps.Select(step => step.Title));

    static string Title(string appliance) => UserFile.ReadApplianceSheet(UserFile.Copy(Sheet(appliance))).Title;

    static string Sheet(string name) => Path.Combine(Checklists, $"{name}.yaml");

    public void Dispose() => _data.Dispose();
}
