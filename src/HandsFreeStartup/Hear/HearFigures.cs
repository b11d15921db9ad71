namespace HandsFreeStartup.Hear;

/// <summary>The figures of a measurement. The names are those of the JSON that the command prints.</summary>
sealed record HearFigures
{
    /// <summary>Recordings.</summary>
    public required int Cases { get; init; }

    /// <summary>Right and accepted without asking.</summary>
    public required int Exact { get; init; }

    /// <summary>Something was said, and something else was accepted without asking.</summary>
    public required int WrongAccepted { get; init; }

    /// <summary>Something was said and not accepted: a confirmation or a repetition was asked for.</summary>
    public required int AskedAgain { get; init; }

    /// <summary>Right, accepted at once or after a confirmation.</summary>
    public required int ConfirmedExact { get; init; }

    /// <summary>Nothing was said to the tool, and something was accepted without asking.</summary>
    public required int FalseAccepts { get; init; }

    /// <summary>Nothing was said to the tool, and it asked for a confirmation or a repetition as if something had been.</summary>
    public required int AskedForNothing { get; init; }

    /// <summary>Something was said, and the free decoding of the first recognizer is exactly that.</summary>
    public required int FreeExact { get; init; }

    /// <summary>The free decoding is exactly another legal phrase, or one where nothing was said.</summary>
    public required int FreeWrong { get; init; }

    /// <summary>Median and 95th percentile of the decoder alone.</summary>
    public required HearLatency LatencyMs { get; init; }

    /// <summary>The same from the last sample of speech to the phrase, worked out from decoder and grammar, of the recordings with something said.</summary>
    public required HearLatency LatencyWithSilenceMs { get; init; }

    /// <summary>Time that decoding took, beside the length of the recordings.</summary>
    public required double RealTimeFactor { get; init; }

    /// <summary>What the program needs.</summary>
    public required HearNeeds Machine { get; init; }

    /// <summary>Each recording.</summary>
    public required IReadOnlyList<HearRow> Rows { get; init; }

    /// <summary>What the original models reached on recordings of their own.</summary>
    public IReadOnlyList<OriginalFigure> OriginalModels { get; } = Hear.OriginalModels.Figures;

    /// <summary>Recordings in which something was said to the tool.</summary>
    public int Said => Rows.Count(row => row.Expected != HearRow.Nothing);

    /// <summary>Adds the rows up.</summary>
    public static HearFigures Of(IReadOnlyList<HearRow> rows, HearNeeds machine)
    {
        HearRow[] said = [.. rows.Where(row => row.Expected != HearRow.Nothing)];
        double[] latencies = [.. rows.Where(row => row.LatencyMs > 0).Select(row => row.LatencyMs).Order()];
        double[] withSilence = [.. said.Where(row => row.LatencyMs > 0).Select(row => row.LatencyWithSilenceMs).Order()];
        return new HearFigures
        {
            Cases = rows.Count,
            Exact = said.Count(row => row.IsAccepted && row.IsRight),
            WrongAccepted = said.Count(row => row.IsAccepted && !row.IsRight),
            AskedAgain = said.Count(row => !row.IsAccepted),
            ConfirmedExact = said.Count(row => row.IsRight),
            FalseAccepts = rows.Count(row => row.Expected == HearRow.Nothing && row.IsAccepted),
            AskedForNothing = rows.Count(row => row.IsAskedForNothing),
            FreeExact = said.Count(row => row.IsFreeRight),
            FreeWrong = rows.Count(row => row.Free is not (null or HearRow.Nothing) && !row.IsFreeRight),
            LatencyMs = new HearLatency(Quantile(latencies, 0.5), Quantile(latencies, 0.95)),
            LatencyWithSilenceMs = new HearLatency(Quantile(withSilence, 0.5), Quantile(withSilence, 0.95)),
            RealTimeFactor = rows.Sum(row => row.DecodingMs) / 1000 / Math.Max(1e-9, rows.Sum(row => row.Seconds)),
            Machine = machine,
            Rows = rows,
        };
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
