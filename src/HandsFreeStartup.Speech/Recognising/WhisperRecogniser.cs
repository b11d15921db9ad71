using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Native;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>Hears with the shipped Whisper models under what may be said. The small English model listens first; the larger one is asked when that is not enough.</summary>
public sealed class WhisperRecogniser : IRecogniser
{
    /// <summary>File name of the small English model.</summary>
    public const string FirstModel = "ggml-tiny.en-q8_0.bin";

    /// <summary>File name of the larger model.</summary>
    public const string SecondModel = "ggml-base-q8_0.bin";

    const int MostDecodes = 32;

    readonly ImmutableArray<Ear> _ears;

    WhisperRecogniser(ImmutableArray<Ear> ears) => _ears = ears;

    /// <summary>Loads the models and hears a moment of silence, so that the first utterance is not slower than the others.</summary>
    /// <param name="models">The folder that holds them.</param>
    /// <param name="ears">1: the small model alone. 2: also the larger one.</param>
    /// <param name="threads">Processor threads; more than there are cores makes it slower.</param>
    /// <exception cref="RecogniserUnavailableException">The native library or a model cannot be used.</exception>
    public static WhisperRecogniser Load(string models, int ears = 2, int threads = 2) =>
        Load([.. ((string[])[FirstModel, SecondModel])[..ears].Select(file => Path.Combine(models, file))], threads);

    /// <summary>Loads the models named, the one that listens first at the front.</summary>
    /// <param name="paths">Model files in the engine's format.</param>
    /// <param name="threads">Processor threads.</param>
    /// <exception cref="RecogniserUnavailableException">The native library or a model cannot be used.</exception>
    public static WhisperRecogniser Load(ImmutableArray<string> paths, int threads = 2)
    {
        WhisperRecogniser recogniser = new([.. paths.Select(path => new Ear(new WhisperModel(path, threads), Path.GetFileNameWithoutExtension(path), MostDecodes))]);
        foreach (Ear ear in recogniser._ears)
        {
            ear.Hear(new float[16_000], Expectation.Open);
        }

        return recogniser;
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
        cancellation.ThrowIfCancellationRequested();
        EarEvidence first = _ears[0].Hear(samples16k, expectation, cancellation);
        Utterance utterance = new([first], first.FreeText, VoicedTime.Of(samples16k));
        foreach (Ear ear in _ears.Skip(1))
        {
            cancellation.ThrowIfCancellationRequested();
            if (PhraseReader.WantsAnotherEar(utterance, expectation))
            {
                utterance = utterance with { Ears = utterance.Ears.Add(ear.Hear(samples16k, expectation, cancellation)) };
            }
        }

        return utterance;
    }

    /// <summary>What was said, with the evidence of every ear whether it is needed or not: for measuring.</summary>
    /// <param name="samples16k">16 kHz mono samples between -1 and 1.</param>
    /// <param name="expectation">What may be said now.</param>
    public Utterance HearWithEveryEar(ReadOnlySpan<float> samples16k, Expectation expectation)
    {
        ImmutableArray<EarEvidence>.Builder heard = ImmutableArray.CreateBuilder<EarEvidence>(_ears.Length);
        foreach (Ear ear in _ears)
        {
            heard.Add(ear.Hear(samples16k, expectation));
        }

        return new Utterance(heard.ToImmutable(), heard[0].FreeText, VoicedTime.Of(samples16k));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (Ear ear in _ears)
        {
            ear.Dispose();
        }
    }
}
