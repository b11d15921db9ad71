using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Reports.Copies.Layout;
using HandsFreeStartup.Reports.Facts;

namespace HandsFreeStartup.Reports.Copies.Parts;

/// <summary>The readings as lines: as found, worst, as left, uncertainty, unit, limit with the mark of its source, verdict. Numbers stand on their decimal points.</summary>
sealed class ReadingLines(Ruler ruler, CopyFacts copy, double width, double size)
{
    // Places in parts of the width.
    const double TitleEnd = 0.34, FoundPoint = 0.40, WorstPoint = 0.49, LeftPoint = 0.575, Uncertainty = 0.62, Unit = 0.70, Limit = 0.765, Mark = 0.92;

    /// <summary>Smaller letters are not read in a furnace room, pt (common practice, no source).</summary>
    const double Smallest = 7;

    /// <summary>Numbers with less between them are read as one, pt (common practice, no source).</summary>
    const double Apart = 4;

    readonly Style _label = new(size, false, Style.Ink);
    readonly Style _left = new(size * 1.08, true, Style.Ink);
    readonly Style _quiet = new(Math.Max(Smallest, size * 0.89), false, Style.Quiet);
    readonly Style _mark = new(Math.Max(Smallest, size * 0.76), false, Style.Quiet);
    readonly Style _pass = new(Math.Max(Smallest, size * 0.89), true, Style.Accent);
    readonly Style _alarm = new(size * 0.97, true, Style.Alarm);
    readonly Style _title = new(size * 1.12, true, Style.Accent);

    /// <summary>All groups.</summary>
    public IEnumerable<IEnumerable<Strip>> Write() => copy.Groups.Select(group => Group(group, group.Lines));

    IEnumerable<Strip> Group(ReadingGroup group, IReadOnlyList<FoundAndLeft> lines)
    {
        Strip head = Head(group.Title), again = Head($"{group.Title}, {copy.Language.Text("continued")}");
        yield return head with { KeepsWithNext = true };
        for (int i = 0; i < lines.Count; i++)
        {
            IReadOnlyList<Strip> strips = [.. Line(lines[i])];
            for (int k = 0; k < strips.Count; k++)
            {
                yield return strips[k] with { Head = again, KeepsWithNext = k < strips.Count - 1 || (i == 0 && lines.Count > 1) };
            }
        }

        yield return Strip.Space(size * 0.9);
    }

    Strip Head(string title) => new(_title.LineHeight + 4, (pen, x, y) =>
    {
        pen.Text(title, Fitted(title, _title, TitleEnd * width), x, y);
        double low = y + _title.Baseline - _mark.Baseline;
        pen.TextToRight(copy.Language.Text("as found"), _mark, x + (FoundPoint + 0.02) * width, low);
        pen.TextToRight(copy.Language.Text("worst"), _mark, x + (WorstPoint + 0.02) * width, low);
        pen.TextToRight(copy.Language.Text("as left"), _mark, x + (LeftPoint + 0.02) * width, low);
        pen.Text("± U", _mark, x + Uncertainty * width, low);
        pen.Text(copy.Language.Text("unit"), _mark, x + Unit * width, low);
        pen.Text(copy.Language.Text("limit"), _mark, x + Limit * width, low);
        pen.Text(copy.Language.Text("by"), _mark, x + Mark * width, low);
        pen.Rule(x, y + _title.LineHeight + 1.5, width, Style.Accent, 0.8);
    });

    IEnumerable<Strip> Line(FoundAndLeft line)
    {
        IReadOnlyList<string> label = ruler.Wrap(line.IsResult ? $"= {line.Label}" : line.Label, _label, LabelRoom(line));
        double pitch = size * 1.5;
        string verdict = line.Verdict is { } judged && VerdictWords.MustBeLookedAt(judged, line.Limit) ? copy.Language.Text(VerdictWords.Of(judged, line.Limit!)) : "";
        string below = string.Join("; ", new[] { verdict, line.Remark.Shown }.Where(text => text.Length > 0));
        Style style = line.MustBeLookedAt ? _alarm : _quiet;

        // A short reason stands where the number would; one that tells a number stays away from the numbers that stand.
        bool isLower = IsLower(line);
        bool isBeside = line.Left is null && !below.Any(char.IsDigit) && ruler.Width(below, style) <= (1 - Uncertainty) * width;
        yield return new Strip(pitch + Math.Max(label.Count - 1, isLower ? 1 : 0) * _label.LineHeight, (pen, x, y) =>
        {
            for (int i = 0; i < label.Count; i++)
            {
                pen.Text(label[i], _label, x, y + 1 + i * _label.LineHeight);
            }
            Numbers(pen, line, x, y + 1 + _label.Baseline);
            pen.Text(isBeside ? below : "", style, x + Uncertainty * width, y + 1 + _label.Baseline - style.Baseline);
        });

        foreach (string text in isBeside || below.Length == 0 ? [] : ruler.Wrap(below, style, width - 8))
        {
            yield return new Strip(style.LineHeight, (pen, x, y) => pen.Text(text, style, x + 8, y));
        }
        yield return new Strip(1, (pen, x, y) => pen.Rule(x, y + 0.5, width, Style.Hair, 0.35));
    }

