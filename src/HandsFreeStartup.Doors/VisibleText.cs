using System.Globalization;
using System.Text;

namespace HandsFreeStartup.Doors;

/// <summary>
/// Text of strangers as it may be shown: every control and format character becomes a visible mark. What a terminal, a sheet of paper or a table would take for an order (move
/// the cursor, set the title, turn the direction of writing, begin a new line) is seen instead of obeyed. The record itself keeps the text as it was typed.
/// </summary>
/// <remarks>
/// One character stays one, so that broken lines keep their width. The control characters of ASCII become their pictures (Unicode block Control Pictures: ␛ for escape), all
/// others the replacement character.
/// </remarks>
public static class VisibleText
{
    const char Replacement = '\uFFFD';
    const char FirstPicture = '\u2400';
    const char DeletePicture = '\u2421';

    /// <summary>One line of text with its marks; line breaks and tabs are marks too.</summary>
    public static string Of(string text) => IsVisible(text) ? text : string.Create(text.Length, text, static (shown, text) => Mark(text, shown, keepsLineFeeds: false));

    /// <summary>Text of several lines: as <see cref="Of(string)"/>, but a line feed stays one.</summary>
    public static string OfLines(string text) => IsVisible(text) ? text : string.Create(text.Length, text, static (shown, text) => Mark(text, shown, keepsLineFeeds: true));

    /// <summary>Whether nothing in it needs a mark.</summary>
    public static bool IsVisible(ReadOnlySpan<char> text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] is >= ' ' and <= '~')
            {
                continue;
            }

            if (Rune.DecodeFromUtf16(text[i..], out Rune rune, out int length) != System.Buffers.OperationStatus.Done || IsOrder(rune))
            {
                return false;
            }

            i += length - 1;
        }

        return true;
    }

    static void Mark(ReadOnlySpan<char> text, Span<char> shown, bool keepsLineFeeds)
    {
        for (int i = 0; i < text.Length;)
        {
            // Most letters are these; a year of a firm has tens of millions of them.
            if (text[i] is >= ' ' and <= '~' || (keepsLineFeeds && text[i] == '\n'))
            {
                shown[i] = text[i];
                i++;
                continue;
            }

            bool isWhole = Rune.DecodeFromUtf16(text[i..], out Rune rune, out int length) == System.Buffers.OperationStatus.Done;
            if (isWhole && !IsOrder(rune))
            {
                text.Slice(i, length).CopyTo(shown[i..]);
            }
            else
            {
                shown.Slice(i, length).Fill(!isWhole ? Replacement : rune.Value < ' ' ? (char)(FirstPicture + rune.Value) : rune.Value == 0x7F ? DeletePicture : Replacement);
            }

            i += length;
        }
    }

    static bool IsOrder(Rune rune) => Rune.GetUnicodeCategory(rune) is
        UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Surrogate;
}
