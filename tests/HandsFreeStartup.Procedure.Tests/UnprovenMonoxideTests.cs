using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>What is not proven about carbon monoxide never passes: no stated uncertainty, more than the instrument shows, a good value right after a bad one.</summary>
public sealed class UnprovenMonoxideTests
{
    static LiveJob Without(params string[] fieldIds)
    {
        StartupPlan plan = Some.Plan();
        return new LiveJob(StartupPlan.From(plan.Checklist, plan.Appliance, plan.Site with { Instruments = [.. plan.Site.Instruments.Where(instrument => !fieldIds.Contains(instrument.FieldId))] }));
    }

    static Phrase Over(string fieldId) => new Phrase.Reading(Fields.Find(fieldId)!, 9999m, Some.Heard()) { IsOver = true };

    static CalculatedResult Result(LiveJob job, string id) => job.Log.OfType<ResultsComputed>().SelectMany(computed => computed.Results).Last(result => result.Id == id);

    static string Refused(LiveJob job) => Assert.IsType<CommandRefused>(job.Last[^1]).Reason.Shown;

    [Theory]
    [InlineData("oxygen", "oxygen")]
    [InlineData("flue_co", "CO in flue")]
    [InlineData("oxygen,flue_co", "CO in flue and oxygen")]
    public void Without_a_stated_uncertainty_of_every_instrument_behind_it_air_free_monoxide_proves_nothing(string missing, string told)
    {
        LiveJob job = Without(missing.Split(',')).GoTo("combustion").Say("oxygen", 7.6m).Say("flue_co", 12m).Say("flue_temperature", 328m).Say("air_temperature", 68m);

        Assert.Equal((19, Verdict.CannotTell), ((int)Math.Round(Result(job, "co_air_free").Value!.Value), Result(job, "co_air_free").Verdict));
        Assert.Contains($"states no uncertainty of the instrument for {told}.", Refused(job.Say(CommandWord.Next)), StringComparison.Ordinal);
        Assert.Equal("combustion", job.Step);
    }

    [Fact]
    public void Without_a_stated_uncertainty_a_room_proves_nothing_and_it_is_said_why() =>
        Assert.Contains("states no uncertainty of the instrument for", Refused(Without("room_co").GoTo("rooms/kitchen").Say("room_co", 1m).Say(CommandWord.Next)), StringComparison.Ordinal);

    [Fact]
    public void An_instrument_that_the_result_does_not_need_may_be_without_one()
    {
        LiveJob job = Without("flue_temperature", "air_temperature").GoTo("combustion").Say("oxygen", 7.6m).Say("flue_co", 12m);

        Assert.Equal(Verdict.Pass, Result(job, "co_air_free").Verdict);
    }

