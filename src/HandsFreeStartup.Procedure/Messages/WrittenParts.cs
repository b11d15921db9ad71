using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace HandsFreeStartup.Procedure.Messages;

/// <summary>Takes what somebody wrote into words and numbers, where it comes in: no number is looked for in a sentence of the program.</summary>
static class WrittenParts
{
    const string Digits = @"(?<number>[0-9]{1,3}(,[0-9]{3})+(\.[0-9]+)?|[0-9]+(\.[0-9]+)?|\.[0-9]+)";

    // A sign belongs to a number at the start of a word; between two digits it is a range. "O2" and "F2" hold no number.
    static readonly Regex Figure = new(
        $@"((?<![\p{{L}}0-9.,₂]){Digits}(?![0-9])|(?<=(^|[\s(≤≥<>±=])|[0-9])(?<sign>[-−–]){Digits})(\s?(?<unit>{string.Join('|', UnitWords.Symbols.Select(Regex.Escape))})(?![\p{{L}}0-9]))?",
        RegexOptions.CultureInvariant);

    /// <summary>Text and figures; together they show the same as <paramref name="text"/>.</summary>
    public static ImmutableArray<MessagePart> Of(string text)
    {
        ImmutableArray<MessagePart>.Builder parts = ImmutableArray.CreateBuilder<MessagePart>();
        int from = 0;
        foreach (Match match in Figure.Matches(text))
        {
            AddText(text[from..match.Index]);
            parts.Add(Of(match, text));
            from = match.Index + match.Length;
        }

        AddText(text[from..]);
        return parts.ToImmutable();

        void AddText(string words)
        {
            if (words.Length > 0)
            {
                parts.Add(new MessagePart.Text(words));
            }
        }
    }

    static MessagePart.Figure Of(Match match, string text)
    {
        string digits = match.Groups["number"].Value.Replace(",", "", StringComparison.Ordinal);
        bool isSigned = match.Groups["sign"].Success;
        bool endsRange = isSigned && match.Index > 0 && char.IsAsciiDigit(text[match.Index - 1]);
        string number = $"{(isSigned && !endsRange ? "-" : "")}{(digits[0] == '.' ? "0" : "")}{digits}";
        return new MessagePart.Figure(match.Value, number, match.Groups["unit"].Value, endsRange);
    }
}
