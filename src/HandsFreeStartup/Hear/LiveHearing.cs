using System.Globalization;
using System.Threading.Channels;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Hear;

/// <summary>Asks a user to say phrases, and tells how well voice, microphone and room go together.</summary>
/// <param name="ear">Understands, as in a start-up.</param>
/// <param name="cutter">Finds the utterances.</param>
/// <param name="source">The microphone.</param>
/// <param name="clock">Bounds the wait for a phrase.</param>
/// <param name="output">Where prompts and verdict go.</param>
sealed class LiveHearing(IEar ear, SpeechCutter cutter, IAudioSource source, TimeProvider clock, TextWriter output)
{
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    readonly Channel<Input> _inputs = System.Threading.Channels.Channel.CreateUnbounded<Input>();

    /// <summary>Asks the first <paramref name="count"/> phrases.</summary>
    /// <returns>What became of each.</returns>
    public async Task<LiveResult> Run(int count, CancellationToken cancellation)
    {
        using CancellationTokenSource over = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        SoundPump pump = new(cutter, ear, () => LivePhrases.Expectation, input => _inputs.Writer.TryWrite(input));
        Task hearing = pump.Run(source, over.Token);
        LiveResult result = new(0, 0, 0, 0);
        foreach ((string words, string expected) in LivePhrases.All[..count])
        {
            await output.WriteLineAsync($"Say: {words}");
            result = result.With(await Next(cancellation) is { } heard ? await Tell(heard, expected) : null);
        }

        await over.CancelAsync();
        await hearing;
        await output.WriteLineAsync(result.Verdict);
        return result;
    }

    async Task<(bool Accepted, bool Right)?> Tell(Phrase phrase, string expected)
    {
        HearRow row = HearRow.Of(expected, phrase);
        await output.WriteLineAsync(
            row.Heard == HearRow.Nothing ? $"  not understood: {phrase.Evidence.Why}"
            : row.IsAccepted && !row.IsRight ? $"  WRONG, accepted as {row.Heard}"
            : row.IsRight ? row.IsAccepted ? "  right" : "  right, but it would be read back for a confirmation"
            : $"  heard as {row.Heard}, which would be read back for a confirmation");
        return (row.IsAccepted, row.IsRight);
    }

    /// <summary>The next utterance; null when none comes.</summary>
    async Task<Phrase?> Next(CancellationToken cancellation)
    {
        using CancellationTokenSource patience = new(Patience, clock);
        using CancellationTokenSource either = CancellationTokenSource.CreateLinkedTokenSource(patience.Token, cancellation);
        SoundState state = SoundState.Good;
        try
        {
            await foreach (Input input in _inputs.Reader.ReadAllAsync(either.Token))
            {
                switch (input)
                {
                    case Input.Spoken spoken:
                        return spoken.Ahead?.Under(LivePhrases.Expectation) ?? ear.Hear(spoken.Clip, LivePhrases.Expectation, cancellation);
                    case Input.Unusable { Why: not Refusal.TooShort } unusable:
                        return new Phrase.NotUnderstood(new Evidence("", Procedure.Hearing.Channel.Voice, Certainty.Red) { Why = StartupSession.Sentence(unusable.Why) });
                    case Input.Sound sound when sound.State != state:
                        state = sound.State;
                        await output.WriteLineAsync(sound.Message.Length > 0 ? $"! {sound.Message}" : "The sound is good again.");
                        break;
                }
            }
        }
        catch (OperationCanceledException) when (patience.IsCancellationRequested && !cancellation.IsCancellationRequested)
        {
            await output.WriteLineAsync("  nothing was heard");
        }

        return null;
    }
}

/// <summary>How well a user was heard.</summary>
/// <param name="Right">Right, without asking.</param>
/// <param name="Confirmed">Right after a confirmation.</param>
/// <param name="Again">To be said again, or not heard at all.</param>
/// <param name="Wrong">Something else was accepted.</param>
sealed record LiveResult(int Right, int Confirmed, int Again, int Wrong)
{
    int Asked => Right + Confirmed + Again + Wrong;

    /// <summary>One sentence. The limits are common practice, no source.</summary>
    public string Verdict =>
        $"{Share(Right)} right without asking, {Share(Confirmed)} to be confirmed, {Share(Again)} to be said again, {Share(Wrong)} WRONG. "
        + (Wrong > 0 ? "Not fit for work by voice: something wrong was accepted. Use another microphone, a quieter place, or the keys."
            : 6 * Right >= 5 * Asked ? "Fit for work."
            : 6 * (Right + Confirmed) >= 5 * Asked ? "Usable, but it will ask often; a headset helps."
            : "Not fit for work by voice. Use another microphone, a quieter place, or the keys.");

    /// <summary>Whether work by voice is not advised.</summary>
    public bool IsUnfit => Wrong > 0 || 6 * (Right + Confirmed) < 5 * Asked;

    /// <summary>With one phrase more; null where none was heard.</summary>
    public LiveResult With((bool Accepted, bool Right)? heard) => heard switch
    {
        (true, true) => this with { Right = Right + 1 },
        (true, false) => this with { Wrong = Wrong + 1 },
        (false, true) => this with { Confirmed = Confirmed + 1 },
        _ => this with { Again = Again + 1 },
    };

    string Share(int count) => string.Create(CultureInfo.InvariantCulture, $"{count} of {Asked}");
}
