using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Derivations;

/// <summary>A number that is put into a formula.</summary>
/// <param name="Value">In the unit that the formula wants.</param>
/// <param name="StandardUncertainty">u, in the same unit; zero for what is exact.</param>
/// <param name="Origin">Where it came from: "said at 10:42", "rating plate", "table", "assumed".</param>
/// <param name="Text">As it was said or stands on the plate, with its decimals; null to print seven digits.</param>
public readonly record struct Given(double Value, double StandardUncertainty, string Origin, string? Text = null)
{
    readonly ImmutableArray<ErrorPart> _further;

    /// <summary>Parts that come on top of <see cref="StandardUncertainty"/> and take lines of their own in the budget, such as the hand at the watch; independent of everything else.</summary>
    public ImmutableArray<ErrorPart> Further
    {
        get => _further.IsDefault ? [] : _further;
        init => _further = value;
    }

    /// <summary>u, all parts together.</summary>
    public double Combined => Math.Sqrt(StandardUncertainty * StandardUncertainty + Further.Sum(part => part.StandardUncertainty * part.StandardUncertainty));
}

/// <summary>An input as it stands in a derivation.</summary>
/// <param name="Symbol">In the formula.</param>
/// <param name="Name">In words.</param>
/// <param name="Text">The number as printed.</param>
/// <param name="Unit">Its unit; empty for a pure number.</param>
/// <param name="Origin">Where it came from.</param>
/// <param name="StandardUncertainty">u, in its unit.</param>
public sealed record DerivationInput(string Symbol, string Name, string Text, string Unit, string Origin, double StandardUncertainty)
{
    /// <summary>" ± U" with two digits; empty for what is exact.</summary>
    public string Spread => DerivationText.Spread(this);
}

/// <summary>A line on the way to the result.</summary>
/// <param name="Symbol">What it is called in the lines below it.</param>
/// <param name="Formula">In symbols.</param>
/// <param name="Numbers">The same with the numbers put in.</param>
/// <param name="Text">What comes out, seven digits.</param>
/// <param name="Unit">Its unit; empty for a pure number.</param>
public sealed record DerivationStep(string Symbol, string Formula, string Numbers, string Text, string Unit);

/// <summary>A line of the uncertainty budget.</summary>
/// <param name="Name">Which input.</param>
/// <param name="Share">Its part of u²; 0 to 1, the parts add up to one. Negative for a correlation that helps.</param>
public readonly record struct BudgetShare(string Name, double Share);
