using FsCheck.Xunit;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Tests.Support;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Tests.Judgement;

[Properties(Arbitrary = [typeof(Readings)], MaxTest = 1000)]
public sealed class JudgementLaws
{
    static readonly Limit Window = new(30, 60, "example", IsSafety: true);
    static readonly Limit Ceiling = new(null, 400, "example", IsSafety: true);

    [Property]
    public bool More_uncertainty_never_turns_anything_into_a_pass_or_a_fail(Share at, Share u, Share more)
    {
        double x = 90 * at.Value;
        Verdict sure = Judge.Verdict(new Estimate(x, 10 * u.Value), Window);
        Verdict unsure = Judge.Verdict(new Estimate(x, 10 * (u.Value + more.Value)), Window);
        return unsure switch
        {
            Verdict.Pass => sure == Verdict.Pass,
            Verdict.ConditionalPass => sure is Verdict.Pass or Verdict.ConditionalPass,
            Verdict.ConditionalFail => sure is Verdict.Fail or Verdict.ConditionalFail,
            _ => sure == Verdict.Fail,
        };
    }

    [Property]
    public bool A_higher_value_is_never_better_under_a_ceiling(Share at, Share more, Share u) =>
        Judge.Verdict(new Estimate(800 * at.Value + 100 * more.Value, 40 * u.Value), Ceiling)
        >= Judge.Verdict(new Estimate(800 * at.Value, 40 * u.Value), Ceiling);

    [Property]
    public bool A_pass_keeps_the_risk_below_two_and_a_half_percent(Share at, Share u)
    {
        Estimate value = new(800 * at.Value, 0.01 + 40 * u.Value);
        return Judge.Verdict(value, Ceiling) != Verdict.Pass || Conformity.Of(value, Ceiling)!.Value.Nonconforming <= 0.0228;
    }

    [Property]
    public bool Probabilities_add_up_to_one(Share at, Share u)
    {
        Conformity conformity = Conformity.Of(new(90 * at.Value, 0.01 + 10 * u.Value), Window)!.Value;
        return Math.Abs(conformity.Conforming + conformity.Nonconforming - 1) < 1e-12;
    }

    [Property]
    public bool Without_a_pass_zone_nothing_passes(Share at, Share u) =>
        Judge.Verdict(new Estimate(10 + 2 * at.Value, 0.5001 + u.Value), new Limit(10, 12, "example", IsSafety: false)) != Verdict.Pass;
}
