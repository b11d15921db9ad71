using System.Globalization;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Derivations;

/// <summary>A number that remembers how it was made: the formula in symbols, the same with the numbers put in, and the value with its uncertainty.</summary>
public readonly struct Term : IFormulaNumber<Term>
{
    enum Rank { Sum, Product, Atom }

    readonly Rank _rank;

    Term(in Uncertain value, string symbols, string numbers, Rank rank)
    {
        Value = value;
        Symbols = symbols;
        Numbers = numbers;
        _rank = rank;
    }

    /// <summary>The value.</summary>
    public Uncertain Value { get; }

    /// <summary>How it was made, in symbols.</summary>
    public string Symbols { get; }

    /// <summary>How it was made, in numbers.</summary>
    public string Numbers { get; }

    /// <summary>A number that has a symbol of its own.</summary>
    internal static Term Named(in Uncertain value, string symbol, string number) => new(value, symbol, number, Rank.Atom);

    /// <summary>A function of this number that has a name, such as a table.</summary>
    internal Term Through(string function, in Uncertain value) => new(value, $"{function}({Symbols})", $"{function}({Numbers})", Rank.Atom);

    /// <inheritdoc/>
    public static Term operator +(in Term x, in Term y) => Join(x.Value + y.Value, x, "+", y, Rank.Sum, strictRight: false);

    /// <inheritdoc/>
    public static Term operator -(in Term x, in Term y) => Join(x.Value - y.Value, x, "−", y, Rank.Sum, strictRight: true);

    /// <inheritdoc/>
    public static Term operator *(in Term x, in Term y) => Join(x.Value * y.Value, x, "×", y, Rank.Product, strictRight: false);

    /// <inheritdoc/>
    public static Term operator /(in Term x, in Term y) => Join(x.Value / y.Value, x, "/", y, Rank.Product, strictRight: true);

    /// <inheritdoc/>
    public static Term operator +(in Term x, double exact) => x + Constant(exact);

    /// <inheritdoc/>
    public static Term operator -(in Term x, double exact) => x - Constant(exact);

    /// <inheritdoc/>
    public static Term operator -(double exact, in Term x) => Constant(exact) - x;

    /// <inheritdoc/>
    public static Term operator *(double exact, in Term x) => exact == 1 ? x : Constant(exact) * x;

    /// <inheritdoc/>
    public static Term operator *(in Term x, double exact) => exact == 1 ? x : x * Constant(exact);

    /// <inheritdoc/>
    public static Term operator /(double exact, in Term x) => Constant(exact) / x;

    /// <inheritdoc/>
    public static Term operator /(in Term x, double exact) => x / Constant(exact);

    /// <inheritdoc/>
    public static Term Sqrt(in Term x) => new(Uncertain.Sqrt(x.Value), $"√({x.Symbols})", $"√({x.Numbers})", Rank.Atom);

    /// <summary>How a number stands in a formula: ten digits at most, a negative one in parentheses.</summary>
    internal static string Text(string number) => number.StartsWith('-') ? $"(−{number[1..]})" : number;

    static Term Constant(double exact)
    {
        string text = Text(exact.ToString("G10", CultureInfo.InvariantCulture));
        return new(exact, text, text, Rank.Atom);
    }

    static Term Join(in Uncertain value, in Term x, string sign, in Term y, Rank rank, bool strictRight)
    {
        bool left = x._rank < rank;
        bool right = y._rank < rank || (strictRight && y._rank == rank);
        return new(value, $"{Wrapped(x.Symbols, left)} {sign} {Wrapped(y.Symbols, right)}", $"{Wrapped(x.Numbers, left)} {sign} {Wrapped(y.Numbers, right)}", rank);
    }

    static string Wrapped(string text, bool wrap) => wrap ? $"({text})" : text;
}
