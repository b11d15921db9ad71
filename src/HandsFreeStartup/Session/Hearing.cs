using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Session;

/// <summary>An utterance on its way: it is understood, and its sound is kept, beside the loop and never in it.</summary>
/// <param name="ear">Understands.</param>
/// <param name="before">The understanding of the utterance before, which comes first; completed where there is none.</param>
/// <param name="keep">Keeps a sound and gives back its name.</param>
/// <param name="spoken">The utterance.</param>
/// <param name="begun">Is told of everything that is begun.</param>
sealed class Hearing(IEar ear, Task before, Func<Speech.Listening.SpeechClip, string?> keep, Input.Spoken spoken, Action<Task<Phrase>> begun)
{
    HeardAhead? _ahead = spoken.Ahead;
    Task<Phrase>? _phrase;
    Expectation? _expectation;
    Task<string?>? _clip;

    /// <summary>How often something had been asked when it began; null where nobody noticed its beginning.</summary>
    public int? Met { get; init; }

    /// <summary>What the tool was saying at the same time, or null.</summary>
    public string? Over => spoken.Over;

    /// <summary>What was heard, before anybody understood it.</summary>
    public Speech.Listening.SpeechClip Sound => spoken.Clip;

    /// <summary>What was said, under whatever could be said when it was begun; null while it is not yet known.</summary>
    public Phrase? Understood => _phrase is { IsCompletedSuccessfully: true } heard ? heard.Result : null;

    /// <summary>Whether its sound is kept, or was not to be.</summary>
    public bool IsKept => _clip is { IsCompleted: true };

    /// <summary>The name of its sound; null where it is not kept.</summary>
    /// <exception cref="Exception">It could not be kept; the start-up stops.</exception>
    public string? Clip => IsKept ? _clip!.GetAwaiter().GetResult() : null;

    /// <summary>Begins to understand it, or goes on with what was begun while its speaker paused.</summary>
    public Task Begin(Expectation expectation)
    {
        Task<Phrase>? begunAhead = _ahead?.TaskUnder(expectation);
        _ahead = null;
        _expectation = expectation;
        _phrase = begunAhead ?? before.ContinueWith(
            _ => ear.Hear(spoken.Clip, expectation), CancellationToken.None, TaskContinuationOptions.LongRunning, TaskScheduler.Default);
        begun(_phrase);
        return _phrase;
    }

    /// <summary>What must be waited for until it is understood under this expectation; null where it is.</summary>
    public Task? PendingUnder(Expectation expectation) =>
        _phrase is null or { IsCanceled: true } || !expectation.Equals(_expectation) ? Begin(expectation)
        : _phrase.IsCompleted ? null
        : _phrase;

    /// <summary>What was said, once nothing is pending.</summary>
    /// <exception cref="Exception">The ear failed.</exception>
    public Phrase Phrase => _phrase!.GetAwaiter().GetResult();

    /// <summary>Begins to keep its sound.</summary>
    public Task Keep() => _clip ??= Beside.Run(() => keep(spoken.Clip));

    /// <summary>Keeps its sound if that can be done in so short a time.</summary>
    /// <returns>Its name; null where it is not kept by then.</returns>
    public string? KeepWithin(TimeSpan time)
    {
        Task kept = Keep();
        Task.WaitAny([kept], time);
        return _clip is { IsCompletedSuccessfully: true } clip ? clip.Result : null;
    }
}
