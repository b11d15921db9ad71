using System.Diagnostics;
using System.Text;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Index;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Forget;

/// <summary>After forget no byte of a person is left wherever the program ever wrote, whatever had been killed before or was killed meanwhile.</summary>
public sealed class NothingOfAPersonTests : IDisposable
{
    static readonly string[] Personal = ["Mrs. Quarry", "Owner (invented)", "Mill Lane", "House at the mill"];

    readonly string _data = Directory.CreateTempSubdirectory("handsfree-").FullName;
    readonly string _temporary = Directory.CreateTempSubdirectory("handsfree-").FullName;
    readonly string _job;

    public NothingOfAPersonTests()
    {
        FixtureJob.Fill(Path.Combine(_data, "jobs"), 1);
        _job = Path.Combine(_data, "jobs", "job-00000.db");
        Leave(Path.Combine(_data, "jobs", "job-00000-customer.pdf.part"), Encoding.Unicode);
        Leave(Path.Combine(_data, "jobs", "job-00000.txt.part"), Encoding.UTF8);
        Leave(Path.Combine(_data, "jobs", "job-00000-office.pdf"), Encoding.Unicode);
        Leave(Path.Combine(_data, "failures", "one.txt"), Encoding.UTF8);
        Leave(Path.Combine(AttachmentKind.Recording.FolderOf(_job), $"{new string('0', 64)}.wav.part"), Encoding.UTF8);
        Leave(Path.Combine(AttachmentKind.Photo.FolderOf(_job), $"{new string('0', 64)}.jpg.part"), Encoding.UTF8);
        FileCopy site = Assert.IsType<StartupBegan>(StoredJob.Read(_job).Events[0]).Job.Site;
        Directory.CreateDirectory(Path.Combine(_data, "sites"));
        File.WriteAllText(Path.Combine(_data, "sites", "house-at-the-mill.yaml"), site.Text);
        File.WriteAllText(Path.Combine(_data, "sites", "house-at-the-mill-2.yaml"), $"{site.Text}\n# looked up again\n");
        string left = Directory.CreateDirectory(Path.Combine(_temporary, "handsfree-job-killed")).FullName;
        File.WriteAllText(Path.Combine(left, "in-use"), "");
        File.Copy(_job, Path.Combine(left, "job.db"));
    }

