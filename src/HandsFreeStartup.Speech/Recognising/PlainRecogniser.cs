using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Native;
using Whisper.net;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>The fallback where the native self-test fails: free text by Whisper.net's public interface. Without scores it is never sure of anything.</summary>
public sealed class PlainRecogniser : IRecogniser
{
    readonly WhisperFactory _factory;

    /// <summary>Loads a model.</summary>
    /// <param name="path">In the engine's format.</param>
    /// <exception cref="RecogniserUnavailableException">It cannot be used on this machine.</exception>
    public PlainRecogniser(string path)
    {
        try
        {
            _factory = WhisperFactory.FromPath(path, new WhisperFactoryOptions { UseGpu = false, UseFlashAttention = true });
        }
        catch (Exception e) when (e is WhisperModelLoadException or DllNotFoundException or PlatformNotSupportedException or FileNotFoundException)
        {
            throw new RecogniserUnavailableException($"The speech recognizer cannot be used on this machine ({e.Message}); use the keys.");
        }

        Name = Path.GetFileNameWithoutExtension(path) + ", free text";
    }

    /// <inheritdoc/>
    public string Name { get; }

    /// <inheritdoc/>
    public Utterance Hear(ReadOnlySpan<float> samples16k, Expectation expectation, CancellationToken cancellation = default)
    {
        cancellation.ThrowIfCancellationRequested();
        float[] padded = new float[Math.Max(18_000, samples16k.Length + 6_400)];
        samples16k.CopyTo(padded.AsSpan(1_600));
        List<string> texts = [];
        void Keep(SegmentData segment) => texts.Add(segment.Text.Trim());
        using WhisperProcessor processor = _factory.CreateBuilder().WithLanguage("en").WithThreads(2).WithNoContext().WithSingleSegment().WithSegmentEventHandler(Keep).Build();
        processor.Process(padded);
        return new Utterance([], string.Join(' ', texts), SignalToNoise.Of(samples16k));
    }

    /// <inheritdoc/>
    public void Dispose() => _factory.Dispose();
}
