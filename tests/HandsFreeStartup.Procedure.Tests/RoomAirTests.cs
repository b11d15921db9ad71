using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>Carbon monoxide in the room, said where no step asks for it.</summary>
public sealed class RoomAirTests
{
    const string Room = "room_co";

    static LiveJob At(string stepId) => new LiveJob().GoTo(stepId);

    static string Refusal(LiveJob job) => Assert.IsType<CommandRefused>(job.Last[^1]).Reason.Shown;

    [Fact]
    public void It_is_heard_by_its_full_name_wherever_anything_is_listened_to()
    {
        Assert.All(Some.Steps.Select(step => step.Id).Where(id => id is "smell" or "papers" or "warm-up" or "combustion" or "manifold" or "rise" or "sign"), id =>
            Assert.Contains(At(id).Procedure.Expectation.Readings, reading => reading.Field.Id == Room && reading.Names.Contains("room monoxide")));
        Assert.DoesNotContain("monoxide", At("papers").Procedure.Expectation.Readings.Single().Names);
        Assert.Empty(At("papers").Say(CommandWord.StandBy).Procedure.Expectation.Readings);
        Assert.Empty(At("papers").Say(CommandWord.Note).Procedure.Expectation.Readings);
    }

    [Theory]
    [InlineData("smell")]
    [InlineData("papers")]
    [InlineData("warm-up")]
    [InlineData("combustion")]
    [InlineData("sign")]
    public void What_calls_for_leaving_the_house_stops_in_every_step(string stepId)
    {
        LiveJob job = At(stepId).Say(Room, 150m);

        Assert.Equal([StopCause.CarbonMonoxide], job.Last.OfType<StartupStopped>().Select(stopped => stopped.Cause));
        Assert.Equal((150m, "between steps"), job.Last.OfType<ReadingEntered>().Select(entered => (entered.Reading.Value, entered.Reading.Key.Scope)).Single());
        Assert.Equal(Phase.Stopped, job.Procedure.Phase);
        Assert.Contains(job.Procedure.Exceptions, exception => exception.Text.Contains("150 ppm", StringComparison.Ordinal));
    }

    [Fact]
    public void No_note_and_no_reason_swallows_a_bad_value()
    {
        LiveJob[] dictating = [At("papers").Say(CommandWord.Note), At("papers").Say(CommandWord.SkipStep), At("papers").Say(CommandWord.Finish).Say(AnswerWord.Confirm)];
        Assert.All(dictating, job => Assert.Equal(Phase.Dictating, job.Procedure.Phase));
        Assert.All(dictating, job =>
        {
            Assert.Single(new LiveJob(job).Say(Room, 150m).Last.OfType<StartupStopped>());
            Assert.Equal((Phase.Asking, MonoxideAction.ShutOff), (new LiveJob(job).Say(Room, 40m).Procedure.Phase, job.Say(Room, 40m).Last.OfType<MonoxideJudged>().Single().Action));
        });
    }

    [Fact]
    public void A_clear_value_in_a_note_stays_a_part_of_the_note()
    {
        LiveJob job = At("papers").Say(CommandWord.Note).Say(Room, 3m);

        Assert.Equal(["DictationHeard"], job.Last.Select(happened => happened.GetType().Name));
    }

    [Fact]
    public void Whatever_is_being_asked_is_interrupted_by_it()
    {
        LiveJob[] asked =
        [
            At("sign").Say(CommandWord.Finish),
            At("rise").Give(new Phrase.Jump(new SpokenStep("combustion", "combustion"), Some.Heard())),
            At("combustion").Say("oxygen", 7.6m, Certainty.Amber),
            At("papers").Say(CommandWord.Finish).Say(AnswerWord.Confirm).Dictate("no time"),
            At("papers").Say(CommandWord.Note).Give(new Phrase.Dictation(Some.Heard() with { Words = "a note" })),
        ];
        Assert.Equal([Phase.Signing, Phase.Jumping, Phase.Confirming, Phase.Choosing, Phase.ReadingBack], asked.Select(job => job.Procedure.Phase));
        Assert.All(asked, job =>
        {
            Assert.Single(new LiveJob(job).Say(Room, 150m).Last.OfType<StartupStopped>());
            Assert.Equal((Phase.Asking, MonoxideAction.ShutOff), (new LiveJob(job).Say(Room, 40m).Procedure.Phase, job.Say(Room, 40m).Last.OfType<MonoxideJudged>().Single().Action));
        });
    }

    [Fact]
    public void A_step_that_asks_for_the_room_keeps_what_is_said_instead_of_its_doubtful_value()
    {
        LiveJob[] asked = [At("rooms/kitchen").Say(Room, 40m, Certainty.Amber), At("rooms/kitchen").Give(new Phrase.Jump(new SpokenStep("combustion", "combustion"), Some.Heard()))];
        Assert.Equal([Phase.Confirming, Phase.Jumping], asked.Select(job => job.Procedure.Phase));
        Assert.All(asked, job => Assert.Equal((4m, "kitchen"), job.Say(Room, 4m).Last.OfType<ReadingEntered>().Select(entered => (entered.Reading.Value, entered.Reading.Key.Scope)).Single()));
    }

