using System.Globalization;

namespace HandsFreeStartup.Doors;

/// <summary>
/// Text of strangers as a cell of a table (CSV). A spreadsheet takes a cell that begins with = + - or @ for a formula and works it out; an apostrophe before it makes it text
/// again. Numbers stay numbers.
/// </summary>
public static class TableCell
{
    const string BeginsFormula = "=+-@\uFF1D\uFF0B\uFF0D\uFF20\t\r\n";

    /// <summary>The cell, its control characters as marks; quoting it for the table is the business of whoever writes that.</summary>
    public static string Of(string text)
    {
        string shown = VisibleText.Of(text);
        string begun = text.TrimStart(' ', '\u00A0', '\uFEFF', '"', '\'');
        return begun.Length > 0 && BeginsFormula.Contains(begun[0], StringComparison.Ordinal) && !IsNumber(text) ? $"'{shown}" : shown;
    }

    static bool IsNumber(string text) => double.TryParse(text, NumberStyles.Float & ~NumberStyles.AllowLeadingWhite & ~NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out _);
}
