using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Storage.Tests.Support;

namespace HandsFreeStartup.Storage.Tests;

/// <summary>What once led from an unsafe furnace to a signed record, on the shipped files, as it was tried.</summary>
public sealed class NothingUnsafeIsSignedTests
{
    static StartupPlan Altitude(string occasion = "seasonal") => ShippedPlans.Plan("gas-furnace", "furnace-two-stage-altitude", "site-mountain", occasion);

    static Walker At(string stepId, StartupPlan? plan = null) => new Walker(plan ?? Altitude()).GoTo(step => step.Id == stepId);

    static void AssertRefused(LiveJob job, string because)
    {
        Assert.Contains(because, Assert.IsType<CommandRefused>(job.Last[^1]).Reason.Shown, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("inlet-standing", "inlet_pressure", 13.5)]
    [InlineData("flame-current", "flame_current", 0.4)]
    [InlineData("inlet-running", "inlet_pressure", 13.5)]
    [InlineData("meter-high", "meter_time", 12)]           // 3600 x 0.5 ft³ x 830 Btu/ft³ / 12 s = 124 500 Btu/h
    [InlineData("combustion-high", "flue_temperature", 540)]
    [InlineData("rise-high", "return_temperature", 32)]
    [InlineData("static-high", "supply_static", 0.90)]
    public void A_value_outside_of_the_plate_does_not_pass_with_a_bare_next_and_cannot_be_skipped(string stepId, string fieldId, double value)
    {
        Walker walker = At(stepId);
        LiveJob job = walker.Job;
        walker.SayReadings(walker.Step);
        job.Wait(TimeSpan.FromMinutes(2));
        job.Say(fieldId, (decimal)value);
        if (job.Procedure.Phase == Phase.Confirming)
        {
            job.Say(AnswerWord.Confirm);
        }

        job.Wait(TimeSpan.FromMinutes(2));
        foreach (ReadingDemand again in walker.Step.Readings.Where(demand => demand.Settles is { Twice: true }))
        {
            job.Say(again.FieldId, again.FieldId == fieldId ? (decimal)value : GoodValues.Of(Altitude(), again, walker.Step.Scope));
        }

        job.Say(CommandWord.Next);
        Assert.Equal(stepId, job.Step);
        AssertRefused(job, "outside of");

        Assert.IsType<CommandRefused>(job.Say(CommandWord.SkipStep).Last[^1]);
        Assert.Equal(stepId, job.Step);
    }

    [Fact]
    public void Over_the_pressure_at_which_the_valve_is_replaced_neither_done_nor_skip_leads_on()
    {
        LiveJob job = At("manifold-high").Job.Say("manifold_pressure", 4.50m).Say(CommandWord.Next);
        Assert.Equal("adjust-high", job.Step);

        AssertRefused(job.Say(CommandWord.Next), "valve is to be replaced");
        AssertRefused(job.Say(CommandWord.SkipStep), "must be kept");
        Assert.Equal("adjust-high", job.Step);
    }

    [Fact]
    public void A_value_outside_of_practice_passes_with_a_reason_and_is_told_before_the_signature()
    {
        LiveJob job = At("power").Job.Say("line_voltage", 120m).Say("control_voltage", 19m).Say(CommandWord.Next);
        Assert.True(job.Procedure.Expectation.Dictation);

        job.Dictate("the transformer is replaced tomorrow");

        Assert.NotEqual("power", job.Step);
        JobException exception = Assert.Single(job.Procedure.Exceptions);
        Assert.Equal((ExceptionKind.OutsideLimit, "the transformer is replaced tomorrow"), (exception.Kind, exception.Reason));
        Assert.Contains("19 V", exception.Subject.Shown, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("purge", "new")]
    [InlineData("worst-case", "seasonal")]
    [InlineData("spill-wait", "seasonal")]
    [InlineData("warm-up", "seasonal")]
    [InlineData("settle-high", "seasonal")]
    [InlineData("relight-wait", "seasonal")]
    [InlineData("heat-exchanger", "seasonal")]
    [InlineData("room-after", "seasonal")]
    public void What_guards_cannot_be_skipped(string stepId, string occasion) =>
        Assert.IsType<CommandRefused>(At(stepId, Altitude(occasion)).Job.Say(CommandWord.SkipStep).Last[^1]);

    [Fact]
    public void Cracks_that_were_typed_and_then_denied_need_a_reason_and_stay_on_the_list()
    {
        LiveJob job = At("heat-exchanger").Job.Give(new Phrase.Answer(AnswerWord.Yes, Evidence.Typed("yes")));
        Assert.Equal(Phase.Condemning, job.Procedure.Phase);

        job.Say(AnswerWord.No).Give(new Phrase.Answer(AnswerWord.No, Evidence.Typed("no")));

        Assert.True(job.Procedure.Expectation.Dictation);
        job.Dictate("it was dust, brushed off and looked at with the camera");
        Assert.Contains(job.Procedure.Exceptions, exception => exception is { Kind: ExceptionKind.UnsafeAnswer } && exception.Reason.Contains("dust", StringComparison.Ordinal));
        Assert.Contains(job.Procedure.Exceptions, exception => exception.Kind == ExceptionKind.Misheard);
    }

    [Fact]
    public void Cracks_that_were_misheard_by_voice_are_kept_both_ways()
    {
        LiveJob job = At("heat-exchanger").Job.Say(AnswerWord.Yes).Say(AnswerWord.No).Say(AnswerWord.No);

        Assert.NotEqual("heat-exchanger", job.Step);
        Assert.Equal([true, false], job.Log.OfType<AnswerGiven>().Where(given => given.StepId == "heat-exchanger").Select(given => given.Answer));
        Assert.Equal([ExceptionKind.UnsafeAnswer, ExceptionKind.Misheard], job.Procedure.Exceptions.Select(exception => exception.Kind));
    }

    [Fact]
    public void A_pressure_switch_that_failed_twice_and_then_passed_needs_a_reason()
    {
        LiveJob job = At("pressure-switch").Job.Say(AnswerWord.No).Say(AnswerWord.No).Say(AnswerWord.Yes);
        Assert.Equal("pressure-switch", job.Step);

        job.Dictate("the hose was kinked, it is replaced");

        Assert.Equal("hose-back", job.Step);
        Assert.Equal(2, job.Procedure.Exceptions.Count(exception => exception.Kind == ExceptionKind.UnsafeAnswer));
    }

    [Fact]
    public void After_spillage_the_whole_test_is_done_again_with_its_five_minutes()
    {
        LiveJob job = At("spillage").Job.Say(AnswerWord.No);
        Assert.Equal("worst-case", job.Step);

        job.Say(CommandWord.Done);
        Assert.Equal("spill-wait", job.Step);
        Assert.IsType<CommandRefused>(job.Say(CommandWord.Next).Last[^1]);
        job.Wait(TimeSpan.FromMinutes(5)).Say(CommandWord.Next).Say(AnswerWord.Yes);

        Assert.True(job.Procedure.Expectation.Dictation);
        job.Dictate("the cap was blocked, cleared it");
        Assert.Equal("house-back", job.Step);
    }

    [Fact]
    public void After_a_smell_of_gas_leak_check_ignition_warm_up_and_readings_are_done_again()
    {
        Walker walker = At("room-walk/living-room");
        if (walker.Job.Procedure.Phase == Phase.Finished)
        {
            walker = At("static-low");
        }

        LiveJob job = walker.Job.Say(CommandWord.GasSmell);
        Assert.DoesNotContain(job.View.Timers, timer => timer.Remaining > TimeSpan.Zero && timer.Title != "Wait after a smell of gas");

        job.LeadBack("the union at the shutoff was loose");

        Assert.Equal("leak-check", job.Step);
        string[] again = [.. job.Log.OfType<StepReopened>().Select(step => step.StepId)];
        Assert.Superset(new HashSet<string> { "leak-check", "light", "flame", "leak-check-running", "warm-up", "settle-high", "combustion-high" }, again.ToHashSet());
        Assert.Contains(job.Log.OfType<ReadingVoided>(), voided => voided.Key == new ReadingKey("oxygen", "high"));
        Assert.Contains(job.Procedure.Exceptions, exception => exception.Kind == ExceptionKind.Alarm && exception.Subject.Shown.Contains("own finding", StringComparison.Ordinal)
            && exception.Reason == "the union at the shutoff was loose");
    }

    [Fact]
    public void After_an_evacuation_it_goes_on_only_after_the_wait_a_clear_room_a_name_and_a_confirmed_cause()
    {
        LiveJob job = At("room-before").Job.Say("room_co", 150m);
        Assert.Equal(Phase.Stopped, job.Procedure.Phase);

        AssertRefused(job.Say(AnswerWord.Yes), "10:00 left");
        job.Wait(TimeSpan.FromMinutes(10));
        AssertRefused(job.Say(AnswerWord.Yes), "measure the room");
        job.Say("room_co", 20m);
        AssertRefused(job.Say("room_co", 1m), "10:00 left");
        job.Wait(TimeSpan.FromMinutes(10)).Say("room_co", 1m).Say(AnswerWord.Yes).Choose("fire-service");
        job.Give(new Phrase.Dictation(new Evidence("mumble", Channel.Voice, Certainty.Green)));
        Assert.Equal(Phase.ReadingBack, job.Procedure.Phase);
        Assert.DoesNotContain(job.Log, happened => happened is StartupResumed);

        job.Say(AnswerWord.Confirm);

        Assert.Equal("mumble", job.Log.OfType<StartupResumed>().Single().Reason);
    }

    [Fact]
    public void Seventy_ppm_on_the_way_back_stops_it_anew()
    {
        LiveJob job = At("room-before").Job.Say("room_co", 150m).Wait(TimeSpan.FromMinutes(10)).Say("room_co", 90m);

        Assert.Equal(2, job.Log.OfType<StartupStopped>().Count());
        AssertRefused(job.Say(AnswerWord.Yes), "10:00 left");
    }

    [Fact]
    public void An_adjustment_restarts_a_settling_time_that_runs()
    {
        Walker walker = At("manifold-high");
        walker.Job.Say("manifold_pressure", 3.50m).Say(CommandWord.Next);
        walker.Job.Say("manifold_pressure", 3.15m).Say(CommandWord.Next);

        Assert.Equal(TimeSpan.FromMinutes(3), walker.Job.View.Timers.Single(timer => timer.Title == "Let the fire settle").Remaining);
    }

    [Fact]
    public void A_clock_set_forward_ends_no_wait_and_is_told()
    {
        LiveJob job = Walked("warm-up");
        job.SetClock(TimeSpan.FromHours(2));

        Assert.Equal(TimeSpan.FromHours(2), Assert.Single(job.Last.OfType<ClockJumped>()).By);
        Assert.DoesNotContain(job.Log, happened => happened is TimerEnded { StepId: "warm-up" });
        Assert.Contains(job.Procedure.Exceptions, exception => exception.Kind == ExceptionKind.ClockJump);
        job.Wait(TimeSpan.FromMinutes(10));
        Assert.Contains(job.Last, happened => happened is TimerEnded { StepId: "warm-up" });
    }

    [Theory]
    [InlineData(20, false, true)]   // as long as both clocks say
    [InlineData(2, false, false)]   // too short by both
    [InlineData(20, true, false)]   // the machine was restarted: no more than it has been up
    public void Across_a_resume_a_wait_is_as_long_as_the_shorter_of_both_clocks_says(int minutes, bool isMachineToo, bool isOver)
    {
        LiveJob job = Walked("warm-up");
        job.Restart(TimeSpan.FromMinutes(minutes), isMachineToo).Wait(TimeSpan.FromSeconds(1));

        Assert.Equal(isOver, job.Log.Any(happened => happened is TimerEnded { StepId: "warm-up" }));
    }

    [Fact]
    public void A_clock_set_forward_between_two_runs_does_not_shorten_a_wait()
    {
        LiveJob job = Walked("warm-up");
        job.Now += TimeSpan.FromHours(3);
        job.Restart(TimeSpan.FromMinutes(1)).Wait(TimeSpan.FromSeconds(1));

        Assert.DoesNotContain(job.Log, happened => happened is TimerEnded { StepId: "warm-up" });
    }

    [Fact]
    public void Three_oxygen_values_that_wander_do_not_pass()
    {
        Walker walker = At("combustion-high");
        walker.SayReadings(walker.Step);
        LiveJob job = walker.Job;
        foreach (decimal oxygen in new[] { 7.5m, 9.5m, 6.0m })
        {
            job.Wait(TimeSpan.FromSeconds(61)).Say("oxygen", oxygen).Say(CommandWord.Next);
            Assert.Equal("combustion-high", job.Step);
        }
    }

    [Fact]
    public void The_tool_asks_for_the_second_set_by_itself_and_takes_it_only_when_its_time_is_over()
    {
        Walker walker = At("combustion-high");
        walker.SayReadings(walker.Step);
        LiveJob job = walker.Job;
        AssertRefused(job.Say(CommandWord.Next), "1:00");
        decimal flue = GoodValues.Of(Altitude(), walker.Step.Readings[2], "high"), oxygen = GoodValues.Of(Altitude(), walker.Step.Readings[0], "high");
        job.Wait(TimeSpan.FromSeconds(30)).Say("oxygen", oxygen).Say("flue_temperature", flue).Say(CommandWord.Next);
        Assert.Equal("combustion-high", job.Step);

        job.Wait(TimeSpan.FromSeconds(30));
        Assert.Contains(job.Procedure.Announce(job.Last, job.Present), said => said.Text.Contains("Second set", StringComparison.Ordinal));
        Assert.Contains(job.View.ListeningFor, form => form.StartsWith("oxygen", StringComparison.Ordinal));
        job.Say("oxygen", oxygen).Say("flue_temperature", flue).Say(CommandWord.Next);

        Assert.NotEqual("combustion-high", job.Step);
    }

    [Fact]
    public void One_go_back_while_closing_leaves_every_closing_step_ahead_again()
    {
        Walker walker = At("seal-hole");
        walker.Job.Say(CommandWord.GoBack);
        Assert.Contains(walker.Job.View.Open, open => open.StartsWith("inlet pressure port", StringComparison.Ordinal));

        walker.GoTo(_ => false);

        Assert.True(walker.Job.Procedure.IsSigned, walker.Job.Last.OfType<CommandRefused>().LastOrDefault()?.Reason.Shown);
        Assert.Empty(walker.Job.View.Open);
    }

    [Fact]
    public void Natural_draft_is_tested_by_its_blocked_vent_switch_and_not_by_a_pressure_switch()
    {
        StartupPlan plan = ShippedPlans.Plan("gas-furnace", "demo-furnace", "demo-site", "seasonal");
        LiveJob job = At("draft-by", plan).Job.Choose("natural");
        HashSet<string> entered = [];
        Walker rest = At("draft-by", plan);
        rest.Job.Choose("natural");
        rest.GoTo(step => !entered.Add(step.Id) && false);

        Assert.True(rest.Job.Procedure.IsSigned);
        Assert.Contains("spill-switch", entered);
        Assert.DoesNotContain("pressure-switch", entered);
        Assert.NotEqual("draft-by", job.Step);
    }

    [Theory]
    [InlineData("pull-spill-switch")]
    [InlineData("spill-switch")]
    [InlineData("spill-switch-back")]
    public void What_one_branch_opened_is_closed_though_the_other_branch_is_chosen_later(string leftAt)
    {
        StartupPlan plan = ShippedPlans.Plan("gas-furnace", "demo-furnace", "demo-site", "seasonal");
        Walker walker = At("draft-by", plan);
        walker.Job.Choose("natural");
        walker.GoTo(step => step.Id == leftAt);
        if (leftAt == "pull-spill-switch")
        {
            walker.Job.Say(CommandWord.Done);
        }

        while (walker.Job.Step != "draft-by")
        {
            walker.Job.Say(CommandWord.GoBack);
        }

        walker.Job.Choose("fan");
        walker.GoTo(_ => false);

        Assert.True(walker.Job.Procedure.IsSigned, walker.Job.Last.OfType<CommandRefused>().LastOrDefault()?.Reason.Shown);
        Assert.Empty(walker.Job.View.Open);
        Assert.Contains(walker.Job.Log, happened => happened is ThingClosed { Name: "blocked-vent switch circuit" });
        Assert.Contains(walker.Job.Log, happened => happened is StepDone { StepId: "pressure-switch" });
    }

    [Fact]
    public void An_end_without_a_signature_shuts_off_plugs_checks_and_tags()
    {
        LiveJob job = At("manifold-high").Job.Say(CommandWord.Finish).Say(AnswerWord.Confirm).Dictate("no time today").Choose("owners-wish");
        Assert.Equal("safe-burner", job.Step);
        Assert.IsType<CommandRefused>(job.Say(CommandWord.SkipStep).Last[^1]);
        Assert.IsType<CommandRefused>(job.Say(CommandWord.GoBack).Last[^1]);

        job.MakeSafe();

        Assert.Equal(EndKind.OwnersWish, job.Log.OfType<EndDecided>().Single().Kind);
        Assert.Empty(job.View.Open);
        Assert.Equal(["safe-burner", "safe-gas", "safe-ports", "safe-leak-check", "safe-close", "safe-tag"], job.Log.OfType<StepDone>().Select(done => done.StepId).Where(id => id.StartsWith("safe-", StringComparison.Ordinal)));
        Assert.IsType<EndedOutOfService>(job.Log[^1]);
        Assert.False(job.Procedure.IsSigned);
    }

    [Fact]
    public void The_owners_wish_is_no_end_of_a_furnace_that_something_speaks_against()
    {
        LiveJob job = At("room-before").Job.Say("room_co", 40m).Say(CommandWord.Finish).Say(AnswerWord.Confirm).Dictate("the owner wants to wait");

        Assert.Equal(EndKind.NotInOrder, job.Log.OfType<EndDecided>().Single().Kind);
    }

    [Fact]
    public void Nobody_is_sent_back_to_a_furnace_that_was_left_for_safety()
    {
        LiveJob job = At("manifold-high").Job.Say(CommandWord.GasSmell).Say(CommandWord.Finish).Say(AnswerWord.Confirm).Dictate("left the house");

        Assert.Equal(Phase.Finished, job.Procedure.Phase);
        Assert.Contains("manifold pressure port", job.View.Open);
    }

    [Fact]
    public void The_derate_of_the_altitude_is_told_where_the_orifices_are_looked_at() =>
        // 2 percent of 1000 feet: 1 - 0.02 x 6.2 = 0.876 (common practice, no source); 90 000 x 0.876 = 78 840.
        Assert.Contains("88 percent of the input at sea level are left, at most 78840 Btu/h", Altitude("new").Steps.Single(step => step.Id == "orifices").Do.Shown, StringComparison.Ordinal);

    [Fact]
    public void A_flame_loss_is_followed_by_five_minutes_and_a_smell()
    {
        StartupPlan plan = Altitude();
        int loss = plan.IndexOf("flame-loss");

        Assert.Equal((TimeSpan.FromMinutes(5), true), (plan.Steps[loss + 1].Timer!.Duration, plan.Steps[loss + 2].Question!.StopsForGas));
    }

    [Fact]
    public void With_exceptions_only_confirm_signs_and_they_are_told_first()
    {
        Walker walker = At("power");
        walker.Job.Say("line_voltage", 120m).Say("control_voltage", 19m).Say(CommandWord.Next).Dictate("is replaced tomorrow");
        walker.GoTo(step => step.Kind == StepKind.Sign).Job.Say(CommandWord.Finish);

        Assert.Contains("1 exception: Control voltage", walker.Job.View.Question, StringComparison.Ordinal);
        Assert.IsType<CommandRefused>(walker.Job.Say(AnswerWord.Yes).Last[^1]);
        Assert.True(walker.Job.Say(AnswerWord.Confirm).Procedure.IsSigned);
    }

    [Fact]
    public void Without_exceptions_everything_is_done_and_closed() =>
        Assert.StartsWith("Everything is done and closed.", At("sign").Job.Say(CommandWord.Finish).View.Question, StringComparison.Ordinal);

    static LiveJob Walked(string stepId)
    {
        StartupPlan plan = Altitude();
        Walker walker = new(plan, TimeSpan.FromHours(9));
        return walker.GoTo(step => step.Id == stepId).Job;
    }
}