    [Fact]
    public void A_stop_hears_it_in_all_its_questions()
    {
        LiveJob choosing = At("papers").Say(CommandWord.EmergencyStop).Say(AnswerWord.Yes);
        LiveJob finishing = At("papers").Say(CommandWord.EmergencyStop).Say(CommandWord.Finish);
        Assert.Equal([Phase.Choosing, Phase.Signing], [choosing.Procedure.Phase, finishing.Procedure.Phase]);
        Assert.All([choosing, finishing], job =>
        {
            job.Say(Room, 40m);
            Assert.Equal((Phase.Stopped, "monoxide-wait"), (job.Procedure.Phase, job.Last.OfType<TimerStarted>().Single().StepId));
            Assert.Contains("Wait, ", Refusal(job.Say(AnswerWord.Yes)), StringComparison.Ordinal);
        });
    }

    [Theory]
    [InlineData(12, false)]
    [InlineData(40, true)]
    public void Nothing_leads_on_before_the_air_is_measured_clear(int ppm, bool isAwaited)
    {
        LiveJob job = At("papers").Say(Room, ppm);

        Assert.Equal(isAwaited, job.View.Timers.Length > 0);
        Assert.Contains($"{ppm} ppm", job.View.Do, StringComparison.Ordinal);
        Assert.Equal(isAwaited ? "VENTILATE AND WAIT" : "SAY ROOM MONOXIDE", job.View.Imperative);
        Assert.StartsWith("room monoxide", job.View.ListeningFor[0], StringComparison.Ordinal);
        foreach (CommandWord word in (CommandWord[])[CommandWord.Done, CommandWord.Next, CommandWord.SkipStep])
        {
            Assert.Contains("room monoxide", Refusal(job.Say(word)), StringComparison.Ordinal);
        }

        Assert.Equal("papers", job.Step);
        if (isAwaited)
        {
            Assert.True(job.Say(Room, 1m).Last.OfType<ReadingEntered>().Single().Reading.IsEarly);
            Assert.Contains("Wait 5:00", Refusal(job.Say(CommandWord.Done)), StringComparison.Ordinal);
            job.Wait(TimeSpan.FromMinutes(5));
        }

        Assert.NotEqual("papers", job.Say(Room, 1m).Say(CommandWord.Done).Step);
    }

    [Fact]
    public void An_answer_a_choice_and_the_signature_wait_for_the_air_too_but_not_an_alarm_or_an_end()
    {
        LiveJob smell = new LiveJob().Say(Room, 12m);
        Assert.Contains("room monoxide", Refusal(smell.Say(AnswerWord.No)), StringComparison.Ordinal);
        Assert.Equal(StopCause.GasSmell, new LiveJob(smell).Say(AnswerWord.Yes).Last.OfType<StartupStopped>().Single().Cause);
        Assert.Equal(Phase.Signing, new LiveJob(smell).Say(CommandWord.Finish).Procedure.Phase);

        LiveJob sign = At("sign").Say(Room, 12m);
        Assert.Contains("room monoxide", Refusal(sign.Say(CommandWord.Finish)), StringComparison.Ordinal);
        Assert.Equal(Phase.Signing, sign.Say(Room, 1m).Say(CommandWord.Finish).Procedure.Phase);
    }

    [Fact]
    public void Making_safe_is_never_held_up_by_it()
    {
        LiveJob job = At("papers").Say(CommandWord.Finish).Say(AnswerWord.Confirm).Dictate("no time").Choose("owners-wish").Say(Room, 40m);
        Assert.Contains(job.Last, happened => happened is MonoxideJudged { Action: MonoxideAction.ShutOff });

        Assert.True(job.MakeSafe().Log[^1] is EndedOutOfService);
    }

    [Fact]
    public void Going_back_to_a_step_that_asks_for_the_room_does_not_shorten_the_wait()
    {
        LiveJob job = At("rooms/kitchen").Say(Room, 1m).Say(CommandWord.Next);
        while (job.Procedure.Expectation.Readings.Any(reading => reading.Field.Id == Room && reading.Names.Contains("monoxide")))
        {
            job.DoStep();
        }

        job.Say(Room, 40m);
        while (job.Step != "rooms/kitchen")
        {
            job.Say(CommandWord.GoBack);
        }

        Assert.True(job.Say(Room, 2m).Say(AnswerWord.Confirm).Last.OfType<ReadingEntered>().Single().Reading.IsEarly);
        Assert.Contains("room monoxide", Refusal(job.Say(CommandWord.Next)), StringComparison.Ordinal);
        Assert.Equal("rooms/kitchen", job.Step);
        job.Wait(TimeSpan.FromMinutes(5)).Say(Room, 2m);
        Assert.NotEqual("rooms/kitchen", job.Say(CommandWord.Next).Step);
    }

