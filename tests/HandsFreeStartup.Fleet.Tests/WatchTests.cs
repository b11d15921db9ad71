using HandsFreeStartup.Fleet.Tests.Support;
using HandsFreeStartup.Publish;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.Log;
using Microsoft.Extensions.Time.Testing;

namespace HandsFreeStartup.Fleet.Tests;

/// <summary>A van that has a network now and then.</summary>
[Collection(FirmServer.Name)]
public sealed class WatchTests(PostgresServer server) : IDisposable
{
    readonly VanFolder _van = new();
    readonly FakeTimeProvider _clock = new(new DateTimeOffset(2026, 11, 28, 8, 0, 0, TimeSpan.Zero));
    readonly List<string> _lines = [];

    public void Dispose() => _van.Dispose();

    /// <summary>Lets time go by until a line says it; the clock is the test's own, so nothing waits for real minutes.</summary>
    async Task<string> Until(Func<string, bool> says, TimeSpan step)
    {
        for (int i = 0; i < 3000; i++)
        {
            lock (_lines)
            {
                if (_lines.FirstOrDefault(says) is { } line)
                {
                    return line;
                }
            }

            _clock.Advance(step);
            await Task.Delay(10);
        }

        throw new TimeoutException(string.Join('\n', _lines));
    }

    [PostgresFact]
    public async Task What_is_finished_is_sent_when_there_is_a_connection_oldest_first_and_tries_become_rarer_without_one()
    {
        Firm firm = await server.NewFirm();
        using CuttingProxy network = new(server.Port) { IsDown = true };
        foreach ((string job, int hour) in new[] { ("job-young", 3), ("job-old", 1), ("job-middle", 2) })
        {
            File.SetLastWriteTimeUtc(_van.Add(job), new DateTime(2026, 11, 27, hour, 0, 0, DateTimeKind.Utc));
        }

        string open = _van.Add("job-open", leaveOut: 2);
        using CancellationTokenSource stop = new();
        using NotingWriter output = new(_lines);
        Task watch = new PublishWatch(new DataFolder(_van.Path), output, _clock).Run(() => [.. _van.Records], firm.Address("van_01", network.Port), stop.Token);

        string first = await Until(line => line.Contains("waiting: 4 records; next try in 5 s.", StringComparison.Ordinal), TimeSpan.Zero);
        await Until(line => line.Contains("next try in 300 s.", StringComparison.Ordinal), TimeSpan.FromSeconds(30));
        // A job that is written at that moment is not held up by the watch.
        using (StartupLog running = StartupLog.Open(open))
        {
            network.IsDown = false;
            await Until(line => line.Contains("connected: 3 in the database, 1 not finished, 0 refused.", StringComparison.Ordinal), TimeSpan.FromSeconds(60));
        }

        _van.Add("job-new", 1);
        await Until(line => line.Contains("connected: 4 in the database", StringComparison.Ordinal), TimeSpan.FromSeconds(10));
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => watch);

        Assert.Contains("Nothing is lost", first, StringComparison.Ordinal);
        string[] order = [.. _lines.Where(line => line.StartsWith("sent", StringComparison.Ordinal)).Select(line => line.Split([' ', ':'], StringSplitOptions.RemoveEmptyEntries)[1])];
        Assert.Equal(["job-old", "job-middle", "job-young", "job-new"], order);
    }

    [PostgresFact]
    public async Task What_waiting_does_not_help_ends_it_with_its_sentence()
    {
        Firm firm = await server.NewEmpty();
        using NotingWriter output = new(_lines);

        FleetException error = await Assert.ThrowsAsync<FleetException>(() => new PublishWatch(new DataFolder(_van.Path), output, _clock).Run(() => [], firm.Address("van_01"), CancellationToken.None));

        Assert.Contains("its owner prepares it", error.Message, StringComparison.Ordinal);
    }

    sealed class NotingWriter(List<string> lines) : StringWriter(System.Globalization.CultureInfo.InvariantCulture)
    {
        public override void WriteLine(string? value)
        {
            lock (lines)
            {
                lines.Add(value!);
            }
        }
    }
}
