using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Compute.Tables;

/// <summary>Zone and probabilities of a value against its limits.</summary>
static class GuardedAcceptanceTable
{
    readonly record struct Row(Estimate Measured, Limit Limit)
    {
        public Conformity? Conformity => Calculations.Judgement.Conformity.Of(Measured, Limit);
    }

    public static ComputeTable Build() => new ComputeTable<Row>(
        "guarded_acceptance",
        ["limit_kind", "measured_value", "lower_limit", "upper_limit", "standard_uncertainty"],
        Evaluate,
        ("zone", row => Zone(Judge.Verdict(row.Measured, row.Limit))),
        ("probability_nonconforming", row => row.Conformity?.Nonconforming),
        ("probability_conforming", row => row.Conformity?.Conforming),
        ("probability_false_acceptance_if_accepted", row => row.Conformity?.FalseAcceptance),
        ("guarded_acceptance_low", row => row.Limit.Lower + row.Measured.ExpandedUncertainty),
        ("guarded_acceptance_high", row => row.Limit.Upper - row.Measured.ExpandedUncertainty));

    static Row Evaluate(RowInputs inputs)
    {
        string kind = inputs.OneOf("limit_kind", "upper", "lower", "interval");
        double? lower = kind == "upper" ? null : inputs.Number("lower_limit");
        double? upper = kind == "lower" ? null : inputs.Number("upper_limit");
        if (lower > upper)
        {
            inputs.Refuse("lower_limit", "is above the upper limit");
        }
        return new(
            new(inputs.Number("measured_value"), inputs.Number("standard_uncertainty", 0)),
            new(lower, upper, "file", IsSafety: false));
    }

    static string Zone(Verdict verdict) => verdict switch
    {
        Verdict.Pass => "pass",
        Verdict.ConditionalPass => "conditional_pass",
        Verdict.ConditionalFail => "conditional_fail",
        Verdict.Fail => "fail",
        _ => "",
    };
}
