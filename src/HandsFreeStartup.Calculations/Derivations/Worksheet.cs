using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Derivations;

/// <summary>Collects inputs and steps while a formula is worked out with <see cref="Term"/>, and closes with the <see cref="Derivation"/>.</summary>
sealed class Worksheet
{
    readonly List<DerivationInput> _inputs = [];
    readonly List<DerivationStep> _steps = [];
    readonly List<(int First, int Second, double Coefficient)> _correlations = [];
    readonly List<string> _uncertain = [];

    /// <summary>An input of the formula. Exact ones take no place in the budget.</summary>
    public Term Input(string symbol, string name, string unit, in Given given)
    {
        string text = given.Text ?? Seven(given.Value);
        _inputs.Add(new(symbol, name, text, unit, given.Origin, given.Combined));
        Uncertain value = given.Value;
        value += Part(symbol, given.StandardUncertainty);
        foreach (ErrorPart part in given.Further)
        {
            value += Part($"{symbol} {part.Name}", part.StandardUncertainty);
        }

        return Term.Named(value, symbol, Term.Text(text));
    }

    Uncertain Part(string name, double standardUncertainty)
    {
        if (standardUncertainty <= 0)
        {
            return 0;
        }

        _uncertain.Add(name);
        return Uncertain.Input(0, standardUncertainty, _uncertain.Count - 1);
    }

    /// <summary>A value from a table, at inputs whose uncertainty it carries on.</summary>
    public Term Lookup(string symbol, string name, string unit, in Uncertain value, string table)
    {
        string text = Seven(value.Value);
        _inputs.Add(new(symbol, name, text, unit, table, value.StandardUncertainty));
        return Term.Named(value, symbol, Term.Text(text));
    }

    /// <summary>A line on the way, which gets a symbol.</summary>
    public Term Step(string symbol, string unit, in Term term)
    {
        string text = Seven(term.Value.Value);
        _steps.Add(new(symbol, term.Symbols, term.Numbers, text, unit));
        return Term.Named(term.Value, symbol, Term.Text(text));
    }

    /// <summary>Two inputs that err together, such as two cells of one analyzer; coefficient −1 to 1.</summary>
    public void Correlate(string first, string second, double coefficient)
    {
        int one = _uncertain.IndexOf(first), two = _uncertain.IndexOf(second);
        if (one >= 0 && two >= 0 && coefficient != 0)
        {
            _correlations.Add((one, two, coefficient));
        }
    }

    /// <summary>The derivation of the last term.</summary>
    public Derivation Close(DerivationHead head, in Term result, Limit? limit)
    {
        Uncertain value = result.Value;
        List<(string Name, double Square)> parts = [.. _uncertain.Select((name, i) => (name, Square(value.Contribution(i))))];
        foreach ((int first, int second, double coefficient) in _correlations)
        {
            parts.Add(($"{_uncertain[first]} with {_uncertain[second]}", 2 * coefficient * value.Contribution(first) * value.Contribution(second)));
        }
        for (int i = _uncertain.Count; i < Uncertain.MostInputs; i++)
        {
            parts.Add(("other", Square(value.Contribution(i))));
        }

        double sum = Math.Max(0, parts.Sum(part => part.Square));
        ImmutableArray<BudgetShare> budget = sum > 0
            ? [.. parts.Where(part => part.Square != 0).Select(part => new BudgetShare(part.Name, part.Square / sum)).OrderByDescending(part => part.Share)]
            : [];
        return new(head, result.Symbols, result.Numbers)
        {
            Inputs = [.. _inputs],
            Steps = [.. _steps],
            Result = new(value.Value, Math.Sqrt(sum)),
            Budget = budget,
            Limit = limit,
        };
    }

    static double Square(double x) => x * x;

    // Seven significant digits without exponent, which people and the narrow copy can read.
    static string Seven(double value)
    {
        int digits = value == 0 ? 0 : Math.Clamp(6 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 12);
        return value.ToString("0." + new string('#', digits), CultureInfo.InvariantCulture);
    }
}
