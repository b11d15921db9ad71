using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;

namespace HandsFreeStartup.Procedure.Messages;

/// <summary>Finds again which text of the program a finished sentence was made of, and what stood in its holes: the log keeps sentences, not texts.</summary>
/// <remarks>Of several texts that fit, the one with most words of its own is meant. Nothing that somebody dictated or wrote is looked for here.</remarks>
sealed partial class TextTemplates
{
    /// <summary>A text with fewer letters of its own is meant only where numbers stand in all of its holes: "3.2 to 3.8".</summary>
    const int FewLetters = 5;

    readonly ImmutableArray<Template> _all;

    /// <summary>All texts with holes, the one with most words first.</summary>
    public TextTemplates(IEnumerable<KeyValuePair<string, string>> texts) =>
        _all = [.. texts.Where(text => Hole.IsMatch(text.Key)).Select(text => Template.Of(text.Key, text.Value)).OfType<Template>().OrderByDescending(one => one.Letters).ThenBy(one => one.Key, StringComparer.Ordinal)];

    /// <summary>The sentence in the words of the translation; null where no text fits.</summary>
    /// <param name="sentence">As it was shown.</param>
    /// <param name="translated">What stands in a hole, in the other language.</param>
    public string? Translated(string sentence, Func<string, string> translated)
    {
        foreach (Template template in _all)
        {
            if (sentence.Contains(template.Longest, StringComparison.Ordinal) && template.Form.Value.Match(sentence) is { Success: true } match
                && (template.Letters >= FewLetters || match.Groups.Values.Skip(1).All(hole => IsNumber(hole.Value))))
            {
                return Hole.Replace(template.Translation, hole => match.Groups[$"h{hole.Groups[1].Value}"].Value is var words && IsQuoted(template.Translation, hole) ? words : translated(words));
            }
        }

        return null;
    }

    /// <summary>In double quotes stands what somebody said or wrote, or a key that must be written so: "{0}", «{0}».</summary>
    static bool IsQuoted(string text, Match hole) => hole.Index > 0 && hole.Index + hole.Length < text.Length && (text[hole.Index - 1], text[hole.Index + hole.Length]) is ('"', '"') or ('«', '»');

    static bool IsNumber(string text) => text.Length > 0 && (char.IsAsciiDigit(text[0]) || (text[0] is '-' or '−' && text.Length > 1 && char.IsAsciiDigit(text[1])));

    sealed record Template(string Key, string Translation, int Letters, string Longest, Lazy<Regex> Form)
    {
        /// <summary>The text; null where a hole touches another one, so that nobody could tell where it ends. A name and its value stay together.</summary>
        public static Template? Of(string key, string translation)
        {
            if (key.Contains("{0} {1}", StringComparison.Ordinal) && translation.Contains("{0} {1}", StringComparison.Ordinal))
            {
                (string Key, string Translation) together = (key.Replace("{0} {1}", "{0}", StringComparison.Ordinal), translation.Replace("{0} {1}", "{0}", StringComparison.Ordinal));
                (key, translation) = Language.HasSameHoles(together.Key, together.Translation) ? together : (key, translation);
            }

            string[] pieces = Hole.Split(key).Where((_, index) => index % 2 == 0).ToArray();
            int letters = pieces.Sum(piece => piece.Count(char.IsLetter));
            return letters == 0 || pieces[1..^1].Contains("") ? null
                : new Template(key, translation, letters, pieces.MaxBy(piece => piece.Length)!, new(() => Pattern(key), LazyThreadSafetyMode.PublicationOnly));
        }

        static Regex Pattern(string key)
        {
            HashSet<string> seen = [];
            string pattern = Hole.Replace(Regex.Escape(key).Replace(@"\{", "{", StringComparison.Ordinal), hole =>
                seen.Add(hole.Value) ? string.Create(CultureInfo.InvariantCulture, $"(?<h{hole.Groups[1].Value}>.+?)") : $@"\k<h{hole.Groups[1].Value}>");
            return new Regex($"^{pattern}$", RegexOptions.CultureInvariant | RegexOptions.Singleline);
        }
    }

    [GeneratedRegex(@"\{([0-9]+)\}", RegexOptions.CultureInvariant)]
    private static partial Regex Hole { get; }
}
