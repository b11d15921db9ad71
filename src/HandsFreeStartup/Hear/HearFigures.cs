namespace HandsFreeStartup.Hear;

/// <summary>The figures of a measurement. The names are those of the JSON that the command prints.</summary>
/// <param name="Cases">Recordings.</param>
/// <param name="Exact">Right and accepted without asking.</param>
/// <param name="WrongAccepted">Something was said, and something else was accepted without asking.</param>
/// <param name="AskedAgain">Something was said and not accepted: a confirmation or a repetition was asked for.</param>
/// <param name="ConfirmedExact">Right, accepted at once or after a confirmation.</param>
/// <param name="FalseAccepts">Nothing was said to the tool, and something was accepted without asking.</param>
/// <param name="FreeExact">Something was said, and the free decoding of the first recognizer is exactly that.</param>
/// <param name="FreeWrong">The free decoding is exactly another legal phrase, or one where nothing was said.</param>
/// <param name="LatencyMs">Median and 95th percentile of the decoder alone.</param>
/// <param name="LatencyWithSilenceMs">The same from the last sample of speech to the phrase, worked out from decoder and grammar, of the recordings with something said.</param>
/// <param name="RealTimeFactor">Time that decoding took, beside the length of the recordings.</param>
/// <param name="Machine">What the program needs.</param>
/// <param name="Rows">Each recording.</param>
sealed record HearFigures(
    int Cases, int Exact, int WrongAccepted, int AskedAgain, int ConfirmedExact, int FalseAccepts, int FreeExact, int FreeWrong,
    HearLatency LatencyMs, HearLatency LatencyWithSilenceMs, double RealTimeFactor, HearNeeds Machine, IReadOnlyList<HearRow> Rows)
{
    /// <summary>What the original models reached on recordings of their own.</summary>
    public IReadOnlyList<OriginalFigure> OriginalModels { get; } = Hear.OriginalModels.Figures;

    /// <summary>Recordings in which something was said to the tool.</summary>
    public int Said => Rows.Count(row => row.Expected != HearRow.Nothing);

    /// <summary>Adds the rows up.</summary>
    public static HearFigures Of(IReadOnlyList<HearRow> rows, HearNeeds machine)
    {
        HearRow[] said = [.. rows.Where(row => row.Expected != HearRow.Nothing)];
        double[] latencies = [.. rows.Select(row => row.LatencyMs).Order()];
        double[] withSilence = [.. said.Select(row => row.LatencyWithSilenceMs).Order()];
        return new HearFigures(
            rows.Count,
            said.Count(row => row.IsAccepted && row.IsRight),
            said.Count(row => row.IsAccepted && !row.IsRight),
            said.Count(row => !row.IsAccepted),
            said.Count(row => row.IsRight),
            rows.Count(row => row.Expected == HearRow.Nothing && row.IsAccepted),
            said.Count(row => row.IsFreeRight),
            rows.Count(row => row.Free != HearRow.Nothing && !row.IsFreeRight),
            new HearLatency(Quantile(latencies, 0.5), Quantile(latencies, 0.95)),
            new HearLatency(Quantile(withSilence, 0.5), Quantile(withSilence, 0.95)),
            rows.Sum(row => row.LatencyMs) / 1000 / Math.Max(1e-9, rows.Sum(row => row.Seconds)),
            machine,
            rows);
    }

    /// <summary>95 % interval of a share after Wilson (1927); value of z from memory, 1.96.</summary>
    public static (double Low, double High) Wilson(int count, int total)
    {
        const double Z = 1.96;
        if (total == 0)
        {
            return (0, 1);
        }

        double share = (double)count / total;
        double center = share + (Z * Z / (2 * total));
        double half = Z * Math.Sqrt((share * (1 - share) / total) + (Z * Z / (4.0 * total * total)));
        double scale = 1 + (Z * Z / total);
        return (Math.Max(0, (center - half) / scale), Math.Min(1, (center + half) / scale));
    }

    static double Quantile(double[] sorted, double share) =>
        sorted.Length == 0 ? 0 : sorted[Math.Min(sorted.Length - 1, (int)Math.Ceiling(share * sorted.Length) - 1)];
}

/// <summary>Latencies, milliseconds.</summary>
/// <param name="P50">Median.</param>
/// <param name="P95">95th percentile.</param>
sealed record HearLatency(double P50, double P95);

/// <summary>What the program needs on this machine.</summary>
/// <param name="StartToListeningMs">From the start of the process until recognizer and detector are ready, milliseconds.</param>
/// <param name="PeakMemoryMb">Most memory that the process held at once, MiB.</param>
/// <param name="DetectorShare">Share of one core that the speech detector takes in silence.</param>
sealed record HearNeeds(double StartToListeningMs, double PeakMemoryMb, double DetectorShare);
