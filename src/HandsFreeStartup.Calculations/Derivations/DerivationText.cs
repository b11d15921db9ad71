using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using HandsFreeStartup.Calculations.Judgement;

namespace HandsFreeStartup.Calculations.Derivations;

/// <summary>A derivation in words: each text with holes for its parts, so that another language finds it.</summary>
static class DerivationText
{
    public static ImmutableArray<FormattableString> Lines(Derivation derivation)
    {
        Notation symbol = new(derivation.Head.Symbol);
        ImmutableArray<FormattableString>.Builder lines = ImmutableArray.CreateBuilder<FormattableString>(6);
        lines.Add($"{symbol}: {derivation.Head.What}. Source: {derivation.Head.Source}.");
        lines.Add($"{symbol} = {new Notation(derivation.Formula)}");
        if (derivation.Steps.Length > 0)
        {
            lines.Add($"with {Joined("; ", derivation.Steps.Select(step => (FormattableString)$"{new Notation(step.Symbol)} = {new Notation(step.Formula)} = {new DerivedNumber(step.Text, step.Unit)}"))}");
        }
        lines.Add($"from {Joined("; ", derivation.Inputs.Select(input => (FormattableString)$"{new Notation(input.Symbol)} {new DerivedNumber(input.Text, input.Unit)} ({input.Origin})"))}");
        lines.Add($"= {new Notation(derivation.Numbers)} = {derivation.ToldResult}{Budget(derivation)}");
        if (derivation.Limit is { } limit && derivation.Verdict is { } verdict)
        {
            Notation bar = new(derivation.Bar.Length > 0 ? $"{derivation.Bar}  " : "");
            lines.Add($"{bar}{LimitLine(derivation, limit, verdict)}");
        }

        return lines.ToImmutable();
    }

    public static ImmutableArray<string> AllLines(Derivation derivation) =>
    [
        $"{derivation.Head.What}",
        .. derivation.Inputs.Select(input => $"  {input.Symbol} = {Measured(input.Text, input.Unit)}{Spread(input)}: {input.Name}, {input.Origin}"),
        .. derivation.Steps.SelectMany(step => new[] { $"  {step.Symbol} = {step.Formula}", $"    = {step.Numbers} = {Measured(step.Text, step.Unit)}" }),
        $"  {derivation.Head.Symbol} = {derivation.Formula}",
        $"    = {derivation.Numbers} = {derivation.TextWithUncertainty}",
        .. derivation.Budget.Length > 0 ? [$"  Uncertainty (k = 2){Budget(derivation)}"] : Array.Empty<string>(),
        .. derivation is { Limit: { } limit, Verdict: { } verdict }
            ? [.. derivation.Bar.Length > 0 ? [$"  {derivation.Bar}"] : Array.Empty<string>(), $"  {LimitLine(derivation, limit, verdict)}"] : Array.Empty<string>(),
        $"  Source: {derivation.Head.Source}",
    ];

    public static FormattableString Sentence(Derivation derivation)
    {
        (double low, double high) = derivation.Interval;
        FormattableString between = derivation.Result.StandardUncertainty == 0 ? Nothing : (FormattableString)$", between {Alone(derivation, low)} and {Alone(derivation, high)}";
        FormattableString doubt = derivation.Budget is [var first, _, ..]
            ? (FormattableString)$"; {new DerivedNumber((100 * first.Share).ToString("F0", CultureInfo.InvariantCulture), "%")} of the doubt comes from {Name(derivation, first.Name)}" : Nothing;
        FormattableString judged = derivation is not { Limit: { } limit, Verdict: { } verdict } ? Nothing
            : verdict == Verdict.CannotTell ? (FormattableString)$"; {Said(verdict, limit)}, {Allowed(derivation, limit)}" : $"; {Said(verdict, limit)}, because {Allowed(derivation, limit)}";
        return $"{derivation.Head.What} is {new DerivedNumber(derivation.Text, derivation.Unit)}{between}{doubt}{judged}.";
    }

    public static FormattableString LimitLine(Derivation derivation, Limit limit, Verdict verdict) => $"{Said(verdict, limit)}: {Allowed(derivation, limit)} ({limit.Source})";

    static FormattableString Budget(Derivation derivation) => derivation.Budget.Length == 0 ? Nothing
        : (FormattableString)$", made of {Joined(", ", derivation.Budget.Where(part => Math.Abs(part.Share) >= 0.005).Select(part => (FormattableString)$"{new Notation(part.Name)} {new DerivedNumber((100 * part.Share).ToString("0", CultureInfo.InvariantCulture), "%")}"))}";

    static FormattableString Allowed(Derivation derivation, Limit limit) => (limit.Lower, limit.Upper) switch
    {
        ({ } low, { } high) => (FormattableString)$"allowed are {Alone(derivation, low)} to {new DerivedNumber(derivation.Shown(high), derivation.Unit)}",
        (null, { } high) => $"allowed is at most {new DerivedNumber(derivation.Shown(high), derivation.Unit)}",
        ({ } low, _) => $"allowed is at least {new DerivedNumber(derivation.Shown(low), derivation.Unit)}",
        _ => $"nothing is said",
    };

    static string Said(Verdict verdict, Limit limit) => verdict switch
    {
        Verdict.Pass => "passes by more than the guard band",
        Verdict.ConditionalPass => limit.IsSafety ? "inside, but within the guard band, so not proven" : "inside, but within the guard band",
        Verdict.ConditionalFail => "outside, but within the guard band",
        Verdict.Fail => "fails by more than the guard band",
        _ => "cannot be told without the uncertainty of every reading",
    };

    static string Name(Derivation derivation, string symbol) =>
        derivation.Inputs.FirstOrDefault(input => input.Symbol == symbol)?.Name ?? symbol;

    public static string Spread(DerivationInput input) => input.StandardUncertainty == 0 ? ""
        : $" ± {Two(2 * input.StandardUncertainty)}";

    static FormattableString Nothing => $"";

    static FormattableString Joined(string between, IEnumerable<FormattableString> texts) => FormattableStringFactory.Create(
        string.Join(between, texts.Select((_, index) => string.Create(CultureInfo.InvariantCulture, $"{{{index}}}"))), [.. texts]);

    static DerivedNumber Alone(Derivation derivation, double value) => new(derivation.Shown(value), "");

    // Two digits, without an exponent.
    static string Two(double value)
    {
        int place = 1 - (int)Math.Floor(Math.Log10(value));
        return place >= 0
            ? Math.Round(value, Math.Min(place, 15)).ToString($"F{Math.Min(place, 15)}", CultureInfo.InvariantCulture)
            : (Math.Round(value * Math.Pow(10, place)) / Math.Pow(10, place)).ToString("F0", CultureInfo.InvariantCulture);
    }

    static string Measured(string number, string unit) => unit.Length > 0 ? $"{number} {unit}" : number;
}
