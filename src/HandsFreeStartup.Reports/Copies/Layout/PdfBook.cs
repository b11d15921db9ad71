using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Advanced;

namespace HandsFreeStartup.Reports.Copies.Layout;

/// <summary>A copy on paper: pages with what every page must say, and the document that a printer gets.</summary>
sealed partial class PdfBook
{
    const double HeadHeight = 30;
    const double BannerHeight = 34;
    const double FootHeight = 20;

    static readonly Style Name = new(11.5, true, Style.Accent);
    static readonly Style Large = new(19, true, XColors.White);
    static readonly Style Beside = new(10, false, XColors.White);

    readonly CopyFacts _copy;
    readonly Paper _paper;
    readonly string _name;
    readonly string _place;
    readonly Strip _firstFoot;

    /// <summary>An empty book.</summary>
    /// <param name="copy">What it is about.</param>
    /// <param name="paper">Its paper.</param>
    /// <param name="name">Which copy it is.</param>
    /// <param name="place">Where it is kept.</param>
    /// <param name="firstFoot">What stands at the foot of the first page.</param>
    public PdfBook(CopyFacts copy, Paper paper, string name, string place, Strip firstFoot)
    {
        (_copy, _paper, _name, _place, _firstFoot) = (copy, paper, name, place, firstFoot);
        double bottom = paper.Size().Height - Sheet.Margin - FootHeight;
        Pages = new Pagination(Sheet.Margin, Sheet.Margin + HeadHeight + copy.Banners.Count * BannerHeight, bottom - firstFoot.Height, bottom);
    }

    public Pagination Pages { get; }

    /// <summary>The finished document; the same record gives the same bytes.</summary>
    public byte[] Document()
    {
        using PdfDocument document = new();
        document.Info.Title = $"{_copy.JobId}, {_name.ToLowerInvariant()}";
        document.Info.Subject = _copy.Verdict.Sentence;
        document.Info.Author = _copy.Facts.Job?.Technician ?? "";
        document.Info.Creator = $"HandsFree Startup {_copy.Facts.Job?.ProgramVersion}".TrimEnd();
        document.Language = "en";
        Ruler ruler = new();
        for (int i = 0; i < Pages.Pages.Count; i++)
        {
            PdfPage page = document.AddPage();
            (page.Width, page.Height) = (XUnit.FromPoint(_paper.Size().Width), XUnit.FromPoint(_paper.Size().Height));
            using (XGraphics graphics = XGraphics.FromPdfPage(page))
            {
                Draw(new Pen(graphics, ruler), i);
            }
            Compress(page);
        }
        return Saved(document);
    }

    void Draw(Pen pen, int index)
    {
        double width = _paper.TextWidth(), left = Sheet.Margin;
        pen.Text(_name, Name, left, Sheet.Margin);
        pen.TextToRight(_copy.JobId, Style.Small, left + width, Sheet.Margin);
        pen.TextToRight(_place, Style.Small, left + width, Sheet.Margin + Style.Small.LineHeight);
        double y = Sheet.Margin + HeadHeight - 6;
        if (_copy.Banners.Count == 0)
        {
            pen.Rule(left, y, width, Style.Accent, 1.6);
        }

        foreach ((string large, string small) in _copy.Banners)
        {
            Banner(pen, large, small, y);
            y += BannerHeight;
        }

        foreach (Placed placed in Pages.Pages[index])
        {
            placed.Strip.Draw(pen, placed.X, placed.Y);
        }

        double bottom = _paper.Size().Height - Sheet.Margin;
        if (index == 0)
        {
            _firstFoot.Draw(pen, left, bottom - FootHeight - _firstFoot.Height);
        }
        Foot(pen, index, bottom - Style.Small.LineHeight);
    }

    void Banner(Pen pen, string large, string small, double y)
    {
        double width = _paper.TextWidth();
        Ruler ruler = new();
        pen.Fill(Sheet.Margin, y, width, BannerHeight - 4, Style.Alarm);
        pen.Text(large, Large, Sheet.Margin + 9, y + 3.5);
        double offset = ruler.Width(large, Large) + 22;
        IReadOnlyList<string> lines = ruler.Wrap(small, Beside, width - offset - 8);
        double top = y + (BannerHeight - 4 - Math.Min(2, lines.Count) * Beside.LineHeight) / 2;
        for (int i = 0; i < Math.Min(2, lines.Count); i++)
        {
            pen.Text(lines[i] + (i == 1 && lines.Count > 2 ? " ..." : ""), Beside, Sheet.Margin + offset, top + i * Beside.LineHeight);
        }
    }

    void Foot(Pen pen, int index, double y)
    {
        pen.Text(_copy.Source.Checkpoint is { } checkpoint ? $"Checkpoint: {checkpoint}" : "No checkpoint", Style.Small, Sheet.Margin, y);
        pen.TextToRight(FormattableString.Invariant($"All times: {_copy.Times.Zone}   Page {index + 1} of {Pages.Pages.Count}"), Style.Small, Sheet.Margin + _paper.TextWidth(), y);
    }

    /// <summary>The library ends its compressed streams too early: readers cope, but checkers complain. Here it is done by the framework.</summary>
    static void Compress(PdfPage page)
    {
        PdfContent content = page.Contents.Elements.OfType<PdfReference>().Select(reference => reference.Value).OfType<PdfContent>().Single();
        using MemoryStream packed = new();
        using (ZLibStream zip = new(packed, CompressionLevel.SmallestSize, leaveOpen: true))
        {
            zip.Write(content.Stream.Value);
        }
        content.Stream.Value = packed.ToArray();
        content.Elements.SetName("/Filter", "/FlateDecode");
    }

    /// <summary>The dates are those of the record, the identity is made from it, and the library's random names are replaced by steady ones of the same length.</summary>
    byte[] Saved(PdfDocument document)
    {
        DateTime last = _copy.Events[^1].At.UtcDateTime;
        document.Info.CreationDate = last;
        document.Info.ModificationDate = last;
        byte[] identity = SHA256.HashData(Encoding.UTF8.GetBytes($"{_copy.JobId}/{_name}/{_paper}/{_copy.Source.WholeCheckpoint}/{_copy.Times.Stamp(_copy.Events[^1].At)}"));
        document.Internals.FirstDocumentID = document.Internals.SecondDocumentID = Convert.ToHexString(identity)[..16];
        document.Options.NoCompression = true;
        using MemoryStream bytes = new();
        document.Save(bytes, closeStream: false);
        string text = Uuid().Replace(Encoding.Latin1.GetString(bytes.ToArray()), $"uuid:{new Guid(identity.AsSpan(16))}");
        string[] names = [.. SubsetName().Matches(text).Select(match => match.Value).Distinct()];
        return Encoding.Latin1.GetBytes(SubsetName().Replace(text, match => $"/COPY{(char)('A' + Array.IndexOf(names, match.Value) / 26)}{(char)('A' + Array.IndexOf(names, match.Value) % 26)}+"));
    }

    [GeneratedRegex("uuid:[0-9a-f-]{36}")]
    private static partial Regex Uuid();

    [GeneratedRegex(@"/[A-Z]{6}\+")]
    private static partial Regex SubsetName();
}
