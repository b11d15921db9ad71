using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using HandsFreeStartup.Fleet.Tests.Support;
using HandsFreeStartup.Tests.Support;
using Xunit.Abstractions;

namespace HandsFreeStartup.Fleet.Tests;

/// <summary>A whole firm publishes at once while processes are killed and the server is restarted.</summary>
[Collection(FirmServer.Name)]
public sealed class FirmTests(PostgresServer server, ITestOutputHelper output) : IDisposable
{
    readonly ConcurrentDictionary<int, Process> _running = [];
    readonly List<VanFolder> _vans = [];

    public void Dispose() => _vans.ForEach(van => van.Dispose());

    static int Given(string variable, int usual) => int.Parse(Environment.GetEnvironmentVariable(variable) ?? usual.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    [PostgresFact]
    public async Task After_kills_and_restarts_the_database_equals_the_folders_event_by_event()
    {
        (int vans, int jobs, int processes) = (Given("HANDSFREE_FLEET_VANS", 8), Given("HANDSFREE_FLEET_JOBS", 5), Given("HANDSFREE_FLEET_PROCESSES", 3));
        Firm firm = await server.NewFirm();
        string[] names = [.. Enumerable.Range(0, vans).Select(i => FormattableString.Invariant($"crew_{i:000}"))];
        await firm.Administer(string.Concat(names.Select(name => $"create role {name} login password '{PostgresServer.Password}' in role handsfree_van; insert into member values ('{name}', 'north');")));
        foreach (int i in Enumerable.Range(0, vans))
        {
            VanFolder van = new();
            _vans.Add(van);
            van.AddMany(jobs, FormattableString.Invariant($"van{i}"));
        }

        ConcurrentQueue<int> waiting = new(Enumerable.Range(0, vans));
        using CancellationTokenSource done = new();
        Task<(int Kills, int Restarts)> trouble = Trouble(done.Token);
        long began = Stopwatch.GetTimestamp();
        int[] runs = await Task.WhenAll(Enumerable.Range(0, processes).Select(_ => Work(firm, names, waiting)));
        TimeSpan took = Stopwatch.GetElapsedTime(began);
        await done.CancelAsync();
        (int kills, int restarts) = await trouble;

        await SameBytes.Assert(firm, [.. names.Zip(_vans)]);
        output.WriteLine(FormattableString.Invariant(
            $"{vans} vans x {jobs} jobs by {processes} processes: {runs.Sum()} runs, {kills} kills, {restarts} restarts of the server, {took.TotalSeconds:0} s, {vans * jobs / took.TotalSeconds:0} jobs/s; {await firm.Count("event")} events equal."));
        Assert.True(kills + restarts > 0);
        await firm.Administer(string.Concat(names.Select(name => $"drop owned by {name}; drop role {name};")));
    }

    /// <summary>Publishes one van after the other, each until it has gone through.</summary>
    async Task<int> Work(Firm firm, string[] names, ConcurrentQueue<int> waiting)
    {
        int runs = 0;
        while (waiting.TryDequeue(out int van))
        {
            using Process process = ProgramProcess.Start(["publish", "--data", _vans[van].Path, .. firm.Options("--to", names[van])]);
            _running[process.Id] = process;
            Task<string> output = process.StandardOutput.ReadToEndAsync(), error = process.StandardError.ReadToEndAsync();
            await process.WaitForExitAsync();
            _running.TryRemove(process.Id, out _);
            runs++;
            (string told, string said) = (await output, await error);
            Assert.True(process.ExitCode is 0 or 2 or 137, $"{process.ExitCode}: {told}{said}");
            if (process.ExitCode == 2)
            {
                Assert.Matches(@"^The (server|database) .*(try again|tried again).*\.\n$", said);
            }

            if (process.ExitCode != 0)
            {
                waiting.Enqueue(van);
            }
        }

        return runs;
    }

    /// <summary>Every few seconds something is killed or restarted.</summary>
    async Task<(int Kills, int Restarts)> Trouble(CancellationToken done)
    {
        (int kills, int restarts) = (0, 0);
        Random chance = new(7);
        TimeSpan pause = TimeSpan.FromSeconds(Given("HANDSFREE_FLEET_PAUSE", 5));
        try
        {
            while (true)
            {
                await Task.Delay(pause * (0.5 + chance.NextDouble()), TimeProvider.System, done);
                if (chance.Next(3) == 0)
                {
                    await server.Restart();
                    restarts++;
                }
                else if (_running.Values.ToArray() is { Length: > 0 } running)
                {
                    kills += Killed(running[chance.Next(running.Length)]) ? 1 : 0;
                }
            }
        }
        catch (Exception error) when (error is OperationCanceledException)
        {
            return (kills, restarts);
        }
    }

    static bool Killed(Process process)
    {
        try
        {
            process.Kill();
            return true;
        }
        catch (InvalidOperationException)
        {
            // It has ended by itself meanwhile.
            return false;
        }
    }
}