    [Fact]
    public async Task No_byte_is_left_in_the_data_folder_and_the_temporary_folder_though_it_was_killed_again_and_again()
    {
        Assert.Equal(0, (await Run("copies", "job-00000", "--out", Path.Combine(_data, "jobs"))).ExitCode);
        await Run("review");
        Assert.All(Personal, text => Assert.NotEmpty(Holding(text)));

        Random random = new(7);
        for (int i = 0; i < 5; i++)
        {
            using Process killed = Process.Start(Started("forget", "job-00000", "--keep-readings", "--by", "O. Ffice"))!;
            await Task.Delay(random.Next(50, 900));
            killed.Kill();
            await killed.WaitForExitAsync();
        }

        ProgramResult last = await Run("forget", "job-00000", "--keep-readings", "--by", "O. Ffice");

        Assert.Equal((0, ""), (last.ExitCode, last.Error));
        Assert.Contains("Out of reach: copies that were printed, sent, backed up", last.Output, StringComparison.Ordinal);
        Assert.All(Personal, text => Assert.Empty(Holding(text)));
        Assert.Empty(Directory.GetFiles(Path.Combine(_data, "sites")));
        Assert.DoesNotContain(Directory.EnumerateFiles(_data, "*.part", SearchOption.AllDirectories), _ => true);
        Assert.Equal(0, (await Run("verify", "job-00000")).ExitCode);
        Assert.Contains("Nothing was left to remove.", (await Run("forget", "job-00000", "--keep-readings", "--by", "O. Ffice")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_published_leaves_nothing_on_the_van_and_the_rest_is_said_to_be_out_of_reach()
    {
        string index = Path.Combine(_data, "publish-index.db");
        using (JobIndex published = JobIndex.Open(index))
        {
            published.Write([(_job, JobIndex.StampOf(_job), "Mill Lane")], []);
        }

        ProgramResult forgotten = await Run("forget", "job-00000", "--keep-readings", "--by", "O. Ffice");

        Assert.Contains("Out of reach: what was published of it. The next publish removes it from the firm's database", forgotten.Output, StringComparison.Ordinal);
        Assert.All(Personal, text => Assert.Empty(Holding(text)));
        using JobIndex left = JobIndex.Open(index);
        Assert.Empty(left.ReadAll());
    }

    [Fact]
    public async Task A_trainee_is_gone_with_every_rehearsal_though_it_was_killed_again_and_again_and_another_one_stays()
    {
        string script = Path.Combine(_temporary, "script.txt");
        await File.WriteAllTextAsync(script, "open gas\ngo outside\n");
        foreach (string name in new[] { "T. Rainee", "T. Rainee", "O. Ther" })
        {
            ProgramResult rehearsed = await InProcess.Run(["rehearse", "--script", script, "--technician", name, "--data", _data]);
            Assert.True(rehearsed.ExitCode != 3, rehearsed.Error);
        }

        string[] records = Directory.GetFiles(Path.Combine(_data, "rehearsals"), "*.db");
        Assert.All(records, record => Leave(Path.ChangeExtension(record, ".txt.part"), Encoding.UTF8));
        await File.WriteAllTextAsync(Path.Combine(_data, "rehearsals", "progress.tsv.part"), "T. Rainee");
        await File.WriteAllTextAsync(Path.Combine(_data, "rehearsals", "gone.db-wal"), "T. Rainee");
        await File.WriteAllTextAsync(Path.Combine(_data, "technician.txt"), "T. Rainee\n");
        Assert.Equal(3, Directory.GetFiles(Path.Combine(_data, "rehearsals"), "*.hands").Length);
        Assert.NotEmpty(Holding("T. Rainee"));

        Random random = new(11);
        for (int i = 0; i < 3; i++)
        {
            using Process killed = Process.Start(Started("forget", "--trainee", "T. Rainee"))!;
            await Task.Delay(random.Next(50, 600));
            killed.Kill();
            await killed.WaitForExitAsync();
        }

        ProgramResult last = await Run("forget", "--trainee", "T. Rainee");

        Assert.True(last is { ExitCode: 0, Error: "" } || last.Error.Contains("has rehearsed", StringComparison.Ordinal), last.Error);
        Assert.Empty(Holding("T. Rainee"));
        Assert.NotEmpty(Holding("O. Ther"));
        Assert.Single(Directory.GetFiles(Path.Combine(_data, "rehearsals"), "*.hands"));
        Assert.Contains("O. Ther: 1 rehearsals", (await Run("review", "--rehearsals")).Output, StringComparison.Ordinal);
        Assert.Equal(2, (await Run("forget", "--trainee", "T. Rainee")).ExitCode);
    }

    public void Dispose()
    {
        Directory.Delete(_data, recursive: true);
        Directory.Delete(_temporary, recursive: true);
    }

    static void Leave(string path, Encoding encoding)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, string.Join(' ', Personal), encoding);
    }

    ProcessStartInfo Started(params IEnumerable<string> arguments)
    {
        ProcessStartInfo start = new("dotnet", ["exec", typeof(CommandLine).Assembly.Location, .. arguments, "--data", _data]) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["TMPDIR"] = _temporary;

        // The runtime would keep pipes in the temporary folder, and reading those waits for ever.
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        return start;
    }

    async Task<ProgramResult> Run(params IEnumerable<string> arguments)
    {
        using Process process = Process.Start(Started(arguments))!;
        Task<string> output = process.StandardOutput.ReadToEndAsync(), error = process.StandardError.ReadToEndAsync();
        return await ProgramProcess.Ended(process, output, error);
    }

    IEnumerable<string> Holding(string text) => new[] { _data, _temporary }.SelectMany(folder => Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
        .Where(file => new[] { Encoding.UTF8, Encoding.Unicode, Encoding.BigEndianUnicode }.Any(encoding => File.ReadAllBytes(file).AsSpan().IndexOf(encoding.GetBytes(text)) >= 0));
}
