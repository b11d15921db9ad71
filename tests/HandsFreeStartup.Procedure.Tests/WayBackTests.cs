using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>From an alarm back to the work: the waits, the proofs, the questions, and what is done again.</summary>
public sealed class WayBackTests
{
    /// <summary>Ignition hangs on the burner, combustion on burner, gas and air, the manifold on the tightness of the gas train.</summary>
    static readonly ImmutableArray<Step> Steps =
    [
        .. Some.Steps.Select(step => step.Id switch
        {
            "papers" => step with { AgainAfter = [Again.Stop] },
            "warm-up" => step with { AgainAfter = [Again.Stop] },
            "combustion" => step with { AgainAfter = [Again.Stop, Again.Change] },
            "manifold" => step with { AgainAfter = [Again.Smell] },
            "rooms" => step with { After = "warm-up" },
            _ => step,
        }),
    ];

    static LiveJob At(string stepId) => new LiveJob(Some.PlanOf(Steps)).GoTo(stepId);

    static string Refusal(LiveJob job) => Assert.IsType<CommandRefused>(job.Last[^1]).Reason.Shown;

    [Theory]
    [InlineData(CommandWord.EmergencyStop, "papers", "warm-up", "combustion")]
    [InlineData(CommandWord.GasSmell, "papers", "warm-up", "combustion", "manifold")]
    public void Exactly_what_the_alarm_made_doubtful_is_done_again_from_the_first_of_it_on(CommandWord alarm, params string[] again)
    {
        LiveJob job = At("rise").Say(alarm).LeadBack("found and put right");

        Assert.Equal(again, job.Log.OfType<StepReopened>().Select(step => step.StepId));
        Assert.Equal(again[0], job.Step);
        Assert.Equal(again.Contains("manifold"), job.Log.OfType<ReadingVoided>().Any(voided => voided.Key.FieldId == "manifold_pressure"));
        Assert.Equal(4, job.Log.OfType<ReadingVoided>().Count(voided => voided.Key == voided.Key with { Scope = "high" } && voided.Key.FieldId != "manifold_pressure"));
        StartupEvent[] log = [.. job.Log];
        Assert.True(Array.FindIndex(log, happened => happened is StepReopened { StepId: "combustion" }) < Array.FindIndex(log, happened => happened is ReadingVoided), "a step is reopened before its readings are voided");
        Assert.Equal("found and put right", job.Log.OfType<StartupResumed>().Single().Reason);
        job.GoTo("sign").Say(CommandWord.Finish).Say(AnswerWord.Confirm);
        Assert.True(job.Procedure.IsSigned);
        Assert.Equal(2, job.Log.OfType<StepDone>().Count(done => done.StepId == "warm-up"));
    }

    [Fact]
    public void Where_nothing_hangs_on_it_the_work_goes_on_where_it_stood()
    {
        LiveJob job = new LiveJob().GoTo("manifold").Say(CommandWord.EmergencyStop).LeadBack("a false alarm");

        Assert.Empty(job.Log.OfType<StepReopened>());
        Assert.Equal("manifold", job.Step);
    }

    [Fact]
    public void A_step_that_was_not_begun_is_not_done_again()
    {
        LiveJob job = At("papers").Say(CommandWord.GasSmell).LeadBack("a cap was loose");

        Assert.Empty(job.Log.OfType<StepReopened>());
        Assert.Equal("papers", job.Step);
    }

    [Fact]
    public void A_wait_that_was_running_is_begun_anew_and_one_that_was_over_is_not_stopped()
    {
        LiveJob job = At("warm-up").Wait(TimeSpan.FromMinutes(3)).Say(CommandWord.EmergencyStop);
        Assert.Equal(["warm-up"], job.Last.OfType<TimerStopped>().Select(timer => timer.StepId));
        Assert.Empty(job.View.Timers);
        job.LeadBack("looked at the burner").GoTo("warm-up");
        Assert.Equal(TimeSpan.FromMinutes(8), job.View.Timers.Single().Remaining);

        Assert.Empty(At("combustion").Say(CommandWord.EmergencyStop).Last.OfType<TimerStopped>());
    }

