using System.Globalization;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Sound;

/// <summary>One sentence of the sound check.</summary>
/// <param name="IsProblem">Whether it must be put right before the job.</param>
/// <param name="Sentence">For the technician.</param>
public sealed record SoundFinding(bool IsProblem, string Sentence);

/// <summary>What the frames of a sound check mean. The limits are common practice, no source.</summary>
public static class SoundFindings
{
    /// <summary>Speech that stands less above the noise is asked for again so often that the keys are quicker, in dB.</summary>
    const double Poor = 9;

    /// <summary>Speech that stands further above the noise is heard well, in dB.</summary>
    const double Good = 15;

    /// <summary>Speech below it is too faint for the samples of 16 bits to be used well, in dBFS.</summary>
    const double Faint = -50;

    /// <summary>A sound above the noise by this much is a sound of its own, in dB.</summary>
    const double Apart = 6;

    /// <summary>Frames that a short word lasts.</summary>
    const int FramesOfAWord = 6;

    /// <summary>Level of the noise: the median frame, in dBFS; null without sound.</summary>
    public static double? Noise(IReadOnlyList<AudioFrame> quiet) => Percentile([.. quiet.Where(HasSound).Select(frame => frame.Level)], 0.5);

    /// <summary>Level of what stands out of the noise: the 80th percentile of its frames, in dBFS; null when there is less than a word of it.</summary>
    public static double? Outstanding(IReadOnlyList<AudioFrame> frames, double noise)
    {
        double[] loud = [.. frames.Where(HasSound).Select(frame => frame.Level).Where(level => level > noise + Apart)];
        return loud.Length >= FramesOfAWord ? Percentile(loud, 0.8) : null;
    }

    /// <summary>What is wrong with the microphone itself: the worst state that was seen, or nothing.</summary>
    public static SoundFinding? Fault(IReadOnlyList<AudioFrame> frames)
    {
        // A sound server may need a moment for its first sound; what was lost only before that is no fault.
        IEnumerable<AudioFrame> after = frames.Any(HasSound) ? frames.SkipWhile(frame => !HasSound(frame)) : frames;
        AudioFrame? worst = after.Where(frame => frame.State != SoundState.Good).MaxBy(frame => frame.State);
        return worst is null ? frames.Count > 0 ? null : new SoundFinding(true, "No sound came from the microphone.") : new SoundFinding(true, worst.Message);
    }

    /// <summary>Whether speech will be understood in this noise.</summary>
    /// <param name="spoken">Frames in which the technician was asked to speak.</param>
    /// <param name="noise">In dBFS.</param>
    public static SoundFinding Speech(IReadOnlyList<AudioFrame> spoken, double noise)
    {
        if (Outstanding(spoken, noise) is not { } level)
        {
            return new SoundFinding(true, "Speech: nothing stood out of the noise; speak up, bring the microphone nearer, or use the keys.");
        }

        double above = level - noise;
        string measured = $"Speech: {Whole(level)} dBFS, {Whole(above)} dB above the noise";
        return (level < Faint, above) switch
        {
            (_, < Poor) => new SoundFinding(true, $"{measured}: too little; bring the microphone nearer or use a headset."),
            (true, _) => new SoundFinding(true, $"{measured}, but faint: turn the microphone's level up."),
            (_, < Good) => new SoundFinding(false, $"{measured}: enough, but expect to be asked again at times; a headset helps."),
            _ => new SoundFinding(false, $"{measured}: good."),
        };
    }

    /// <summary>Whether the microphone hears the tool's own voice.</summary>
    /// <param name="during">Frames from while the tool spoke.</param>
    /// <param name="noise">In dBFS; null when the microphone gave nothing.</param>
    /// <param name="trouble">Why the voice failed; empty when it spoke.</param>
    public static SoundFinding Speaker(IReadOnlyList<AudioFrame> during, double? noise, string trouble) =>
        trouble.Length > 0 ? new SoundFinding(true, trouble)
        : noise is { } floor && Outstanding(during, floor) is { } level
            ? new SoundFinding(false, $"Speaker: the microphone hears it at {Whole(level)} dBFS; a headset avoids that.")
        : new SoundFinding(false, "Speaker: a message was played and the microphone did not hear it: right for a headset; if you did not hear it either, check the speaker.");

    /// <summary>A level without decimals; they would mean nothing.</summary>
    public static string Whole(double level) => Math.Round(level).ToString(CultureInfo.InvariantCulture);

    static bool HasSound(AudioFrame frame) => !frame.Samples.IsEmpty;

    static double? Percentile(double[] levels, double part)
    {
        Array.Sort(levels);
        return levels.Length == 0 ? null : levels[(int)(part * (levels.Length - 1))];
    }
}
