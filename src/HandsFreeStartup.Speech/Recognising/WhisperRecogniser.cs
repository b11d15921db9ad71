using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Native;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>What is to be done before a sound is decided upon.</summary>
public enum Wanted
{
    /// <summary>Nothing: what was heard is enough, or more would not help.</summary>
    Nothing,

    /// <summary>The other ears listen too.</summary>
    OtherEars,

    /// <summary>All ears listen to the same sound once more, changed a little.</summary>
    AnotherHearing,
}

/// <summary>What else is wanted after what was heard. Decoding knows nothing of deciding; who decides asks through this.</summary>
/// <param name="heard">The evidence so far.</param>
/// <param name="expectation">What could be said.</param>
public delegate Wanted AsksForMore(Utterance heard, Expectation expectation);

/// <summary>
/// Hears with the shipped Whisper models under what may be said. The small model, trained for readings in noise, listens first; where that is not enough the larger one is asked, which was
/// trained on other noises and errs elsewhere. A call for help that is not clear is heard again as <see cref="ChangedSound"/>. Free speech is heard by the larger model as it was before the training.
/// </summary>
public sealed class WhisperRecogniser : IRecogniser
{
    /// <summary>File name of the small English model.</summary>
    public const string FirstModel = "ggml-tiny.en-readings-q8_0.bin";

    /// <summary>File name of the larger model.</summary>
    public const string SecondModel = "ggml-base-readings-q8_0.bin";

    /// <summary>File name of the model for free speech.</summary>
    public const string DictationModel = "ggml-base-q8_0.bin";

    readonly ImmutableArray<Ear> _ears;
    readonly Lazy<Ear> _dictation;
    readonly AsksForMore _asks;

    WhisperRecogniser(ImmutableArray<string> paths, string? dictation, int threads, AsksForMore asks)
    {
        _asks = asks;
        _ears = [.. Task.WhenAll(paths.Select(path => Task.Run(() => Open(path, threads)))).GetAwaiter().GetResult()];
        _dictation = new(() => dictation is null ? _ears[0] : Open(dictation, threads));
    }

    static Ear Open(string path, int threads) => new(new WhisperModel(path, threads), Path.GetFileNameWithoutExtension(path));

    /// <summary>Loads the models and hears a moment of silence, so that the first utterance is not slower than the others.</summary>
    /// <param name="models">The folder that holds them.</param>
    /// <param name="asks">What the decision wants further.</param>
    /// <param name="ears">1: the small model alone. 2: also the larger one.</param>
    /// <param name="threads">Processor threads; more than there are cores makes it slower.</param>
    /// <exception cref="RecogniserUnavailableException">The native library or a model cannot be used.</exception>
    public static WhisperRecogniser Load(string models, AsksForMore asks, int ears = 2, int threads = 2) =>
        Load([.. ((string[])[FirstModel, SecondModel])[..ears].Select(file => Path.Combine(models, file))], asks, Path.Combine(models, DictationModel), threads);

    /// <summary>Loads the models named, the one that listens first at the front.</summary>
    /// <param name="paths">Model files in the engine's format.</param>
    /// <param name="asks">What the decision wants further.</param>
    /// <param name="dictation">The model for free speech, loaded when it is first needed; null for the first of the others.</param>
    /// <param name="threads">Processor threads.</param>
    /// <exception cref="RecogniserUnavailableException">The native library or a model cannot be used.</exception>
    public static WhisperRecogniser Load(ImmutableArray<string> paths, AsksForMore asks, string? dictation = null, int threads = 2)
    {
        WhisperRecogniser recognizer = new(paths, dictation, threads, asks);
        recognizer.HearWithEveryEar(new float[16_000], Expectation.Open);
        return recognizer;
    }

    /// <inheritdoc/>
    public string Name => string.Join(" + ", _ears.Select(ear => ear.Name));

    /// <summary>Builds what an expectation needs ahead of its first utterance.</summary>
    public void Prepare(Expectation expectation)
    {
        foreach (Ear ear in _ears)
        {
            ear.Prepare(expectation);
        }
    }

    /// <inheritdoc/>
    public Utterance Hear(ReadOnlySpan<float> samples16k, Expectation expectation, CancellationToken cancellation = default)
    {
        Utterance heard = HearAlone(samples16k, expectation, cancellation);
        return expectation.Dictation ? heard with { FreeText = Dictated(samples16k) } : WithAllThatIsWanted(heard, samples16k, expectation, cancellation);
    }

    Utterance WithAllThatIsWanted(Utterance heard, ReadOnlySpan<float> samples16k, Expectation expectation, CancellationToken cancellation)
    {
        while (Further(heard, samples16k, expectation, cancellation) is { } further)
        {
            heard = further;
        }

        return heard;
    }

    /// <summary>What was heard, with what else the decision wants; null where it wants nothing that can be had.</summary>
    Utterance? Further(Utterance heard, ReadOnlySpan<float> samples16k, Expectation expectation, CancellationToken cancellation) => _asks(heard, expectation) switch
    {
        Wanted.OtherEars when heard.Ears.Length < _ears.Length => WithOtherEars(heard, samples16k, expectation, cancellation),
        Wanted.AnotherHearing when heard.Again.Length < ChangedSound.Ways =>
            heard with { Again = heard.Again.Add(HearBy(_ears.AsSpan(), ChangedSound.Of(samples16k, heard.Again.Length), expectation, cancellation)) },
        _ => null,
    };

    /// <summary>What was said, with the evidence of every ear whether it is needed or not, and what else the decision wants: for measuring.</summary>
    /// <param name="samples16k">16 kHz mono samples between -1 and 1.</param>
    /// <param name="expectation">What may be said now.</param>
    public Utterance HearWithEveryEar(ReadOnlySpan<float> samples16k, Expectation expectation) =>
        WithAllThatIsWanted(WithOtherEars(HearAlone(samples16k, expectation, default), samples16k, expectation, default), samples16k, expectation, default);

    Utterance HearAlone(ReadOnlySpan<float> samples16k, Expectation expectation, CancellationToken cancellation)
    {
        EarEvidence first = HearBy(_ears[0], samples16k, expectation, cancellation);
        return new Utterance([first], first.FreeText, SignalToNoise.Of(samples16k)) { NoiseSpread = NoiseSpread.Of(samples16k) };
    }

    Utterance WithOtherEars(Utterance alone, ReadOnlySpan<float> samples16k, Expectation expectation, CancellationToken cancellation) =>
        alone with { Ears = [.. alone.Ears, .. HearBy(_ears.AsSpan()[1..], samples16k, expectation, cancellation)] };

    static ImmutableArray<EarEvidence> HearBy(ReadOnlySpan<Ear> ears, ReadOnlySpan<float> samples16k, Expectation expectation, CancellationToken cancellation)
    {
        ImmutableArray<EarEvidence> heard = [];
        foreach (Ear ear in ears)
        {
            heard = heard.Add(HearBy(ear, samples16k, expectation, cancellation));
        }

        return heard;
    }

    static EarEvidence HearBy(Ear ear, ReadOnlySpan<float> samples16k, Expectation expectation, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        ear.Model.Listen(samples16k);
        return ear.Hear(expectation, cancellation);
    }

    string Dictated(ReadOnlySpan<float> samples16k)
    {
        _dictation.Value.Model.Listen(samples16k);
        return _dictation.Value.Dictation();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (Ear ear in _ears)
        {
            ear.Model.Dispose();
        }

        if (_dictation.IsValueCreated && !_ears.Contains(_dictation.Value))
        {
            _dictation.Value.Model.Dispose();
        }
    }
}
