namespace HandsFreeStartup.Session;

/// <summary>Does beside the session's loop what may take long or never end, each on a thread of its own: what hangs must not keep the next one waiting for a thread.</summary>
static class Beside
{
    /// <summary>Begins it.</summary>
    public static Task<T> Run<T>(Func<T> work) => Task.Factory.StartNew(work, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
}
