using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>A limit that no file states is asked for at the step that needs it.</summary>
public sealed class PlateQuestionTests
{
    /// <summary>The sheet without the range of the manifold pressure.</summary>
    static LiveJob AtManifold()
    {
        StartupPlan plan = Some.Plan();
        return new LiveJob(StartupPlan.From(plan.Checklist, plan.Appliance with { Limits = [.. plan.Appliance.Limits.Where(limit => limit.Name != "manifold_pressure/high")] }, plan.Site))
            .GoTo("manifold");
    }

    [Fact]
    public void Its_bounds_are_said_read_back_and_judge_the_reading_with_their_origin()
    {
        LiveJob job = AtManifold();
        Assert.Contains("Read them from the rating plate", job.View.Do, StringComparison.Ordinal);
        Assert.Equal(["lowest", "highest", "room monoxide"], job.Procedure.Expectation.Readings.Select(reading => reading.Names[0]));

        job.Say(Bound(job, 0), 3.2m).Say(Bound(job, 1), 3.8m).Say(CommandWord.Next).Say("manifold_pressure", 3.9m);

        EnteredReading judged = job.Log.OfType<ReadingEntered>().Last().Reading;
        Assert.Equal(new DeclaredLimit("manifold_pressure/high", 3.2m, 3.8m, "in. w.c.", "from rating plate, spoken", false), judged.Limit);
        Assert.Equal(Verdict.Fail, judged.Verdict);
        job.Say(CommandWord.Next);
        Assert.Equal("adjust", job.Step);
        Assert.Contains("turn counter-clockwise", job.View.Do, StringComparison.Ordinal);
    }

    [Fact]
    public void Only_what_the_plate_states_need_be_said_and_the_reading_waits_for_it()
    {
        LiveJob job = AtManifold().Say("manifold_pressure", 3.5m);
        Assert.IsType<CommandRefused>(Assert.Single(job.Last));
        Assert.IsType<CommandRefused>(Assert.Single(job.Say(CommandWord.Next).Last));

        job.Say(Bound(job, 1), 3.8m).Say(CommandWord.Next).Say("manifold_pressure", 3.5m);

        Assert.Equal("at most 3.8 in. w.c.", job.Log.OfType<ReadingEntered>().Last().Reading.Limit!.Text);
    }

    [Fact]
    public void Bounds_in_the_wrong_order_are_refused_and_a_wrong_one_can_be_disregarded()
    {
        LiveJob job = AtManifold();
        job.Say(Bound(job, 0), 3.2m).Say(Bound(job, 1), 2.8m).Say(CommandWord.Next);
        Assert.Contains("above the highest", Assert.IsType<CommandRefused>(job.Last[^1]).Reason.Shown, StringComparison.Ordinal);

        job.Say(CommandWord.Disregard).Say(Bound(job, 1), 3.8m).Say(CommandWord.Next).Say(CommandWord.Disregard);

        Assert.Contains("Read them from the rating plate", job.View.Do, StringComparison.Ordinal);
        Assert.Equal(["3.2", "--"], job.View.Readings.Select(line => line.Value));
    }

    [Fact]
    public void A_doubtful_bound_is_confirmed_like_any_reading()
    {
        LiveJob job = AtManifold();
        job.Say(Bound(job, 0), 3.2m, Certainty.Amber);
        Assert.Equal(ReadingState.Doubtful, job.View.Readings[0].State);

        Assert.Equal("3.2", job.Say(AnswerWord.Confirm).View.Readings[0].Value);
    }

    static Field Bound(LiveJob job, int index) => job.Procedure.Expectation.Readings[index].Field;

    [Fact]
    public void A_limit_of_a_result_is_asked_in_the_unit_of_the_result_and_judges_it()
    {
        StartupPlan plan = Some.PlanOf([.. Some.Steps.Select(step => step.Id == "rise" ? step with { Limited = ["temperature_rise"] } : step)]);
        LiveJob job = new LiveJob(StartupPlan.From(plan.Checklist, plan.Appliance with { Limits = [.. plan.Appliance.Limits.Where(limit => limit.Name != "temperature_rise")] }, plan.Site)).GoTo("rise");
        Assert.Contains("states no limits of temperature rise (high).", job.View.Do, StringComparison.Ordinal);

        job.Say(Bound(job, 0), 40m).Say(Bound(job, 1), 70m).Say(CommandWord.Next).Say("supply_temperature", 122m).Say("return_temperature", 68m);
        Assert.Equal(("temperature_rise/high", Verdict.Pass), job.Log.OfType<ResultsComputed>().Last().Results.Where(result => result.Id == "temperature_rise").Select(result => (result.Limit!.Name, result.Verdict!.Value)).Single());
    }

    [Fact]
    public void A_limit_without_a_stage_is_asked_and_judges_without_one()
    {
        Step flame = Some.Steps.Single(step => step.Id == "manifold") with { Id = "flame", Scope = null, Readings = [new("flame_current", "flame_current")] };
        LiveJob job = new(Some.PlanOf([flame, Some.Steps[^1]]));
        Assert.Contains("states no limits of flame current.", job.View.Do, StringComparison.Ordinal);

        job.Say(Bound(job, 0), 1.0m).Say(CommandWord.Next).Say("flame_current", 3.5m);
        Assert.Equal(("flame_current", Verdict.Pass), (job.Log.OfType<ReadingEntered>().Last().Reading.Limit!.Name, job.Log.OfType<ReadingEntered>().Last().Reading.Verdict!.Value));
    }
}