    [Fact]
    public void A_second_alarm_does_not_stop_the_wait_of_the_first()
    {
        LiveJob job = At("warm-up").Say(CommandWord.GasSmell).Wait(TimeSpan.FromMinutes(2)).Say(CommandWord.EmergencyStop);

        Assert.Equal(TimeSpan.FromMinutes(3), job.View.Timers.Single().Remaining);
    }

    [Fact]
    public void A_shortened_job_shortens_the_wait_after_a_smell_too() =>
        Assert.Equal(TimeSpan.FromSeconds(150), new LiveJob(Some.Plan(timerFactor: 0.5)).GoTo("papers").Say(CommandWord.GasSmell).View.Timers.Single().Remaining);

    [Fact]
    public void After_carbon_monoxide_the_room_is_measured_when_its_wait_is_over_and_what_counts_is_clear_air()
    {
        LiveJob job = At("rooms/kitchen").Say("room_co", 150m);
        Assert.Equal("Is it safe to go on?", job.View.Question);
        Assert.Contains("10:00 left", Refusal(job.Say("room_co", 1m)), StringComparison.Ordinal);

        job.Wait(TimeSpan.FromMinutes(10));
        Assert.StartsWith("Is it safe to go on? First measure the room", job.View.Question, StringComparison.Ordinal);
        Assert.Contains("measure the room", Refusal(job.Say(AnswerWord.Yes)), StringComparison.Ordinal);
        Assert.Equal("The start-up is stopped.", Refusal(job.Say("room_co", 1m, Certainty.Amber).Say("oxygen", 7.6m)));
        Assert.Contains("measure the room", Refusal(job.Say(AnswerWord.No).Say(AnswerWord.Yes)), StringComparison.Ordinal);
        Assert.Contains("measure the room", Refusal(job.Say("room_co", 6m).Say(AnswerWord.Yes)), StringComparison.Ordinal);  // 6 + 3 of the analyzer reaches 9

        job.Say("room_co", 5m);
        Assert.Equal("Is it safe to go on?", job.View.Question);
        Assert.False(job.Log.OfType<ReadingEntered>().Last().Reading.IsEarly);
        Assert.Equal(["gas supplier", "fire service", "own finding", "no"], job.Say(AnswerWord.Yes).View.ListeningFor.AsEnumerable());
    }

    [Fact]
    public void Clear_air_of_before_the_alarm_counts_for_nothing()
    {
        LiveJob job = At("rooms/kitchen").Say("room_co", 1m).Say(CommandWord.Next).Say("room_co", 150m).Wait(TimeSpan.FromMinutes(10));

        Assert.Contains("measure the room", Refusal(job.Say(AnswerWord.Yes)), StringComparison.Ordinal);
    }

    [Fact]
    public void Gas_and_carbon_monoxide_together_want_the_proof_of_both()
    {
        LiveJob job = At("rooms/kitchen").Say("room_co", 150m).Say(CommandWord.GasSmell).Wait(TimeSpan.FromMinutes(10)).Say(AnswerWord.Yes);
        Assert.Contains("do you smell gas now", job.View.Question, StringComparison.Ordinal);

        Assert.Contains("measure the room", Refusal(job.Say(AnswerWord.No)), StringComparison.Ordinal);
        job.Say("room_co", 0m).Say(AnswerWord.Yes).Choose("fire-service").Dictate("a blocked chimney");
        Assert.Contains(job.Procedure.Exceptions, exception => exception.Subject.Shown.Contains("declared safe by fire service", StringComparison.Ordinal) && exception.Reason == "a blocked chimney");
    }

    [Fact]
    public void A_room_is_measured_on_the_way_back_from_carbon_monoxide_only()
    {
        LiveJob job = At("rooms/kitchen").Say(CommandWord.EmergencyStop).Say("room_co", 1m);

        Assert.Equal("The start-up is stopped.", Refusal(job));
    }

    [Fact]
    public void What_led_back_once_leads_back_from_the_next_alarm_no_more()
    {
        LiveJob job = At("rooms/kitchen").Say("room_co", 150m).Wait(TimeSpan.FromMinutes(10)).Say("room_co", 1m).Say(AnswerWord.Yes).Choose("own-finding").Dictate("the flue had come off");
        Assert.Equal(Phase.Asking, job.Procedure.Phase);
        job.Say(CommandWord.EmergencyStop).Say(AnswerWord.Yes);

        Assert.Equal(Phase.Choosing, job.Procedure.Phase);
        job.Say(AnswerWord.No);
        Assert.Equal(Phase.Stopped, job.Procedure.Phase);
    }

