using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Calculations.Vocabulary;

namespace HandsFreeStartup.Calculations.Derivations;

/// <summary>What a result needs to be explained.</summary>
/// <param name="Name">Field id, or the key of a sheet.</param>
/// <param name="Unit">In which it is given.</param>
/// <param name="Default">What is taken when it is not given, and said so; null where it must be given.</param>
public sealed record NeededInput(string Name, string Unit, Given? Default = null);

/// <summary>The numbers of one job for one explanation.</summary>
public sealed class GivenInputs
{
    readonly ImmutableDictionary<string, Given> _given;

    /// <summary>From the numbers by name; fuel by preset.</summary>
    /// <param name="given">Field id or sheet key to number.</param>
    /// <param name="fuel">What burns.</param>
    public GivenInputs(IEnumerable<KeyValuePair<string, Given>> given, Fuels.Fuel? fuel = null)
    {
        _given = given.ToImmutableDictionary();
        Fuel = fuel ?? Fuels.Fuel.NaturalGas;
    }

    /// <summary>What burns.</summary>
    public Fuels.Fuel Fuel { get; }

    /// <summary>How far the cells of one analyzer err together, −1 to 1; 0 when nothing is known.</summary>
    public double AnalyzerCorrelation { get; init; }

    /// <summary>Whether a number was given.</summary>
    public bool Has(string name) => _given.ContainsKey(name);

    /// <summary>The number of that name.</summary>
    /// <exception cref="KeyNotFoundException">It was not given and nothing is taken in its place.</exception>
    public Given this[string name] => _given[name];

    /// <summary>These numbers with others in the place of some.</summary>
    public GivenInputs With(IEnumerable<KeyValuePair<string, Given>> others) =>
        new(_given.SetItems(others), Fuel) { AnalyzerCorrelation = AnalyzerCorrelation };
}

/// <summary>A result that can be explained: the calculation itself, worked out on paper.</summary>
/// <param name="Id">Stable id, the same as in the record.</param>
/// <param name="Needs">What it needs.</param>
/// <param name="Work">Works it out.</param>
public sealed record Explanation(string Id, ImmutableArray<NeededInput> Needs, Func<GivenInputs, Limit?, Derivation?> Work)
{
    /// <summary>Every result that can be explained. A new one is one entry here.</summary>
    public static ImmutableArray<Explanation> All { get; } = [.. FlueExplanations.All, .. RateExplanations.All, .. AirExplanations.All];

    /// <summary>The explanation of that result, or null.</summary>
    public static Explanation? Find(string id) => All.FirstOrDefault(explanation => explanation.Id == id);

    /// <summary>Names of inputs that are missing.</summary>
    public ImmutableArray<string> Missing(GivenInputs inputs) => [.. Needs.Where(need => need.Default is null && !inputs.Has(need.Name)).Select(need => need.Name)];

    /// <summary>Explains the result; null while an input is missing or the calculation refuses the numbers.</summary>
    /// <param name="inputs">The numbers of the job.</param>
    /// <param name="limit">What it is judged by, in the unit of the result; null for none.</param>
    public Derivation? Derive(GivenInputs inputs, Limit? limit = null)
    {
        if (Missing(inputs).Length > 0)
        {
            return null;
        }

        Derivation? derivation = Work(
            inputs.With(Needs.Where(need => !inputs.Has(need.Name)).Select(need => KeyValuePair.Create(need.Name, need.Default!.Value))), limit);
        return derivation is not null && double.IsFinite(derivation.Result.Value) ? derivation : null;
    }

    /// <summary>The same formula drawn, as a check of the first-order uncertainty; null where a draw leaves what the calculation accepts.</summary>
    /// <remarks>Inputs normal; two cells of one analyzer correlated as the inputs say, all else independent; what cannot be negative is cut at zero, as its interval is.</remarks>
    /// <param name="inputs">The numbers of the job.</param>
    /// <param name="seed">Any number.</param>
    /// <param name="draws">At least 1000.</param>
    public PropagatedDistribution? Draw(GivenInputs inputs, ulong seed, int draws)
    {
        if (Derive(inputs) is not { } derivation)
        {
            return null;
        }

        string[] names = [.. Needs.Select(need => need.Name)];
        Given[] given = [.. Needs.Select(need => inputs.Has(need.Name) ? inputs[need.Name] : need.Default!.Value)];
        (int oxygen, int partner) = (Array.IndexOf(names, FieldId.Oxygen), Array.FindIndex(names, name => Cells.Contains(name)));
        double pull = oxygen >= 0 && partner >= 0 && given[oxygen].Combined > 0 && given[partner].Combined > 0
            ? inputs.AnalyzerCorrelation * given[oxygen].StandardUncertainty * given[partner].StandardUncertainty / (given[oxygen].Combined * given[partner].Combined) : 0;
        RandomInput[] random = [.. given.Select(one => new RandomInput(one.Value, one.Combined, Distribution.Normal))];
        PropagatedDistribution drawn = MonteCarlo.Propagate(
            values =>
            {
                KeyValuePair<string, Given>[] draw = new KeyValuePair<string, Given>[names.Length];
                for (int i = 0; i < draw.Length; i++)
                {
                    double drawn = i == partner && pull != 0 ? Together(values, given, oxygen, partner, pull) : values[i];
                    double value = given[i].Value >= 0 ? Math.Max(0, drawn) : drawn;
                    draw[i] = KeyValuePair.Create(names[i], new Given(value, 0, ""));
                }
                double result = Work(new GivenInputs(draw, inputs.Fuel), null)?.Result.Value ?? double.NaN;
                return derivation.Head.CannotBeNegative ? Math.Max(0, result) : result;
            },
            random, seed, draws);
        return double.IsFinite(drawn.Mean) ? drawn : null;
    }

    /// <summary>Cells that can err together with that of the oxygen; the first one that a result needs is its partner, as in the derivation.</summary>
    static ImmutableArray<string> Cells { get; } = [FieldId.CarbonDioxide, FieldId.FlueCo, FieldId.Nox];

    /// <summary>The draw of a cell that follows that of the oxygen: r z(O2) + √(1 − r²) z, of its own u.</summary>
    static double Together(ReadOnlySpan<double> values, Given[] given, int oxygen, int partner, double correlation) =>
        given[partner].Value
        + correlation * given[partner].Combined / given[oxygen].Combined * (values[oxygen] - given[oxygen].Value)
        + Math.Sqrt(1 - correlation * correlation) * (values[partner] - given[partner].Value);
}
