using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Session;

/// <summary>An utterance that is being understood while nobody knows yet whether it is over.</summary>
public sealed class HeardAhead
{
    // Never disposed: it has no timer and hangs on no other token, and whoever forgets may come after the end.
    readonly CancellationTokenSource _unwanted;
    readonly Expectation _expectation;

    HeardAhead(Task<Phrase> phrase, Expectation expectation, CancellationTokenSource unwanted) => (Phrase, _expectation, _unwanted) = (phrase, expectation, unwanted);

    /// <summary>What was said; canceled when speech goes on.</summary>
    public Task<Phrase> Phrase { get; }

    /// <summary>Whether it is understood, and a call for help.</summary>
    public bool IsCall => Phrase is { IsCompletedSuccessfully: true, Result: Procedure.Hearing.Phrase.Command { IsSafetyPhrase: true } };

    /// <summary>Begins to understand.</summary>
    /// <param name="ear">Understands.</param>
    /// <param name="soFar">The utterance up to the pause.</param>
    /// <param name="expectation">What may be said now.</param>
    public static HeardAhead Begin(IEar ear, SpeechClip soFar, Expectation expectation)
    {
        CancellationTokenSource unwanted = new();
        return new HeardAhead(Task.Run(() => ear.Hear(soFar, expectation, unwanted.Token), CancellationToken.None), expectation, unwanted);
    }

    /// <summary>The understanding, if it goes on under this expectation, or is a call for help, which counts under any; else null, and the utterance must be heard again.</summary>
    public Task<Phrase>? TaskUnder(Expectation expectation)
    {
        if (_expectation.Equals(expectation) || IsCall)
        {
            return Phrase;
        }

        Forget();
        return null;
    }

    /// <summary>What was said, if it was understood under this expectation; else null, and the utterance must be heard again.</summary>
    /// <exception cref="OperationCanceledException">Hearing was ended.</exception>
    public Phrase? Under(Expectation expectation) => TaskUnder(expectation)?.GetAwaiter().GetResult();

    /// <summary>It is not wanted any more.</summary>
    public void Forget() => _unwanted.Cancel();
}
