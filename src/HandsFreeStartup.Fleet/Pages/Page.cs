using System.Globalization;
using System.Net;
using System.Text;
using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Fleet.Pages;

/// <summary>A page for the office: one file that needs no server, no script and nothing else from anywhere.</summary>
static class Page
{
    static readonly string Style = Read("page.css");

    static readonly (string File, string Name)[] Places = [("index.html", "Day"), ("models.html", "Models"), ("instruments.html", "Instruments"), ("waits.html", "Waits")];

    /// <summary>Text of a stranger within a page; nothing in it is obeyed.</summary>
    public static string Text(string text) => WebUtility.HtmlEncode(VisibleText.OfLines(text));

    /// <summary>A moment, by the clock that it was told by, and how far that is from UTC.</summary>
    public static string Moment(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture);

    /// <summary>A number with at most four digits that count, or all of its whole ones.</summary>
    public static string Number(double value, int digits = 4) =>
        Math.Round(value, Math.Clamp(digits - 1 - (int)Math.Floor(Math.Log10(Math.Max(Math.Abs(value), 1e-9))), 0, 6)).ToString("0.######", CultureInfo.InvariantCulture);

    /// <summary>A whole page.</summary>
    /// <param name="title">Its heading.</param>
    /// <param name="lead">One sentence or two below it.</param>
    /// <param name="place">File of the place in the navigation that it belongs to.</param>
    /// <param name="foot">When and from where it was written.</param>
    /// <param name="body">Its content.</param>
    public static string Of(string title, string lead, string place, string foot, string body) =>
        $"""
        <!doctype html>
        <html lang="en">
        <head>
        <meta charset="utf-8">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
        <title>{Text(title)} – HandsFree Startup</title>
        <style>
        {Style}</style>
        </head>
        <body>
        <a class="skip" href="#content">To the content</a>
        <header><strong>HandsFree Startup</strong>
        <nav aria-label="Pages"><ul>{string.Concat(Places.Select(one => $"<li><a href=\"{one.File}\"{(one.File == place ? " aria-current=\"page\"" : "")}>{one.Name}</a></li>"))}</ul></nav>
        </header>
        <main id="content" tabindex="-1">
        <h1>{Text(title)}</h1>
        <p class="lead">{Text(lead)}</p>
        {body}
        </main>
        <footer>{Text(foot)}</footer>
        </body>
        </html>

        """;

    /// <summary>A table; cells are written as they are, so texts in them have gone through <see cref="Text"/>.</summary>
    /// <param name="caption">What it shows.</param>
    /// <param name="heads">Names of the columns; one that begins with # holds numbers.</param>
    /// <param name="rows">Cells; the first of each row names the row.</param>
    /// <param name="none">What is said where there are no rows.</param>
    /// <param name="most">Rows that are shown; the others are counted.</param>
    /// <param name="others">What the others are.</param>
    public static string Table(string caption, string[] heads, IEnumerable<string[]> rows, string none, int most = int.MaxValue, string others = "")
    {
        StringBuilder table = new();
        int count = 0;
        foreach (string[] row in rows)
        {
            if (++count > most)
            {
                continue;
            }

            table.Append("<tr>").AppendJoin("", row.Select((cell, i) => i == 0 ? $"<th scope=\"row\">{cell}</th>" : $"<td{Class(heads[i])}>{cell}</td>")).Append("</tr>\n");
        }

        return table.Length == 0 ? $"<p>{Text(none)}</p>\n"
            : $"<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"{Text(caption)}\"><table><caption>{Text(caption)}</caption>\n<thead><tr>{string.Concat(heads.Select(head => $"<th scope=\"col\"{Class(head)}>{Text(head.TrimStart('#'))}</th>"))}</tr></thead>\n<tbody>\n{table}</tbody></table></div>\n{(count <= most ? "" : string.Create(CultureInfo.InvariantCulture, $"<p>And {count - most} more, {Text(others)}.</p>\n"))}";
    }

    static string Class(string head) => head.StartsWith('#') ? " class=\"number\"" : "";

    static string Read(string resource)
    {
        using StreamReader reader = new(typeof(Page).Assembly.GetManifestResourceStream(resource)!);
        return reader.ReadToEnd();
    }
}
