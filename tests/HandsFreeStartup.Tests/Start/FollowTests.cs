using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Start;

/// <summary>A returned job is followed by another one, and both are verified together.</summary>
public sealed class FollowTests : IDisposable
{
    static readonly string Checklists = Path.Combine(AppContext.BaseDirectory, "checklists");

    readonly string _data = Directory.CreateTempSubdirectory("handsfree-").FullName;

    [Fact]
    public async Task A_returned_job_is_followed_with_its_files_and_a_change_of_either_is_seen()
    {
        ProgramResult ended = await ProgramProcess.RunTyping(
            ["done", "finish", "yes", "the heat exchanger is cracked", "not in order", "done", "yes", "yes", "yes"],
            "start", "--keys", "--plain", "--mute", "--data", _data, "--appliance", Sheet("demo-furnace.yaml"), "--site", Sheet("demo-site.yaml"), "--checklist", Sheet("two-stage-natural-gas.yaml"));
        Assert.Equal(0, ended.ExitCode);
        string first = Assert.Single(Directory.GetFiles(Path.Combine(_data, "jobs"), "*.db"));
        string name = Path.GetFileNameWithoutExtension(first);

        ProgramResult early = await ProgramProcess.RunTyping([], "start", "--follow", name, "--keys", "--plain", "--mute", "--data", _data);
        Assert.Equal(2, early.ExitCode);
        Assert.Contains("was not returned by its lead technician", early.Error, StringComparison.Ordinal);

        Assert.Equal(0, (await ProgramProcess.Run("review", name, "--return", "--lead", "L. Ead", "--remark", "measure the draft again", "--step", "room-before", "--data", _data)).ExitCode);
        ProgramResult followed = await ProgramProcess.RunTyping(["done"], "start", "--follow", name, "--keys", "--plain", "--mute", "--technician", "S. Econd", "--data", _data);

        Assert.Equal((0, ""), (followed.ExitCode, followed.Error));
        Assert.Contains("returned by L. Ead: measure the draft again", followed.Output, StringComparison.Ordinal);
        string second = Assert.Single(Directory.GetFiles(Path.Combine(_data, "jobs"), "*.db"), file => file != first);
        JobDescription before = ((StartupBegan)StoredJob.Read(first).Events[0]).Job, after = ((StartupBegan)StoredJob.Read(second).Events[0]).Job;
        Assert.Equal((name, "S. Econd", before.Site), (after.Follows!.JobId, after.Technician, after.Site));
        Assert.Equal(before.Technician, after.Follows.Technician);
        Assert.Equal(["papers"], StoredJob.Read(second).Events.OfType<StepCarried>().Select(step => step.StepId));
        Assert.Contains("Read the plate: done in job", await File.ReadAllTextAsync(Path.ChangeExtension(second, ".txt")), StringComparison.Ordinal);
        Assert.Contains("note: It follows the record", (await ProgramProcess.Run("verify", second)).Output, StringComparison.Ordinal);

        string Forged(Func<StartupEvent, StartupEvent> change)
        {
            string forged = Path.Combine(_data, "jobs", $"forged-{Guid.NewGuid():N}.db");
            using StartupLog log = StartupLog.Create(forged);
            log.Append([.. StoredJob.Read(second).Events.Select(change)]);
            return forged;
        }

        Assert.Contains(
            $"what it carries over does not stand so in the record {name}.",
            Assert.Single(StartupLogVerifier.Verify(Forged(happened => happened is StepCarried carried ? carried with { Done = carried.Done.AddMinutes(1) } : happened)).Findings).Message, StringComparison.Ordinal);
        Assert.Equal(
            $"It says that S. Omebody worked on the record {name}; it was {before.Technician}.",
            Assert.Single(StartupLogVerifier.Verify(Forged(happened => happened is StartupBegan began
                ? began with { Job = began.Job with { Follows = began.Job.Follows! with { Technician = "S. Omebody" } } } : happened)).Findings).Message);

        byte[] bytes = await File.ReadAllBytesAsync(first);
        bytes[bytes.AsSpan().IndexOf("heat exchanger is cracked"u8)] ^= 1;
        await File.WriteAllBytesAsync(first, bytes);
        ProgramResult wrong = await ProgramProcess.Run("verify", second);

        Assert.Equal(1, wrong.ExitCode);
        Assert.Contains($"wrong: The record {name} that it follows:", wrong.Output, StringComparison.Ordinal);

        File.Delete(first);
        Assert.Contains("which is not beside it", (await ProgramProcess.Run("verify", second)).Output, StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(_data, recursive: true);

    static string Sheet(string name) => Path.Combine(Checklists, name);
}
