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
}
