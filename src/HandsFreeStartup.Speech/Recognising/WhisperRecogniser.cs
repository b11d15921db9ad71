using System.Collections.Immutable;
using System.Runtime.ExceptionServices;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Native;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>
/// Hears with the shipped Whisper models under what may be said. The small English model listens first; where that is not enough, the larger one is asked, and the small
/// one again without a style. Each errs elsewhere.
/// </summary>
public sealed class WhisperRecogniser : IRecogniser
{
    /// <summary>File name of the small English model.</summary>
    public const string FirstModel = "ggml-tiny.en-q8_0.bin";

    /// <summary>File name of the larger model.</summary>
    public const string SecondModel = "ggml-base-q8_0.bin";

    /// <summary>
    /// With it the small model hears readings in noise far better: it shows how they are written. Its values are legal, but none that a furnace shows, so that no reading is
    /// made likelier than another.
    /// </summary>
    internal const string Style = "Oxygen 19.7. Carbon monoxide 3962. Manifold 14.3 inches. Draft minus 0.49. Flue temperature 871.";

    readonly ImmutableArray<WhisperModel> _models;
    readonly ImmutableArray<PhraseTries> _tries;
    readonly ImmutableArray<Ear> _ears;

    WhisperRecogniser(ImmutableArray<string> paths, int threads)
    {
        _models = [.. Task.WhenAll(paths.Select(path => Task.Run(() => new WhisperModel(path, threads)))).GetAwaiter().GetResult()];
        _tries = [.. _models.Select(model => new PhraseTries(model.Tokens))];
        IEnumerable<Ear> ears = paths.Select((path, i) => new Ear(_models[i], _tries[i], Path.GetFileNameWithoutExtension(path), i == 0 ? Style : ""));
        IEnumerable<Ear> again = paths.Length > 1 ? [new Ear(_models[0], _tries[0], $"{Path.GetFileNameWithoutExtension(paths[0])} without style")] : [];
        _ears = [.. ears, .. again];
    }

    /// <summary>Loads the models and hears a moment of silence, so that the first utterance is not slower than the others.</summary>
    /// <param name="models">The folder that holds them.</param>
    /// <param name="ears">1: the small model alone. 2: also the larger one.</param>
    /// <param name="threads">Processor threads; more than there are cores makes it slower.</param>
    /// <exception cref="RecogniserUnavailableException">The native library or a model cannot be used.</exception>
    public static WhisperRecogniser Load(string models, int ears = 2, int threads = 2) =>
        Load([.. ((string[])[FirstModel, SecondModel])[..ears].Select(file => Path.Combine(models, file))], threads);

    /// <summary>Loads the models named, the one that listens first at the front. Where there are several, the first is asked again without a style at the end.</summary>
    /// <param name="paths">Model files in the engine's format.</param>
    /// <param name="threads">Processor threads.</param>
    /// <exception cref="RecogniserUnavailableException">The native library or a model cannot be used.</exception>
    public static WhisperRecogniser Load(ImmutableArray<string> paths, int threads = 2)
    {
        WhisperRecogniser recogniser = new(paths, threads);
        recogniser.HearWithEveryEar(new float[16_000], Expectation.Open);
        return recogniser;
    }

    /// <inheritdoc/>
    public string Name => string.Join(" + ", _ears[.._models.Length].Select(ear => ear.Name));

    /// <summary>Builds what an expectation needs ahead of its first utterance.</summary>
    public void Prepare(Expectation expectation)
    {
        foreach (PhraseTries tries in _tries)
        {
            tries.Of(expectation);
        }
    }

    /// <inheritdoc/>
    public Utterance Hear(ReadOnlySpan<float> samples16k, Expectation expectation, CancellationToken cancellation = default)
    {
        Utterance alone = HearAlone(samples16k, expectation, cancellation);
        return _ears.Length > 1 && PhraseReader.WantsOtherEars(alone, expectation, CertaintyPolicy.Shipped) ? WithOtherEars(alone, samples16k, expectation, cancellation) : alone;
    }

    /// <summary>What was said, with the evidence of every ear whether it is needed or not: for measuring.</summary>
    /// <param name="samples16k">16 kHz mono samples between -1 and 1.</param>
    /// <param name="expectation">What may be said now.</param>
    public Utterance HearWithEveryEar(ReadOnlySpan<float> samples16k, Expectation expectation) =>
        WithOtherEars(HearAlone(samples16k, expectation, default), samples16k, expectation, default);

    Utterance HearAlone(ReadOnlySpan<float> samples16k, Expectation expectation, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        _models[0].Listen(samples16k);
        EarEvidence first = _ears[0].Hear(expectation, cancellation);
        return new Utterance([first], first.FreeText, SignalToNoise.Of(samples16k));
    }

    /// <summary>The other models take the sound in one after the other with every thread; then each model decodes with one thread, all at once.</summary>
    Utterance WithOtherEars(Utterance alone, ReadOnlySpan<float> samples16k, Expectation expectation, CancellationToken cancellation)
    {
        foreach (WhisperModel model in _models.Skip(1))
        {
            cancellation.ThrowIfCancellationRequested();
            model.Listen(samples16k);
        }

        EarEvidence[] heard = [alone.Ears[0], .. new EarEvidence[_ears.Length - 1]];
        try
        {
            Parallel.ForEach(Enumerable.Range(1, _ears.Length - 1).GroupBy(i => _ears[i].Model), ears =>
            {
                foreach (int i in ears)
                {
                    heard[i] = _ears[i].Hear(expectation, cancellation);
                }
            });
        }
        catch (AggregateException failed)
        {
            ExceptionDispatchInfo.Throw(failed.InnerExceptions[0]);
        }

        return alone with { Ears = [.. heard] };
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (WhisperModel model in _models)
        {
            model.Dispose();
        }
    }
}
