namespace HandsFreeStartup.Session;

/// <summary>Tells the session that time passes.</summary>
public static class Ticker
{
    static readonly TimeSpan Interval = TimeSpan.FromMilliseconds(250);

    /// <summary>Runs until <paramref name="stop"/> is asked for.</summary>
    public static async Task Run(Action<Input> post, TimeProvider clock, CancellationToken stop)
    {
        using PeriodicTimer timer = new(Interval, clock);
        try
        {
            while (await timer.WaitForNextTickAsync(stop))
            {
                post(new Input.Tick());
            }
        }
        catch (OperationCanceledException)
        {
            // Asked for.
        }
    }
}
