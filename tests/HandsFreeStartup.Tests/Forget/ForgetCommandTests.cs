using System.Text;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Forget;

public sealed class ForgetCommandTests : IDisposable
{
    readonly string _data = Directory.CreateTempSubdirectory("handsfree-").FullName;
    readonly string _job;

    public ForgetCommandTests()
    {
        FixtureJob.Fill(Path.Combine(_data, "jobs"), 1);
        _job = Path.Combine(_data, "jobs", "job-00000.db");
        File.WriteAllText(Path.ChangeExtension(_job, ".txt"), "The customer is Owner (invented).");
        File.WriteAllText(Path.Combine(_data, "jobs", "job-00000-narrow.txt"), "Owner (invented)");
    }

    [Fact]
    public async Task Names_are_gone_from_the_whole_folder_and_verify_tells_when_and_by_whom()
    {
        await ProgramProcess.Run("review", "--data", _data);
        Assert.True(Holds("Mrs. Quarry") && Holds("Owner (invented)"));

        ProgramResult forgotten = await ProgramProcess.Run("forget", "job-00000", "--keep-readings", "--by", "O. Ffice", "--data", _data);
        ProgramResult verified = await ProgramProcess.Run("verify", "job-00000", "--data", _data);
        ProgramResult reviewed = await ProgramProcess.Run("review", "job-00000", "--data", _data);

        Assert.Equal((0, ""), (forgotten.ExitCode, forgotten.Error));
        Assert.Contains("Removed: 5 texts, 0 recordings and 0 photos.", forgotten.Output, StringComparison.Ordinal);
        Assert.False(Holds("Quarry") || Holds("Owner (invented)") || Holds("Mill Lane"));
        Assert.Equal(0, verified.ExitCode);
        Assert.Matches("redacted: on [0-9-]+ [0-9:]+ [+-][0-9:]+ by O. Ffice", verified.Output);
        Assert.Contains("Everything that was not removed is as it was written.", verified.Output, StringComparison.Ordinal);
        Assert.Contains("Oxygen", await File.ReadAllTextAsync(Path.ChangeExtension(_job, ".txt")), StringComparison.Ordinal);
        Assert.Contains("were removed on", reviewed.Output, StringComparison.Ordinal);
        Assert.Contains("signed", reviewed.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--keep-readings", "--by", "X")]
    [InlineData("give --by NAME", "--keep-readings")]
    public async Task It_does_nothing_until_it_is_told_what_is_kept_and_who_removes(string message, params string[] options)
    {
        ProgramResult result = await ProgramProcess.Run(["forget", "job-00000", "--data", _data, .. options]);

        Assert.Equal((2, ""), (result.ExitCode, result.Output));
        Assert.Contains(message, Assert.Single(result.Error.Trim().Split('\n')), StringComparison.Ordinal);
        Assert.True(Holds("Quarry"));
    }

    [Fact]
    public async Task A_record_of_an_earlier_format_cannot_forget_and_says_so()
    {
        string old = Path.Combine(_data, "old.db");
        File.Copy(Path.Combine(AppContext.BaseDirectory, "Fixtures", "format-1.db"), old);

        ProgramResult result = await ProgramProcess.Run("forget", old, "--keep-readings", "--by", "O. Ffice");

        Assert.Equal(2, result.ExitCode);
        Assert.Contains("has format 1 of an earlier program", Assert.Single(result.Error.Trim().Split('\n')), StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(_data, recursive: true);

    bool Holds(string text) => Directory.EnumerateFiles(_data, "*", SearchOption.AllDirectories)
        .Any(file => File.ReadAllBytes(file).AsSpan().IndexOf(Encoding.UTF8.GetBytes(text)) >= 0);
}
