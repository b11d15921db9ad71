using System.Globalization;
using System.Text;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Checklists;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>Writes an appliance sheet as the reader reads it.</summary>
public static class ApplianceSheetWriter
{
    /// <summary>The sheet as YAML; reading it gives the same sheet.</summary>
    /// <param name="sheet">What the plate and the maker say.</param>
    /// <param name="comment">First line, without its sign.</param>
    public static string Text(ApplianceSheet sheet, string comment)
    {
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"""
            # {comment}
            id: {sheet.Id}
            title: {Quoted(sheet.Title)}
            fuel: {sheet.FuelId}
            stages: {Condition.Word(sheet.Branch.Firing)}

            """);
        text.Append(sheet.Venting is { } category ? $"venting: {category}\n" : "");
        text.Append(sheet.IsCondensing is { } condensing ? $"condensing: {(condensing ? "true" : "false")}\n" : "");
        text.Append(sheet.DraftBy is { } draws ? $"draft_by: {(draws == DraftBy.Natural ? "natural" : "fan")}\n" : "");
        text.Append(sheet.SeaLevelInput is { } input ? FormattableString.Invariant($"sea_level_input: {input}\n") : "");
        text.Append(CultureInfo.InvariantCulture, $"""
            turn_to_raise: {sheet.TurnToRaise}
            seal: {Quoted(sheet.SealFor)}

            """);
        text.Append(sheet.Limits.IsEmpty ? "" : "\nlimits:\n");
        foreach (DeclaredLimit limit in sheet.Limits)
        {
            text.Append($"  - {{ {string.Join(", ", Entries(limit))} }}\n");
        }
        return text.ToString();
    }

    static IEnumerable<string> Entries(DeclaredLimit limit)
    {
        yield return $"name: {limit.Name}";
        if (limit.Lower is { } lower)
        {
            yield return FormattableString.Invariant($"lower: {lower}");
        }

        if (limit.Upper is { } upper)
        {
            yield return FormattableString.Invariant($"upper: {upper}");
        }

        yield return $"unit: {Quoted(limit.UnitSymbol)}";
        if (limit.IsSafety)
        {
            yield return "safety: true";
        }

        if (limit.Weight is { } weight)
        {
            yield return $"weight: {(weight == LimitWeight.Must ? "must" : "ought")}";
        }

        if (limit.Unusual is { } why)
        {
            yield return $"unusual: {Quoted(why)}";
        }

        yield return $"source: {Quoted(limit.Source)}";
    }

    /// <summary>What cannot be seen is written as its number, so that it is seen in the file too.</summary>
    public static string Quoted(string text)
    {
        StringBuilder quoted = new("\"");
        foreach (char letter in text)
        {
            _ = letter is '"' or '\\' ? quoted.Append('\\').Append(letter)
                : !VisibleText.IsVisible([letter]) && !char.IsSurrogate(letter) ? quoted.Append(CultureInfo.InvariantCulture, $"\\u{(int)letter:X4}")
                : quoted.Append(letter);
        }

        return quoted.Append('"').ToString();
    }
}
