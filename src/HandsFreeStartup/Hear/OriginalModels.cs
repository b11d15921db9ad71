using System.Collections.Immutable;

namespace HandsFreeStartup.Hear;

/// <summary>What the original models reached, so that the gain of the trained ones stays visible.</summary>
/// <param name="Recordings">Whose voices, in which noise; not the recordings of the measurement beside which it is printed.</param>
/// <param name="RightPercent">Right and accepted without asking, in percent of what was said.</param>
/// <param name="WrongAccepted">Accepted without asking, and wrong; null where it was not kept.</param>
sealed record OriginalFigure(string Recordings, double RightPercent, int? WrongAccepted);

/// <summary>The original models: their figures, measured once, and the hashes by which the files are known. The files themselves are not needed.</summary>
static class OriginalModels
{
    /// <summary>SHA-256 of ggml-tiny.en-q8_0.bin and of ggml-base-q8_0.bin, together the original ears.</summary>
    public static ImmutableArray<string> Hashes { get; } =
        ["b00b1b94c41573e568df970859c84cb7a42ab38b7592a19a52b525e17f2f930c", "b59583f47eb9bd7df2778aa10a95abfd04b5808969d421c19364b98e30bd335c"];

    /// <summary>Measured with the policy that was fitted to them.</summary>
    public static ImmutableArray<OriginalFigure> Figures { get; } =
    [
        new("strange synthetic voices, clean", 94.0, 0),
        new("strange synthetic voices, blower 10 dB", 86.8, 0),
        new("strange synthetic voices, blower 5 dB", 71.6, 0),
        new("strange synthetic voices, recorded kitchen 5 dB", 48.8, 1),
        new("development recordings, clean", 88.9, null),
        new("development recordings, blower 10 dB", 75.3, null),
    ];
}
