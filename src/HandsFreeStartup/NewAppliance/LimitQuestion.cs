using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Interview;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.NewAppliance;

/// <summary>A limit that a plate or the maker's instructions may state.</summary>
/// <param name="Name">Name of the limit, with its stage.</param>
/// <param name="Says">As it is asked.</param>
/// <param name="HasLower">Whether it has a lower bound; each has an upper one.</param>
/// <param name="IsSafety">Whether a value not proven to be inside must not pass.</param>
sealed record LimitQuestion(string Name, string Says, bool HasLower, bool IsSafety)
{
    const bool RangeOf = true;
    const bool UpperOf = false;

    /// <summary>No number above it is understood.</summary>
    const decimal HighestSpoken = 99_999;

    /// <summary>Name without its stage.</summary>
    public string BaseName => Name.Split('/')[0];

    /// <summary>In so few words that it is said in four seconds.</summary>
    public Message Spoken => BaseName == ResultId.ReplaceValve
        ? (Message)"Above which manifold pressure is the valve replaced, inches?"
        : $"{Called}, {(HasLower ? "lowest and highest" : "highest")}, {Limited.Unit.Spoken[0]}.";

    /// <summary>The same for somebody who has answered one before.</summary>
    public Message Short => HasLower ? $"{Called}, {Limited.Unit.Spoken[0]}." : Spoken;

    Message Called => Says.Split(" (")[0].Split(", ") is [var name, var where] ? (Message)$"{name}, {where}" : $"{Says.Split(" (")[0]}";

    /// <summary>What may be answered by voice: "three point two to three point eight", or one bound after "lowest" or "highest"; a number alone where there is only an upper bound.</summary>
    public AnswerForm Form => new AnswerForm.Numbers(
        HasLower ? [.. Fields.PlateBounds.Select(bound => new ExpectedReading(Limited with { Id = bound.Id }, bound.SpokenNames))] : [new ExpectedReading(Limited with { Id = FieldId.LimitUpper }, [])],
        Line)
    {
        Range = HasLower ? Limited : null,
    };

    string Line(IReadOnlyDictionary<string, string> said) => (said.GetValueOrDefault(FieldId.LimitLower), said.GetValueOrDefault(FieldId.LimitUpper)) switch
    {
        ({ } lower, { } upper) => $"{lower} to {upper}",
        ({ } lower, _) => $"min {lower}",
        (_, { } upper) => HasLower ? $"max {upper}" : upper,
        _ => "",
    };

    /// <summary>What is limited, as a number in the unit of the files. A bound may be rounder than a reading.</summary>
    Field Limited => Bounded(Fields.Find(BaseName), ResultKind.Find(BaseName));

    Field Bounded(Field? read, ResultKind? result)
    {
        decimal lowest = read?.Lowest ?? result?.Lowest ?? 0;
        decimal highest = Math.Min(read?.Highest ?? result?.Highest ?? Fields.Find(FieldId.ManifoldPressure)!.Highest, HighestSpoken);
        return new Field(BaseName, Says, [], Unit.Find(LimitNames.UnitOf(BaseName)!)!)
        {
            Lowest = lowest,
            Highest = highest,
            UsualLowest = lowest,
            UsualHighest = highest,
            FewestDecimals = 0,
            MostDecimals = read?.MostDecimals ?? result?.Decimals ?? 2,
        };
    }

    /// <summary>Everything that is asked for that way of firing, in the order of a plate.</summary>
    public static ImmutableArray<LimitQuestion> For(Firing firing, VentCategory? venting) =>
    [
        new(FieldId.InletPressure, "Inlet pressure", RangeOf, false),
        .. Each(firing, FieldId.ManifoldPressure, "Manifold pressure", RangeOf),
        new(ResultId.ReplaceValve, "Manifold pressure above which the maker wants the gas valve replaced", UpperOf, false),
        .. Each(firing, ResultId.InputRate, "Input", RangeOf),
        .. Each(firing, FieldId.Oxygen, "Oxygen in the flue (or, with \"co2\" before the numbers, carbon dioxide)", RangeOf),
        new(ResultId.CoAirFree, "CO air-free in the flue", UpperOf, true),
        .. Each(firing, FieldId.FlueTemperature, "Flue temperature", RangeOf),
        new(FieldId.Draft, venting is VentCategory.III or VentCategory.IV ? "Pressure in the vent" : "Draft, with its sign", RangeOf, venting is not (VentCategory.III or VentCategory.IV)),
        new(FieldId.FlameCurrent, "Flame current", RangeOf, false),
        new(FieldId.SupplyTemperature, "Outlet air temperature", UpperOf, true),
        .. Each(firing, ResultId.TemperatureRise, "Temperature rise", RangeOf),
        new(ResultId.ExternalStatic, "External static pressure", UpperOf, false),
        new(ResultId.Efficiency, "Efficiency, gross", RangeOf, false),
    ];

    static IEnumerable<LimitQuestion> Each(Firing firing, string name, string says, bool hasLower)
    {
        yield return new($"{name}/high", firing == Firing.SingleStage ? says : $"{says}, {(firing == Firing.Modulating ? "highest rate" : "high fire")}", hasLower, false);
        if (firing != Firing.SingleStage)
        {
            yield return new($"{name}/low", $"{says}, {(firing == Firing.Modulating ? "lowest rate" : "low fire")}", hasLower, false);
        }
    }
}
