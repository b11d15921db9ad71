using System.Collections.Immutable;

namespace HandsFreeStartup.Reports.Copies.Formulas;

/// <summary>A piece of a formula as it is set on paper.</summary>
abstract record FormulaPart
{
    /// <summary>A symbol or a number.</summary>
    public sealed record Name(string Text) : FormulaPart;

    /// <summary>Pieces side by side with the sign before each; the first one has none, or a minus.</summary>
    public sealed record Row(ImmutableArray<(string Sign, FormulaPart Part)> Parts) : FormulaPart;

    /// <summary>One over another.</summary>
    public sealed record Fraction(FormulaPart Above, FormulaPart Below) : FormulaPart;

    /// <summary>A square root.</summary>
    public sealed record Root(FormulaPart Of) : FormulaPart;

    /// <summary>Parentheses, with the name of a function before them, or none.</summary>
    public sealed record Group(string Function, FormulaPart Inside) : FormulaPart;

    /// <summary>It without parentheses, where a bar or a roof holds it together.</summary>
    public FormulaPart Bare => this is Group { Function: "", Inside: var inside } ? inside : this;
}

/// <summary>Reads a formula as a derivation prints it: + − × / ( ) √ and names.</summary>
sealed class FormulaParser
{
    const string Signs = "+−×/()√ ";

    readonly string _text;
    int _at;

    FormulaParser(string text) => _text = text;

    /// <summary>The formula, or null where the text is none.</summary>
    public static FormulaPart? Read(string text)
    {
        FormulaParser parser = new(text);
        FormulaPart? whole = parser.Sum();
        return parser.Next == '\0' ? whole : null;
    }

    char Next
    {
        get
        {
            while (_at < _text.Length && _text[_at] == ' ')
            {
                _at++;
            }
            return _at < _text.Length ? _text[_at] : '\0';
        }
    }

    FormulaPart? Sum()
    {
        List<(string, FormulaPart)> parts = [];
        string sign = Next == '−' ? Taken() : "";
        while (Product() is { } part)
        {
            parts.Add((sign, part));
            if (Next is not ('+' or '−'))
            {
                return parts is [("", var only)] ? only : new FormulaPart.Row([.. parts]);
            }
            sign = Taken();
        }
        return null;
    }

    FormulaPart? Product()
    {
        List<(string, FormulaPart)> factors = [];
        for (string sign = ""; Atom() is { } factor; sign = Taken())
        {
            if (sign == "/")
            {
                FormulaPart above = Joined(factors);
                factors.Clear();
                factors.Add(("", new FormulaPart.Fraction(above.Bare, factor.Bare)));
            }
            else
            {
                factors.Add((sign, factor));
            }
            if (Next is not ('×' or '/'))
            {
                return Joined(factors);
            }
        }
        return null;
    }

    static FormulaPart Joined(List<(string, FormulaPart)> factors) => factors is [("", var only)] ? only : new FormulaPart.Row([.. factors]);

    FormulaPart? Atom()
    {
        bool isRoot = Next == '√' && Taken().Length > 0;
        string name = Name();
        if (Next != '(')
        {
            return name.Length > 0 && !isRoot ? new FormulaPart.Name(name) : null;
        }
        Taken();
        FormulaPart? inside = Sum();
        bool isClosed = Next == ')' && Taken().Length > 0;
        return inside is null || !isClosed ? null : isRoot ? new FormulaPart.Root(inside) : new FormulaPart.Group(name, inside);
    }

    string Name()
    {
        _ = Next;
        int start = _at;
        while (_at < _text.Length && !Signs.Contains(_text[_at], StringComparison.Ordinal))
        {
            _at++;
        }
        return _text[start.._at];
    }

    string Taken() => _text[_at++].ToString();
}
