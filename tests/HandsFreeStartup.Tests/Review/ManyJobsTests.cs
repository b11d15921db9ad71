using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Tests.Support;
using Xunit.Abstractions;

namespace HandsFreeStartup.Tests.Review;

/// <summary>
/// A folder of many jobs into which fifty hostile ones are put: the others are reviewed as before, and what it costs in time and memory is measured. Jobs: 100, or what
/// HANDSFREE_REVIEW_JOBS says (10000 for the whole measurement).
/// </summary>
public sealed class ManyJobsTests(ITestOutputHelper output) : IDisposable
{
    const int Hostile = 50;

    readonly string _data = Directory.CreateTempSubdirectory("handsfree-").FullName;

    public void Dispose() => Directory.Delete(_data, recursive: true);

    [Fact]
    public async Task Fifty_hostile_records_change_nothing_for_the_others()
    {
        int count = int.Parse(Environment.GetEnvironmentVariable("HANDSFREE_REVIEW_JOBS") ?? "100", CultureInfo.InvariantCulture);
        string jobs = Path.Combine(_data, "jobs");
        FixtureJob.Fill(jobs, count);
        Measured warming = await Review();
        Measured alone = await Review("--fresh");
        foreach ((Action<string> make, int i) in HostileRecords.All.Values.Take(Hostile).Select((make, i) => (make, i)))
        {
            make(Path.Combine(jobs, string.Create(CultureInfo.InvariantCulture, $"hostile-{i:00}.db")));
        }

        Measured among = await Review("--fresh"), known = await Review();

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} jobs: first {warming}; alone {alone}; with {Hostile} hostile ones {among}; read again {known}"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"time with the hostile ones / alone: {among.Time / alone.Time:0.00}; read again / alone: {known.Time / alone.Time:0.000}"));
        Assert.Equal(count, alone.Jobs.Length);
        Assert.Equal(alone.Jobs, among.Jobs.Where(job => !job.Contains("/hostile-", StringComparison.Ordinal)));
        Assert.Equal(among.Jobs, known.Jobs);
        Assert.True(among.Jobs.Length > count);
    }

    async Task<Measured> Review(params string[] more)
    {
        long begun = Stopwatch.GetTimestamp();
        using Process process = ProgramProcess.Start(["review", "--json", "--data", _data, .. more]);
        Task<string> text = process.StandardOutput.ReadToEndAsync(), error = process.StandardError.ReadToEndAsync();
        Task<ProgramResult> ended = ProgramProcess.Ended(process, text, error, TimeSpan.FromHours(1));
        long peak = 0;
        while (!ended.IsCompleted)
        {
            peak = Math.Max(peak, PeakOf(process));
            await Task.WhenAny(ended, Task.Delay(20));
        }

        ProgramResult result = await ended;
        Assert.Equal((1, ""), (result.ExitCode, result.Error));
        return new Measured(
            [.. JsonDocument.Parse(result.Output).RootElement.GetProperty("jobs").EnumerateArray().Select(job => job.GetRawText())], Stopwatch.GetElapsedTime(begun), peak);
    }

    static long PeakOf(Process process)
    {
        try
        {
            process.Refresh();
            return process.PeakWorkingSet64;
        }
        catch (InvalidOperationException)
        {
            // It has ended.
            return 0;
        }
    }

    sealed record Measured(string[] Jobs, TimeSpan Time, long Peak)
    {
        public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Time.TotalSeconds:0.0} s, peak {Peak >> 20} MiB");
    }
}
