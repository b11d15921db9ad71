using System.Globalization;
using System.Text;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Fleet.Figures;
using HandsFreeStartup.Fleet.Publishing;
using HandsFreeStartup.Fleet.Reading;

namespace HandsFreeStartup.Fleet.Pages;

/// <summary>What the pages show.</summary>
public sealed record FleetPicture
{
    /// <summary>The day of the overview, by the clock on the wall of each job.</summary>
    public required DateOnly Day { get; init; }

    /// <summary>First day of charts and habits.</summary>
    public required DateOnly Since { get; init; }

    /// <summary>All jobs of these days.</summary>
    public required IReadOnlyList<FleetJob> Jobs { get; init; }

    /// <summary>Series that are drawn.</summary>
    public required IReadOnlyList<FleetSeries> Charted { get; init; }

    /// <summary>Series in which instruments are compared.</summary>
    public required IReadOnlyList<FleetSeries> Instruments { get; init; }

    /// <summary>Habits.</summary>
    public required IReadOnlyList<WaitHabit> Waits { get; init; }

    /// <summary>From where.</summary>
    public required string Source { get; init; }

    /// <summary>When, UTC.</summary>
    public required DateTimeOffset WrittenAt { get; init; }

    /// <summary>Reads all of it.</summary>
    /// <exception cref="FleetException">The database cannot be asked.</exception>
    public static async Task<FleetPicture> Read(FleetDatabase database, DateOnly day, int days, TimeProvider clock, CancellationToken cancellation = default)
    {
        DateOnly since = day.AddDays(1 - days);
        FigureReader figures = new(database);
        return new FleetPicture
        {
            Day = day,
            Since = since,
            Jobs = await new FleetReader(database).Jobs(new FleetFilter(since, day), cancellation),
            Charted = await figures.Series(FigureReader.Charted, since, day, cancellation),
            Instruments = await figures.Series(FigureReader.Instruments, since, day, cancellation),
            Waits = await figures.Waits(since, day, cancellation),
            Source = database.Address.ToString(),
            WrittenAt = clock.GetUtcNow(),
        };
    }
}

/// <summary>
/// The pages of a firm: the day, the models, the instruments, the waits, and one page for each of the jobs that are named first. However much is wrong, what is written stays of a size that
/// somebody can go through; what is left out is counted where it would stand.
/// </summary>
/// <param name="picture">What they show.</param>
public sealed class FleetPages(FleetPicture picture)
{
    /// <summary>Jobs on one sheet of the day.</summary>
    public const int SheetRows = 200;

    /// <summary>Values below one chart, and rows of the other tables.</summary>
    public const int MostRows = 50;

    readonly Dictionary<long, FleetJob> _jobs = picture.Jobs.ToDictionary(job => job.Key);
    readonly ILookup<long, (FleetSeries Series, FleetPoint Point)> _values = picture.Charted.SelectMany(series => series.Points.Select(point => (series, point))).ToLookup(one => one.point.Job);
    readonly JobsToShow _shown = JobsToShow.Of(picture);

    string Foot => $"Written {Page.Moment(picture.WrittenAt)} from {picture.Source}. Days and times are local to each job. The record of each job decides; these pages only show it.";

    string Period => FormattableString.Invariant($"{picture.Since:yyyy-MM-dd} to {picture.Day:yyyy-MM-dd}");

    /// <summary>Writes them.</summary>
    /// <param name="folder">Where to; it is made where it is missing.</param>
    /// <returns>Number of pages.</returns>
    /// <exception cref="IOException">They cannot be written.</exception>
    public int Write(string folder)
    {
        Directory.CreateDirectory(folder);
        List<(string File, string Text)> pages = [.. Day(), .. Models(), ("instruments.html", Instruments()), ("waits.html", Waits())];
        pages.AddRange(_shown.WithPage.Select(key => (FormattableString.Invariant($"job-{key}.html"), JobPage.Of(_jobs[key], _values[key], Foot))));
        foreach ((string file, string text) in pages)
        {
            WholeFile.WriteText(Path.Combine(folder, file), text, "The page");
        }

        return pages.Count;
    }

