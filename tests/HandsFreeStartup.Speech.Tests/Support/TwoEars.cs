using HandsFreeStartup.Speech.Recognising;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Speech.Tests.Support;

/// <summary>The recognizer with the shipped models, loaded once for a class of tests.</summary>
public sealed class TwoEars : IDisposable
{
    public WhisperRecogniser Recogniser { get; } = WhisperRecogniser.Load(Path.GetDirectoryName(Shipped.DetectorModel)!, PhraseReader.AsksForMore);

    public void Dispose() => Recogniser.Dispose();
}
