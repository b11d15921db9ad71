using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Advanced;

namespace HandsFreeStartup.Reports.Copies.Layout;

/// <summary>What stands around the content of every page.</summary>
/// <param name="Jobs">Name of the job, or names.</param>
/// <param name="Banners">What must be said on every page in large letters.</param>
/// <param name="Foot">The checkpoint, or where it stands.</param>
sealed record PageMarks(string Jobs, IReadOnlyList<(string Large, string Small)> Banners, string Foot)
{
    /// <summary>Of the pages of one job.</summary>
    public static PageMarks Of(CopyFacts copy) =>
        new(copy.JobId, copy.Banners, copy.Source.Checkpoint is { } checkpoint ? $"{copy.Language.Text("Checkpoint")}: {checkpoint}" : copy.Language.Text("No checkpoint"));

    /// <summary>Of the pages that several jobs share: what one of them must say, they say.</summary>
    public static PageMarks Of(IReadOnlyList<CopyFacts> copies) => new(
        string.Join(", ", copies.Select(copy => copy.JobId)),
        [.. copies.SelectMany(copy => copy.Banners.Select(banner => (banner.Large, copy.Plan.Appliance.Title))).GroupBy(banner => banner.Large)
            .Select(same => (same.Key, string.Join("; ", same.Select(banner => banner.Title).Distinct())))],
        copies[0].Language.Text("Each appliance has a page with its checkpoint"));
}

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
    readonly PageMarks _marks;

    /// <summary>An empty book.</summary>
    /// <param name="copy">What it is about.</param>
    /// <param name="paper">Its paper.</param>
    /// <param name="name">Which copy it is.</param>
    /// <param name="place">Where it is kept.</param>
    /// <param name="firstFoot">What stands at the foot of the first page.</param>
    /// <param name="marks">What stands around its pages; null for what its job says.</param>
    public PdfBook(CopyFacts copy, Paper paper, string name, string place, Strip firstFoot, PageMarks? marks = null)
    {
        (_copy, _paper, _name, _place, _firstFoot, _marks) = (copy, paper, name, place, firstFoot, marks ?? PageMarks.Of(copy));
        double bottom = paper.Size().Height - Sheet.Margin - FootHeight;
        Pages = new Pagination(Sheet.Margin, Sheet.Margin + HeadHeight + _marks.Banners.Count * BannerHeight, bottom - firstFoot.Height, bottom);
    }

    public Pagination Pages { get; }

    /// <summary>The finished document; the same record gives the same bytes.</summary>
    public byte[] Document() => Bound([this]);

    /// <summary>Several books as one document, on the same paper, their pages numbered through.</summary>
    public static byte[] Bound(IReadOnlyList<PdfBook> books)
    {
        using PdfDocument document = new();
        CopyFacts[] copies = [.. books.Select(book => book._copy).Distinct()];
        document.Info.Title = $"{string.Join(", ", copies.Select(copy => copy.JobId))}, {books[0]._name.ToLowerInvariant()}";
        document.Info.Subject = string.Join(' ', copies.Select(copy => copy.Verdict.Sentence));
        document.Info.Author = string.Join(", ", copies.Select(copy => copy.Facts.Job?.Technician ?? "").Distinct());
        document.Info.Creator = $"HandsFree Startup {copies[0].Facts.Job?.ProgramVersion}".TrimEnd();
        document.Language = copies[0].Language.Code;
        Ruler ruler = new();
        int count = books.Sum(book => book.Pages.Pages.Count);
        foreach ((PdfBook book, int index) in books.SelectMany(book => Enumerable.Range(0, book.Pages.Pages.Count).Select(index => (book, index))))
        {
            PdfPage page = document.AddPage();
            (page.Width, page.Height) = (XUnit.FromPoint(book._paper.Size().Width), XUnit.FromPoint(book._paper.Size().Height));
            using (XGraphics graphics = XGraphics.FromPdfPage(page))
            {
                book.Draw(new Pen(graphics, ruler), index, copies[0].Language.Shown($"Page {document.PageCount} of {count}"));
            }
            Compress(page);
        }
        return Saved(document, copies.Max(copy => copy.Events[^1].At.UtcDateTime), string.Join('+', copies.Select(copy => books.First(book => book._copy == copy).Identity)));
    }

    string Identity => $"{_copy.JobId}/{_name}/{_paper}/{(_copy.Language.IsEnglish ? "" : $"{_copy.Language.Code}/")}{_copy.Source.WholeCheckpoint}/{_copy.Times.Stamp(_copy.Events[^1].At)}";

    void Draw(Pen pen, int index, string number)
    {
        double width = _paper.TextWidth(), left = Sheet.Margin;
        pen.Text(_copy.Language.Text(_name), Name, left, Sheet.Margin);
        pen.TextToRight(_marks.Jobs, Style.Small, left + width, Sheet.Margin);
        pen.TextToRight(_copy.Language.Text(_place), Style.Small, left + width, Sheet.Margin + Style.Small.LineHeight);
        double y = Sheet.Margin + HeadHeight - 6;
        if (_marks.Banners.Count == 0)
        {
            pen.Rule(left, y, width, Style.Accent, 1.6);
        }

        foreach ((string large, string small) in _marks.Banners)
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
        Foot(pen, number, bottom - Style.Small.LineHeight);
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

    void Foot(Pen pen, string number, double y)
    {
        pen.Text(_marks.Foot, Style.Small, Sheet.Margin, y);
        pen.TextToRight($"{_copy.Language.Text("All times")}: {_copy.Language.Name(_copy.Times.Zone)}   {number}", Style.Small, Sheet.Margin + _paper.TextWidth(), y);
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
    static byte[] Saved(PdfDocument document, DateTime last, string about)
    {
        document.Info.CreationDate = last;
        document.Info.ModificationDate = last;
        byte[] identity = SHA256.HashData(Encoding.UTF8.GetBytes(about));
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
