using System.Globalization;
using HandsFreeStartup.Fleet;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Publish;

/// <summary>The queue of a van without a network: it is the folder itself. Whatever is finished is sent as soon as there is a connection; without one, tries become rarer.</summary>
/// <param name="data">The van's data folder.</param>
/// <param name="output">Takes a line whenever something changes.</param>
/// <param name="clock">Tells when to try again.</param>
sealed class PublishWatch(DataFolder data, TextWriter output, TimeProvider clock)
{
    /// <summary>Between two looks at the folder while there is a connection.</summary>
    static readonly TimeSpan Pause = TimeSpan.FromSeconds(30);

    static readonly TimeSpan FirstWait = TimeSpan.FromSeconds(5);
    static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(5);

    readonly HashSet<string> _told = [];
    string _status = "";

    /// <summary>Sends until it is stopped.</summary>
    /// <param name="records">The records as they are at a moment.</param>
    /// <param name="address">The database.</param>
    /// <param name="cancellation">Stops it.</param>
    /// <exception cref="FleetException">Something is wrong that no waiting helps, such as a password that is not taken.</exception>
    public async Task Run(Func<IReadOnlyList<string>> records, FleetAddress address, CancellationToken cancellation)
    {
        PublishRun run = new(data, line => { if (_told.Add(line)) { output.WriteLine(line); } }, clock);
        for (TimeSpan wait = FirstWait; ;)
        {
            TimeSpan next = Pause;
            try
            {
                PublishCount count = await run.Run(records(), address, cancellation);
                wait = FirstWait;
                Show(FormattableString.Invariant($"connected: {count.Sent + count.Continued + count.There} in the database, {count.NotYet} not finished, {count.Refused} refused."));
            }
            catch (FleetException error) when (error.MayPass)
            {
                Show(string.Create(CultureInfo.InvariantCulture, $"waiting: {run.Waiting(records())} records; next try in {wait.TotalSeconds} s. {error.Message}"));
                (next, wait) = (wait, wait * 2 > LongestWait ? LongestWait : wait * 2);
            }

            await Task.Delay(next, clock, cancellation);
        }
    }

    void Show(string status)
    {
        if (status != _status)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{clock.GetUtcNow():HH:mm:ss} UTC {status}"));
        }

        _status = status;
    }
}
