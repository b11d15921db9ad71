using System.Globalization;
using System.Runtime.Versioning;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Adversary;
using HandsFreeStartup.Storage.Tests.Support;

// Killing processes, folder modes and file limits are those of Unix.
[assembly: UnsupportedOSPlatform("windows")]

namespace HandsFreeStartup.Storage.Tests;

/// <summary>
/// <c>append JOB [SIZE]</c> appends decisions of so many events until it is killed and prints the number of each event when it is recorded; <c>benchmark FOLDER [COUNT]</c> measures appending
/// beside a bare insert with the same durability; <c>jobs FOLDER COUNT</c> fills a folder with jobs to be reviewed; <c>adversary COUNT [FIRST]</c> runs that many jobs with an
/// unsafe fact in each.
/// </summary>
static class Program
{
    /// <summary>Where a disk is quick a process that nobody kills for a while would write a record past what is ever read, 64 MiB.</summary>
    const int MostAppended = 2000;

    static int Main(string[] arguments)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        switch (arguments)
        {
            case ["append", var path, .. var together]:
                return Append(path, together is [var size] ? int.Parse(size, CultureInfo.InvariantCulture) : 1);
            case ["benchmark", var folder, .. var rest]:
                AppendBenchmark.Run(folder, rest is [var count] ? int.Parse(count, CultureInfo.InvariantCulture) : 2000);
                return 0;
            case ["adversary", var wanted, .. var begin]:
                return Adversary(int.Parse(wanted, CultureInfo.InvariantCulture), begin is [var first] ? int.Parse(first, CultureInfo.InvariantCulture) : 0);
            case ["jobs", var jobs, var number]:
                FixtureJob.Fill(jobs, int.Parse(number, CultureInfo.InvariantCulture));
                return 0;
            default:
                Console.Error.WriteLine("append JOB [SIZE] | adversary COUNT [FIRST] | benchmark FOLDER [COUNT] | jobs FOLDER COUNT");
                return 2;
        }
    }

    static int Adversary(int count, int first)
    {
        (int jobs, int signed, int wrong) = (0, 0, 0);
        foreach (object[] row in ShippedPlans.Rows)
        {
            JobDescription job = EditedRecord.JobOf((string)row[0], (string)row[1], (string)row[2], (string)row[3], (StageOrder)row[4]);
            AdversaryRun run = AdversaryRun.Of(job, first, count / ShippedPlans.Rows.Count + 1);
            (jobs, signed, wrong) = (jobs + run.Jobs, signed + run.Signed, wrong + run.Wrong.Count);
            Console.WriteLine($"{string.Join(' ', row)}: {run.Jobs} jobs, {run.Facts} facts, {run.Signed} signed, {run.Wrong.Count} of them against the log");
            foreach (string one in run.Wrong.Take(3))
            {
                Console.WriteLine($"  {one}");
            }
        }

        Console.WriteLine($"{jobs} jobs, {signed} signed, {wrong} of them against the log");
        return wrong == 0 ? 0 : 1;
    }

    static int Append(string path, int size)
    {
        try
        {
            using StartupLog log = File.Exists(path) ? StartupLog.Open(path) : StartupLog.Create(path);
            if (log.Checkpoint is null)
            {
                log.Append(Some.Began());
                Console.WriteLine(1);
            }

            int most = log.Checkpoint!.Count + MostAppended;
            while (log.Checkpoint.Count < most)
            {
                int[] numbers = [.. Enumerable.Range(log.Checkpoint.Count + 1, size)];
                log.Append([.. numbers.Select(number => Some.Note($"note {number}", Evidence.Typed("note")))]);
                Console.WriteLine(string.Join('\n', numbers));
            }

            Thread.Sleep(Timeout.Infinite);
            return 0;
        }
        catch (LogException error)
        {
            Console.WriteLine($"failed: {error.Message}");
            return 3;
        }
    }
}