    [Theory]
    [InlineData("co_air_free")]
    [InlineData("co_air_free/high")]
    [InlineData("flue_co")]
    [InlineData("room_co")]
    public void A_limit_of_carbon_monoxide_is_one_for_safety_though_its_file_does_not_say_so(string name)
    {
        Assert.True(new DeclaredLimit(name, null, 100, "ppm", "invented", false).IsSafety);
        Assert.True(new DeclaredLimit(name, null, 100, "ppm", "invented", false).ToJudge().IsSafety);
        Assert.False(new DeclaredLimit("manifold_pressure/high", null, 4, "in. w.c.", "invented", false).IsSafety);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void More_than_the_instrument_shows_is_over_in_every_result_and_alarm_whichever_was_said_first(bool isOxygenFirst)
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("flue_temperature", 328m).Say("air_temperature", 68m);
        _ = isOxygenFirst ? job.Say("oxygen", 7.6m).Give(Over("flue_co")) : job.Give(Over("flue_co")).Say("oxygen", 7.6m);

        CalculatedResult airFree = Result(job, "co_air_free");
        Assert.Equal((9999d, null, true, Verdict.Fail), (airFree.Value, airFree.ExpandedUncertainty, airFree.IsOver, airFree.Verdict));
        Assert.Contains("over 9999", job.View.Results.Single(line => line.Label == airFree.Label).ToString(), StringComparison.Ordinal);
        Assert.All(job.Last.OfType<MonoxideJudged>(), judged => Assert.Equal((true, true, MonoxideAction.ShutOff), (judged.IsOver, judged.Counts, judged.Action)));
        Assert.NotEmpty(job.Last.OfType<MonoxideJudged>());
        Assert.All(job.Procedure.Exceptions, exception => Assert.Contains("over 9999 ppm", exception.Text, StringComparison.Ordinal));
        Assert.Null(Result(job, "efficiency").Value);
        Assert.Contains("over 9999 ppm", Result(job, "efficiency").Remark.Shown, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_explained_of_more_than_the_instrument_shows_says_over()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Give(Over("flue_co"));
        Assert.Contains("nobody knows how much more", Explained(job), StringComparison.Ordinal);

        string explained = Explained(job.Say("oxygen", 7.6m));
        Assert.Contains("over 9999 ppm", explained, StringComparison.Ordinal);
        Assert.DoesNotContain("15", explained, StringComparison.Ordinal);
        Assert.Contains("CO in flue over 9999", explained, StringComparison.Ordinal);
    }

    static string Explained(LiveJob job)
    {
        job.Say(CommandWord.Explain);
        return string.Join('\n', job.Procedure.Announce(job.Last, job.Now).SelectMany(said => new[] { said.Text, said.Said }));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_room_that_asked_to_shut_off_is_not_proven_clear_by_the_next_breath(bool isDisregarded)
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 40m);
        _ = isDisregarded ? job.Say(CommandWord.Disregard).Say("room_co", 1m) : job.Say("room_co", 1m).Say(AnswerWord.Confirm);

        Assert.Contains("Carbon monoxide again", Refused(job.Say(CommandWord.Next)), StringComparison.Ordinal);
        job.Wait(TimeSpan.FromSeconds(299)).Say("room_co", 1m);
        Assert.Contains("Carbon monoxide again", Refused(job.Say(CommandWord.Next)), StringComparison.Ordinal);

        job.Wait(TimeSpan.FromSeconds(1));
        Assert.Contains("missing", Refused(job.Say(CommandWord.Next)), StringComparison.Ordinal);
        job.Say("room_co", 1m).Say(CommandWord.Next);
        Assert.Equal("rooms/bedroom", job.Step);
        Assert.Contains(job.Procedure.Exceptions, exception => exception.Subject.Shown.Contains("40 ppm", StringComparison.Ordinal));
    }

    [Fact]
    public void Flue_gas_that_asked_to_shut_off_is_not_proven_good_by_the_next_value()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("flue_co", 450m).Say(CommandWord.Disregard)
            .Say("oxygen", 7.6m).Say("flue_co", 12m).Say("flue_temperature", 328m).Say("air_temperature", 68m);
        Assert.Contains("Carbon monoxide again", Refused(job.Say(CommandWord.Next)), StringComparison.Ordinal);

