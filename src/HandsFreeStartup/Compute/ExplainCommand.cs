using System.CommandLine;
using System.Globalization;
using HandsFreeStartup.Calculations.Derivations;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Compute;

/// <summary>The command <c>compute explain</c>: one result with its formula, its numbers, where they came from, and what its uncertainty is made of.</summary>
static class ExplainCommand
{
    static readonly Argument<string?> Result = new("result")
    {
        Description = $"One of {string.Join(", ", Explanation.All.Select(one => one.Id))}; left out, they are listed with what they need.",
        Arity = ArgumentArity.ZeroOrOne,
    };

    static readonly Argument<string[]> Numbers = new("numbers")
    {
        Description = "Inputs as NAME=NUMBER, or NAME=NUMBER/U with the expanded uncertainty (k = 2): oxygen=8.0/0.3 flue_co=100.",
        Arity = ArgumentArity.ZeroOrMore,
    };

    static readonly Option<string> FuelName = new("--fuel") { Description = "What burns; natural-gas if left out.", HelpName = "FUEL", DefaultValueFactory = _ => "natural-gas" };
    static readonly Option<double?> Least = NumberOption.Of("--least", -1e9, 1e9);
    static readonly Option<double?> Most = NumberOption.Of("--most", -1e9, 1e9);
    static readonly Option<string> Source = new("--source") { Description = "Who states the limit.", HelpName = "WORDS", DefaultValueFactory = _ => "given on the command line" };
    static readonly Option<bool> Whole = new("--whole") { Description = "Every input and step on a line of its own." };
    static readonly Option<double?> Correlation = NumberOption.Of("--correlation", -1, 1);
    static readonly Option<int?> Draws = NumberOption.Whole("--draws", 1000, 1_000_000);
    static readonly Option<bool> Spoken = new("--spoken") { Description = "Only the sentence that is spoken." };

    public static Command Build()
    {
        (Least.HelpName, Least.Description) = ("NUMBER", "Smallest value allowed.");
        (Most.HelpName, Most.Description) = ("NUMBER", "Largest value allowed.");
        (Correlation.HelpName, Correlation.Description) = ("NUMBER", "How far two cells of one analyzer err together, -1 to 1; 0 if left out.");
        (Draws.HelpName, Draws.Description) = ("COUNT", "Draw every input so often (Monte Carlo) and say whether the uncertainty above agrees with it.");
        Command command = new("explain", "Say how a result comes about: formula, numbers, origin, uncertainty, limit.") { Result, Numbers, FuelName, Least, Most, Source, Whole, Spoken, Correlation, Draws };
        command.SetAction(parsed =>
        {
            TextWriter output = parsed.InvocationConfiguration.Output;
            foreach (string line in parsed.GetValue(Result) is { } id ? Explained(parsed, id) : Explanation.All.Select(Needs))
            {
                output.WriteLine(line);
            }

            return ExitCode.Done;
        });
        return command;
    }

    static string Needs(Explanation explanation) => $"{explanation.Id,-22} " + string.Join(", ", explanation.Needs.Select(need =>
        need.Name + (need.Unit.Length > 0 ? $" in {need.Unit}" : "") + (need.Default is { } taken ? $" ({taken.Text} {taken.Origin})" : "")));

    static IEnumerable<string> Explained(ParseResult parsed, string id)
    {
        Explanation explanation = Explanation.Find(id)
            ?? throw new WrongUseException($"'{VisibleText.Of(id)}' is no result that can be explained; 'compute explain' lists them.");
        GivenInputs inputs = new((parsed.GetValue(Numbers) ?? []).Select(text => Read(text, explanation)).DistinctBy(pair => pair.Key), FuelOf(parsed.GetValue(FuelName)!))
        {
            AnalyzerCorrelation = parsed.GetValue(Correlation) ?? 0,
        };
        if (explanation.Missing(inputs) is { Length: > 0 } missing)
        {
            throw new WrongUseException($"{id} needs {string.Join(", ", missing)}; give each as NAME=NUMBER.");
        }

        Derivation derivation = explanation.Derive(inputs, LimitOf(parsed))
            ?? throw new WrongUseException($"{id} cannot be worked out from these numbers: look for an O2 too near to that of air, or one that cannot be.");
        IEnumerable<string> lines = parsed.GetValue(Spoken) ? [FormattableString.Invariant(derivation.Sentence())] : parsed.GetValue(Whole) ? derivation.AllLines() : derivation.Lines().Select(FormattableString.Invariant);
        return parsed.GetValue(Draws) is { } draws ? lines.Append(Drawn(explanation, inputs, derivation, draws)) : lines;
    }