    [Theory]
    [InlineData(CommandWord.SayAgain)]
    [InlineData(CommandWord.WhatIsOpen)]
    [InlineData(CommandWord.HowLong)]
    [InlineData(CommandWord.Help)]
    public void What_only_asks_is_answered_while_it_is_stopped(CommandWord word)
    {
        Assert.IsType<QuestionAsked>(At("combustion").Say(CommandWord.EmergencyStop).Say(word).Last[^1]);
    }

    [Theory]
    [InlineData(CommandWord.Next)]
    [InlineData(CommandWord.SkipStep)]
    [InlineData(CommandWord.GoBack)]
    [InlineData(CommandWord.Disregard)]
    public void Nothing_else_is_taken_while_it_is_stopped(CommandWord word) => Assert.Equal("The start-up is stopped.", Refusal(At("combustion").Say(CommandWord.EmergencyStop).Say(word)));

    [Fact]
    public void What_ended_is_told_to_have_ended_after_another_alarm()
    {
        LiveJob job = At("papers").Say(CommandWord.Finish).Say(AnswerWord.Confirm).Dictate("no time").Choose("owners-wish").MakeSafe().Say(CommandWord.EmergencyStop);

        Assert.Equal("It has ended. Finish.", job.View.Question);
        Assert.Contains("cannot go on", Refusal(job.Say(AnswerWord.Yes)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_signature_falls_with_an_alarm_and_the_record_must_be_signed_again()
    {
        LiveJob job = At("sign").Say(CommandWord.Finish).Say(AnswerWord.Confirm).Say(CommandWord.EmergencyStop);
        Assert.False(job.Procedure.IsSigned);

        job.LeadBack("a child at the switch");
        Assert.Equal("papers", job.Step);
        job.GoTo("sign").Say(CommandWord.Finish).Say(AnswerWord.Confirm);
        Assert.True(job.Procedure.IsSigned);
    }

    [Theory]
    [InlineData(300, 2)]
    [InlineData(40, 1)]
    [InlineData(12, 1)]
    public void What_a_room_shows_during_the_wait_is_kept_told_and_waited_for_anew(int ppm, int stops)
    {
        LiveJob job = At("rooms/kitchen").Say("room_co", 150m).Wait(TimeSpan.FromMinutes(9)).Say("room_co", ppm);

        Assert.Equal((ppm, true), job.Log.OfType<ReadingEntered>().Select(entered => ((int)entered.Reading.Value, entered.Reading.IsEarly)).Last());
        Assert.Equal(ppm, job.Last.OfType<MonoxideJudged>().Single().Ppm);
        Assert.Equal(stops, job.Log.OfType<StartupStopped>().Count());
        Assert.Contains("10:00 left", Refusal(job.Say(AnswerWord.Yes)), StringComparison.Ordinal);
        Assert.Equal("Is it safe to go on?", job.View.Question);
    }

    [Theory]
    [InlineData(CommandWord.GasSmell)]
    [InlineData(CommandWord.EmergencyStop)]
    public void Dangerous_air_is_heard_whatever_the_start_up_was_stopped_for(CommandWord alarm)
    {
        LiveJob evacuated = At("rooms/kitchen").Say(alarm).Say("room_co", 300m);
        Assert.Contains(StopCause.CarbonMonoxide, evacuated.Log.OfType<StartupStopped>().Select(stopped => stopped.Cause));
        Assert.Equal(TimeSpan.FromMinutes(10), evacuated.View.Timers.Single(timer => timer.Title == "Wait after carbon monoxide").Remaining);
        Assert.Contains("Wait, ", Refusal(evacuated.Wait(TimeSpan.FromMinutes(6)).Say(AnswerWord.Yes)), StringComparison.Ordinal);

        LiveJob told = At("rooms/kitchen").Say(alarm).Say("room_co", 40m);
        Assert.Equal((MonoxideAction.ShutOff, 40d), told.Last.OfType<MonoxideJudged>().Select(judged => (judged.Action, judged.Ppm!.Value)).Single());
        Assert.Equal("monoxide-wait", told.Last.OfType<TimerStarted>().Single().StepId);
        Assert.Single(told.Log.OfType<StartupStopped>());
        Assert.Contains("Wait, ", Refusal(new LiveJob(told).Wait(TimeSpan.FromMinutes(6)).Say(AnswerWord.Yes)), StringComparison.Ordinal);
        Assert.Contains(told.Procedure.Exceptions, exception => exception.Subject.Shown.Contains("40 ppm", StringComparison.Ordinal));
        Assert.True(new LiveJob(told).Say("room_co", 300m, Certainty.Amber).Last.OfType<MonoxideJudged>().Single() is { IsDoubtful: true, Counts: false });
        Assert.Contains(StopCause.CarbonMonoxide, new LiveJob(told).Say("room_co", 300m, Certainty.Amber).Say(AnswerWord.Confirm).Last.OfType<StartupStopped>().Select(stopped => stopped.Cause));
        Assert.Equal(Phase.Stopped, new LiveJob(told).Say("room_co", 300m, Certainty.Amber).Say(AnswerWord.No).Procedure.Phase);

        // "Over range" is more than the end of the range, which it is read back as.
        LiveJob off = new LiveJob(told).Say("room_co", 9999m, Certainty.Amber).Give(new Phrase.Reading(Fields.Find("room_co")!, 9999m, Some.Heard()) { IsOver = true });
        Assert.True(off.Last.OfType<ReadingEntered>().Single().Reading.IsOver);
        Assert.Contains(StopCause.CarbonMonoxide, off.Last.OfType<StartupStopped>().Select(stopped => stopped.Cause));

        // While the other alarm's wait runs too, the air is not clear before its own wait is over.
        LiveJob soon = new LiveJob(told).Wait(TimeSpan.FromMinutes(2)).Say("room_co", 1m);
        Assert.Empty(soon.Last.OfType<ReadingEntered>());
        Assert.Contains("8:00 left", Refusal(soon), StringComparison.Ordinal);

        LiveJob source = At("rooms/kitchen").Say(alarm).Say("room_co", 12m);
        Assert.Equal(MonoxideAction.FindSource, source.Last.OfType<MonoxideJudged>().Single().Action);
        Assert.Empty(source.Last.OfType<TimerStarted>());
    }

    [Fact]
    public void Air_that_was_measured_clear_twice_is_clear()
    {
        LiveJob job = At("rooms/kitchen").Say("room_co", 150m).Wait(TimeSpan.FromMinutes(10)).Say("room_co", 1m).Say("room_co", 0m).Say(AnswerWord.Yes);

        Assert.Equal(Phase.Choosing, job.Procedure.Phase);
    }

    [Fact]
    public void A_smell_that_was_led_back_needs_no_second_reason_but_another_unsafe_answer_keeps_its_own()
    {
        LiveJob smell = new LiveJob().Say(AnswerWord.Yes).LeadBack("the union was loose");
        Assert.Equal("smell", smell.Step);
        Assert.Equal(("papers", Phase.Asking), (smell.Say(AnswerWord.No).Step, smell.Procedure.Phase));

        LiveJob other = new LiveJob().GoTo("prove-port").Say(AnswerWord.No).Say(CommandWord.EmergencyStop).LeadBack("a false alarm");
        Assert.Equal(Phase.Dictating, other.GoTo("prove-port").Say(AnswerWord.Yes).Procedure.Phase);
    }

    [Fact]
    public void The_instructions_are_those_of_the_alarm_that_is_on_and_of_the_graver_one_where_two_are()
    {
        LiveJob later = At("rise").Say(CommandWord.GasSmell).LeadBack("the union was loose").Say(CommandWord.EmergencyStop);
        Assert.Equal("EMERGENCY STOP", later.View.Alarm!.Title);

        Assert.Equal("GAS SMELL", At("rise").Say(CommandWord.GasSmell).Say(CommandWord.EmergencyStop).View.Alarm!.Title);
        Assert.Equal("GAS SMELL", At("rise").Say(CommandWord.EmergencyStop).Say(CommandWord.GasSmell).View.Alarm!.Title);
    }
}