        job.Wait(TimeSpan.FromMinutes(5)).Say("oxygen", 7.6m).Say("flue_co", 12m).Say("flue_temperature", 328m).Say("air_temperature", 68m).Say(CommandWord.Next);
        Assert.Equal("manifold", job.Step);
    }

    [Fact]
    public void Neither_a_stop_nor_going_back_nor_a_set_clock_shortens_the_wait_for_clear_air()
    {
        LiveJob job = new LiveJob(Some.Plan(), TimeSpan.FromHours(3)).GoTo("rooms/kitchen").Say("room_co", 40m).Say(CommandWord.Disregard);
        job.Say(CommandWord.EmergencyStop).Say(AnswerWord.Yes).Choose("own-finding").Dictate("nothing was found");
        job.GoTo("rooms/kitchen").SetClock(TimeSpan.FromHours(1)).Say(CommandWord.GoBack).GoTo("rooms/kitchen").Say("room_co", 1m);

        Assert.Contains("Carbon monoxide again", Refused(job.Say(CommandWord.Next)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(9)]
    [InlineData(40)]
    public void On_the_way_back_air_that_is_not_clear_is_waited_for_again(int ppm)
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 90m).Wait(TimeSpan.FromMinutes(10)).Say("room_co", ppm);

        Assert.Contains("10:00 left", Refused(job.Say("room_co", 1m)), StringComparison.Ordinal);
        job.Wait(TimeSpan.FromMinutes(10)).Say("room_co", 1m).Say(AnswerWord.Yes);
        Assert.Equal(Phase.Choosing, job.Procedure.Phase);
    }

    /// <summary>Clear, then bad again before it goes on: the last value counts.</summary>
    [Fact]
    public void On_the_way_back_air_that_was_clear_and_is_not_any_more_leads_nowhere()
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 90m).Wait(TimeSpan.FromMinutes(10)).Say("room_co", 0m).Say("room_co", 25m).Say(AnswerWord.Confirm).Wait(TimeSpan.FromMinutes(10));
        job.Say(AnswerWord.Yes);

        Assert.Equal(Phase.Stopped, job.Procedure.Phase);
    }

    [Fact]
    public void A_clear_value_that_is_disregarded_clears_no_alarm_between_the_steps()
    {
        LiveJob job = new LiveJob().GoTo("manifold").Say("room_co", 60m).Wait(TimeSpan.FromMinutes(5)).Say("room_co", 0m).Say(AnswerWord.Confirm).Say(CommandWord.Disregard);

        Assert.Contains("Measure the room again", Refused(job.Say(CommandWord.Next)), StringComparison.Ordinal);
    }

    [Fact]
    public void The_wait_for_clear_air_is_as_short_as_all_others_in_a_demonstration()
    {
        LiveJob job = new LiveJob(Some.Plan(0.01)).GoTo("rooms/kitchen").Say("room_co", 40m);

        Assert.Equal(TimeSpan.FromSeconds(3), Assert.Single(job.Last.OfType<TimerStarted>()).Duration);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_measurement_at_which_a_shut_off_was_asked_proves_nothing_whatever_oxygen_is_said_afterwards(bool isDisregarded)
    {
        // 150 ppm at 14.5 % O2 are 150 x 20.95 / 6.45 = 487 ppm air-free; at 7.6 % they would be 235.
        LiveJob job = new LiveJob().GoTo("combustion").Say("flue_co", 150m).Say("flue_temperature", 328m).Say("air_temperature", 68m).Say("oxygen", 14.5m);
        Assert.Equal((MonoxideAction.ShutOff, true), job.Last.OfType<MonoxideJudged>().Select(judged => (judged.Action, judged.IsAirFree)).Single());
        _ = isDisregarded ? job.Say(CommandWord.Disregard).Say("oxygen", 7.6m) : job.Say("oxygen", 7.6m).Say(AnswerWord.Confirm);

        Assert.Contains("before the furnace was to be shut off", Refused(job.Say(CommandWord.Next)), StringComparison.Ordinal);
        Assert.Contains("before the furnace was to be shut off", Refused(job.Wait(TimeSpan.FromMinutes(5)).Say(CommandWord.Next)), StringComparison.Ordinal);

        job.Say("flue_co", 20m).Say(AnswerWord.Confirm);
        Assert.Contains("Flue temperature (high) is from before the furnace was to be shut off", Refused(job.Say(CommandWord.Next)), StringComparison.Ordinal);
        job.Say("flue_temperature", 330m).Say(AnswerWord.Confirm).Say(CommandWord.Next);
        Assert.Equal("manifold", job.Step);
    }

    [Theory]
    [InlineData("flue_co", "CO in flue")]
    [InlineData("flue_co,oxygen", "CO in flue and oxygen")]
    [InlineData("oxygen,flue_co,room_co", "CO in room and CO in flue and oxygen")]
    public void Before_the_work_begins_one_sentence_tells_what_the_site_must_state_for_a_limit_of_carbon_monoxide(string missing, string told)
    {
        LiveJob job = Without(missing.Split(','));

        string sentence = job.Procedure.Announce(job.Log, job.Now)[0].Text;
        Assert.StartsWith($"The site file states no uncertainty of the instrument for {told}: ", sentence, StringComparison.Ordinal);
        Assert.Contains("cannot tell", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_told_of_an_instrument_that_is_stated_or_that_no_step_reads()
    {
        StartupPlan rooms = Some.PlanOf([.. Some.Steps.Where(step => step.Id is "smell" or "rooms" or "sign")]);
        LiveJob job = new(StartupPlan.From(rooms.Checklist, rooms.Appliance, rooms.Site with { Instruments = [new("room_co", 3m, 0, "invented")] }));

        Assert.DoesNotContain(job.Procedure.Announce(job.Log, job.Now), said => said.Text.Contains("uncertainty", StringComparison.Ordinal));
        Assert.DoesNotContain(new LiveJob().Procedure.Announce(new LiveJob().Log, Some.Morning), said => said.Text.Contains("uncertainty", StringComparison.Ordinal));
    }
}
