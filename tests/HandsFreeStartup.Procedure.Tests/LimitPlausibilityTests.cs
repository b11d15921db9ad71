using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>A limit that is said is looked at before it judges.</summary>
public sealed class LimitPlausibilityTests
{
    static LiveJob Asked(string fieldId, VentCategory venting)
    {
        Step read = Some.Steps.Single(step => step.Id == "manifold") with { Id = "measure", Scope = null, Readings = [new(fieldId, fieldId)] };
        StartupPlan plan = Some.PlanOf([read, Some.Steps[^1]]);
        return new LiveJob(StartupPlan.From(plan.Checklist, plan.Appliance with { Venting = venting, Limits = [] }, plan.Site));
    }

    static LiveJob Highest(LiveJob job, decimal value) => job.Say(job.Procedure.Expectation.Readings[1].Field, value, Certainty.Green);

    [Fact]
    public void A_vent_that_draws_takes_no_draft_that_pushes()
    {
        LiveJob job = Highest(Asked("draft", VentCategory.I), 0.50m).Say(CommandWord.Next);

        Assert.Contains("has a minus sign", Assert.IsType<CommandRefused>(job.Last[^1]).Reason.Shown, StringComparison.Ordinal);
        Assert.Empty(job.Log.OfType<LimitStated>());
    }

    [Fact]
    public void A_strange_limit_is_asked_twice_and_stays_as_an_exception()
    {
        LiveJob job = Highest(Asked("inlet_pressure", VentCategory.I), 30.0m).Say(CommandWord.Next);
        Assert.Contains("strange", Assert.IsType<LimitDoubted>(job.Last[^1]).Why.Shown, StringComparison.Ordinal);
        Assert.Empty(job.Log.OfType<LimitStated>());

        job.Say(CommandWord.Next);

        Assert.NotNull(job.Log.OfType<LimitStated>().Single().Limit.Unusual);
        Assert.Single(job.Procedure.Exceptions);
    }

    [Fact]
    public void A_strange_limit_that_is_said_anew_is_looked_at_anew()
    {
        LiveJob job = Highest(Asked("inlet_pressure", VentCategory.I), 30.0m).Say(CommandWord.Next);
        Highest(job, 25.0m);
        if (job.Procedure.Phase == Phase.Confirming)
        {
            job.Say(AnswerWord.Confirm);
        }

        Assert.IsType<LimitDoubted>(job.Say(CommandWord.Next).Last[^1]);
    }

    [Theory]
    [InlineData("draft", VentCategory.I, null, -0.01, true)]
    [InlineData("draft", VentCategory.I, null, 0.12, false)]
    [InlineData("draft", VentCategory.IV, null, 0.12, true)]
    [InlineData("manifold_pressure", VentCategory.I, 3.2, 3.8, true)]
    [InlineData("manifold_pressure", VentCategory.I, 32.0, 38.0, false)]
    [InlineData("temperature_rise", VentCategory.I, 40.0, 70.0, true)]
    [InlineData("temperature_rise", VentCategory.I, 4.0, 150.0, false)]
    [InlineData("flue_temperature", VentCategory.IV, null, 130.0, true)]
    [InlineData("flue_temperature", VentCategory.IV, null, 450.0, false)]
    public void What_plates_usually_state_follows_the_vent_category_and_the_fuel(string name, VentCategory venting, double? lower, double? upper, bool isUsual)
    {
        DeclaredLimit limit = new(name, (decimal?)lower, (decimal?)upper, LimitNames.UnitOf(name)!, "rating plate", false);

        Plausible plausible = LimitPlausibility.Of(limit, Some.Plan().Appliance with { Venting = venting });

        Assert.Equal(isUsual, plausible is { Impossible: null, Unusual: null });
    }

    [Theory]
    [InlineData("co_air_free", "common practice, no source", LimitWeight.Must)]
    [InlineData("control_voltage", "24 V nominal (common practice, no source)", LimitWeight.Ought)]
    [InlineData("control_voltage", "maker's instructions", LimitWeight.Must)]
    [InlineData("external_static", "rating plate", LimitWeight.Must)]
    public void What_a_limit_weighs_follows_what_it_limits_and_who_states_it(string name, string source, LimitWeight weight) =>
        Assert.Equal(weight, new DeclaredLimit(name, null, 1, "ppm", source, false).Carries);
}
