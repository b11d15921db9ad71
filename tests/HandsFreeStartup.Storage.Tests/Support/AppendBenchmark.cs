using System.Diagnostics;
using HandsFreeStartup.Storage.Log;
using Microsoft.Data.Sqlite;

namespace HandsFreeStartup.Storage.Tests.Support;

/// <summary>Latency of one durable event, beside a bare SQLite insert with the same pragmas and size.</summary>
static class AppendBenchmark
{
    /// <summary>The two take turns, so that whatever else the machine does at that moment strikes both.</summary>
    public static void Run(string folder, int count)
    {
        Directory.CreateDirectory(folder);
        Console.WriteLine($"{count} events each, in turn, in {Path.GetFullPath(folder)}");
        using StartupLog log = NewLog(Path.Combine(folder, "benchmark-log.db"));
        using SqliteConnection bare = NewBare(Path.Combine(folder, "benchmark-bare.db"));
        using SqliteCommand insert = bare.CreateCommand();
        insert.CommandText = "insert into row (body) values ($body)";
        insert.Parameters.AddWithValue("$body", EventFormat.BodyOf(Some.Reading("oxygen", 7.6m, "low")));
        double[] ours = new double[count], theirs = new double[count];
        for (int i = 0; i < count; i++)
        {
            ours[i] = Milliseconds(() => log.Append(Some.Reading("oxygen", 7.6m, "low")));
            theirs[i] = Milliseconds(() => insert.ExecuteNonQuery());
        }

        Report("log append", ours);
        Report("bare insert", theirs);
    }

    static StartupLog NewLog(string path)
    {
        Remove(path);
        StartupLog log = StartupLog.Create(path);
        log.Append(Some.Began());
        log.Append(Some.Reading("oxygen", 7.6m, "low"));
        return log;
    }

    static SqliteConnection NewBare(string path)
    {
        Remove(path);
        SqliteConnection connection = new(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
        connection.Open();
        using SqliteCommand setup = connection.CreateCommand();
        setup.CommandText = "pragma locking_mode=exclusive; pragma journal_mode=wal; pragma synchronous=full; create table row (body text)";
        setup.ExecuteNonQuery();
        return connection;
    }

    static double Milliseconds(Action act)
    {
        long start = Stopwatch.GetTimestamp();
        act();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    static void Report(string name, double[] milliseconds)
    {
        double[] sorted = [.. milliseconds.Order()];
        Console.WriteLine(FormattableString.Invariant(
            $"{name,-12} p50 {sorted[sorted.Length / 2]:F3} ms   p99 {sorted[sorted.Length * 99 / 100]:F3} ms   worst {sorted[^1]:F3} ms"));
    }

    static void Remove(string path)
    {
        foreach (string file in new[] { path, $"{path}-wal", $"{path}-shm" })
        {
            File.Delete(file);
        }
    }
}
