using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>Carbon monoxide is judged the moment it is heard, whatever else is missing, early or taken back.</summary>
public sealed class MonoxideTests
{
    /// <summary>With instruments of no stated uncertainty: the lines of the tiers as they are.</summary>
    static StartupPlan Exact(params Step[] steps)
    {
        StartupPlan plan = steps.Length == 0 ? Some.Plan() : Some.PlanOf([.. steps]);
        return StartupPlan.From(plan.Checklist, plan.Appliance, plan.Site with { Instruments = [] });
    }

    // ANSI/BPI-1200-S tiers of ambient CO and 400 ppm air-free of ANSI Z21.47/CSA 2.3 are values from memory; 100 ppm is common practice, no source.
    [Theory]
    [InlineData(8, null)]
    [InlineData(9, MonoxideAction.FindSource)]
    [InlineData(35, MonoxideAction.FindSource)]
    [InlineData(36, MonoxideAction.ShutOff)]
    [InlineData(69, MonoxideAction.ShutOff)]
    [InlineData(70, MonoxideAction.Evacuate)]
    [InlineData(501, MonoxideAction.Evacuate)]
    [InlineData(1200, MonoxideAction.Evacuate)]
    public void In_a_room_each_line_belongs_to_the_graver_side(int ppm, MonoxideAction? action)
    {
        LiveJob job = new LiveJob(Exact()).GoTo("rooms/kitchen").Say("room_co", ppm);

        MonoxideJudged? judged = job.Last.OfType<MonoxideJudged>().SingleOrDefault();
        Assert.Equal(action, judged?.Action);
        Assert.Equal(action is null ? null : ppm, judged?.Ppm);
        Assert.Equal(action == MonoxideAction.Evacuate, job.Procedure.Phase == Phase.Stopped);
        Assert.Equal(ppm, job.Log.OfType<ReadingEntered>().Last().Reading.Value);
    }

    [Theory]
    [InlineData(99, null)]
    [InlineData(100, MonoxideAction.FindSource)]
    [InlineData(399, MonoxideAction.FindSource)]
    [InlineData(400, MonoxideAction.ShutOff)]
    [InlineData(4500, MonoxideAction.ShutOff)]
    public void In_the_flue_the_value_as_read_is_judged_before_any_oxygen_was_said(int ppm, MonoxideAction? action)
    {
        LiveJob job = new LiveJob(Exact()).GoTo("combustion").Say("flue_co", ppm);

        MonoxideJudged? judged = job.Last.OfType<MonoxideJudged>().SingleOrDefault();
        Assert.Equal(action, judged?.Action);
        Assert.NotEqual(true, judged?.IsAirFree);
    }

    [Fact]
    public void The_uncertainty_of_the_analyzer_counts_against_the_line()
    {
        // 20 ppm or 5 percent, the larger: 385 + 20 reaches 400, 375 + 20 does not.
        Assert.Equal(MonoxideAction.ShutOff, new LiveJob().GoTo("combustion").Say("flue_co", 385m).Last.OfType<MonoxideJudged>().Single().Action);
        Assert.Equal(MonoxideAction.FindSource, new LiveJob().GoTo("combustion").Say("flue_co", 375m).Last.OfType<MonoxideJudged>().Single().Action);
    }

    [Fact]
    public void More_than_the_instrument_shows_is_entered_as_over_and_is_in_the_highest_tier()
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Give(new Phrase.Reading(Fields.Find("room_co")!, 9999m, Some.Heard()) { IsOver = true });

