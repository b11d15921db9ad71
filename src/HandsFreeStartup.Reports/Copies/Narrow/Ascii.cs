using System.Text;

namespace HandsFreeStartup.Reports.Copies.Narrow;

/// <summary>Text in the 95 characters that every printer has; one character stays one, so that broken lines keep their width; what needs more is spelled out before.</summary>
static class Ascii
{
    const string Plain = "AAAAAAACEEEEIIIIDNOOOOOxOUUUUYTsaaaaaaaceeeeiiiidnooooo/ouuuuyty";

    /// <summary>What needs more than one character, to be done before lines are broken.</summary>
    public static string Widened(string text) => text
        .Replace("°F", "deg F", StringComparison.Ordinal).Replace("°C", "deg C", StringComparison.Ordinal).Replace("±", "+/-", StringComparison.Ordinal)
        .Replace("≤", "<=", StringComparison.Ordinal).Replace("≥", ">=", StringComparison.Ordinal).Replace("ß", "ss", StringComparison.Ordinal);

    /// <summary>Letters without their accents, units in ASCII; anything else becomes "?", and a last line says so.</summary>
    public static string Of(string text, string ifPoorer)
    {
        StringBuilder plain = new(text.Length);
        bool isPoorer = false;
        foreach (Rune rune in text.EnumerateRunes())
        {
            char shown = One(rune);
            isPoorer |= shown == '?' && rune.Value != '?';
            plain.Append(shown);
        }
        return isPoorer ? $"{plain}{ifPoorer}\n" : plain.ToString();
    }

    static char One(Rune rune) => rune.Value switch
    {
        '\n' or (>= ' ' and <= '~') => (char)rune.Value,
        0xA0 => ' ',
        0xB5 or 0x3BC => 'u',
        0xB7 or 0x2022 => '*',
        0x2010 or 0x2011 or 0x2012 or 0x2013 or 0x2014 => '-',
        0x2018 or 0x2019 => '\'',
        0x201C or 0x201D => '"',
        >= 0xC0 and <= 0xFF => Plain[rune.Value - 0xC0],
        _ => '?',
    };
}
