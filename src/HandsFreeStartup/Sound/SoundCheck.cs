using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Speaking;

namespace HandsFreeStartup.Sound;

/// <summary>Listens to the room, to the technician and to the tool's own voice, and says what it found.</summary>
/// <param name="source">The microphone.</param>
/// <param name="voice">The tool's voice.</param>
/// <param name="clock">Bounds the wait for a microphone that gives nothing.</param>
/// <param name="output">Where the sentences go.</param>
public sealed class SoundCheck(IAudioSource source, IVoice voice, TimeProvider clock, TextWriter output)
{
    static readonly TimeSpan Settling = TimeSpan.FromSeconds(1.5);
    static readonly TimeSpan Quiet = TimeSpan.FromSeconds(3);
    static readonly TimeSpan Spoken = TimeSpan.FromSeconds(5);
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    /// <summary>A player may end before the last of its sound has left the loudspeaker and come back.</summary>
    static readonly TimeSpan Late = TimeSpan.FromSeconds(0.6);

    const string Example = "This is the voice of the tool. Oxygen seven point six percent.";

    int _problems;

    /// <summary>How the microphone hears the voice; null where that could not be tried.</summary>
    public Echo? HearsVoice { get; private set; }

    /// <summary>The echo of the voice, dBFS; null where there is none to be heard.</summary>
    public readonly record struct Echo(double? Level);

    /// <summary>Runs the check.</summary>
    /// <returns>How many problems were found.</returns>
    public async Task<int> Run(CancellationToken cancellation)
    {
        await using IAsyncEnumerator<AudioFrame> frames = source.Frames(cancellation).GetAsyncEnumerator(cancellation);
        await Say($"Keep quiet for {Quiet.TotalSeconds:0} seconds ...");
        List<AudioFrame> quiet = await Listen(frames, Quiet);
        double? noise = SoundFindings.Noise(quiet);
        SoundFinding? fault = SoundFindings.Fault(quiet);
        await Tell(fault);
        if (noise is { } floor)
        {
            await Say($"Noise: {SoundFindings.Whole(floor)} dBFS.");
            await Say("Now say, as you will at work: oxygen seven point six");
            List<AudioFrame> spoken = await Listen(frames, Spoken);
            await Tell(SoundFindings.Fault(spoken) is { } later && later != fault ? later : null);
            await Tell(SoundFindings.Speech(spoken, floor));
        }

        await CheckSpeaker(frames, noise, cancellation);
        await Say(_problems == 0 ? "The sound is ready." : _problems == 1 ? "One thing to put right." : $"{_problems} things to put right.");
        return _problems;
    }

    async Task CheckSpeaker(IAsyncEnumerator<AudioFrame> frames, double? noise, CancellationToken cancellation)
    {
        if (voice is SilentVoice)
        {
            await Say("Speaker: no voice is installed (espeak-ng) or it was switched off; messages are only shown.");
            return;
        }

        await Say("Listen to the tool's voice ...");
        List<AudioFrame> during = await During(frames, noise is not null, cancellation);
        string trouble = (voice as SynthesizedVoice)?.Trouble ?? "";
        HearsVoice = noise is { } floor && trouble.Length == 0 ? new Echo(SoundFindings.Outstanding(during, floor)) : null;
        await Tell(SoundFindings.Speaker(during, noise, trouble));
    }

    /// <summary>How loud the microphone hears the voice, dBFS, without a word on the screen; null where it does not.</summary>
    public async Task<double?> EchoOf(CancellationToken cancellation)
    {
        await using IAsyncEnumerator<AudioFrame> frames = source.Frames(cancellation).GetAsyncEnumerator(cancellation);
        double? noise = SoundFindings.Noise(await Listen(frames, Settling));
        List<AudioFrame> during = await During(frames, noise is not null, cancellation);
        return noise is { } floor ? SoundFindings.Outstanding(during, floor) : null;
    }

    async Task<List<AudioFrame>> During(IAsyncEnumerator<AudioFrame> frames, bool hears, CancellationToken cancellation)
    {
        Task said = voice.Say(Example, cancellation).AsTask();
        List<AudioFrame> during = [];
        while (!said.IsCompleted && hears && await frames.MoveNextAsync())
        {
            during.Add(frames.Current);
        }

        await said;
        return hears ? [.. during, .. await Listen(frames, Late)] : during;
    }

    async Task<List<AudioFrame>> Listen(IAsyncEnumerator<AudioFrame> frames, TimeSpan span)
    {
        long began = clock.GetTimestamp();
        List<AudioFrame> heard = [];
        int wanted = (int)(span / AudioFrame.Duration);
        while (heard.Count(frame => !frame.Samples.IsEmpty) < wanted && clock.GetElapsedTime(began) < span + Patience && await frames.MoveNextAsync())
        {
            heard.Add(frames.Current);
        }

        return heard;
    }

    Task Say(string sentence) => output.WriteLineAsync(sentence);

    async Task Tell(SoundFinding? finding)
    {
        if (finding is not null)
        {
            _problems += finding.IsProblem ? 1 : 0;
            await Say(finding.IsProblem ? $"! {finding.Sentence}" : finding.Sentence);
        }
    }
}
