using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>After a smell of gas: the wait, the fresh question, the reason.</summary>
public sealed class GasSmellTests
{
    static LiveJob Smelled() => new LiveJob().GoTo("combustion").Say(CommandWord.GasSmell);

    [Fact]
    public void A_smell_of_gas_starts_a_wait_of_five_minutes_that_is_told_at_half_and_end()
    {
        LiveJob job = Smelled();

        Assert.Equal(TimeSpan.FromMinutes(5), job.View.Timers.Single(timer => timer.Title == "Wait after a smell of gas").Remaining);
        Assert.IsType<TimerHalfway>(job.Wait(TimeSpan.FromMinutes(2.5)).Last[0]);
        Assert.IsType<TimerEnded>(job.Wait(TimeSpan.FromMinutes(2.5)).Last[0]);
    }

    [Fact]
    public void Nothing_goes_on_before_the_wait_is_over()
    {
        LiveJob job = Smelled().Wait(TimeSpan.FromMinutes(4)).Say(AnswerWord.Yes);

        Assert.Contains("1:00 left", Assert.IsType<CommandRefused>(Assert.Single(job.Last)).Reason.Shown, StringComparison.Ordinal);
        Assert.Equal(Phase.Stopped, job.Procedure.Phase);
    }

    [Fact]
    public void After_the_wait_the_smell_is_asked_afresh_and_then_the_reason()
    {
        LiveJob job = Smelled().Wait(TimeSpan.FromMinutes(5)).Say(AnswerWord.Yes);
        Assert.Contains("do you smell gas now", job.View.Question, StringComparison.Ordinal);

        job.Say(AnswerWord.No);
        Assert.Equal(["gas supplier", "fire service", "own finding", "no"], job.View.ListeningFor.AsEnumerable());
        job.Choose("gas-supplier");
        Assert.True(job.Procedure.Expectation.Dictation);
        job.Dictate("hose was loose, fixed and brushed");

        Assert.Equal("combustion", job.Step);
        Assert.Equal(Phase.Asking, job.Procedure.Phase);
    }

    [Fact]
    public void Gas_smelled_again_begins_the_wait_anew()
    {
        LiveJob job = Smelled().Wait(TimeSpan.FromMinutes(5)).Say(AnswerWord.Yes).Say(AnswerWord.Yes);

        Assert.Equal(Phase.Stopped, job.Procedure.Phase);
        Assert.Equal(TimeSpan.FromMinutes(5), job.View.Timers.Single(timer => timer.Title == "Wait after a smell of gas").Remaining);
    }

    [Fact]
    public void An_emergency_stop_after_it_shortens_nothing_and_keeps_its_instructions()
    {
        LiveJob job = Smelled().Say(CommandWord.EmergencyStop);
        Assert.Equal("GAS SMELL", job.View.Alarm!.Title);

        Assert.IsType<CommandRefused>(job.Say(AnswerWord.Yes).Last[^1]);
    }

    [Fact]
    public void A_record_that_was_stopped_before_there_was_a_wait_gets_one()
    {
        LiveJob job = new LiveJob().GoTo("combustion");
        job.Procedure.Apply(new StartupStopped(job.Now, StopCause.GasSmell, Some.Heard()));

        job.Say(AnswerWord.Yes);

        Assert.Equal(TimeSpan.FromMinutes(5), Assert.IsType<TimerStarted>(job.Last[0]).Duration);
        Assert.Equal(Phase.Stopped, job.Procedure.Phase);
    }

    [Fact]
    public void The_numbers_of_the_settings_are_shown_and_said()
    {
        StartupPlan plan = Some.Plan();
        LiveJob job = new LiveJob(StartupPlan.From(plan.Checklist, plan.Appliance, plan.Site, settings: new Settings(EmergencyNumber: "911", GasSupplier: "555-0100")))
            .Say(CommandWord.GasSmell);

        Assert.Contains("Call the gas supplier, 555-0100, or the emergency number, 911, from outside.", job.View.Alarm!.Lines);
        Assert.Contains(job.Procedure.Announce(job.Last, job.Now), said => said.IsUrgent && said.Text.Contains("911", StringComparison.Ordinal));
    }
}
