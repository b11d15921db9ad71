using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Storage.Tests;

/// <summary>The checklist, sheet and site that are shipped.</summary>
public sealed class ShippedFilesTests
{
    public static TheoryData<string, CommandWord> EveryStepAndSafetyPhrase()
    {
        TheoryData<string, CommandWord> rows = [];
        foreach (Step step in Plan().Steps.Where(step => step.Kind != StepKind.Adjust))
        {
            rows.Add(step.Id, CommandWord.EmergencyStop);
            rows.Add(step.Id, CommandWord.GasSmell);
        }

        return rows;
    }

    [Fact]
    public void Every_limit_names_its_source()
    {
        StartupPlan plan = Plan();

        Assert.All(plan.Checklist.Limits.Concat(plan.Appliance.Limits), limit => Assert.False(string.IsNullOrWhiteSpace(limit.Source)));
        Assert.All(plan.Site.Instruments, instrument => Assert.False(string.IsNullOrWhiteSpace(instrument.Source)));
    }

    [Fact]
    public void The_shipped_start_up_can_be_walked_to_its_signature_with_nothing_open()
    {
        LiveJob job = new LiveJob(Plan()).GoTo("sign").Say(CommandWord.Finish).Say(AnswerWord.Confirm);

        Assert.IsType<StartupSigned>(job.Last[^1]);
        Assert.Empty(job.View.Open);
        Assert.True(job.Procedure.IsSigned);
    }

    [Theory]
    [MemberData(nameof(EveryStepAndSafetyPhrase))]
    public void Every_safety_phrase_stops_at_every_step_of_the_shipped_checklist(string stepId, CommandWord phrase)
    {
        LiveJob job = new LiveJob(Plan()).GoTo(stepId).Say(phrase);

        Assert.Equal(Phase.Stopped, job.Procedure.Phase);
    }

    static StartupPlan Plan()
    {
        PlanFiles files = UserFile.ReadTogether(Shipped("two-stage-natural-gas.yaml"), Shipped("demo-furnace.yaml"), Shipped("demo-site.yaml"));
        return StartupPlan.From(files.Checklist, files.Appliance, files.Site);
    }

    static FileCopy Shipped(string name) => UserFile.Copy(Path.Combine(AppContext.BaseDirectory, "checklists", name));
}