    IEnumerable<(string File, string Text)> Day()
    {
        int waiting = _shown.Today.Count(job => job.MustBeLookedAt), without = _shown.Today.Count(job => !_shown.HasPage(job.Key));
        string lead = FormattableString.Invariant($"{waiting} of {_shown.Today.Length} jobs must be looked at.")
            + (without == 0 ? "" : FormattableString.Invariant($" {without} of them, the least grave, have no page here: review --from with the name of the job tells everything of it."));
        FleetJob[][] sheets = [.. _shown.Today.Chunk(SheetRows)];
        for (int sheet = 0; sheet < Math.Max(1, sheets.Length); sheet++)
        {
            string body = Page.Table(
                "Jobs of the day, those that must be looked at first", ["Job", "Began", "State", "To look at", "Gravest finding", "Technician", "Furnace"],
                sheets.Length == 0 ? [] : sheets[sheet].Select(job => (string[])[
                    Link(job), Page.Moment(job.Began), Page.Text(Words(job.Status)), job.MustBeLookedAt ? "<span class=\"danger\">yes</span>" : "<span class=\"good\">no</span>",
                    job.Findings.IsEmpty ? "none" : JobPage.Weighed(job.Findings.MaxBy(finding => finding.Weight)!), Page.Text(job.Technician), Page.Text(job.Appliance)]),
                "No job of this day has been published.");
            yield return (Sheet(sheet), Page.Of(FormattableString.Invariant($"Start-ups of {picture.Day:yyyy-MM-dd}"), lead, "index.html", Foot, body + Sheets(sheet, sheets.Length)));
        }
    }

    static string Sheet(int index) => index == 0 ? "index.html" : FormattableString.Invariant($"day-{index + 1}.html");

    static string Sheets(int shown, int count) => count < 2 ? ""
        : $"<nav aria-label=\"Sheets of the day\"><ul>{string.Concat(Enumerable.Range(0, count).Select(i => FormattableString.Invariant($"<li><a href=\"{Sheet(i)}\"{(i == shown ? " aria-current=\"page\"" : "")}>Sheet {i + 1}</a></li>")))}</ul></nav>\n";

    IEnumerable<(string File, string Text)> Models()
    {
        IGrouping<string, JudgedSeries>[] models = [.. _shown.Series.GroupBy(one => one.Series.Model)];
        ILookup<string, FleetJob> jobs = picture.Jobs.ToLookup(job => job.Model);
        string Title(string model) => jobs[model].LastOrDefault()?.Appliance ?? model;
        string Name(int index) => FormattableString.Invariant($"model-{index + 1}.html");
        string overview = Page.Table(
            $"Models of furnace, {Period}", ["Model", "#Jobs", "#Values to look at"],
            models.Select((model, i) => (string[])[$"<a href=\"{Name(i)}\">{Page.Text(Title(model.Key))}</a>", Count(jobs[model.Key].Count()), Count(model.Sum(one => one.Outliers.Length))]),
            "No values of these days have been published.");
        yield return ("models.html", Page.Of("Models of furnace", "Carbon monoxide air-free, oxygen, input rate and temperature rise of every start-up, by model, stage and time.", "models.html", Foot, overview));
        for (int i = 0; i < models.Length; i++)
        {
            yield return (Name(i), Page.Of(Title(models[i].Key), $"{Period}. A diamond is a value to look at, and leads to its job where that has a page.", "models.html", Foot, string.Concat(models[i].Select(Chart))));
        }
    }

    string Chart(JudgedSeries judged, int index)
    {
        FleetSeries series = judged.Series;
        string title = $"{Words(series.Quantity)}{(series.Scope.Length > 0 ? $", {series.Scope}" : "")}";
        return $"<h2>{Page.Text(title)}</h2>\n{ControlChart.Of(series, title, FormattableString.Invariant($"c{index}"), judged.Limits, judged.Outliers, point => _shown.HasPage(point.Job) ? _jobs[point.Job].Name : null)}"
            + Page.Table(
                $"{title}: values to look at, the gravest first", ["Job", "Read", "#Value", "#Lower limit", "#Upper limit", "Why"],
                judged.Outliers.Where(one => _jobs.ContainsKey(one.Point.Job)).Select(one => (string[])[
                    Link(_jobs[one.Point.Job]), Page.Moment(one.Point.At), Page.Text(ControlChart.Said(series, one.Point)), Optional(one.Point.Lower), Optional(one.Point.Upper), Page.Text(one.Why)]),
                "No value has to be looked at.", MostRows, "less grave; fleet --parquet FILE writes all values");
    }

    string Instruments() => Page.Of(
        "Instruments", $"{Period}. A van stands here when its values at a model differ from those of the other vans by more than chance (three standard errors of the medians) and more than its own uncertainty explain: compare its instrument with another one, or have it calibrated.",
        "instruments.html", Foot,
        Page.Table(
            "Instruments that read otherwise than the others", ["Van", "Quantity", "Furnace", "#Values", "#Median", "#Median of the others", "#Difference"],
            picture.Instruments.SelectMany(InstrumentDrift.In).OrderByDescending(drift => Math.Abs(drift.Median - drift.Others) / Math.Max(drift.StandardError, 1e-9)).Select(drift => (string[])[
                Page.Text(drift.Van), Page.Text($"{Words(drift.Series.Quantity)}{(drift.Series.Scope.Length > 0 ? $", {drift.Series.Scope}" : "")}"), Page.Text(drift.Series.Model), Count(drift.Count),
                Page.Text($"{Page.Number(drift.Median)} {drift.Series.Unit}"), Page.Text($"{Page.Number(drift.Others)} {drift.Series.Unit}"), Page.Text($"{(drift.Median < drift.Others ? "-" : "+")}{Page.Number(Math.Abs(drift.Median - drift.Others))} {drift.Series.Unit}")]),
            "No instrument reads otherwise than the others.", MostRows, "that differ less"));

    string Waits() => Page.Of(
        "Waits", $"{Period}. A wait is cut short by habit when that happened three times or more and in a quarter of the cases or more (common practice, no source).", "waits.html", Foot,
        Page.Table(
            "Waits that were cut short", ["Technician", "Step", "#Waits", "#Cut short", "#Share waited then", "Habit"],
            picture.Waits.Where(habit => habit.Short > 0).Select(habit => (string[])[
                Page.Text(habit.Technician), Page.Text(habit.Step), Count(habit.Count), Count(habit.Short),
                habit.MedianShare is { } share ? string.Create(CultureInfo.InvariantCulture, $"{100 * share:0} %") : "cannot be told", habit.IsHabit ? "<span class=\"danger\">yes</span>" : "no"]),
            "No wait was cut short.", MostRows, "that were cut short less often"));

    string Link(FleetJob job) => _shown.HasPage(job.Key) ? FormattableString.Invariant($"<a href=\"job-{job.Key}.html\">{Page.Text(job.Name)}</a>") : Page.Text(job.Name);

    static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);

    static string Optional(double? number) => number is { } value ? Page.Number(value) : "";

    internal static string Words(string id) => id switch
    {
        ResultId.CoAirFree => "CO air-free",
        "" => "",
        _ => $"{char.ToUpperInvariant(id[0])}{id[1..].Replace('_', ' ').Replace('-', ' ')}",
    };
}

