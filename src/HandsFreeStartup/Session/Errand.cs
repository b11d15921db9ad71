namespace HandsFreeStartup.Session;

/// <summary>One thing that the session does in its turn. What takes long is done beside the loop, and the errand goes on when that is over.</summary>
/// <param name="goOn">Goes on; gives back what must be waited for, or null where all is done.</param>
sealed class Errand(Func<Task?> goOn)
{
    Task? _work;

    /// <summary>The utterance that it is about, or null.</summary>
    public Hearing? Heard { get; init; }

    /// <summary>Whether nothing is left to do.</summary>
    public bool IsOver { get; set; }

    /// <summary>Whether it can go on.</summary>
    public bool IsReady => _work is null or { IsCompleted: true };

    /// <summary>One that is done at once.</summary>
    public static Errand Of(Action act) => new(() =>
    {
        act();
        return null;
    });

    /// <summary>Goes on as far as it can without waiting.</summary>
    /// <returns>What must be waited for; null where all is done.</returns>
    public Task? GoOn() => _work = goOn();
}
