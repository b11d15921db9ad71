using HandsFreeStartup.Reports.Copies.Charts;
using HandsFreeStartup.Reports.Copies.Layout;
using HandsFreeStartup.Reports.Copies.Parts;

namespace HandsFreeStartup.Reports.Copies;

/// <summary>The three copies of a job on paper. They share their first page's content and every number.</summary>
public static class StartupCopies
{
    const string CustomerCopy = "Customer copy";
    const string ForWhom = "for the people in the house";

    /// <summary>Sizes of the readings in points. The marks beside them are never below 7 pt: a second page rather than smaller letters.</summary>
    static readonly double[] Sizes = [8.8, 8.4, 8.0];

    /// <summary>The copy that stays with the appliance: one page where everything finds room on it, else as many as it takes; nothing is left out.</summary>
    public static byte[] Appliance(CopySource source, Paper paper)
    {
        CopyFacts copy = new(source);
        PdfBook book = Whole(size => First(copy, paper, "Appliance copy", "stays with the appliance", size));
        return book.Document();
    }

    /// <summary>The copy in plain language for the customer.</summary>
    /// <param name="source">The job.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="withDerivations">Whether an appendix says how each result came about.</param>
    public static byte[] Customer(CopySource source, Paper paper, bool withDerivations = false)
    {
        CopyFacts copy = new(source);
        Ruler ruler = new();
        AdvicePages advice = new(ruler, [copy], paper.TextWidth());
        PdfBook book = Whole(size => First(copy, paper, CustomerCopy, ForWhom, size, advice.Emergency()));
        book.Pages.BreakPage();
        book.Pages.Add(advice.Pages());
        Derivations(book.Pages, copy, paper, withDerivations);
        return book.Document();
    }

    /// <summary>One copy in plain language for several appliances of a customer: a first page with the exceptions and verdicts of all, then each with pages of its own, then what people must know.</summary>
    /// <param name="sources">The jobs, all of one customer at one address.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="withDerivations">Whether an appendix to each says how each result came about.</param>
    public static byte[] Customer(IReadOnlyList<CopySource> sources, Paper paper, bool withDerivations = false)
    {
        if (sources.Count == 1)
        {
            return Customer(sources[0], paper, withDerivations);
        }

        CopyFacts[] copies = [.. sources.Select(source => new CopyFacts(source))];
        Ruler ruler = new();
        AdvicePages advice = new(ruler, copies, paper.TextWidth());
        PdfBook first = Shared(copies, paper), last = Shared(copies, paper);
        first.Pages.Add(new AddressPage(ruler, copies, paper.TextWidth()).Write(advice.Emergency()));
        last.Pages.Add(advice.Pages());
        return PdfBook.Bound([first, .. copies.Select(Own), last]);

        PdfBook Own(CopyFacts copy)
        {
            PdfBook book = Whole(size => First(copy, paper, CustomerCopy, ForWhom, size));
            Derivations(book.Pages, copy, paper, withDerivations);
            return book;
        }
    }

    static PdfBook Shared(CopyFacts[] copies, Paper paper) => new(copies[0], paper, CustomerCopy, ForWhom, Strip.Space(0), PageMarks.Of(copies));

    /// <summary>The copy for the office: everything, down to the last event.</summary>
    /// <param name="source">The job.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="withCharts">Whether every reading that was entered more than once is drawn over time.</param>
    /// <param name="withDerivations">Whether an appendix says how each result came about.</param>
    public static byte[] Office(CopySource source, Paper paper, bool withCharts = false, bool withDerivations = false)
    {
        CopyFacts copy = new(source);
        PdfBook book = Whole(size => First(copy, paper, "Office copy", "for the files of the contractor", size));
        book.Pages.BreakPage();
        if (withCharts)
        {
            Charts(book.Pages, copy, paper.TextWidth());
        }
        book.Pages.Add(new OfficePages(new Ruler(), copy, paper.TextWidth()).Pages());
        Derivations(book.Pages, copy, paper, withDerivations);
        return book.Document();
    }

    static void Derivations(Pagination pages, CopyFacts copy, Paper paper, bool isWanted)
    {
        if (isWanted)
        {
            pages.BreakPage();
            pages.Add(new DerivationPages(new Ruler(), copy, paper.TextWidth()).Pages());
        }
    }

    static void Charts(Pagination pages, CopyFacts copy, double width)
    {
        Ruler ruler = new();
        double column = (width - FirstPage.Gutter) / 2;
        IReadOnlyList<Series> all = Series.Of(copy);
        pages.Add(Texts.Heading(ruler, copy.T("Readings over time"), width));
        pages.Add(Texts.Paragraph(ruler, copy.T(all.Count == 0 ? "No reading was entered more than once." : Chart.Legend), Style.Small, width).Append(Strip.Space(5)));
        pages.AddInColumns(all.Select(series => Chart.Strips(ruler, series, column)), column + FirstPage.Gutter);
    }

    /// <summary>Everything, on the first page if it finds room there in one of the sizes.</summary>
    static PdfBook Whole(Func<double, PdfBook> made) => Sizes.Select(made).FirstOrDefault(book => book.Pages.Pages.Count == 1) ?? made(Sizes[0]);

    static PdfBook First(CopyFacts copy, Paper paper, string name, string place, double size, IEnumerable<Strip>? afterVerdict = null)
    {
        Ruler ruler = new();
        double width = paper.TextWidth();
        PdfBook book = new(copy, paper, name, place, new SignatureFoot(ruler, copy, width).Write());
        new FirstPage(ruler, copy, width, size).Place(book.Pages, afterVerdict ?? []);
        return book;
    }
}
