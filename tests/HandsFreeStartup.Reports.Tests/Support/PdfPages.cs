using System.Text.RegularExpressions;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace HandsFreeStartup.Reports.Tests.Support;

/// <summary>A line of the readings as it stands on the paper: the first word of its label and the number in bold, which is the one that stands.</summary>
public sealed record PrintedReading(string Label, string Standing);

/// <summary>What can be read from a PDF by another library than the one that wrote it.</summary>
public sealed partial class PdfPages : IDisposable
{
    readonly PdfDocument _document;

    public PdfPages(byte[] bytes) => _document = PdfDocument.Open(bytes);

    public IReadOnlyList<Page> Pages => [.. _document.GetPages()];

    public IReadOnlyList<string> Texts => [.. Pages.Select(page => string.Join(' ', page.GetWords().Select(word => word.Text)))];

    public string Text => string.Join(' ', Texts);

    /// <summary>The lines of readings, down to the legend below them.</summary>
    public IReadOnlyList<PrintedReading> Readings()
    {
        List<PrintedReading> readings = [];
        foreach (Page page in Pages)
        {
            Word? legend = page.GetWords().FirstOrDefault(word => word.Text == "U:");
            double end = legend?.BoundingBox.Bottom ?? 0;
            readings.AddRange(ReadingsOf(page, end));
            if (legend is not null)
            {
                break;
            }
        }
        return readings;
    }

    public void Dispose() => _document.Dispose();

    static IEnumerable<PrintedReading> ReadingsOf(Page page, double end)
    {
        IEnumerable<IGrouping<double, Word>> lines = page.GetWords()
            .Where(word => word.BoundingBox.Bottom > end)
            .GroupBy(word => Math.Round(word.Letters[0].StartBaseLine.Y, 1));
        foreach (Word[] line in lines.Select(line => line.OrderBy(word => word.BoundingBox.Left).ToArray()))
        {
            Word[] standing = [.. line.Where(word => IsBold(word) && NumberOrDash().IsMatch(word.Text))];
            if (!IsBold(line[0]) && standing.Length == 1)
            {
                yield return new PrintedReading(line[0].Text == "=" ? $"= {line[1].Text}" : line[0].Text, standing[0].Text);
            }
        }
    }

    static bool IsBold(Word word) => word.FontName?.Contains("Bold", StringComparison.Ordinal) == true;

    [GeneratedRegex(@"^((over )?-?\d+(\.\d+)?|–)$")]
    private static partial Regex NumberOrDash();
}
