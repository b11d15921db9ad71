using HandsFreeStartup.Speech.Recognising;

namespace HandsFreeStartup.Speech.Tests.Support;

/// <summary>The shipped small model, loaded once for a class of tests.</summary>
public sealed class SmallModel : IDisposable
{
    internal WhisperModel Model { get; } = new(Shipped.Model(WhisperRecogniser.FirstModel), threads: 2);

    public void Dispose() => Model.Dispose();
}
