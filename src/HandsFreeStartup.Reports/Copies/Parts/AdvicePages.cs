using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Reports.Copies.Layout;

namespace HandsFreeStartup.Reports.Copies.Parts;

/// <summary>What the people in the house must know, in plain words, of one appliance or of several at their address.</summary>
/// <remarks>General safety advice of the trade: common practice, no source; local rules and the instructions of furnace and alarm come first, and the page says so.</remarks>
sealed class AdvicePages(Ruler ruler, IReadOnlyList<CopyFacts> copies, double width)
{
    readonly Language _language = copies[0].Language;

    static readonly Style Text = new(9.6, false, Style.Ink);
    static readonly Style Loud = new(11.5, true, Style.Alarm);

    /// <summary>The emergency box for the first page.</summary>
    public IEnumerable<Strip> Emergency()
    {
        double column = (width - 40) / 3;
        Strip columns = Strip.Beside(
            (10, [.. Box("You smell gas", "Touch no switch, light no flame, use no phone inside. Everybody out. Call the gas supplier or the fire department from outside.", column)]),
            (20 + column, [.. Box("The CO alarm sounds", "Everybody out into fresh air at once. Call the fire department from outside. Go back only when they say so.", column)]),
            (30 + 2 * column, [.. Box("Headache, dizzy, sick", "Several people, or better outdoors: it may be carbon monoxide. Out, and call the emergency number: 911 in the US and Canada.", column)]));
        yield return Strip.Space(3);
        yield return new Strip(columns.Height + 10, (pen, x, y) =>
        {
            pen.Fill(x, y, width, columns.Height + 10, Style.Tint);
            pen.Fill(x, y, 2.5, columns.Height + 10, Style.Alarm);
            columns.Draw(pen, x, y + 5);
        });
        yield return Strip.Space(3);
    }

    /// <summary>The pages after the first.</summary>
    public IEnumerable<Strip> Pages() =>
    [
        .. Section("What this paper says", [.. copies.Select(copy => copies.Count == 1 ? Said(copy, "The first page") : $"{copy.Plan.Appliance.Title}: {Said(copy, "Its page")}")]),
        .. copies.FirstOrDefault(copy => copy.IsDemonstration) is { } shown
            ? Section(_language.Shown($"This is a {shown.Facts.Job!.Mark!.ToLowerInvariant()}"), "No furnace was started. The numbers are invented and say nothing about any furnace.") : [],
        .. Section("What the numbers mean",
            "Carbon monoxide (CO) has no color and no smell, and it kills. It is measured in the flue, where a little is normal, and in the rooms, where there should be none. CO air-free is the amount in the flue without the air that was mixed in, so that it can be compared with the limit.",
            "Oxygen shows how much air the burner has: too little makes CO, too much wastes heat.",
            "Manifold and inlet pressure show how much gas the burner gets. The rating plate says what they should be.",
            "Draft shows whether the vent pulls the flue gas out of the house. A number with a minus sign means that it pulls.",
            "Temperature rise and static pressure show whether enough air blows over the hot metal. A dirty filter or closed registers change both."),
        .. Section("What to watch for",
            "Yellow or lifting flames, soot, a burning smell, water around the vent, scorched paint: switch off and call a technician.",
            "The burner starts and stops every few minutes, bangs when it lights, or runs without end: call a technician.",
            "Moisture on the windows whenever the furnace runs, or people who feel unwell at home and better outdoors: leave, and have CO measured.",
            "A vent pipe that is loose, dented or blocked by snow, leaves or a nest: switch off and have it put right.",
            "Keep the panels on, the filter clean, the registers open, and paint, gasoline and laundry away from the furnace. Do not change the gas pressure or the controls."),
        .. Section("CO alarms",
            "Have a working alarm outside each sleeping area and on every floor. Test it every month, and replace it when its date is over.",
            "The alarm sounds: everybody out into fresh air, call the fire department from outside, count everybody, and do not go back until they say so. Airing out and resetting the alarm hides the cause.",
            "An alarm that is silent proves little: people fall ill at amounts at which many alarms stay silent for hours."),
        .. Section("Once a year",
            "Have the furnace cleaned and measured by a licensed technician, and show this paper: its numbers are what the next ones are compared with."),
        .. Texts.Paragraph(ruler, _language.Text("General advice (common practice, no source). Local rules, the instructions of your furnace and of your CO alarm, and what the fire department says come first."), Style.Small, width),
    ];

    string Said(CopyFacts copy, string page) => copy.Verdict is { IsSigned: true, Dangers.Count: 0 }
        ? (copy.Exceptions.IsEmpty ? "" : $"{_language.Text("THE START-UP WAS SIGNED WITH EXCEPTIONS. They stand first on the first page: have the technician explain each of them.")} ")
            + _language.Shown($"Your furnace was started up, measured and adjusted where needed, and the start-up was signed. {page} has every number that was measured, what it was before and after, and the limit it has to keep.")
        : _language.Shown($"THE START-UP IS NOT COMPLETE. Do not use the furnace until a licensed technician has completed it and given you a signed copy. {page} says what is missing.");

    IEnumerable<Strip> Box(string title, string text, double column) =>
        [.. Texts.Paragraph(ruler, _language.Text(title), Loud, column), .. Texts.Paragraph(ruler, _language.Text(text), Style.Body, column)];

    IEnumerable<Strip> Section(string title, params string[] texts) =>
    [
        .. Texts.Heading(ruler, _language.Text(title), width),
        .. texts.SelectMany(text => Texts.Paragraph(ruler, _language.Text(text), Text, width, texts.Length > 1 ? "·" : "", texts.Length > 1 ? 9 : 0).Append(Strip.Space(2.5))),
    ];
}