    /// <summary>The drawn distribution beside the first order, and whether they agree.</summary>
    static string Drawn(Explanation explanation, GivenInputs inputs, Derivation derivation, int draws)
    {
        if (derivation.Result.StandardUncertainty == 0 || explanation.Draw(inputs, seed: 1, draws) is not { } drawn)
        {
            return "Monte Carlo: nothing to draw, or a draw leaves what can be worked out.";
        }

        string format = $"F{derivation.Head.Decimals + 1}";
        (double low, double high) = derivation.Interval;
        bool holds = FirstOrderValidity.Holds(derivation.Result, drawn.Low, drawn.High);
        return string.Create(CultureInfo.InvariantCulture,
            $"Monte Carlo, {draws} draws: 95 % of them from {drawn.Low.ToString(format, CultureInfo.InvariantCulture)} to {drawn.High.ToString(format, CultureInfo.InvariantCulture)}; ")
            + string.Create(CultureInfo.InvariantCulture, $"first order (k = 2): {low.ToString(format, CultureInfo.InvariantCulture)} to {high.ToString(format, CultureInfo.InvariantCulture)}; ")
            + (holds ? "they agree (JCGM 101, one digit)" : "they do not agree to one digit of u: trust the draws");
    }

    static KeyValuePair<string, Given> Read(string text, Explanation explanation)
    {
        int equals = text.IndexOf('=', StringComparison.Ordinal);
        string name = equals < 0 ? text : text[..equals];
        if (explanation.Needs.All(need => need.Name != name) || equals < 0)
        {
            throw new WrongUseException($"'{VisibleText.Of(text)}' is no input of {explanation.Id}; give {string.Join(", ", explanation.Needs.Select(need => need.Name))}, each as NAME=NUMBER.");
        }

        string[] parts = text[(equals + 1)..].Split('/', 2);
        double value = Number(name, parts[0]);
        double u = parts.Length > 1 ? Number(name, parts[1]) / Estimate.CoverageFactor : InstrumentError.OfClass(name)?.StandardUncertainty(value) ?? 0;
        return u < 0 ? throw new WrongUseException($"{name}: an uncertainty cannot be negative.") : new(name, new Given(
            value, u, parts.Length > 1 || u == 0 ? "command line" : "command line, error limits of its class", Plain(parts[0].Trim())));
    }

    // As typed, so that its decimals are seen; other signs than the plain minus are left to the number itself.
    static string? Plain(string typed) => typed.Length > 0 && (char.IsAsciiDigit(typed[0]) || typed[0] == '-') ? typed : null;

    static double Number(string name, string text) => TypedNumber.ReadDouble(text, out string reason) ?? throw new WrongUseException($"{name}: {reason}.");

    static Fuel FuelOf(string name) => Fuel.Find(name)
        ?? throw new WrongUseException($"'{VisibleText.Of(name)}' is no known fuel; give one of {string.Join(", ", Fuel.Presets.Select(known => known.Id))}.");

    static Limit? LimitOf(ParseResult parsed) => (parsed.GetValue(Least), parsed.GetValue(Most)) switch
    {
        (null, null) => null,
        ({ } least, { } most) when least > most => throw new WrongUseException("--least is above --most."),
        var (least, most) => new(least, most, VisibleText.Of(parsed.GetValue(Source)!), IsSafety: true),
    };
}
