using System.Text;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Verify;

public sealed class VerifyCommandTests : IDisposable
{
    readonly string _folder = Directory.CreateTempSubdirectory("handsfree-").FullName;
    readonly string _job;
    readonly Checkpoint _printed;

    public VerifyCommandTests()
    {
        _job = Path.Combine(Directory.CreateDirectory(Path.Combine(_folder, "jobs")).FullName, "job-1.db");
        DateTimeOffset moment = new(2026, 3, 14, 9, 0, 0, TimeSpan.Zero);
        FileCopy file = UserFile.Copy("invented.yaml", "id: a");
        using StartupLog log = StartupLog.Create(_job);
        log.Append(new StartupBegan(moment, new JobDescription("job-1", file, file, file)
        {
            Technician = "T. Tester",
            ProgramVersion = "0.1.0",
            Recogniser = "keys",
            IsDemonstration = true,
            TimerFactor = 1,
        }));
        log.Append(new ListeningPaused(moment.AddSeconds(1)));
        log.Append(new ListeningResumed(moment.AddSeconds(2)));
        _printed = log.Checkpoint!;
    }

    [Fact]
    public async Task A_sound_record_is_found_by_its_name_and_its_checkpoint_is_printed()
    {
        ProgramResult result = await ProgramProcess.Run("verify", "job-1", "--data", _folder);

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.Contains($"sound: {_printed}", result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_checkpoint_of_the_copies_is_compared()
    {
        ProgramResult same = await ProgramProcess.Run("verify", _job, "--checkpoint", _printed.ToString());
        ProgramResult longer = await ProgramProcess.Run("verify", _job, "--checkpoint", (_printed with { Count = 4 }).ToString());

        Assert.Equal(0, same.ExitCode);
        Assert.Contains("It is the record that the checkpoint was printed for.", same.Output, StringComparison.Ordinal);
        Assert.Equal(1, longer.ExitCode);
        Assert.Contains("The checkpoint tells of 4 events, the record holds 3: its end was cut off.", longer.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_changed_record_is_told_by_exit_code_1_and_the_first_wrong_event()
    {
        byte[] bytes = File.ReadAllBytes(_job);
        bytes[bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes("\"2026-03-14T09:00:01+00:00\"")) + 5] ^= 1;
        File.WriteAllBytes(_job, bytes);

        ProgramResult result = await ProgramProcess.Run("verify", _job);

        Assert.Equal(1, result.ExitCode);
        Assert.Contains("wrong: Event 2 does not match its hash", result.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("no-such-job", null, "There is no record 'no-such-job'")]
    [InlineData("job-1", "41 events", "is no checkpoint")]
    public async Task Wrong_use_is_one_sentence_and_exit_code_2(string job, string? checkpoint, string message)
    {
        ProgramResult result = await ProgramProcess.Run(["verify", job, "--data", _folder, .. checkpoint is null ? Array.Empty<string>() : ["--checkpoint", checkpoint]]);

        Assert.Equal((2, ""), (result.ExitCode, result.Output));
        Assert.Contains(message, Assert.Single(result.Error.Trim().Split('\n')), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_record_that_is_being_written_is_left_alone()
    {
        using StartupLog log = StartupLog.Open(_job);

        ProgramResult result = await ProgramProcess.Run("verify", _job);

        Assert.Equal(2, result.ExitCode);
        Assert.Contains("is in use by another running start-up", result.Error, StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
