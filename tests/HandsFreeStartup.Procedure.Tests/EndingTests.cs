using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>The ends without a signature: whose wish it is, and what is closed.</summary>
public sealed class EndingTests
{
    static LiveJob End(LiveJob job) => job.Say(CommandWord.Finish).Say(AnswerWord.Confirm).Dictate("the owner wants to wait");

    static string[] Safe(LiveJob job) => [.. job.Log.OfType<StepEntered>().Select(entered => entered.StepId).Where(id => id.StartsWith("safe-", StringComparison.Ordinal))];

    [Theory]
    [InlineData("owners-wish", EndKind.OwnersWish)]
    [InlineData("not-in-order", EndKind.NotInOrder)]
    public void Where_nothing_speaks_against_it_the_technician_chooses_the_kind_of_end(string choice, EndKind kind)
    {
        LiveJob job = End(new LiveJob().GoTo("papers"));
        Assert.Equal(Phase.Choosing, job.Procedure.Phase);

        job.Choose(choice);

        Assert.Equal((kind, "the owner wants to wait"), (job.Log.OfType<EndDecided>().Single().Kind, job.Log.OfType<EndDecided>().Single().Reason));
        Assert.Equal("safe-burner", job.Step);
    }

    [Fact]
    public void A_step_that_was_skipped_does_not_speak_against_the_furnace() =>
        Assert.Equal(Phase.Choosing, End(new LiveJob().GoTo("papers").Say(CommandWord.SkipStep).Dictate("seen before")).Procedure.Phase);

    [Fact]
    public void An_alarm_an_unsafe_answer_or_a_value_over_its_limit_leaves_no_choice()
    {
        LiveJob[] jobs =
        [
            new LiveJob().GoTo("rooms/kitchen").Say("room_co", 40m),
            new LiveJob().GoTo("prove-port").Say(AnswerWord.No),
            new LiveJob().GoTo("manifold").Say("manifold_pressure", 4.20m),
        ];

        Assert.All(jobs, job => Assert.Equal(EndKind.NotInOrder, End(job).Log.OfType<EndDecided>().Single().Kind));
    }

    [Fact]
    public void A_value_over_what_practice_wants_leaves_the_choice()
    {
        StartupPlan plan = Some.Plan();
        ApplianceSheet sheet = plan.Appliance with { Limits = [.. plan.Appliance.Limits.Select(limit => limit.Name == "oxygen" ? limit with { Source = "common practice, no source" } : limit)] };

        Assert.Equal(Phase.Choosing, End(new LiveJob(StartupPlan.From(plan.Checklist, sheet, plan.Site)).GoTo("combustion").Say("oxygen", 10.5m)).Procedure.Phase);
    }

    [Fact]
    public void Nobody_is_sent_to_a_furnace_that_was_left_for_safety()
    {
        LiveJob job = End(new LiveJob().GoTo("papers").Say(CommandWord.EmergencyStop));

        Assert.Equal((EndKind.NotInOrder, Phase.Finished), (job.Log.OfType<EndDecided>().Single().Kind, job.Procedure.Phase));
        Assert.Empty(Safe(job));
    }

    [Fact]
    public void An_alarm_while_it_is_made_safe_ends_it_by_the_same_end()
    {
        LiveJob job = End(new LiveJob().GoTo("papers")).Choose("owners-wish").Say(CommandWord.GasSmell);
        End(job);

        Assert.IsType<EndedOutOfService>(job.Last[^1]);
        Assert.Equal(EndKind.OwnersWish, job.Log.OfType<EndDecided>().Single().Kind);
    }

    [Fact]
    public void After_an_alarm_while_it_is_made_safe_only_that_goes_on()
    {
        StartupPlan plan = Some.PlanOf([.. Some.Steps.Select(step => step.Id == "smell" || step.Id == "papers" ? step with { AgainAfter = [Again.Stop] } : step)]);
        LiveJob job = End(new LiveJob(plan).GoTo("drill")).Choose("owners-wish").Say(CommandWord.Done).Say(CommandWord.EmergencyStop).LeadBack("a bang in the duct");

        Assert.Equal("safe-gas", job.Step);
        Assert.Empty(job.Log.OfType<StepReopened>());
    }

    [Fact]
    public void What_is_ending_does_not_end_twice()
    {
        LiveJob job = End(new LiveJob().GoTo("papers")).Choose("owners-wish").Say(CommandWord.Finish);

        Assert.Contains("ending already", Assert.IsType<CommandRefused>(job.Last[^1]).Reason.Shown, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_skipped_step_would_have_opened_may_be_open_already_and_is_closed_and_proved()
    {
        LiveJob job = new LiveJob().GoTo("open-port").Say(CommandWord.SkipStep).Dictate("ports are open already");
        Assert.Contains(job.View.Open, open => open.Contains("manifold port", StringComparison.Ordinal));

        job.GoTo("sign");
        Assert.Contains(job.Log, happened => happened is ThingClosed { Name: "manifold port" });
        Assert.Contains(job.Log, happened => happened is ThingProved { Name: "manifold port" });
    }

    [Fact]
    public void Only_what_is_open_is_closed_and_only_what_was_closed_is_proved()
    {
        LiveJob nothing = End(new LiveJob().GoTo("papers")).Choose("owners-wish").MakeSafe();
        LiveJob all = End(new LiveJob().GoTo("combustion")).Choose("owners-wish").MakeSafe();
        LiveJob skipped = End(new LiveJob().GoTo("open-port").Say(CommandWord.SkipStep).Dictate("no gauge").Say(CommandWord.Done)).Choose("owners-wish").MakeSafe();
        LiveJob unproved = End(new LiveJob().GoTo("prove-port")).Choose("owners-wish").MakeSafe();

        Assert.Equal(["safe-burner", "safe-gas", "safe-leak-check", "safe-tag"], Safe(nothing));
        Assert.Equal(["safe-burner", "safe-gas", "safe-ports", "safe-leak-check", "safe-close", "safe-tag"], Safe(all));
        Assert.Equal(Safe(all), Safe(skipped));
        Assert.Equal(["safe-burner", "safe-gas", "safe-leak-check", "safe-close", "safe-tag"], Safe(unproved));
        Assert.DoesNotContain(nothing.Log, happened => happened is ThingClosed or ThingProved);
        Assert.Equal(["manifold port", "test hole"], all.Log.OfType<ThingClosed>().Select(closed => closed.Name));
        Assert.Equal(["manifold port"], skipped.Log.OfType<ThingProved>().Select(proved => proved.Name));
        Assert.Equal(["manifold port"], unproved.Log.OfType<ThingProved>().Select(proved => proved.Name));
        Assert.All(new[] { nothing, all, skipped, unproved }, job => Assert.Empty(job.View.Open));
    }
}
