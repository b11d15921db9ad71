using System.Globalization;
using System.Text;

namespace HandsFreeStartup.Tests.Languages;

/// <summary>The texts of a C# file as a language finds them: each literal, and each interpolated string with a numbered hole for every hole.</summary>
/// <remarks>A text is put together while the program runs, so that no compiled string holds it; the source does.</remarks>
sealed class SourceTexts
{
    readonly string _source;
    readonly List<string> _texts = [];

    SourceTexts(string source) => _source = source;

    /// <summary>All texts that hold words, without blanks at their ends.</summary>
    public static IEnumerable<string> Of(string path)
    {
        SourceTexts file = new(File.ReadAllText(path));
        file.Code(0, isHole: false);
        return file._texts.Select(text => text.Trim());
    }

    /// <summary>Goes through code up to the end, or to the end of a hole.</summary>
    int Code(int at, bool isHole)
    {
        int depth = 0;
        while (at < _source.Length)
        {
            if (Starts(at, "//"))
            {
                at = _source.IndexOf('\n', at);
                continue;
            }

            if (Starts(at, "\"\"\"") || Starts(at, "$\"\"\""))
            {
                int begins = _source.IndexOf("\"\"\"", at, StringComparison.Ordinal) + 3;
                at = _source.IndexOf("\"\"\"", begins, StringComparison.Ordinal) + 3;
                continue;
            }

            char letter = _source[at];
            if (letter == '\'')
            {
                at = _source.IndexOf('\'', at + (_source[at + 1] == '\\' ? 3 : 2)) + 1;
            }
            else if (Starts(at, "@\"") || Starts(at, "$@\""))
            {
                at = _source.IndexOf('"', _source.IndexOf('"', at) + 1) + 1;
            }
            else if (letter == '"')
            {
                at = Literal(at + 1, at > 0 && _source[at - 1] == '$');
            }
            else if (isHole && depth == 0 && letter == '}')
            {
                return at + 1;
            }
            else
            {
                depth += letter is '(' or '{' or '[' ? 1 : letter is ')' or '}' or ']' ? -1 : 0;
                at++;
            }
        }

        return at;
    }

    int Literal(int at, bool isInterpolated)
    {
        StringBuilder text = new();
        int holes = 0;
        while (_source[at] != '"')
        {
            if (_source[at] == '\\')
            {
                text.Append(_source[at + 1]);
                at += 2;
            }
            else if (isInterpolated && _source[at] == '{' && _source[at + 1] != '{')
            {
                text.Append(CultureInfo.InvariantCulture, $"{{{holes++}}}");
                at = Code(at + 1, isHole: true);
            }
            else
            {
                text.Append(_source[at]);
                at += isInterpolated && _source[at] is '{' or '}' ? 2 : 1;
            }
        }

        _texts.Add(text.ToString());
        return at + 1;
    }

    bool Starts(int at, string what) => string.CompareOrdinal(_source, at, what, 0, what.Length) == 0;
}
