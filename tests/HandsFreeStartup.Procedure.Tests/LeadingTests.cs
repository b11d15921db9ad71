using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

public sealed class LeadingTests
{
    [Fact]
    public void A_whole_start_up_leads_from_the_first_step_to_the_signature()
    {
        LiveJob job = new LiveJob().GoTo("sign");

        job.Say(CommandWord.Finish).Say(AnswerWord.Confirm);

        Assert.Equal(Phase.Finished, job.Procedure.Phase);
        Assert.IsType<StartupSigned>(job.Last[^1]);
    }

    [Fact]
    public void An_adjustment_of_what_is_within_its_range_is_passed_over()
    {
        LiveJob job = new LiveJob().GoTo("rise");

        Assert.Contains(job.Log, happened => happened is StepDone { StepId: "adjust", Evidence: null });
        Assert.DoesNotContain(job.Log, happened => happened is StepEntered { StepId: "adjust" });
    }

    [Fact]
    public void An_adjustment_voids_the_combustion_readings_and_leads_back_to_them()
    {
        LiveJob job = new LiveJob().GoTo("manifold").Say("manifold_pressure", 3.9m).Say(CommandWord.Next);
        Assert.Equal("adjust", job.Step);

        job.Say("manifold_pressure", 3.7m).Say(CommandWord.Done);
        Assert.Contains("within its range", Assert.IsType<CommandRefused>(job.Last[^1]).Reason.Shown, StringComparison.Ordinal);
        job.Say("manifold_pressure", 3.5m).Say(CommandWord.Done);

        Assert.Equal("combustion", job.Step);
        Assert.Equal(4, job.Last.OfType<ReadingVoided>().Count());
        Assert.Equal((3.9m, 3.5m), job.Last.OfType<AdjustmentMade>().Select(made => (made.From, made.To)).Single());
        Assert.Contains(job.View.Readings, line => line is { Label: "Oxygen", State: ReadingState.Void });
        Assert.DoesNotContain(job.View.Results, line => line.Label.Contains("air-free", StringComparison.Ordinal));

        job.Say("oxygen", 7.0m).Say("flue_co", 14m).Say("flue_temperature", 340m).Say("air_temperature", 68m).Say(CommandWord.Next);
        Assert.Equal("rise", job.Step);
    }

    [Theory]
    [InlineData(3.9, "turn counter-clockwise, about 0.4")]
    [InlineData(3.1, "turn clockwise, about 0.4")]
    public void An_adjustment_says_which_way_to_turn_and_how_far_it_is(double pressure, string advice)
    {
        LiveJob job = new LiveJob().GoTo("manifold").Say("manifold_pressure", (decimal)pressure).Say(CommandWord.Next);

        Assert.Contains(advice, job.View.Do, StringComparison.Ordinal);
        Assert.Contains(job.Procedure.Announce(job.Last, job.Now), said => said.Text.Contains(advice, StringComparison.Ordinal));
    }

    [Fact]
    public void A_reading_is_provisional_until_the_next_accepted_phrase()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", 7.6m);
        Assert.Equal(ReadingState.Provisional, job.View.Readings[0].State);

        job.Give(new Phrase.NotUnderstood(Some.Heard(Certainty.Red)));
        Assert.Equal(ReadingState.Provisional, job.View.Readings[0].State);

