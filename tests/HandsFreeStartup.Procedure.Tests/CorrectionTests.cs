using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>What becomes of the record when something said earlier turns out to be wrong.</summary>
public sealed class CorrectionTests
{
    [Fact]
    public void A_corrected_reading_voids_what_depends_on_it_and_both_values_stay_in_the_log()
    {
        ImmutableArray<Step> steps = [.. Some.Steps.Select(step => step.Id == "manifold" ? step with { Voids = ["combustion"] } : step)];
        LiveJob job = new LiveJob(Some.PlanOf(steps)).GoTo("rise").Say(CommandWord.GoBack);
        Assert.Equal("adjust", job.Step);
        job.Say(CommandWord.GoBack).Say("manifold_pressure", 3.6m);
        Assert.DoesNotContain(job.Log, happened => happened is ReadingVoided);

        job.Say(AnswerWord.Confirm).Say(CommandWord.Next).Say("manifold_pressure", 3.5m);

        Assert.Equal([3.5m, 3.6m], job.Log.OfType<ReadingEntered>().Where(entered => entered.StepId == "manifold").Select(entered => entered.Reading.Value));
        Assert.Equal(4, job.Log.OfType<ReadingVoided>().Count(voided => voided.Because == "manifold pressure was corrected"));
    }

    [Fact]
    public void A_corrected_reading_that_is_outside_leads_to_its_adjustment_though_that_was_passed_over_before()
    {
        LiveJob job = new LiveJob().GoTo("rise").Say(CommandWord.GoBack).Say(CommandWord.GoBack);

        job.Say("manifold_pressure", 3.9m).Say(AnswerWord.Confirm).Say(CommandWord.Next);

        Assert.Equal("adjust", job.Step);
    }

    [Fact]
    public void Going_back_to_a_closing_withdraws_it()
    {
        LiveJob job = new LiveJob().GoTo("prove-port").Say(CommandWord.GoBack);

        Assert.Equal(["test hole", "manifold port"], job.View.Open.AsEnumerable());
        job.Say(CommandWord.GoBack).Say(CommandWord.Next);

        Assert.Equal("close-port", job.Step);
    }

    [Fact]
    public void Going_back_to_a_leak_check_withdraws_its_proof()
    {
        LiveJob job = new LiveJob().GoTo("seal").Say(CommandWord.GoBack);

        Assert.Contains("manifold port (leak check missing)", job.View.Open);
    }

    [Fact]
    public void What_is_opened_again_must_be_closed_and_proved_again()
    {
        LiveJob job = new LiveJob().GoTo("sign");
        while (job.Step != "open-port")
        {
            job.Say(CommandWord.GoBack);
        }

        job.Say(CommandWord.Done);
        Assert.Contains("manifold port", job.View.Open);

        job.GoTo("sign").Say(CommandWord.Finish).Say(AnswerWord.Confirm);
        Assert.True(job.Procedure.IsSigned);
        Assert.Equal(2, job.Log.OfType<ThingProved>().Count());
    }

    [Fact]
    public void A_photo_is_attached_to_its_step()
    {
        LiveJob job = new LiveJob().GoTo("papers").Give(new Phrase.Photo("plate.jpg", "ab12", Evidence.Typed("photo plate.jpg")));

        Assert.Equal(("papers", "plate.jpg"), job.Last.OfType<PhotoAttached>().Select(photo => (photo.StepId, photo.Name)).Single());
    }

    [Fact]
    public void Only_the_last_entry_is_disregarded_and_only_once()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", 7.6m).Say("flue_co", 12m).Say(CommandWord.Disregard);
        Assert.Equal("flue_co", job.Last.OfType<ReadingScratched>().Single().Key.FieldId);

        Assert.Contains("no entry of this step to disregard", Assert.IsType<CommandRefused>(job.Say(CommandWord.Disregard).Last[^1]).Reason.Shown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_record_that_speaks_of_a_reading_that_there_is_not_is_refused()
    {
        LiveJob job = new LiveJob().GoTo("combustion");

        Assert.Throws<KeyNotFoundException>(() => job.Replayed().Apply(new ReadingStood(job.Now, new ReadingKey("oxygen", "high"))));
        Assert.Throws<KeyNotFoundException>(() => job.Replayed().Apply(new ReadingVoided(job.Now, new ReadingKey("oxygen", "high"), "nobody knows")));
    }

    [Fact]
    public void A_reading_stands_with_what_comes_next_but_not_with_what_is_refused_or_takes_it_back()
    {
        LiveJob Said() => new LiveJob().GoTo("combustion").Say("oxygen", 7.6m);

        Assert.IsType<ReadingStood>(Said().Say("flue_co", 12m).Last[0]);
        Assert.IsType<ReadingStood>(Said().Say("flue_co", 150m).Last[0]);
        Assert.DoesNotContain(Said().Say("oxygen", 7.6m).Last, happened => happened is ReadingStood);
        Assert.DoesNotContain(Said().Say(CommandWord.Disregard).Last, happened => happened is ReadingStood);
        LiveJob denied = new LiveJob().GoTo("rooms/kitchen").Say("room_co", 40m).Say("room_co", 45m).Say(AnswerWord.No);
        Assert.DoesNotContain(denied.Last, happened => happened is ReadingStood);
    }

    [Fact]
    public void What_was_said_from_the_plate_never_replaces_what_the_sheet_states()
    {
        LiveJob job = new LiveJob().GoTo("manifold");
        job.Procedure.Apply(new LimitStated(job.Now, "manifold", new DeclaredLimit("manifold_pressure/high", 1m, 9m, "in. w.c.", "from rating plate, spoken", false)));

        Assert.Equal(3.65m, job.Say("manifold_pressure", 3.9m).Last.OfType<ReadingEntered>().Single().Reading.Limit!.Upper);
    }
}
