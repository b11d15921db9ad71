using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>An earlier step is gone to by its name: what that takes back is told first, and what lies between stays.</summary>
public sealed class JumpTests
{
    static LiveJob Ask(LiveJob job, string stepId) => job.Give(new Phrase.Jump(new SpokenStep(stepId, $"go to {stepId}"), Some.Heard()));

    [Fact]
    public void Nothing_changes_before_it_is_confirmed()
    {
        LiveJob job = Ask(new LiveJob().GoTo("sign"), "manifold");

        Assert.Equal(Phase.Jumping, job.Procedure.Phase);
        Assert.Equal("sign", job.Step);
        Assert.StartsWith("Go to Title of manifold? What lies between stays.", job.View.Question, StringComparison.Ordinal);
        job.Say(AnswerWord.No);
        Assert.Equal(("sign", Phase.Asking), (job.Step, job.Procedure.Phase));
        Assert.IsType<JumpDeclined>(job.Last[^1]);
        Assert.Empty(job.View.Open);
    }

    [Fact]
    public void What_was_open_when_the_step_was_done_is_told_and_is_open_again()
    {
        LiveJob job = Ask(new LiveJob().GoTo("sign"), "combustion");

        Assert.Contains("Open again: ", job.View.Question, StringComparison.Ordinal);
        Assert.Contains("test hole", job.View.Question, StringComparison.Ordinal);
        job.Say(AnswerWord.Confirm);

        Assert.Contains("test hole", job.View.Open);
        job.GoTo("sign").Say(CommandWord.Finish);
        Assert.Equal(Phase.Signing, job.Procedure.Phase);
        Assert.Equal(2, job.Log.OfType<ThingClosed>().Count(closed => closed.Name == "test hole"));
    }

    [Fact]
    public void What_lies_between_is_not_asked_again()
    {
        LiveJob job = new LiveJob().GoTo("rise");
        int done = job.Log.OfType<StepDone>().Count();
        Ask(job, "manifold").Say(AnswerWord.Confirm).Say(CommandWord.Next);

        Assert.Equal("rise", job.Step);
        Assert.Equal(done + 1, job.Log.OfType<StepDone>().Count());
    }

    [Fact]
    public void A_step_that_lies_ahead_is_refused_because_the_order_guards()
    {
        LiveJob job = Ask(new LiveJob().GoTo("manifold"), "rise");

        Assert.Equal("'Title of rise' comes later: what lies before it is done first.", Assert.IsType<CommandRefused>(job.Last[^1]).Reason.Shown);
        Assert.Equal("manifold", job.Step);
        Assert.Equal("This is that step.", Assert.IsType<CommandRefused>(Ask(job, "manifold").Last[^1]).Reason.Shown);
    }

    [Fact]
    public void From_another_chapter_the_fire_is_set_and_waited_for_again()
    {
        ImmutableArray<Step> steps = [.. Some.Steps.Select(step => step with { Section = step.Id is "sign" or "seal" ? "End" : "Fire" })];
        Step wait = steps.First(step => step.Kind == StepKind.Wait);
        LiveJob job = Ask(new LiveJob(Some.PlanOf(steps)).GoTo("sign"), "combustion");

        Assert.Contains($"First again: ", job.View.Question, StringComparison.Ordinal);
        Assert.Contains(wait.Title, job.View.Question, StringComparison.Ordinal);
        job.Say(AnswerWord.Confirm).GoTo(wait.Id);
        Assert.IsType<CommandRefused>(job.Say(CommandWord.Next).Last[^1]);
        job.Wait(TimeSpan.FromHours(1)).Say(CommandWord.Next);
        Assert.Equal("combustion", job.Step);
    }

    [Fact]
    public void A_safety_stop_forgets_where_somebody_wanted_to_go()
    {
        LiveJob job = Ask(new LiveJob().GoTo("sign"), "manifold").Say(CommandWord.EmergencyStop);

        Assert.Equal(Phase.Stopped, job.Procedure.Phase);
        job.LeadBack("a false alarm");
        Assert.Equal(Phase.Asking, job.Procedure.Phase);
        Assert.Equal(job.View.StepTitle, new LiveJob(job).View.StepTitle);
    }

    [Fact]
    public void Carbon_monoxide_is_heard_while_it_is_asked_where_to_go()
    {
        LiveJob job = Ask(new LiveJob().GoTo("rooms/kitchen"), "manifold");
        Assert.Contains("room_co", job.Procedure.Expectation.Readings.Select(reading => reading.Field.Id));
        job.Say("room_co", 150m);

        Assert.Equal(150, job.Log.OfType<MonoxideJudged>().Single().Ppm);
        Assert.Equal((Phase.Stopped, "rooms/kitchen"), (job.Procedure.Phase, job.Step));
    }

    [Fact]
    public void A_furnace_that_is_being_made_safe_is_made_safe_first()
    {
        LiveJob job = new LiveJob().GoTo("rise").Say(CommandWord.Finish).Say(AnswerWord.Confirm).Dictate("no gas").Choose("not-in-order");

        Assert.Empty(job.Procedure.Expectation.Steps);
        Assert.Equal("The furnace is not put into service: make it safe first.", Assert.IsType<CommandRefused>(Ask(job, "manifold").Last[^1]).Reason.Shown);
    }

    [Theory]
    [InlineData("Combustion, high fire", "go to combustion high fire", "go to high fire combustion")]
    [InlineData("CO in the room before the start", "go to C O in the room before the start", null)]
    [InlineData("Inlet pressure, static", "go to inlet pressure static", "go to static inlet pressure")]
    public void A_step_is_named_by_its_title(string title, string way, string? other) =>
        Assert.Equal(new[] { way, other }.OfType<string>(), SpokenStep.Of([("a", title)]).Select(step => step.Says));

    [Fact]
    public void Words_that_would_name_two_steps_name_none() =>
        Assert.Equal(["c", "c"], SpokenStep.Of([("a", "Draft"), ("b", "draft."), ("c", "Low fire, draft")]).Select(step => step.Id));
}
