using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Session;

/// <summary>
/// Hands what the cutter notices to the session. While the speaker pauses the utterance is understood already; what it means decides how long to wait for more.
/// </summary>
/// <param name="cutter">With <see cref="Settings"/>.</param>
/// <param name="ear">Understands.</param>
/// <param name="expected">What may be said now.</param>
/// <param name="post">Takes the inputs.</param>
/// <param name="saying">What the tool is saying, or null; null where it is deaf meanwhile.</param>
public sealed class SoundPump(SpeechCutter cutter, IEar ear, Func<Expectation> expected, Action<Input> post, Func<string?>? saying = null)
{
    /// <summary>Silence that ends words which may go on, or are not understood yet.</summary>
    static readonly TimeSpan Open = TimeSpan.FromMilliseconds(700);

    /// <summary>Silence that ends a reading which only its unit can follow.</summary>
    static readonly TimeSpan Complete = TimeSpan.FromMilliseconds(350);

    /// <summary>Silence that ends words which nothing can follow.</summary>
    static readonly TimeSpan Closed = TimeSpan.FromMilliseconds(250);

    /// <summary>The safety phrases may be said under any expectation.</summary>
    static readonly Expectation CallsOnly = new([], [], []);

    HeardAhead? _ahead;
    Task _call = Task.CompletedTask;
    long _calledUpTo;
    long _askedUpTo;
    string? _over;

    /// <summary>How a cutter must be set whose utterances end by their words.</summary>
    public static CutterSettings Settings { get; } = new() { HangOver = Open };

    /// <summary>How long a silence ends an utterance with these words.</summary>
    public static TimeSpan SilenceAfter(string words, Expectation expectation) => PhraseEnds.Of(words, expectation) switch
    {
        PhraseEnd.Closed => Closed,
        PhraseEnd.Complete => Complete,
        _ => Open,
    };

    /// <summary>Runs until the source ends or <paramref name="stop"/> is asked for.</summary>
    public async Task Run(IAudioSource source, CancellationToken stop)
    {
        try
        {
            await foreach (SpeechEvent noticed in cutter.Listen(source, stop).Where(noticed => source.IsLive || noticed is not SpeechEvent.Sound))
            {
                if (noticed is SpeechEvent.MaybeEnded pause)
                {
                    Task decided = HearAhead(pause.SoFar);

                    // A file has no silence of its own: it waits, so that the same words end in the same way as at a microphone.
                    await (source.IsLive ? Task.CompletedTask : decided);
                }
                else if (noticed is SpeechEvent.GoesOn going)
                {
                    // One at a time: while one is being searched, the next would only wait for it.
                    _call = _call.IsCompleted ? HearCall(going.Lately) : _call;
                    await (source.IsLive ? Task.CompletedTask : _call);
                }
                else if (InputOf(noticed, source.IsLive) is { } input)
                {
                    post(input);
                }
            }

            post(new Input.SoundEnded());
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // Asked for.
        }
        finally
        {
            TakeAhead()?.Forget();
        }
    }

    async Task HearAhead(SpeechClip soFar)
    {
        Expectation expectation = expected() with { Over = _over ?? saying?.Invoke() };
        HeardAhead ahead = HeardAhead.Begin(ear, soFar, expectation);
        _ahead = ahead;
        Phrase? phrase = await ahead.Phrase.ContinueWith(heard => heard.IsCompletedSuccessfully ? heard.Result : null, TaskScheduler.Default);

        // By now speech may have gone on, or another utterance may have begun: then this one says nothing about the silence any more.
        if (phrase is not null && ReferenceEquals(Volatile.Read(ref _ahead), ahead))
        {
            cutter.HangOver = SilenceAfter(phrase.Evidence.Words, expectation);
        }
    }

    /// <summary>
    /// Somebody calls for help while the tool speaks, or while others do: nobody waits for the end of it. A call that is in doubt is handed on once, and looked for further: the next stretch may show
    /// it clearly. Free speech tells of gas and fire without calling.
    /// </summary>
    async Task HearCall(SpeechClip lately)
    {
        if (lately.Start < _calledUpTo || expected().Dictation)
        {
            return;
        }

        string? over = _over ?? saying?.Invoke();
        HeardAhead call = HeardAhead.Begin(ear, lately, CallsOnly with { Over = over, IsCutShort = over is null && lately.IsCutShort });
        await call.Phrase.ContinueWith(_ => { }, TaskScheduler.Default);
        if (call.IsCall)
        {
            bool isInDoubt = call.Phrase.Result.Evidence.Certainty != Certainty.Green;
            if (isInDoubt && lately.Start < _askedUpTo)
            {
                return;
            }

            (_calledUpTo, _askedUpTo) = isInDoubt ? (_calledUpTo, lately.SpeechEnd) : (lately.SpeechEnd, _askedUpTo);
            post(new Input.Spoken(lately, call, over));
        }
    }

    HeardAhead? TakeAhead()
    {
        HeardAhead? ahead = _ahead;
        Volatile.Write(ref _ahead, null);
        return ahead;
    }

    Input? InputOf(SpeechEvent noticed, bool isLive)
    {
        switch (noticed)
        {
            case SpeechEvent.Ended { AsPaused: true } ended:
                return new Input.Spoken(ended.Clip, TakeAhead(), _over ?? saying?.Invoke());
            case SpeechEvent.Ended ended:
                TakeAhead()?.Forget();
                return new Input.Spoken(ended.Clip, null, _over ?? saying?.Invoke());
            case SpeechEvent.Resumed:
                TakeAhead()?.Forget();
                return null;
            case SpeechEvent.Refused refused:
                TakeAhead()?.Forget();
                return new Input.Unusable(refused.Why, _over);
            case SpeechEvent.Began:
                _over = saying?.Invoke();
                return new Input.SpeechBegan(isLive);
            case SpeechEvent.Sound sound:
                return new Input.Sound(sound.Level, sound.State, sound.Message);
            default:
                return null;
        }
    }
}