        job.Say("flue_co", 12m);
        Assert.Equal(ReadingState.Final, job.View.Readings[0].State);
    }

    [Fact]
    public void Disregard_undoes_the_last_entry_and_its_results()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", 7.6m).Say("flue_co", 12m);
        Assert.Contains(job.View.Results, line => line.Label.Contains("air-free", StringComparison.Ordinal));

        job.Say(CommandWord.Disregard);

        Assert.Equal(ReadingState.Missing, job.View.Readings[1].State);
        Assert.Equal(ReadingState.Final, job.View.Readings[0].State);
        Assert.DoesNotContain(job.View.Results, line => line.Label.Contains("air-free", StringComparison.Ordinal));
    }

    [Fact]
    public void A_doubtful_reading_is_not_entered_before_it_is_confirmed()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", 15.4m, Certainty.Amber);
        Assert.Equal(Phase.Confirming, job.Procedure.Phase);
        Assert.DoesNotContain(job.Log, happened => happened is ReadingEntered { Reading.Key.FieldId: "oxygen" });

        job.Say(AnswerWord.Confirm);

        Assert.Equal(15.4m, job.Log.OfType<ReadingEntered>().Last().Reading.Value);
        Assert.Equal(Phase.Asking, job.Procedure.Phase);
    }

    [Fact]
    public void A_doubtful_reading_that_is_denied_leaves_nothing()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", 15.4m, Certainty.Amber).Say(AnswerWord.No);

        Assert.Equal(Phase.Asking, job.Procedure.Phase);
        Assert.Equal(ReadingState.Missing, job.View.Readings[0].State);
    }

    [Fact]
    public void A_doubtful_reading_that_is_heard_alike_and_unclear_again_and_again_still_takes_confirm()
    {
        LiveJob job = new LiveJob().GoTo("combustion");
        for (int times = 0; times < 3; times++)
        {
            job.Say("oxygen", 15.4m, Certainty.Amber);
        }

        Assert.Equal("Still not clear. Oxygen 15.4 %? Say confirm, or no.", Assert.IsType<CommandRefused>(Assert.Single(job.Last)).Reason.Shown);
        Assert.True(Assert.Single(job.Procedure.Announce(job.Last, job.Present)).DigitByDigit);
        Assert.Equal((Phase.Confirming, ReadingState.Doubtful), (job.Procedure.Phase, job.View.Readings[0].State));
        Assert.DoesNotContain(job.Log, happened => happened is ReadingEntered { Reading.Key: { FieldId: "oxygen", Scope: "high" } });

        Assert.Equal(15.4m, job.Say(AnswerWord.Confirm).Last.OfType<ReadingEntered>().Single().Reading.Value);
    }

    [Fact]
    public void A_doubtful_reading_said_again_clearly_or_typed_is_entered()
    {
        LiveJob Doubted() => new LiveJob().GoTo("combustion").Say("oxygen", 15.4m, Certainty.Amber);
        Evidence typed = Evidence.Typed("o2 15.4") with { Certainty = Certainty.Amber, Why = "unusual" };

        Assert.Equal(15.4m, Doubted().Say("oxygen", 15.4m).Last.OfType<ReadingEntered>().Single().Reading.Value);
        Assert.Equal(15.4m, Doubted().Give(new Phrase.Reading(Fields.Find("oxygen")!, 15.4m, typed)).Last.OfType<ReadingEntered>().Single().Reading.Value);
    }

    [Theory]
    [InlineData("rooms/kitchen", "room_co", 250)]
    [InlineData("combustion", "flue_co", 450)]
    public void Danger_is_believed_the_second_time_however_unclear(string step, string field, int ppm)
    {
        LiveJob job = new LiveJob().GoTo(step).Say(field, ppm, Certainty.Amber).Say(field, ppm, Certainty.Amber);

        Assert.Equal(ppm, job.Last.OfType<ReadingEntered>().Single().Reading.Value);
        Assert.Contains(job.Last, happened => happened is MonoxideJudged { IsDoubtful: false });
    }

    [Fact]
    public void A_different_value_for_an_entered_reading_is_read_back_and_never_overwrites_unasked()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", 7.6m).Say("oxygen", 7.9m);

        Assert.Equal(Phase.Confirming, job.Procedure.Phase);
        Assert.Equal(7.6m, job.Log.OfType<ReadingEntered>().Last().Reading.Value);
    }

    [Fact]
    public void A_reading_that_the_step_does_not_ask_for_is_refused()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("room_co", 2m);

        Assert.IsType<CommandRefused>(Assert.Single(job.Last));
    }

    [Fact]
    public void A_step_with_a_missing_reading_cannot_be_left()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", 7.6m).Say(CommandWord.Next);

        Assert.Contains("CO in flue", Assert.IsType<CommandRefused>(job.Last[^1]).Reason.Shown, StringComparison.Ordinal);
        Assert.Equal("combustion", job.Step);
    }

    [Fact]
    public void Going_back_returns_to_the_step_before_and_next_comes_forward_again()
    {
        LiveJob job = new LiveJob().GoTo("manifold").Say(CommandWord.GoBack);
        Assert.Equal("combustion", job.Step);

        job.Say(CommandWord.Next);
        Assert.Equal("manifold", job.Step);
    }

    [Fact]
    public void Trailing_zeros_of_a_spoken_number_are_kept()
    {
        LiveJob job = new LiveJob().GoTo("manifold").Say("manifold_pressure", 3.50m);

        Assert.Equal("3.50", job.View.Readings[0].Value);
    }

    [Fact]
    public void No_limit_is_shown_before_the_value_was_said()
    {
        LiveJob job = new LiveJob().GoTo("manifold");

        Assert.All(job.View.Readings, line => Assert.True(line.State != ReadingState.Missing || line.Limit.Length == 0));
        Assert.DoesNotContain(job.Procedure.Announce(job.Last, job.Now), said => said.Text.Contains("3.35", StringComparison.Ordinal));
    }

    [Fact]
    public void In_the_room_walk_monoxide_means_the_room()
    {
        LiveJob job = new LiveJob().GoTo("rooms/kitchen");

        Assert.Contains("monoxide", job.Procedure.Expectation.Readings.Single(reading => reading.Field.Id == "room_co").Names);
        Assert.Contains("kitchen", job.View.Do, StringComparison.Ordinal);
    }
}
