using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Derivations;

/// <summary>What a result is, whatever its numbers are.</summary>
/// <param name="Id">Stable id, the same as in the record.</param>
/// <param name="Symbol">In the formula.</param>
/// <param name="What">What it is and when it is used, a short phrase.</param>
/// <param name="Unit">Of the result.</param>
/// <param name="Decimals">With which it is shown.</param>
/// <param name="Source">Who says so.</param>
/// <param name="CannotBeNegative">Whether its interval ends at zero.</param>
public sealed record DerivationHead(string Id, string Symbol, string What, string Unit, int Decimals, string Source, bool CannotBeNegative = true);

/// <summary>A number in a text.</summary>
/// <param name="Text">As shown.</param>
/// <param name="Unit">Its unit, which may be empty.</param>
public sealed record DerivedNumber(string Text, string Unit)
{
    /// <summary>As shown.</summary>
    public override string ToString() => Unit.Length > 0 ? $"{Text} {Unit}" : Text;
}

/// <summary>Symbols and formulas in a text: the same in every language.</summary>
/// <param name="Text">As shown.</param>
public sealed record Notation(string Text)
{
    /// <summary>As shown.</summary>
    public override string ToString() => Text;
}

/// <summary>How a result came about: made by the calculation itself, so that what is explained is what was calculated.</summary>
/// <param name="Head">What it is.</param>
/// <param name="Formula">In the trade's notation, in symbols.</param>
/// <param name="Numbers">The same with the numbers put in; evaluated, it gives the result.</param>
public sealed record Derivation(DerivationHead Head, string Formula, string Numbers)
{
    /// <summary>What was put in, with unit and origin.</summary>
    public required ImmutableArray<DerivationInput> Inputs { get; init; }

    /// <summary>Lines on the way, in order.</summary>
    public required ImmutableArray<DerivationStep> Steps { get; init; }

    /// <summary>Unrounded, with its standard uncertainty.</summary>
    public required Estimate Result { get; init; }

    /// <summary>What the uncertainty is made of, the largest part first.</summary>
    public required ImmutableArray<BudgetShare> Budget { get; init; }

    /// <summary>What it is judged by; null for none.</summary>
    public required Limit? Limit { get; init; }

    /// <summary>Unit of the result.</summary>
    public string Unit => Head.Unit;

    /// <summary>The result as shown.</summary>
    public string Text => Shown(Result.Value);

    /// <summary>From where to where the true value lies in about 95 % of cases; never below zero for what cannot be negative.</summary>
    public (double Low, double High) Interval => (
        Head.CannotBeNegative ? Math.Max(0, Result.Value - Result.ExpandedUncertainty) : Result.Value - Result.ExpandedUncertainty,
        Result.Value + Result.ExpandedUncertainty);

    /// <summary>Whether the uncertainty of something that went in is not stated, so that a limit proves nothing.</summary>
    public bool IsUnproven { get; init; }

    /// <summary>Whether the result tells how far it may be off; false where the uncertainty of something that went in is not stated.</summary>
    public bool HasDoubt { get; private init; } = true;

    /// <summary>The same, where the uncertainty of something that went in is not stated: what the other inputs add up to would be too small.</summary>
    public Derivation WithoutDoubt() => this with { Result = new Estimate(Result.Value, 0), Budget = [], HasDoubt = false };

    /// <summary>What the limit says; null without one.</summary>
    public Verdict? Verdict => Limit is null ? null : IsUnproven ? Judgement.Verdict.CannotTell : Judge.Verdict(Result, Limit);

    /// <summary>Limit, guard band and value as a bar of text; empty where there is none or nothing can be told.</summary>
    public string Bar => Limit is { } limit && Verdict is not (null or Judgement.Verdict.CannotTell) ? GuardBandBar.Of(Result, limit) : "";

    /// <summary>Result with uncertainty, to the decimals of the finer of the two: "162 ± 40 ppm", "82.46 ± 0.27 %"; or "35 ppm (0 to 70)" where ± would reach below zero.</summary>
    public string TextWithUncertainty => FormattableString.Invariant(ToldResult);

    /// <summary>The same, its numbers as <see cref="DerivedNumber"/>.</summary>
    public FormattableString ToldResult => !HasDoubt ? (FormattableString)$"{new DerivedNumber(Text, Unit)}, {RoundedUncertainty.NoneStated}"
        : RoundedUncertainty.Of(Result.ExpandedUncertainty) is not { } doubt ? (FormattableString)$"{new DerivedNumber(Text, Unit)}"
        : Head.CannotBeNegative && Result.Value < (double)doubt ? (FormattableString)$"{new DerivedNumber(Text, Unit)} ({new DerivedNumber(Shown(Interval.Low), "")} to {new DerivedNumber(Shown(Interval.High), "")})"
        : (FormattableString)$"{new DerivedNumber(Shown(Result.Value, RoundedUncertainty.Decimals(doubt)), "")} ± {new DerivedNumber(doubt.ToString(CultureInfo.InvariantCulture), Unit)}";

    /// <summary>The verdict with what is allowed and who says so; empty without a limit.</summary>
    public FormattableString LimitLine => Limit is { } limit && Verdict is { } verdict ? DerivationText.LimitLine(this, limit, verdict) : (FormattableString)$"";

    /// <summary>At most six lines: what it is, formula, numbers, where they came from, uncertainty, limit. Their parts are other such texts, words, numbers and notation.</summary>
    public ImmutableArray<FormattableString> Lines() => DerivationText.Lines(this);

    /// <summary>Everything, a line for each input and step, for the appendix of a copy.</summary>
    public ImmutableArray<string> AllLines() => DerivationText.AllLines(this);

    /// <summary>One sentence to be spoken, words and numbers apart.</summary>
    public FormattableString Sentence() => DerivationText.Sentence(this);

    /// <summary>A number with the decimals of the result, or with more of them.</summary>
    internal string Shown(double value, int decimals = 0) => value.ToString($"F{Math.Max(Head.Decimals, decimals)}", CultureInfo.InvariantCulture);
}