    /// <summary>All texts of a line stand on the same feet, whatever their size.</summary>
    void Numbers(Pen pen, FoundAndLeft line, double x, double feet)
    {
        double quiet = feet - _quiet.Baseline;
        Quiet(pen, line.Found, x + FoundPoint * width, feet);
        Quiet(pen, line.Worst, x + WorstPoint * width, IsLower(line) ? feet + _label.LineHeight : feet);
        OnPoint(pen, line.Left?.Number ?? "–", line.MustBeLookedAt ? _left.In(Style.Alarm) : _left, x + LeftPoint * width, feet - _left.Baseline);
        Fit(pen, line.Left is not { } left ? "" : Doubt(left.Value), x + Uncertainty * width, quiet, (Unit - Uncertainty) * width - 2);
        Fit(pen, line.Left is null ? "" : line.Unit, x + Unit * width, quiet, (Limit - Unit) * width - 2);
        Judged(pen, line, x, feet);
    }

    string Doubt(ShownValue value) => value.Doubt == ShownValue.NoneStated ? copy.Language.Text("none stated")
        : value.Highest.Length > 0 ? copy.Language.Text("{0} to {1}", "0", value.Highest)
        : value.Doubt;

    /// <summary>A number that need not stand any more, with its fate before it.</summary>
    void Quiet(Pen pen, ShownNumber? number, double point, double feet)
    {
        if (number is null)
        {
            pen.TextToRight("–", _quiet, point, feet - _quiet.Baseline);
            return;
        }

        OnPoint(pen, number.Number, _quiet, point, feet - _quiet.Baseline);
        pen.TextToRight(number.Fate, _mark, point - Whole(number.Number, _quiet) - 2.5, feet - _mark.Baseline);
    }

    /// <summary>Whether the worst value, with its fate, has no room between its neighbors: it then stands a line lower.</summary>
    bool IsLower(FoundAndLeft line) => line.Worst is { } worst
        && (Before(worst) + Apart > (WorstPoint - FoundPoint) * width - After(line.Found?.Number ?? "–", _quiet)
            || After(worst.Number, _quiet) + Apart > (LeftPoint - WorstPoint) * width - Whole(line.Left?.Number ?? "–", _left));

    /// <summary>Width of a number before its point, with its fate.</summary>
    double Before(ShownNumber number) => Whole(number.Number, _quiet) + 2.5 + ruler.Width(number.Fate, _mark);

    /// <summary>Width of what stands behind the decimal point.</summary>
    double After(string number, Style style) => ruler.Width(number, style) - Whole(number, style);

    void Judged(Pen pen, FoundAndLeft line, double x, double feet)
    {
        if (line.Limit is not { } limit)
        {
            return;
        }

        Fit(pen, copy.LimitText(line), x + Limit * width, feet - _quiet.Baseline, (Mark - Limit) * width - 3);
        pen.Text(copy.Mark(limit), _mark, x + Mark * width, feet - _mark.Baseline);
        (string word, Style look) = line.Verdict == Verdict.Pass ? (copy.Language.Text("pass"), _pass) : ("!", _alarm);
        pen.TextToRight(word, look, x + width, feet - look.Baseline);
    }

    /// <summary>Writes a number with its decimal point, or its end, at <paramref name="point"/>.</summary>
    void OnPoint(Pen pen, string number, Style style, double point, double y) => pen.Text(number, style, point - Whole(number, style), y);

    /// <summary>Width of what stands before the decimal point.</summary>
    double Whole(string number, Style style) => ruler.Width(number.Split('.')[0], style);

    /// <summary>A label may reach to what was found.</summary>
    double LabelRoom(FoundAndLeft line) => FoundPoint * width - 5
        - Whole(line.Found?.Number ?? "–", _quiet) - (line.Found is { Stands: false } found ? ruler.Width(found.Fate, _mark) + 2.5 : 0);

    void Fit(Pen pen, string text, double x, double y, double room) => pen.Text(text, Fitted(text, _quiet, room), x, y);

    /// <summary>The style, smaller where a text would otherwise run into its neighbor.</summary>
    Style Fitted(string text, Style style, double room)
    {
        double needed = ruler.Width(text, style);
        return needed <= room ? style : style.At(Math.Max(Smallest, style.Size * room / needed));
    }
}