    [Fact]
    public void The_second_value_that_asks_to_shut_off_condemns_unless_it_was_misheard()
    {
        LiveJob job = At("papers").Say(Room, 40m).Wait(TimeSpan.FromMinutes(5)).Say(Room, 41m);

        Assert.Equal(Phase.Condemning, job.Procedure.Phase);
        Assert.Single(new LiveJob(job).Say(Room, 150m).Last.OfType<StartupStopped>());
        LiveJob doubted = new LiveJob(job).Say(Room, 150m, Certainty.Amber);
        Assert.Equal(Phase.Condemning, doubted.Procedure.Phase);
        Assert.Contains("150 ppm", Refusal(doubted.Say(AnswerWord.No).Say(CommandWord.Done)), StringComparison.Ordinal);
        Assert.True(job.Say(AnswerWord.Confirm).Log.OfType<UnsafeFound>().Any());
    }

    [Fact]
    public void A_doubtful_value_is_read_back_and_told_at_once_where_it_would_be_dangerous()
    {
        LiveJob job = At("papers").Say(Room, 150m, Certainty.Amber);
        Assert.Equal(Phase.Confirming, job.Procedure.Phase);
        Assert.True(job.Last.OfType<MonoxideJudged>().Single().IsDoubtful);

        Assert.Single(new LiveJob(job).Say(Room, 150m).Last.OfType<StartupStopped>());
        Assert.Equal(160m, new LiveJob(job).Say(Room, 160m).Last.OfType<ReadingEntered>().Single().Reading.Value);
        Assert.Equal(Phase.Asking, job.Say(AnswerWord.No).Procedure.Phase);
    }

    [Fact]
    public void A_dangerous_value_that_is_denied_is_measured_again_before_the_work_goes_on()
    {
        LiveJob denied = At("papers").Say(Room, 150m, Certainty.Amber).Say(AnswerWord.No);
        Assert.Contains("Measure the room again", Refusal(denied.Say(CommandWord.Done)), StringComparison.Ordinal);
        Assert.NotEqual("papers", denied.Say(Room, 2m).Say(CommandWord.Done).Step);

        Assert.NotEqual("papers", At("papers").Say(Room, 150m, Certainty.Amber).Say(Room, 2m).Say(CommandWord.Done).Step);
        Assert.NotEqual("papers", At("papers").Say(Room, 12m, Certainty.Amber).Say(AnswerWord.No).Say(CommandWord.Done).Step);
        Assert.Equal(Phase.Stopped, At("papers").Say(Room, 150m, Certainty.Amber).Say(CommandWord.EmergencyStop).Procedure.Phase);
    }

    [Fact]
    public void A_denied_value_does_not_shorten_the_wait_after_one_that_was_not()
    {
        LiveJob job = At("combustion").Say(Room, 40m).Say(CommandWord.GoBack).Say(Room, 40m, Certainty.Amber).Say(AnswerWord.No);

        Assert.True(new LiveJob(job).Say(Room, 1m).Last.OfType<ReadingEntered>().Single().Reading.IsEarly);
        Assert.Contains("Wait 5:00", Refusal(job.Say(CommandWord.Next)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_stop_in_the_middle_of_a_read_back_does_not_clear_the_air()
    {
        LiveJob job = At("papers").Say(Room, 150m, Certainty.Amber).Say(CommandWord.EmergencyStop).LeadBack("a false alarm");

        Assert.Contains("Measure the room again", Refusal(job.Say(CommandWord.Done)), StringComparison.Ordinal);
    }

    [Fact]
    public void What_asks_for_nothing_is_told_so_and_disturbs_nothing()
    {
        LiveJob job = At("sign").Say(CommandWord.Finish).Say(Room, 1m);

        Assert.Contains("asks for nothing", Refusal(job), StringComparison.Ordinal);
        Assert.Equal(Phase.Signing, job.Procedure.Phase);
    }

    [Fact]
    public void Disregarding_the_value_does_not_clear_the_air()
    {
        LiveJob job = At("papers").Say(Room, 40m).Say(CommandWord.Disregard);

        Assert.Contains("Wait 5:00", Refusal(job.Say(CommandWord.Done)), StringComparison.Ordinal);
    }

    [Fact]
    public void Clear_air_after_an_evacuation_needs_no_third_measurement()
    {
        LiveJob job = At("papers").Say(Room, 150m).Wait(TimeSpan.FromMinutes(10)).Say(Room, 1m).LeadBack("a car in the garage");

        Assert.NotEqual("papers", job.GoTo("papers").Say(CommandWord.Done).Step);
    }
}
