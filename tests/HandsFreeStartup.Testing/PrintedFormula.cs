using System.Globalization;

namespace HandsFreeStartup.Calculations.Tests.Derivations;

/// <summary>Evaluates a formula from its printed text alone. Knows nothing of the product: four signs, parentheses, a root and a steam table of its own.</summary>
sealed class PrintedFormula
{
    readonly string _text;
    int _at;

    PrintedFormula(string text) => _text = text.Replace(" ", "", StringComparison.Ordinal);

    /// <exception cref="FormatException">The text is no formula.</exception>
    public static double Evaluate(string text)
    {
        PrintedFormula formula = new(text);
        double value = formula.Sum();
        return formula._at == formula._text.Length ? value : throw new FormatException($"'{text}' goes on after a formula.");
    }

    double Sum()
    {
        double value = Product();
        while (true)
        {
            if (Take("+"))
            {
                value += Product();
            }
            else if (Take("−"))
            {
                value -= Product();
            }
            else
            {
                return value;
            }
        }
    }

    double Product()
    {
        double value = Atom();
        while (true)
        {
            if (Take("×"))
            {
                value *= Atom();
            }
            else if (Take("/"))
            {
                value /= Atom();
            }
            else
            {
                return value;
            }
        }
    }

    double Atom()
    {
        if (Take("Tsat("))
        {
            return SaturationFahrenheit(Closed());
        }
        if (Take("√("))
        {
            return Math.Sqrt(Closed());
        }
        if (Take("(−"))
        {
            return -Closed();
        }
        if (Take("("))
        {
            return Closed();
        }

        int start = _at;
        while (_at < _text.Length && (char.IsAsciiDigit(_text[_at]) || _text[_at] == '.'))
        {
            _at++;
        }

        return double.Parse(_text[start.._at], CultureInfo.InvariantCulture);
    }

    double Closed()
    {
        double value = Sum();
        return Take(")") ? value : throw new FormatException($"'{_text}' lacks a parenthesis at {_at}.");
    }

    bool Take(string sign)
    {
        if (!_text.AsSpan(_at).StartsWith(sign, StringComparison.Ordinal))
        {
            return false;
        }

        _at += sign.Length;
        return true;
    }

    // Hyland and Wexler 1983 as in handbooks, solved by halving; another formula than the product's, within 0.005 K of it.
    static double SaturationFahrenheit(double pascals)
    {
        double low = 273.15, high = 473.15;
        for (int i = 0; i < 60; i++)
        {
            double t = (low + high) / 2;
            double p = Math.Exp(-5.8002206e3 / t + 1.3914993 - 4.8640239e-2 * t + 4.1764768e-5 * t * t - 1.4452093e-8 * t * t * t + 6.5459673 * Math.Log(t));
            (low, high) = p < pascals ? (t, high) : (low, t);
        }

        return low * 1.8 - 459.67;
    }
}
