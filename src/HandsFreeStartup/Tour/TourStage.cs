using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Session;

namespace HandsFreeStartup.Tour;

/// <summary>Watches what is tried in a tour and what is heard, and ends it with the emergency stop. It has no hands.</summary>
/// <param name="clock">The time.</param>
/// <param name="farewell">How long the words of the stop are listened to before the tour ends.</param>
sealed class TourStage(TimeProvider clock, TimeSpan farewell) : IStage
{
    static readonly (string Says, Func<StartupEvent, bool> IsIt)[] Tries =
    [
        ("a reading", happened => happened is ReadingEntered),
        ("disregard", happened => happened is ReadingScratched),
        ("emergency stop", happened => happened is StartupStopped),
    ];

    readonly TaskCompletionSource _over = new(TaskCreationOptions.RunContinuationsAsynchronously);
    readonly List<Evidence> _heard = [];
    readonly HashSet<string> _tried = [];

    /// <inheritdoc/>
    public TimeProvider Clock => clock;

    /// <inheritdoc/>
    public Task Over => _over.Task;

    /// <inheritdoc/>
    public IEventLog Watch(IEventLog log) => new WatchedLog(this, log);

    /// <inheritdoc/>
    public IDisplay Beside(IDisplay display, bool asLines) => new WatchedDisplay(this, display);

    /// <inheritdoc/>
    public Expectation With(Expectation expectation) => expectation;

    /// <inheritdoc/>
    public bool AreMeant(Phrase phrase) => false;

    /// <inheritdoc/>
    public Message Do(Phrase phrase) => "";

    /// <inheritdoc/>
    public bool Take(string line) => false;

    /// <summary>What was heard, in order, and what is still to be tried.</summary>
    public IEnumerable<string> Told()
    {
        foreach (Evidence heard in _heard)
        {
            yield return $"  {(heard.Channel == Channel.Keys ? "typed" : "heard")} \"{heard.Words}\": {HowSure(heard)}";
        }

        string[] left = [.. Tries.Where(one => !_tried.Contains(one.Says)).Select(one => one.Says)];
        yield return left.Length == 0 ? "All of it was tried. Next: new job." : $"Not tried yet: {string.Join(", ", left)}. Next: tour once more, or new job.";
    }

    static string HowSure(Evidence heard) => heard.Certainty switch
    {
        Certainty.Green => "clear",
        Certainty.Amber => "doubtful, so it was read back and asked for",
        _ => "not clear, so nothing was taken",
    };

    void Take(IReadOnlyList<StartupEvent> decided)
    {
        _tried.UnionWith(Tries.Where(one => decided.Any(one.IsIt)).Select(one => one.Says));
        if (decided.Any(happened => happened is StartupStopped))
        {
            Task.Delay(farewell, clock).ContinueWith(_ => _over.TrySetResult(), TaskScheduler.Default);
        }
    }

    sealed class WatchedLog(TourStage stage, IEventLog log) : IEventLog
    {
        public void Append(IReadOnlyList<StartupEvent> decided)
        {
            log.Append(decided);
            stage.Take(decided);
        }

        public IReadOnlyList<StartupEvent> ReadAll() => log.ReadAll();

        public string? KeepClip(Speech.Listening.SpeechClip clip) => null;
    }

    sealed class WatchedDisplay(TourStage stage, IDisplay display) : IDisplay
    {
        public void Show(Moment moment)
        {
            if (moment.Heard is { Words.Length: > 0 } heard)
            {
                stage._heard.Add(heard);
            }

            display.Show(moment);
        }

        public void Warn(string text) => display.Warn(text);
    }
}
