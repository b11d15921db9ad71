using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Running;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Native;
using HandsFreeStartup.Speech.Recognising;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Start;

/// <summary>Recogniser, certainty policy and speech detector, loaded and checked.</summary>
sealed class ListeningEar : IEar, IDisposable
{
    readonly IRecogniser _recogniser;
    readonly Lock _oneAtATime = new();
    bool _isGone;

    ListeningEar(IRecogniser recognizer, SileroDetector detector, string name) =>
        (_recogniser, Detector, Name) = (recognizer, detector, name);

    /// <summary>Finds speech.</summary>
    public SileroDetector Detector { get; }

    /// <summary>Model files with their hashes, as recorded with a job.</summary>
    public string Name { get; }

    /// <summary>Loads the recognizer and the detector.</summary>
    /// <param name="model">Path of another recognizer model, or null for the shipped ones.</param>
    /// <param name="ears">Number of recognizers, 1 or 2.</param>
    /// <param name="tell">Takes one sentence where something works, but not as it should.</param>
    /// <exception cref="ModelFileException">A model file is missing or wrong.</exception>
    /// <exception cref="RecogniserUnavailableException">Nothing can be heard on this machine.</exception>
    public static ListeningEar Load(string? model, int ears, Action<string> tell)
    {
        ModelFiles shipped = new(ShippedFiles.Models);
        ImmutableArray<ModelFile> models = shipped.Recognisers(model, ears);
        ModelFile detector = shipped.Checked(ModelFiles.Detector);
        ModelFile? dictation = model is null ? shipped.Checked(ModelFiles.Dictation) : null;
        string name = string.Join("; ", dictation is null ? models : models.Add(dictation));
        if (WhisperLibrary.Check() is { } problem)
        {
            tell($"{problem} Hearing goes on with free text; every reading must be confirmed.");
            return new ListeningEar(new PlainRecogniser(models[0].Path), SileroDetector.Load(detector.Path), name);
        }

        return new ListeningEar(WhisperRecogniser.Load([.. models.Select(model => model.Path)], PhraseReader.AsksForMore, dictation?.Path), SileroDetector.Load(detector.Path), name);
    }

    /// <inheritdoc/>
    /// <exception cref="OperationCanceledException">It is not wanted any more, or the ear is gone.</exception>
    public Phrase Hear(SpeechClip clip, Expectation expectation, CancellationToken cancellation = default)
    {
        lock (_oneAtATime)
        {
            if (_isGone)
            {
                throw new OperationCanceledException("The ear is gone.");
            }

            return PhraseReader.Read(_recogniser.Hear(clip.Samples, expectation, cancellation), expectation);
        }
    }

    /// <inheritdoc/>
    /// <remarks>What was understood ahead and is not waited for may be listening still: the native memory is not taken from under it.</remarks>
    public void Dispose()
    {
        lock (_oneAtATime)
        {
            if (!_isGone)
            {
                _isGone = true;
                _recogniser.Dispose();
                Detector.Dispose();
            }
        }
    }
}
