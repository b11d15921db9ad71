using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Storage.Tests;

/// <summary>Where another appliance was started up at the same address, the rooms are walked with it running, whatever the checklist says.</summary>
[Trait("Speed", "Fast")]
public sealed class OthersRunningTests
{
    const string Asked = "others/room-walk";

    [Theory]
    [InlineData("gas-furnace", "new")]
    [InlineData("two-stage-natural-gas", "")]
    public void Everything_runs_before_the_first_room_is_measured(string checklist, string occasion)
    {
        Walker walker = new Walker(With(checklist, occasion, "Attic furnace")).GoTo(_ => false);

        Assert.True(walker.Job.Procedure.IsSigned);
        StartupEvent[] log = [.. walker.Job.Log];
        int answered = Array.FindIndex(log, happened => happened is AnswerGiven { StepId: Asked, Answer: true });
        Assert.True(answered > 0 && answered < Array.FindIndex(log, happened => happened is ReadingEntered { StepId: "room-walk/basement" or "room-walk/kitchen" }), $"{answered}");
        Assert.Contains("Attic furnace", walker.Job.Procedure.Plan.Steps.Single(OthersRunning.Is).Question!.Text.Shown, StringComparison.Ordinal);
    }

    [Fact]
    public void While_something_does_not_run_no_room_is_walked_and_the_step_is_not_skipped()
    {
        Walker walker = new Walker(With("gas-furnace", "new", "Attic furnace", "Water heater")).GoTo(OthersRunning.Is);

        walker.Job.Say(CommandWord.SkipStep);
        Assert.Contains("cannot be skipped", Assert.Single(walker.Job.Last.OfType<CommandRefused>()).Reason.Shown, StringComparison.Ordinal);
        walker.Job.Say(AnswerWord.No);

        Assert.Equal(Asked, walker.Job.Step);
        Assert.DoesNotContain(walker.Job.Last, happened => happened is StepDone);
    }

    [Fact]
    public void After_an_emergency_stop_it_is_asked_again()
    {
        Walker walker = new Walker(With("gas-furnace", "new", "Attic furnace")).GoTo(step => step.Id == "close-ports");

        walker.Job.Say(CommandWord.EmergencyStop).LeadBack("checked and cleared");

        Assert.Contains(walker.Job.Log, happened => happened is StepReopened { StepId: Asked });
    }

    [Fact]
    public void Alone_at_its_address_a_furnace_is_asked_nothing_more() => Assert.DoesNotContain(With("gas-furnace", "new").Steps, OthersRunning.Is);

    static StartupPlan With(string checklist, string occasion, params string[] others)
    {
        PlanFiles files = UserFile.ReadTogether(ShippedPlans.Copy(checklist), ShippedPlans.Copy("demo-furnace"), ShippedPlans.Copy("demo-site"));
        return StartupPlan.From(files.Checklist, files.Appliance, files.Site, occasion: occasion.Length == 0 ? null : occasion, others: [.. others]);
    }
}
