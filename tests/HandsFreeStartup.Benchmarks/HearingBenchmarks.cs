using BenchmarkDotNet.Attributes;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Recognising;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Benchmarks;

/// <summary>What hearing costs beside the bare encoder of the small model: the detector and the cutter for each frame of 32 ms (target: 2 % of a core), the decoder for each utterance, the choice of the silence.</summary>
[MemoryDiagnoser]
public class HearingBenchmarks
{
    static readonly string Root = Above(AppContext.BaseDirectory);

    readonly float[] _silence = new float[AudioFrame.Length];
    SileroDetector _detector = null!;
    SpeechCutter _cutter = null!;
    WhisperModel _bare = null!;
    WhisperRecogniser _oneEar = null!;
    WhisperRecogniser _twoEars = null!;
    float[] _reading = null!;
    long _position;

    /// <summary>Loads the shipped models.</summary>
    [GlobalSetup]
    public void Load()
    {
        string models = Path.Combine(Root, "models");
        _detector = SileroDetector.Load(Path.Combine(models, "ggml-silero-v6.2.3.bin"));
        _cutter = new SpeechCutter(_detector);
        _bare = new WhisperModel(Path.Combine(models, WhisperRecogniser.FirstModel), 2);
        _oneEar = WhisperRecogniser.Load(models, PhraseReader.AsksForMore, ears: 1);
        _twoEars = WhisperRecogniser.Load(models, PhraseReader.AsksForMore, ears: 2);
        _reading = WavFile.Read(Path.Combine(Root, "tests", "HandsFreeStartup.Speech.Tests", "Recordings", "oxygen_seven_point_six.wav"));
    }

    /// <summary>Gives the models back.</summary>
    [GlobalCleanup]
    public void Unload()
    {
        _detector.Dispose();
        _bare.Dispose();
        _oneEar.Dispose();
        _twoEars.Dispose();
    }

    /// <summary>The detector, one frame.</summary>
    [Benchmark]
    public float DetectorFrame() => _detector.Probability(_silence);

    /// <summary>Cutter with detector, one frame.</summary>
    [Benchmark]
    public int CutterFrame()
    {
        int events = _cutter.Hear(new AudioFrame(_position, _silence)).Count;
        _position += AudioFrame.Length;
        return events;
    }

    /// <summary>The reading taken in by the small model, before a word of it is looked for.</summary>
    [Benchmark(Baseline = true)]
    public void BareEncoder() => _bare.Listen(_reading);

    /// <summary>A reading, the small model alone, under everything that may be said.</summary>
    [Benchmark]
    public Utterance OneEar() => _oneEar.Hear(_reading, Expectation.Open);

    /// <summary>The same, with both models.</summary>
    [Benchmark]
    public Utterance TwoEars() => _twoEars.HearWithEveryEar(_reading, Expectation.Open);

    /// <summary>How long a silence ends the words.</summary>
    [Benchmark]
    public PhraseEnd End() => PhraseEnds.Of("flue temperature 328", Expectation.Open);

    static string Above(string folder) =>
        File.Exists(Path.Combine(folder, "HandsFreeStartup.sln")) ? folder
        : Path.GetDirectoryName(folder) is { } parent ? Above(parent)
        : throw new DirectoryNotFoundException("The benchmarks run from a folder inside the repository.");
}
