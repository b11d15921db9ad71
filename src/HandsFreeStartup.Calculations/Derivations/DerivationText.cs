using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Calculations.Judgement;

namespace HandsFreeStartup.Calculations.Derivations;

/// <summary>A derivation in words.</summary>
static class DerivationText
{
    public static ImmutableArray<string> Lines(Derivation derivation)
    {
        ImmutableArray<string>.Builder lines = ImmutableArray.CreateBuilder<string>(6);
        lines.Add($"{derivation.Head.Symbol}: {derivation.Head.What}. Source: {derivation.Head.Source}.");
        lines.Add($"{derivation.Head.Symbol} = {derivation.Formula}");
        if (derivation.Steps.Length > 0)
        {
            lines.Add("with " + string.Join("; ", derivation.Steps.Select(step => $"{step.Symbol} = {step.Formula} = {Measured(step.Text, step.Unit)}")));
        }
        lines.Add("from " + string.Join("; ", derivation.Inputs.Select(input => $"{input.Symbol} {Measured(input.Text, input.Unit)} ({input.Origin})")));
        lines.Add($"= {derivation.Numbers} = {derivation.TextWithUncertainty}{Budget(derivation)}");
        if (derivation.Limit is { } limit && derivation.Verdict is { } verdict)
        {
            lines.Add($"{derivation.Bar}  {LimitLine(derivation, limit, verdict)}".TrimStart());
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

    public static ImmutableArray<SentencePart> Sentence(Derivation derivation)
    {
        (double low, double high) = derivation.Interval;
        return
        [
            new($"{derivation.Head.What} is "), new(derivation.Text, derivation.Unit),
            .. derivation.Result.StandardUncertainty == 0 ? [] : (SentencePart[])[new(", between "), new(derivation.Shown(low), ""), new(" and "), new(derivation.Shown(high), "")],
            .. derivation.Budget is [var first, _, ..] ? (SentencePart[])[new("; "), new((100 * first.Share).ToString("F0", CultureInfo.InvariantCulture), "%"), new($" of the doubt comes from {Name(derivation, first.Name)}")] : [],
            .. derivation is { Limit: { } limit, Verdict: { } verdict } ? [new($"; {Said(verdict, limit)}{(verdict == Verdict.CannotTell ? "," : ", because")} "), .. Allowed(derivation, limit)] : (SentencePart[])[],
            new("."),
        ];
    }

    public static string LimitLine(Derivation derivation, Limit limit, Verdict verdict) => $"{Said(verdict, limit)}: {string.Concat(Allowed(derivation, limit))} ({limit.Source})";

    static string Budget(Derivation derivation) => derivation.Budget.Length == 0 ? ""
        : ", made of " + string.Join(", ", derivation.Budget.Where(part => Math.Abs(part.Share) >= 0.005)
            .Select(part => string.Create(CultureInfo.InvariantCulture, $"{part.Name} {100 * part.Share:0} %")));

    public static IEnumerable<SentencePart> Allowed(Derivation derivation, Limit limit) => (limit.Lower, limit.Upper) switch
    {
        ({ } low, { } high) => [new("allowed are "), new(derivation.Shown(low), ""), new(" to "), new(derivation.Shown(high), derivation.Unit)],
        (null, { } high) => [new("allowed is at most "), new(derivation.Shown(high), derivation.Unit)],
        ({ } low, _) => [new("allowed is at least "), new(derivation.Shown(low), derivation.Unit)],
        _ => [new("nothing is said")],
    };

    public static string Said(Verdict verdict, Limit limit) => verdict switch
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
