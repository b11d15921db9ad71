using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Reports.Review;
using HandsFreeStartup.Screen;

namespace HandsFreeStartup.Review;

/// <summary>The parts of the review's screen as lines for a width and a height.</summary>
static class ReviewLines
{
    /// <summary>Where the record stands.</summary>
    public static IReadOnlyList<ShownLine> Head(JobReview review, int width)
    {
        string job = $" {review.JobId}  {ReviewText.Of(review.Status)}  {review.Technician}{(review.IsDemonstration ? "  DEMONSTRATION" : "")}";
        string counts = $" {(review.MustBeLookedAt ? "MUST BE LOOKED AT" : "Nothing must be looked at")}  {ReviewText.Counts(review)}";
        return [new ShownLine(job.PadRight(width), Look.Heading), new ShownLine(counts, review.MustBeLookedAt ? Look.Caution : Look.Good)];
    }

    /// <summary>The findings around the chosen one, one line each.</summary>
    public static IReadOnlyList<ShownLine> List(ImmutableArray<ReviewFinding> findings, int chosen, int width, int height)
    {
        if (findings.IsEmpty)
        {
            return [new ShownLine("No findings.", Look.Good)];
        }

        int first = Math.Clamp(chosen - height / 2, 0, Math.Max(0, findings.Length - height));
        return [.. findings.Skip(first).Take(height).Select((finding, row) => Line(finding, first + row == chosen, width))];
    }

    /// <summary>One finding in full.</summary>
    public static IReadOnlyList<ShownLine> Detail(ReviewFinding finding, int width, int height)
    {
        string place = string.Join("  ", ((string[])[ReviewText.Of(finding.Weight), finding.Rule, ReviewText.Time(finding.At), finding.StepId]).Where(part => part.Length > 0));
        string recordings = finding.Clips.Length switch
        {
            0 => "",
            1 => "Press P to hear it.",
            _ => FormattableString.Invariant($"Press P to hear it: {finding.Clips.Length} recordings, one after the other."),
        };
        IEnumerable<string> lines = TextLines.Wrap(finding.Text, width)
            .Concat(finding.Quote.Length == 0 ? [] : TextLines.Wrap($"\"{finding.Quote}\"", width, indent: 1))
            .Concat(recordings.Length == 0 ? [] : [recordings]);
        return [new ShownLine(place.PadRight(width), Look.Heading), .. lines.ToList().AtMost(height - 1, width).Select(line => new ShownLine(line))];
    }

    /// <summary>What was just done.</summary>
    public static IReadOnlyList<ShownLine> Message(string text, int width, int height) =>
        [.. TextLines.Wrap(text, width).AtMost(height, width).Select(line => new ShownLine(line, Look.Strong))];

    static ShownLine Line(ReviewFinding finding, bool isChosen, int width)
    {
        string start = $"{(isChosen ? '>' : ' ')} {ReviewText.Of(finding.Weight),-7}{(finding.Clips.IsEmpty ? "" : "[P] ")}";
        string text = TextLines.Wrap(finding.Text, Math.Max(1, width - start.Length)).AtMost(1, width - start.Length)[0];
        return new ShownLine(start + text, isChosen ? Look.Heading : finding.Weight switch
        {
            Weight.Danger => Look.Bad,
            Weight.Doubt => Look.Caution,
            _ => Look.Plain,
        });
    }
}
