using System.Globalization;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Hear;

/// <summary>What became of one labelled recording.</summary>
/// <param name="File">As written in the manifest.</param>
/// <param name="Expected">The label.</param>
/// <param name="Heard">What was made of it, in the words of a label; <c>nothing</c> when it was refused.</param>
/// <param name="Class">green, amber or red.</param>
/// <param name="Score">Mean log-probability per token.</param>
/// <param name="Margin">Best against second best meaning.</param>
/// <param name="Ratio">Against free decoding.</param>
/// <param name="LatencyMs">From the sound to the phrase, milliseconds.</param>
sealed record HearRow(string File, string Expected, string Heard, string Class, double Score, double Margin, double Ratio, double LatencyMs)
{
    /// <summary>Accepted without asking.</summary>
    public bool IsAccepted => Class == "green" && Heard != "nothing";

    /// <summary>Whether what was heard is what was said, compared as numbers.</summary>
    public bool IsRight => Same(Heard, Expected);

    /// <summary>The row of a phrase.</summary>
    public static HearRow Of(HearCase measured, Phrase phrase, TimeSpan took) => new(
        measured.File, measured.Expected, Label(phrase),
        phrase is Phrase.NotUnderstood ? "red" : phrase.Evidence.Certainty.ToString().ToLowerInvariant(),
        phrase.Evidence.Score, phrase.Evidence.Margin, phrase.Evidence.Ratio, took.TotalMilliseconds);

    static string Label(Phrase phrase) => phrase switch
    {
        Phrase.Reading reading => FormattableString.Invariant($"{reading.Field.Id}={reading.Value}"),
        Phrase.Order order => $"command={Commands.Of(order.Word).Id}",
        Phrase.Answer answer => $"command={answer.Word.ToString().ToLowerInvariant()}",
        _ => "nothing",
    };

    static bool Same(string one, string other)
    {
        string[] left = one.Split('=', 2), right = other.Split('=', 2);
        return one == other || (left.Length == 2 && right.Length == 2 && left[0] == right[0]
            && decimal.TryParse(left[1], CultureInfo.InvariantCulture, out decimal value)
            && decimal.TryParse(right[1], CultureInfo.InvariantCulture, out decimal wanted)
            && value == wanted);
    }
}

/// <summary>The figures of a measurement. The names are those of the JSON that the command prints.</summary>
/// <param name="Cases">Recordings.</param>
/// <param name="Exact">Right and accepted without asking.</param>
/// <param name="WrongAccepted">Something was said, and something else was accepted without asking.</param>
/// <param name="AskedAgain">Something was said and not accepted: a confirmation or a repetition was asked for.</param>
/// <param name="ConfirmedExact">Right, accepted at once or after a confirmation.</param>
/// <param name="FalseAccepts">Nothing was said to the tool, and something was accepted without asking.</param>
/// <param name="LatencyMs">Median and 95th percentile.</param>
/// <param name="Rows">Each recording.</param>
sealed record HearFigures(
    int Cases, int Exact, int WrongAccepted, int AskedAgain, int ConfirmedExact, int FalseAccepts, HearLatency LatencyMs, IReadOnlyList<HearRow> Rows)
{
    /// <summary>Recordings in which something was said to the tool.</summary>
    public int Said => Rows.Count(row => row.Expected != "nothing");

    /// <summary>Adds the rows up.</summary>
    public static HearFigures Of(IReadOnlyList<HearRow> rows)
    {
        HearRow[] said = [.. rows.Where(row => row.Expected != "nothing")];
        double[] latencies = [.. rows.Select(row => row.LatencyMs).Order()];
        return new HearFigures(
            rows.Count,
            said.Count(row => row.IsAccepted && row.IsRight),
            said.Count(row => row.IsAccepted && !row.IsRight),
            said.Count(row => !row.IsAccepted),
            said.Count(row => row.IsRight),
            rows.Count(row => row.Expected == "nothing" && row.IsAccepted),
            new HearLatency(Quantile(latencies, 0.5), Quantile(latencies, 0.95)),
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
        double centre = share + (Z * Z / (2 * total));
        double half = Z * Math.Sqrt((share * (1 - share) / total) + (Z * Z / (4.0 * total * total)));
        double scale = 1 + (Z * Z / total);
        return (Math.Max(0, (centre - half) / scale), Math.Min(1, (centre + half) / scale));
    }

    static double Quantile(double[] sorted, double share) =>
        sorted.Length == 0 ? 0 : sorted[Math.Min(sorted.Length - 1, (int)Math.Ceiling(share * sorted.Length) - 1)];
}

/// <summary>Latencies, milliseconds.</summary>
/// <param name="P50">Median.</param>
/// <param name="P95">95th percentile.</param>
sealed record HearLatency(double P50, double P95);
