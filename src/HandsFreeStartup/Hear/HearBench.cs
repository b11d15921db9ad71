using System.Collections.Immutable;
using System.Diagnostics;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Running;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Native;
using HandsFreeStartup.Speech.Recognising;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Hear;

/// <summary>Recogniser and detector, loaded to be measured.</summary>
/// <param name="recognizer">Is measured; disposed with this.</param>
/// <param name="detector">Finds speech; disposed with this.</param>
/// <param name="clock">Measures.</param>
/// <param name="startToListening">From the start of the process until both were ready.</param>
sealed class HearBench(WhisperRecogniser recognizer, SileroDetector detector, TimeProvider clock, TimeSpan startToListening) : IDisposable
{
    const int SilentFrames = 2_000;

    /// <summary>Finds speech.</summary>
    public SileroDetector Detector => detector;

    /// <summary>Loads the shipped models, or another recognizer.</summary>
    /// <param name="model">Path of another recognizer, or null.</param>
    /// <param name="ears">Number of recognizers, 1 or 2.</param>
    /// <param name="clock">Measures.</param>
    /// <exception cref="WrongUseException">Something cannot be loaded.</exception>
    public static HearBench Load(string? model, int ears, TimeProvider clock)
    {
        try
        {
            ModelFiles shipped = new(ShippedFiles.Models);
            WhisperRecogniser recognizer = WhisperRecogniser.Load([.. shipped.Recognisers(model, ears).Select(file => file.Path)], PhraseReader.AsksForMore, model is null ? shipped.Checked(ModelFiles.Dictation).Path : null);
            SileroDetector detector = SileroDetector.Load(shipped.Checked(ModelFiles.Detector).Path);
            using Process self = Process.GetCurrentProcess();
            return new HearBench(recognizer, detector, clock, clock.GetUtcNow() - self.StartTime.ToUniversalTime());
        }
        catch (Exception e) when (e is ModelFileException or RecogniserUnavailableException)
        {
            throw new WrongUseException(e.Message);
        }
    }

    /// <summary>Hears one recording.</summary>
    /// <param name="measured">Which.</param>
    /// <param name="sound">Its sound.</param>
    /// <param name="everyEar">Whether every recognizer is asked, whatever the first ones heard.</param>
    public (HearRow Row, Utterance Utterance) Measure(HearCase measured, float[] sound, bool everyEar)
    {
        recognizer.Prepare(measured.Expectation);
        long started = clock.GetTimestamp();
        Utterance utterance = everyEar ? recognizer.HearWithEveryEar(sound, measured.Expectation) : recognizer.Hear(sound, measured.Expectation);
        Phrase phrase = PhraseReader.Read(utterance, measured.Expectation);
        TimeSpan took = clock.GetElapsedTime(started);
        return (HearRow.Of(measured, utterance, phrase, took, (double)sound.Length / WavFile.Rate), utterance);
    }

    /// <summary>Hears one recording as a job hears its microphone.</summary>
    /// <param name="measured">Which.</param>
    /// <param name="sound">Its sound.</param>
    public Task<ImmutableArray<HearRow>> Stream(HearCase measured, float[] sound) => new StreamedHearing(recognizer, detector, clock).Measure(measured, sound);

    /// <summary>What the program has needed so far, and what the detector needs while nobody speaks.</summary>
    public HearNeeds Needs()
    {
        using Process self = Process.GetCurrentProcess();
        float[] silence = new float[AudioFrame.Length];
        detector.Forget();
        long started = clock.GetTimestamp();
        for (int i = 0; i < SilentFrames; i++)
        {
            detector.Probability(silence);
        }

        return new HearNeeds(
            startToListening.TotalMilliseconds, self.PeakWorkingSet64 / 1024.0 / 1024.0, clock.GetElapsedTime(started) / (SilentFrames * AudioFrame.Duration));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        recognizer.Dispose();
        detector.Dispose();
    }
}
