using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Safety;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>Conditions that end a start-up, and the tiers of carbon monoxide.</summary>
public sealed class UnsafeTests
{
    static readonly Step Spill = Some.Steps.Single(step => step.Id == "smell") with
    {
        Id = "spill",
        Question = new("Is all flue gas drawn in after five minutes?", true, "Look for the cause, then answer again.", false, UnsafeAfter: 2),
    };

    static readonly Step Sign = Some.Steps.Single(step => step.Id == "sign");

    static LiveJob Spilling() => new(Some.PlanOf([Spill, Sign]));

    [Fact]
    public void Spillage_that_does_not_clear_ends_the_start_up_not_put_into_service()
    {
        LiveJob job = Spilling().Say(AnswerWord.No);
        Assert.Equal(Phase.Asking, job.Procedure.Phase);

        job.Say(AnswerWord.No);
        Assert.Equal(Phase.Condemning, job.Procedure.Phase);
        Assert.Equal("UNSAFE", job.View.Alarm!.Title);
        job.Say(AnswerWord.Confirm);

        Assert.Contains("answered no", job.Last.OfType<UnsafeFound>().Single().Condition.Shown, StringComparison.Ordinal);
        Assert.Equal(EndKind.Unsafe, job.Last.OfType<EndDecided>().Single().Kind);
        Assert.Equal("safe-burner", job.Step);
        job.MakeSafe();
        Assert.IsType<EndedOutOfService>(job.Last[^1]);
        Assert.Equal(Phase.Finished, job.Procedure.Phase);
        Assert.False(job.Procedure.IsSigned);
    }

    [Fact]
    public void A_condition_that_was_misheard_is_asked_again_and_not_counted()
    {
        LiveJob job = Spilling().Say(AnswerWord.No).Say(AnswerWord.No).Say(AnswerWord.No);
        Assert.IsType<UnsafeDenied>(job.Last[^1]);
        Assert.Equal(Phase.Asking, job.Procedure.Phase);

        job.Say(AnswerWord.Yes);

        Assert.Equal("sign", job.Step);
    }

    [Fact]
    public void A_condition_that_is_denied_after_a_stop_is_taken_from_the_question_it_belongs_to()
    {
        Step before = Spill with { Id = "before", AgainAfter = [Again.Stop] };
        LiveJob job = new LiveJob(Some.PlanOf([before, Spill, Sign])).Say(AnswerWord.Yes).Say(AnswerWord.No).Say(AnswerWord.No);
        job.Say(CommandWord.EmergencyStop).LeadBack("burner shut off");
        Assert.Equal("before", job.Step);
        Assert.Equal(Phase.Condemning, job.Procedure.Phase);

        job.Say(AnswerWord.No);

        Assert.Equal("spill", job.Last.OfType<UnsafeDenied>().Single().StepId);
        Assert.Equal(Phase.Asking, job.Procedure.Phase);
        job.Say(AnswerWord.No);
        Assert.Equal(Phase.Asking, job.Procedure.Phase);
    }

    [Theory]
    [InlineData(CommandWord.EmergencyStop)]
    [InlineData(CommandWord.GasSmell)]
    public void From_an_unsafe_end_nothing_leads_back(CommandWord phrase)
    {
        LiveJob job = Spilling().Say(AnswerWord.No).Say(AnswerWord.No).Say(AnswerWord.Confirm).MakeSafe().Say(phrase);
        Assert.Equal(Phase.Stopped, job.Procedure.Phase);

        job.Wait(TimeSpan.FromMinutes(6)).Say(AnswerWord.Yes).Say(AnswerWord.No).Dictate("all is well");

        Assert.Equal(Phase.Stopped, job.Procedure.Phase);
        Assert.DoesNotContain(job.Log, happened => happened is StartupResumed);
    }

    [Fact]
    public void A_safety_question_cannot_be_skipped() =>
        Assert.IsType<CommandRefused>(Assert.Single(new LiveJob(Some.PlanOf([Spill with { IsSafetyStop = false }, Sign])).Say(CommandWord.SkipStep).Last));

    [Fact]
    public void What_a_safety_limit_judges_cannot_be_skipped() =>
        Assert.IsType<CommandRefused>(Assert.Single(new LiveJob().GoTo("combustion").Say(CommandWord.SkipStep).Last));

