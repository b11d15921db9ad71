using HandsFreeStartup.Speech.Native;

namespace HandsFreeStartup.Speech.Listening;

/// <summary>The Silero voice-activity model, run frame by frame by the native library; it remembers from frame to frame.</summary>
public sealed unsafe class SileroDetector : ISpeechDetector, IDisposable
{
    nint _native;

    SileroDetector(nint native) => _native = native;

    /// <summary>Loads the model.</summary>
    /// <param name="modelPath">The detector's model file.</param>
    /// <exception cref="RecogniserUnavailableException">The native library or the model cannot be used.</exception>
    public static SileroDetector Load(string modelPath)
    {
        WhisperLibrary.Require();
        // One thread: a frame costs less than waking a second one, and the recognizer needs the cores.
        VadContextParams parameters = WhisperNative.VadDefaultContextParams() with { Threads = 1, UseGpu = 0 };
        nint native = File.Exists(modelPath) ? WhisperNative.VadInitFromFile(modelPath, parameters) : 0;
        if (native == 0)
        {
            throw new RecogniserUnavailableException($"The speech detector's model {modelPath} cannot be loaded: put the shipped file back in its place, or use the keys.");
        }

        // The native library leaves the memory of a new detector unset: without this, chance decides the first seconds, and not-a-number all of them.
        WhisperNative.VadResetState(native);
        return new SileroDetector(native);
    }

    /// <summary>Makes what comes next the beginning of another sound.</summary>
    public void Forget()
    {
        ObjectDisposedException.ThrowIf(_native == 0, this);
        WhisperNative.VadResetState(_native);
    }

    /// <inheritdoc/>
    /// <remarks>A frame that the native library fails on counts as speech, so that no utterance is ended by a fault.</remarks>
    public float Probability(ReadOnlySpan<float> frame)
    {
        ObjectDisposedException.ThrowIf(_native == 0, this);
        fixed (float* samples = frame)
        {
            bool worked = WhisperNative.VadDetectSpeechNoReset(_native, samples, frame.Length) != 0 && WhisperNative.VadProbabilityCount(_native) > 0;
            return worked ? WhisperNative.VadProbabilities(_native)[0] : 1;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_native != 0)
        {
            WhisperNative.VadFree(_native);
            _native = 0;
        }
    }
}
