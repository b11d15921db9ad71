using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

public sealed class TimerTests
{
    [Fact]
    public void A_timer_starts_with_its_step_and_is_told_at_half_and_end()
    {
        LiveJob job = new LiveJob().GoTo("warm-up");
        Assert.Equal(TimeSpan.FromMinutes(8), job.View.Timers.Single().Remaining);

        Assert.Empty(job.Wait(TimeSpan.FromMinutes(3.9)).Last);
        Assert.IsType<TimerHalfway>(Assert.Single(job.Wait(TimeSpan.FromMinutes(0.1)).Last));
        Assert.Empty(job.Wait(TimeSpan.FromMinutes(3.9)).Last);
        Assert.IsType<TimerEnded>(Assert.Single(job.Wait(TimeSpan.FromMinutes(0.1)).Last));
        Assert.Empty(job.Wait(TimeSpan.FromMinutes(1)).Last);
    }

    [Fact]
    public void The_step_cannot_be_left_before_the_time_is_over()
    {
        LiveJob job = new LiveJob().GoTo("warm-up").Wait(TimeSpan.FromMinutes(7)).Say(CommandWord.Next);

        Assert.Contains("1:00", Assert.IsType<CommandRefused>(job.Last[^1]).Reason.Shown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_machine_that_slept_through_the_time_tells_half_and_end_together()
    {
        LiveJob job = new LiveJob().GoTo("warm-up").Wait(TimeSpan.FromMinutes(20));

        Assert.Collection(job.Last, happened => Assert.IsType<TimerHalfway>(happened), happened => Assert.IsType<TimerEnded>(happened));
    }

    [Fact]
    public void A_clock_set_back_never_ends_a_timer_and_never_shows_more_than_the_whole()
    {
        LiveJob job = new LiveJob().GoTo("warm-up").Wait(TimeSpan.FromHours(-2));

        Assert.Empty(job.Last);
        Assert.Equal(TimeSpan.FromMinutes(8), job.View.Timers.Single().Remaining);
    }

    [Fact]
    public void Start_timer_starts_it_again()
    {
        LiveJob job = new LiveJob().GoTo("warm-up").Wait(TimeSpan.FromMinutes(7)).Say(CommandWord.StartTimer);

        Assert.Equal(TimeSpan.FromMinutes(8), job.View.Timers.Single().Remaining);
    }

    [Fact]
    public void A_factor_shortens_every_timer_for_a_demonstration()
    {
        LiveJob job = new LiveJob(Some.Plan(timerFactor: 0.01)).GoTo("warm-up");

        Assert.Equal(TimeSpan.FromSeconds(4.8), job.View.Timers.Single().Remaining);
    }

    [Fact]
    public void A_reading_before_its_time_is_kept_marked_and_not_judged()
    {
        LiveJob job = new LiveJob(WarmUpBehindOtherWork).Say(CommandWord.Done).Say("oxygen", 15.0m).Say("flue_co", 500m);

        Assert.Equal(ReadingState.Early, job.View.Readings[0].State);
        Assert.All(job.Log.OfType<ReadingEntered>(), entered => Assert.Null(entered.Reading.Verdict));
        Assert.Empty(job.View.Results);
        Assert.Contains("not judged", Assert.IsType<CommandRefused>(job.Say(CommandWord.Next).Last[^1]).Reason.Shown, StringComparison.Ordinal);

        job.Wait(TimeSpan.FromMinutes(8)).Say("oxygen", 7.6m).Say("flue_co", 12m).Say("flue_temperature", 328m).Say("air_temperature", 68m).Say(CommandWord.Next);

        Assert.Equal(["warm-up", "purge"], job.Log.OfType<StepDone>().Where(done => done.Evidence is null).Select(done => done.StepId));
        Assert.Equal("sign", job.Step);
    }

    [Fact]
    public void Several_timers_run_at_once_and_how_long_names_each()
    {
        LiveJob job = new LiveJob(WarmUpBehindOtherWork).Say(CommandWord.Done);
        Assert.Equal(["warm-up", "purge"], job.Log.OfType<TimerStarted>().Select(timer => timer.StepId));

        job.Wait(TimeSpan.FromMinutes(1)).Say(CommandWord.HowLong);

        Assert.Equal("Title of purge: 1:00 left. Title of warm-up: 7:00 left.", job.Procedure.Announce(job.Last, job.Now).Single().Text);
    }

    static StartupPlan WarmUpBehindOtherWork { get; } = Some.PlanOf(
    [
        Some.Steps.Single(step => step.Id == "papers") with { Starts = ["warm-up", "purge"] },
        Some.Steps.Single(step => step.Id == "combustion") with { After = "warm-up" },
        Some.Steps.Single(step => step.Id == "warm-up"),
        Some.Steps.Single(step => step.Id == "warm-up") with { Id = "purge", Title = "Title of purge", Timer = new(TimeSpan.FromMinutes(2), "common practice, no source") },
        Some.Steps.Single(step => step.Id == "sign"),
    ]);
}
