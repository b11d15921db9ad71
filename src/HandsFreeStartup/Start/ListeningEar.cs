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

    ListeningEar(IRecogniser recogniser, SileroDetector detector, string name) =>
        (_recogniser, Detector, Name) = (recogniser, detector, name);

    /// <summary>Finds speech.</summary>
    public SileroDetector Detector { get; }

    /// <summary>Model files with their hashes, as recorded with a job.</summary>
    public string Name { get; }

    /// <summary>Loads what the options ask for.</summary>
    /// <param name="options">Which models.</param>
    /// <param name="tell">Takes one sentence where something works, but not as it should.</param>
    /// <exception cref="ModelFileException">A model file is missing or wrong.</exception>
    /// <exception cref="RecogniserUnavailableException">Nothing can be heard on this machine.</exception>
    public static ListeningEar Load(StartOptions options, Action<string> tell)
    {
        ModelFiles shipped = new(ShippedFiles.Models);
        ImmutableArray<ModelFile> models = options.Model is { } own ? [ModelFiles.Unlisted(own)]
            : options.Ears == 2 ? [shipped.Checked(ModelFiles.Small), shipped.Checked(ModelFiles.Large)]
            : [shipped.Checked(ModelFiles.Small)];
        ModelFile detector = shipped.Checked(ModelFiles.Detector);
        string name = string.Join("; ", models);
        if (WhisperLibrary.Check() is { } problem)
        {
            tell($"{problem} Hearing goes on with free text; every reading must be confirmed.");
            return new ListeningEar(new PlainRecogniser(models[0].Path), SileroDetector.Load(detector.Path), name);
        }

        return new ListeningEar(WhisperRecogniser.Load([.. models.Select(model => model.Path)]), SileroDetector.Load(detector.Path), name);
    }

    /// <inheritdoc/>
    public Phrase Hear(SpeechClip clip, Expectation expectation) => PhraseReader.Read(_recogniser.Hear(clip.Samples, expectation), expectation);

    /// <inheritdoc/>
    public void Dispose()
    {
        _recogniser.Dispose();
        Detector.Dispose();
    }
}