/// <summary>The page of one job: where it stands and what the review has found.</summary>
static class JobPage
{
    static readonly string[] Weights = ["note", "DOUBT", "DANGER"];

    public static string Of(FleetJob job, IEnumerable<(FleetSeries Series, FleetPoint Point)> values, string foot)
    {
        StringBuilder body = new("<dl>\n");
        foreach ((string name, string text) in ((string, string)[])[
            ("State", FleetPages.Words(job.Status)), ("Began", Page.Moment(job.Began)), ("Ended", Page.Moment(job.Ended)), ("Technician", job.Technician), ("Furnace", $"{job.Appliance} ({job.Model})"),
            ("Checkpoint", new Storage.Log.Checkpoint(job.Count, Convert.ToHexString(job.Head)).ToString())])
        {
            body.Append(CultureInfo.InvariantCulture, $"<dt>{name}</dt><dd>{Page.Text(text)}</dd>\n");
        }

        body.Append("</dl>\n<h2>Findings</h2>\n").Append(Page.Table(
            "What the review has found, gravest first", ["Weight", "At", "Finding"],
            job.Findings.Select(finding => (string[])[Weight(finding), finding.At is { } at ? at.ToString("HH:mm:ss", CultureInfo.InvariantCulture) : "", Page.Text(finding.Text)]), "No findings."));
        body.Append("<h2>Values</h2>\n").Append(Page.Table(
            "Values that are drawn over time", ["Quantity", "Stage", "#Value", "#Lower limit", "#Upper limit"],
            values.Select(one => (string[])[
                Page.Text(FleetPages.Words(one.Series.Quantity)), Page.Text(one.Series.Scope), Page.Text(ControlChart.Said(one.Series, one.Point)),
                one.Point.Lower is { } lower ? Page.Number(lower) : "", one.Point.Upper is { } upper ? Page.Number(upper) : ""]),
            "None of them was measured."));
        return Page.Of($"Job {job.Name}", job.MustBeLookedAt ? "It must be looked at." : "It need not be looked at.", "index.html", foot, body.ToString());
    }

    public static string Weighed(FleetFinding finding) => $"{Weight(finding)} {Page.Text(finding.Text)}";

    static string Weight(FleetFinding finding) => $"<span class=\"{Weights[finding.Weight].ToLowerInvariant()}\">{Weights[finding.Weight]}</span>";
}
