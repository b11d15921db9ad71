using System.Runtime.CompilerServices;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Speech.Tests.Support;

/// <summary>Takes the first sample of a frame for the probability of speech.</summary>
public sealed class ScriptedDetector : ISpeechDetector
{
    public float Probability(ReadOnlySpan<float> frame) => frame[0];
}

/// <summary>A stream written as text: one letter a frame of 32 ms. S speech, q quiet, m in between, L sound lost, W wrong rate, space ignored.</summary>
public static class Scripted
{
    public static IEnumerable<AudioFrame> Frames(string script, long from = 0)
    {
        long position = from;
        foreach (char letter in script.Where(letter => letter != ' '))
        {
            if (letter == 'L')
            {
                yield return new AudioFrame(position, default, SoundState.Lost, "lost");
                continue;
            }

            float[] samples = new float[AudioFrame.Length];
            Array.Fill(samples, letter switch { 'S' => 0.9f, 'm' => 0.4f, _ => 0.1f });
            yield return new AudioFrame(position, samples, letter == 'W' ? SoundState.WrongRate : SoundState.Good);
            position += AudioFrame.Length;
        }
    }

    public static long Frame(int index) => (long)index * AudioFrame.Length;
}

/// <summary>A live source made of given frames.</summary>
public sealed class GivenFrames(IEnumerable<AudioFrame> frames, bool live = true) : IAudioSource
{
    public bool IsLive => live;

    public async IAsyncEnumerable<AudioFrame> Frames([EnumeratorCancellation] CancellationToken cancellation)
    {
        foreach (AudioFrame frame in frames)
        {
            await Task.Yield();
            cancellation.ThrowIfCancellationRequested();
            yield return frame;
        }
    }
}
