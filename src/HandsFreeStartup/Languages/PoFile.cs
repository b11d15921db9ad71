using System.Collections.Immutable;
using System.Text;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Languages;

/// <summary>A catalog of texts in the PO format of GNU gettext, for which translators have editors.</summary>
/// <remarks>
/// Source: GNU gettext manual, "The Format of PO Files". Read is what a catalog without contexts and plural forms holds: comments, msgid and msgstr with strings over several lines,
/// and the mark "fuzzy", whose entries do not count until somebody has looked at them. A test has msgfmt check the shipped file.
/// </remarks>
public sealed class PoFile
{
    const string Fuzzy = "#,";

    readonly Dictionary<string, string> _texts = new(StringComparer.Ordinal);
    StringBuilder? _key;
    StringBuilder? _text;
    bool _isFuzzy;

    PoFile()
    {
    }

    /// <summary>Each text with its translation; without those that have none.</summary>
    public IReadOnlyDictionary<string, string> Texts => _texts;

    /// <summary>The lines of its head, "Name: value".</summary>
    public ImmutableDictionary<string, string> Head { get; private set; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>Reads a catalog.</summary>
    /// <param name="path">Named where it is wrong.</param>
    /// <param name="content">All of it.</param>
    /// <exception cref="WrongUseException">A line is none of the format.</exception>
    public static PoFile Read(string path, string content)
    {
        PoFile file = new();
        string[] lines = content.Split('\n');
        for (int number = 0; number < lines.Length; number++)
        {
            if (!file.Take(lines[number].Trim()))
            {
                throw new WrongUseException(FormattableString.Invariant($"{path}({number + 1}): expected a comment, msgid, msgstr or a string in quotes; correct the line, or choose another language."));
            }
        }

        file.Keep();
        return file;
    }

    bool Take(string line)
    {
        if (line.Length == 0 || line[0] == '#')
        {
            KeepIf(_text is not null);
            _isFuzzy |= line.StartsWith(Fuzzy, StringComparison.Ordinal) && line.Contains("fuzzy", StringComparison.Ordinal);
            return true;
        }

        if (line.StartsWith("msgid ", StringComparison.Ordinal))
        {
            KeepIf(_text is not null);
            _key = new StringBuilder();
            return Add(_key, line["msgid ".Length..]);
        }

        if (line.StartsWith("msgstr ", StringComparison.Ordinal) && _key is not null)
        {
            _text = new StringBuilder();
            return Add(_text, line["msgstr ".Length..]);
        }

        return (_text ?? _key) is { } open && Add(open, line);
    }

    void KeepIf(bool isWhole)
    {
        if (isWhole)
        {
            Keep();
        }
    }

    void Keep()
    {
        if (_key is { Length: > 0 } key && _text is { Length: > 0 } text && !_isFuzzy)
        {
            _texts[key.ToString()] = text.ToString();
        }
        else if (_key is { Length: 0 })
        {
            Head = (_text?.ToString() ?? "").Split('\n').Select(line => line.Split(':', 2)).Where(parts => parts.Length == 2)
                .DistinctBy(parts => parts[0]).ToImmutableDictionary(parts => parts[0].Trim(), parts => parts[1].Trim());
        }

        (_key, _text, _isFuzzy) = (null, null, false);
    }

    static bool Add(StringBuilder text, string quoted)
    {
        if (quoted is not ['"', .. var inner, '"'])
        {
            return false;
        }

        for (int at = 0; at < inner.Length; at++)
        {
            bool isEscaped = inner[at] == '\\';
            if (inner[at] == '"' || (isEscaped && ++at == inner.Length))
            {
                return false;
            }

            text.Append(isEscaped ? inner[at] switch { 'n' => '\n', 't' => '\t', var other => other } : inner[at]);
        }

        return true;
    }
}