        Assert.Equal(StopCause.CarbonMonoxide, job.Log.OfType<StartupStopped>().Single().Cause);
        Assert.True(job.Log.OfType<ReadingEntered>().Last().Reading.IsOver);
        Assert.Contains("over 9999 ppm", job.Procedure.Exceptions[0].Subject + job.Procedure.Exceptions[1].Subject, StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_that_is_early_is_not_judged_as_proof_but_told_as_danger()
    {
        Step wait = Some.Steps.Single(step => step.Id == "warm-up"), combustion = Some.Steps.Single(step => step.Id == "combustion") with { After = "warm-up" };
        LiveJob job = new(Some.PlanOf([wait with { Id = "first", Kind = StepKind.Do, Timer = null, Starts = ["warm-up"] }, combustion, wait, Some.Steps[^1]]));
        job.Say(CommandWord.Done).Say("flue_co", 2900m);

        Assert.True(job.Last.OfType<ReadingEntered>().Single().Reading.IsEarly);
        Assert.Equal((MonoxideAction.ShutOff, 2900d), (job.Last.OfType<MonoxideJudged>().Single().Action, job.Last.OfType<MonoxideJudged>().Single().Ppm));
        Assert.Contains(job.Procedure.Announce(job.Last, job.Now), said => said.IsUrgent && said.Text.StartsWith("DANGER: 2900 ppm CO in the flue", StringComparison.Ordinal));
    }

    [Fact]
    public void Where_oxygen_dilutes_too_much_to_work_out_the_air_free_value_the_value_as_read_is_judged()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", 16.5m).Say("flue_co", 3900m);

        Assert.Equal(MonoxideAction.ShutOff, job.Last.OfType<MonoxideJudged>().Single().Action);
        Assert.IsType<CommandRefused>(job.Say("flue_temperature", 328m).Say("air_temperature", 68m).Say(CommandWord.Next).Last[^1]);
    }

    [Fact]
    public void A_dangerous_value_that_is_doubtful_is_told_before_it_is_confirmed_and_stays_on_the_list_when_it_is_denied()
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 250m, Certainty.Amber);

        Assert.Contains(job.Procedure.Announce(job.Last, job.Now), said => said.IsUrgent && said.Text.Contains("250 ppm", StringComparison.Ordinal));
        job.Say(AnswerWord.No).Say("room_co", 2m).Say(CommandWord.Next);

        Assert.Contains(job.Procedure.Exceptions, exception => exception.Kind == ExceptionKind.Misheard && exception.Subject.Contains("250 ppm", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(12)]    // a tier of its own
    [InlineData(45)]
    [InlineData(90)]
    public void A_dangerous_value_that_was_denied_stays_beside_the_next_one(int next)
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 250m, Certainty.Amber).Say(AnswerWord.No).Say("room_co", next);

        Assert.Contains(job.Procedure.Exceptions, exception => exception.Kind == ExceptionKind.Misheard && exception.Subject.Contains("250 ppm", StringComparison.Ordinal));
        Assert.Contains(job.Procedure.Exceptions, exception => exception.Kind == ExceptionKind.Alarm && exception.Subject.Contains(FormattableString.Invariant($"{next} ppm"), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_dangerous_value_that_was_never_confirmed_stays_when_the_job_is_stopped_or_another_value_is_said(bool isStopped)
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 250m, Certainty.Amber);
        if (isStopped)
        {
            job.Say(CommandWord.EmergencyStop).LeadBack("nothing was found");
        }

        job.GoTo("rooms/kitchen").Say("room_co", 12m);

        Assert.Contains(job.Procedure.Exceptions, exception => exception.Subject.Contains("250 ppm", StringComparison.Ordinal));
    }

    [Fact]
    public void A_dangerous_value_that_is_confirmed_is_one_measurement_and_an_alarm()
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 250m, Certainty.Amber).Say(AnswerWord.Confirm);

        Assert.Single(job.Procedure.Exceptions, exception => exception.Subject.Contains("250 ppm", StringComparison.Ordinal));
        Assert.DoesNotContain(job.Procedure.Exceptions, exception => exception.Kind == ExceptionKind.Misheard);
    }

    [Fact]
    public void A_dangerous_value_takes_the_place_of_a_harmless_one_at_once()
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 2m).Say("room_co", 250m);

        Assert.Equal(Phase.Stopped, job.Procedure.Phase);
    }

    [Fact]
    public void What_is_disregarded_stays_on_the_list_with_its_number()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("flue_co", 2900m).Say(CommandWord.Disregard).Say("flue_co", 12m);

        Assert.Contains(job.Procedure.Exceptions, exception => exception.Kind == ExceptionKind.Alarm && exception.Subject.Contains("2900 ppm", StringComparison.Ordinal));
    }
}