    [Theory]
    [InlineData(MonoxidePlace.Room, 8.9, 0, MonoxideAction.CarryOn)]
    [InlineData(MonoxidePlace.Room, 9, 0, MonoxideAction.FindSource)]   // 40 CFR 50.8: 9 ppm (read), from which the trade looks for the source
    [InlineData(MonoxidePlace.Room, 35, 0, MonoxideAction.FindSource)]
    [InlineData(MonoxidePlace.Room, 36, 0, MonoxideAction.ShutOff)]     // NREL Standard Work Specifications 2.0105.1: above 35 ppm the work stops (read)
    [InlineData(MonoxidePlace.Room, 69.9, 0, MonoxideAction.ShutOff)]
    [InlineData(MonoxidePlace.Room, 70, 0, MonoxideAction.Evacuate)]    // ANSI/BPI-1200-S and IRC/IFGC Appendix D: 70 and above evacuate (value from memory)
    [InlineData(MonoxidePlace.Room, 66, 5, MonoxideAction.Evacuate)]    // by its uncertainty
    [InlineData(MonoxidePlace.Flue, 99, 0, MonoxideAction.CarryOn)]
    [InlineData(MonoxidePlace.Flue, 100, 0, MonoxideAction.FindSource)] // common practice, no source
    [InlineData(MonoxidePlace.Flue, 401, 0, MonoxideAction.ShutOff)]    // ANSI Z21.47/CSA 2.3: 400 ppm air-free, as quoted in trade literature
    public void Each_tier_of_carbon_monoxide_asks_for_its_action(MonoxidePlace place, double ppm, double expanded, MonoxideAction action) =>
        Assert.Equal(action, CarbonMonoxideTier.Of(place, ppm, expanded).Action);

    [Fact]
    public void Every_tier_has_a_source_and_says_what_to_do() => Assert.All(CarbonMonoxideTier.All, tier =>
    {
        Assert.NotEmpty(tier.Source);
        Assert.NotEmpty(tier.Do.Shown);
    });

    [Fact]
    public void Seventy_ppm_in_a_room_stops_everything_and_sends_everybody_out()
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 80m);

        Assert.Equal(StopCause.CarbonMonoxide, job.Log.OfType<StartupStopped>().Single().Cause);
        Assert.Equal("CARBON MONOXIDE", job.View.Alarm!.Title);
        Assert.Equal(80m, job.Log.OfType<ReadingEntered>().Last().Reading.Value);
    }

    [Fact]
    public void Carbon_monoxide_in_the_flue_that_stays_over_the_limit_ends_the_start_up()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", 8.0m).Say("flue_co", 500m);
        Assert.Equal(MonoxideAction.ShutOff, job.Log.OfType<MonoxideJudged>().Single().Action);
        Assert.Equal(Phase.Asking, job.Procedure.Phase);

        job.Say("flue_co", 450m);
        Assert.Equal(Phase.Condemning, job.Procedure.Phase);
        job.Say(AnswerWord.Confirm);

        Assert.Single(job.Last.OfType<UnsafeFound>());
    }

    [Fact]
    public void A_corrected_oxygen_makes_no_second_excess_of_the_same_monoxide()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", 8.0m).Say("flue_co", 500m).Say("oxygen", 8.1m).Say(AnswerWord.Confirm);

        Assert.Equal(Phase.Asking, job.Procedure.Phase);
        Assert.Equal(2, job.Log.OfType<MonoxideJudged>().Count());
    }

    [Fact]
    public void An_excess_that_was_misheard_is_disregarded_and_not_counted()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", 8.0m).Say("flue_co", 500m).Say(CommandWord.Disregard).Say("flue_co", 510m);
        Assert.Equal(Phase.Asking, job.Procedure.Phase);

        job.Say("flue_co", 520m).Say(AnswerWord.No);

        Assert.Equal(ReadingState.Missing, job.View.Readings[1].State);
        Assert.Equal(Phase.Asking, job.Procedure.Phase);
    }

    [Fact]
    public void Each_room_is_counted_by_itself_and_what_only_asks_to_look_is_not_counted()
    {
        LiveJob rooms = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 40m).Wait(TimeSpan.FromMinutes(5)).Say("room_co", 1m).Say(AnswerWord.Confirm).Say(CommandWord.Next).Say("room_co", 45m);
        Assert.Equal(("rooms/bedroom", Phase.Asking), (rooms.Step, rooms.Procedure.Phase));
        Assert.Equal(Phase.Condemning, rooms.Say("room_co", 50m).Procedure.Phase);

        LiveJob looked = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 20m).Say("room_co", 40m);
        Assert.Equal(Phase.Asking, looked.Procedure.Phase);
    }

    [Fact]
    public void What_was_misheard_takes_back_itself_and_not_the_excess_before_it()
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 40m).Say("room_co", 45m).Say(AnswerWord.No);
        Assert.Equal(Phase.Asking, job.Procedure.Phase);

        Assert.Equal(Phase.Condemning, job.Say("room_co", 50m).Procedure.Phase);
    }

    [Fact]
    public void What_only_its_uncertainty_brings_into_the_tier_begins_no_wait_and_is_not_counted()
    {
        // 385 + 20 of the analyzer reaches 400; the value itself does not.
        LiveJob job = new LiveJob().GoTo("combustion").Say("flue_co", 385m);

        Assert.Equal((MonoxideAction.ShutOff, false), job.Last.OfType<MonoxideJudged>().Select(judged => (judged.Action, judged.Counts)).Single());
        Assert.Empty(job.Last.OfType<TimerStarted>());
    }
}
