using HandsFreeStartup.Reports.Copies.Charts;
using HandsFreeStartup.Reports.Copies.Layout;
using HandsFreeStartup.Reports.Copies.Parts;

namespace HandsFreeStartup.Reports.Copies;

/// <summary>The three copies of a job on paper. They share their first page's content and every number.</summary>
public static class StartupCopies
{
    /// <summary>The copy that stays with the appliance: one page, always; what does not find room is counted on it.</summary>
    public static byte[] Appliance(CopySource source, Paper paper)
    {
        CopyFacts copy = new(source);
        PdfBook book = OnOnePage(Shortened.Steps, most => First(copy, paper, "Appliance copy", "stays with the appliance", most))
            ?? throw new InvalidOperationException("The appliance copy does not fit on one page.");
        return book.Document();
    }

    /// <summary>The copy in plain language for the customer.</summary>
    public static byte[] Customer(CopySource source, Paper paper)
    {
        CopyFacts copy = new(source);
        Ruler ruler = new();
        AdvicePages advice = new(ruler, copy, paper.TextWidth());
        PdfBook book = Whole(most => First(copy, paper, "Customer copy", "for the people in the house", most, advice.Emergency()));
        book.Pages.Add(advice.Pages());
        return book.Document();
    }

    /// <summary>The copy for the office: everything, down to the last event.</summary>
    /// <param name="source">The job.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="withCharts">Whether every reading that was entered more than once is drawn over time.</param>
    public static byte[] Office(CopySource source, Paper paper, bool withCharts = false)
    {
        CopyFacts copy = new(source);
        PdfBook book = Whole(most => First(copy, paper, "Office copy", "for the files of the contractor", most));
        if (withCharts)
        {
            Charts(book.Pages, copy, paper.TextWidth());
        }
        book.Pages.Add(new OfficePages(new Ruler(), copy, paper.TextWidth()).Pages());
        return book.Document();
    }

    static void Charts(Pagination pages, CopyFacts copy, double width)
    {
        Ruler ruler = new();
        double column = (width - FirstPage.Gutter) / 2;
        IReadOnlyList<Series> all = Series.Of(copy);
        pages.Add(Texts.Heading(ruler, "Readings over time", width));
        pages.Add(Texts.Paragraph(ruler, all.Count == 0 ? "No reading was entered more than once." : Chart.Legend, Style.Small, width).Append(Strip.Space(5)));
        pages.AddInColumns(all.Select(series => Chart.Strips(ruler, series, column)), column + FirstPage.Gutter);
    }

    /// <summary>The largest letters and the fewest omissions with which everything is on the first page.</summary>
    static PdfBook? OnOnePage(IEnumerable<Shortened> choices, Func<Shortened, PdfBook> made) =>
        choices.Select(made).FirstOrDefault(book => book.Pages.Pages.Count == 1);

    /// <summary>Everything, on the first page if it finds room there; what follows begins on a new one.</summary>
    static PdfBook Whole(Func<Shortened, PdfBook> made)
    {
        if (OnOnePage(Shortened.Nothing, made) is not { } book)
        {
            return made(Shortened.Usual);
        }

        book.Pages.BreakPage();
        return book;
    }

    static PdfBook First(CopyFacts copy, Paper paper, string name, string place, Shortened most, IEnumerable<Strip>? afterVerdict = null)
    {
        Ruler ruler = new();
        double width = paper.TextWidth();
        PdfBook book = new(copy, paper, name, place, new SignatureFoot(ruler, copy, width).Write());
        new FirstPage(ruler, copy, width, most).Place(book.Pages, afterVerdict ?? []);
        return book;
    }
}
