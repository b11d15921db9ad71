using System.Globalization;
using System.Text;

namespace HandsFreeStartup.Reports.Fonts;

/// <summary>Text as the typeface can show it. What it has no shape for is spelled out, never left out: a blank could hide a word of a name or a note.</summary>
static class Letters
{
    // Read from the typeface's character table; invisible and direction-changing characters are left out on purpose.
    static readonly (int First, int Last)[] Known =
    [
        (0x20, 0x7E), (0xA0, 0xAC), (0xAE, 0x377), (0x37A, 0x37F), (0x384, 0x38A), (0x38C, 0x38C), (0x38E, 0x3A1), (0x3A3, 0x3E1), (0x3F0, 0x52F),
        (0x1E00, 0x1EFF), (0x2010, 0x2027), (0x2030, 0x205E), (0x20A0, 0x20BF), (0x2100, 0x215F),
    ];

    /// <summary>One line of text: white space becomes a blank, a character without a shape its number, for instance "(U+6C34)".</summary>
    public static string Shown(string text)
    {
        StringBuilder shown = new(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            _ = IsKnown(rune.Value) ? shown.Append(rune)
                : Rune.IsWhiteSpace(rune) ? shown.Append(' ')
                : shown.Append(CultureInfo.InvariantCulture, $"(U+{rune.Value:X4})");
        }
        return shown.ToString();
    }

    static bool IsKnown(int letter) => letter is >= 0x20 and <= 0x7E || Known.Any(range => letter >= range.First && letter <= range.Last);
}
