using System.Diagnostics;
using HandsFreeStartup.Storage.Log;
using Microsoft.Data.Sqlite;

namespace HandsFreeStartup.Storage.Tests.Support;

/// <summary>Latency of one durable event, beside a bare SQLite insert with the same pragmas and size.</summary>
static class AppendBenchmark
{
    public static void Run(string folder, int count)
    {
        Directory.CreateDirectory(folder);
        Console.WriteLine($"{count} events each, in {Path.GetFullPath(folder)}");
        Report("log append", Log(Path.Combine(folder, "benchmark-log.db"), count));
        Report("bare insert", Bare(Path.Combine(folder, "benchmark-bare.db"), count));
    }

    static double[] Log(string path, int count)
    {
        Remove(path);
        using StartupLog log = StartupLog.Create(path);
        log.Append(Some.Began());
        return Measure(count, number => log.Append(Some.Reading("oxygen", 7.6m, "low")));
    }

    static double[] Bare(string path, int count)
    {
        Remove(path);
        using SqliteConnection connection = new(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
        connection.Open();
        using SqliteCommand setup = connection.CreateCommand();
        setup.CommandText = "pragma locking_mode=exclusive; pragma journal_mode=wal; pragma synchronous=full; create table row (body text)";
        setup.ExecuteNonQuery();
        using SqliteCommand insert = connection.CreateCommand();
        insert.CommandText = "insert into row (body) values ($body)";
        insert.Parameters.AddWithValue("$body", EventFormat.BodyOf(Some.Reading("oxygen", 7.6m, "low")));
        return Measure(count, _ => insert.ExecuteNonQuery());
    }

    static double[] Measure(int count, Action<int> act)
    {
        double[] milliseconds = new double[count];
        for (int i = 0; i < count; i++)
        {
            long start = Stopwatch.GetTimestamp();
            act(i);
            milliseconds[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }
        Array.Sort(milliseconds);
        return milliseconds;
    }

    static void Report(string name, double[] sorted) => Console.WriteLine(FormattableString.Invariant(
        $"{name,-12} p50 {sorted[sorted.Length / 2]:F3} ms   p99 {sorted[sorted.Length * 99 / 100]:F3} ms   worst {sorted[^1]:F3} ms"));

    static void Remove(string path)
    {
        foreach (string file in new[] { path, $"{path}-wal", $"{path}-shm" })
        {
            File.Delete(file);
        }
    }
}
