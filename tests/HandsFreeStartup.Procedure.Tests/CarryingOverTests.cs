using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>What of a returned record stands in the job that follows it.</summary>
public sealed class CarryingOverTests
{
    static readonly ImmutableArray<Step> Steps =
    [
        Some.Steps[0],
        Cold("papers", StepKind.Do),
        Cold("power", StepKind.Read) with { Readings = [new("line_voltage", null), new("control_voltage", null)] },
        Cold("draft-by", StepKind.Ask) with { Question = new("Natural draft or fan?", true, "", false) { Choices = [new("natural draft", "natural"), new("fan", "fan")], Decides = "draft_by" } },
        Cold("filter", StepKind.Do),
        .. Some.Steps.Skip(2).Where(step => step.Kind is StepKind.Open or StepKind.Close or StepKind.Sign || step.Id == "prove-port"),
    ];

    static readonly StartupPlan Plan = Some.PlanOf(Steps);

    static readonly JobDescription Next = Some.Job with { JobId = "job-2", Follows = new FollowedJob("job-1", 9, "AB") };

    [Fact]
    public void Cold_work_that_was_not_returned_stands_and_everything_else_is_done_again()
    {
        IReadOnlyList<StartupEvent> returned = Returned("filter");

        IReadOnlyList<StartupEvent> events = new StartupProcedure(Plan).Begin(Next, Some.Morning.AddDays(2), returned);
        JobRecord record = JobRecord.Of(Plan, events);

        Assert.Equal(["papers", "power", "draft-by"], events.OfType<StepCarried>().Select(step => step.StepId));
        Assert.Equal("smell", events.OfType<StepEntered>().Single().StepId);
        Assert.Equal(["papers", "power", "draft-by"], record.Steps.Where(step => step.End == StepEnd.Done).Select(step => step.Step.Id));
        ReadingFate voltage = record.Readings[0];
        ReadingFate original = JobRecord.Of(Plan, returned).Readings[0];
        Assert.Equal((118m, "job-1", original.At), (voltage.Reading.Value, voltage.From, voltage.At));
        Assert.Null(voltage.Reading.Evidence.Clip);
    }

    [Fact]
    public void The_job_that_follows_leads_past_what_stands()
    {
        StartupProcedure procedure = Following(Returned("filter"));
        string[] path = Walk(procedure);

        Assert.Equal(["smell", "filter", "open-port", "drill", "close-port", "prove-port", "seal", "sign"], path);
    }

    [Fact]
    public void Nothing_stands_where_the_lead_has_named_no_step() => Assert.DoesNotContain(new StartupProcedure(Plan).Begin(Next, Some.Morning, Returned()), happened => happened is StepCarried);

    [Fact]
    public void Nothing_stands_of_a_record_with_an_alarm()
    {
        IReadOnlyList<StartupEvent> returned = Returned("filter");
        StartupEvent[] alarmed = [.. returned.Take(6), new StartupStopped(Some.Morning, StopCause.GasSmell, Some.Heard()), .. returned.Skip(6)];

        Assert.DoesNotContain(new StartupProcedure(Plan).Begin(Next, Some.Morning, alarmed), happened => happened is StepCarried);
    }

    [Fact]
    public void A_step_that_was_returned_or_skipped_is_done_again()
    {
        Assert.DoesNotContain(new StartupProcedure(Plan).Begin(Next, Some.Morning, Returned("power")), happened => happened is StepCarried { StepId: "power" });
        Assert.DoesNotContain(new StartupProcedure(Plan).Begin(Next, Some.Morning, ReturnedSkipping("papers", "filter")), happened => happened is StepCarried { StepId: "papers" });
    }

    [Fact]
    public void What_a_repeated_step_voids_is_done_again()
    {
        StartupPlan plan = Some.PlanOf([.. Steps.Select(step => step.Id == "filter" ? step with { Voids = ["power"] } : step)]);

        Assert.Equal(["papers", "draft-by"], new StartupProcedure(plan).Begin(Next, Some.Morning, Returned("filter")).OfType<StepCarried>().Select(step => step.StepId));
    }

    [Fact]
    public void No_step_of_gas_fire_exhaust_or_rooms_is_ever_carried()
    {
        StartupPlan plan = Some.Plan();
        StartupProcedure procedure = new(plan);
        procedure.Apply(new StartupBegan(Some.Morning, Next));

        Assert.All(plan.Steps.Where(step => step.Id != "papers"), step =>
            Assert.Throws<InvalidOperationException>(() => procedure.Apply(new StepCarried(Some.Morning, step.Id, Some.Morning, [], null, null))));
    }

    static StartupProcedure Following(IReadOnlyList<StartupEvent> returned)
    {
        StartupProcedure procedure = new(Plan);
        foreach (StartupEvent happened in procedure.Begin(Next, Some.Morning.AddDays(2), returned))
        {
            procedure.Apply(happened);
        }

        return procedure;
    }

    static string[] Walk(StartupProcedure procedure)
    {
        List<string> path = ["smell"];
        for (int moves = 0; path[^1] != "sign" && moves < 30; moves++)
        {
            Step step = Plan.Steps[Plan.IndexOf(path[^1])];
            Phrase phrase = step.Kind == StepKind.Ask ? new Phrase.Answer(step.Question!.Proper ? AnswerWord.Yes : AnswerWord.No, Some.Heard()) : new Phrase.Command(CommandWord.Done, Some.Heard());
            foreach (StartupEvent happened in procedure.Decide(phrase, Some.Morning.AddDays(2)))
            {
                procedure.Apply(happened);
                path.AddRange(happened is StepEntered entered ? [entered.StepId] : []);
            }
        }

        return [.. path];
    }

    static IReadOnlyList<StartupEvent> Returned(params string[] steps) => ReturnedSkipping("", steps);

    static IReadOnlyList<StartupEvent> ReturnedSkipping(string skips, params string[] steps)
    {
        LiveJob job = new(Plan);
        for (int moves = 0; job.Procedure.Phase != Phase.Finished && moves < 40; moves++)
        {
            Step step = Plan.Steps[Plan.IndexOf(job.Step)];
            _ = step.Id == skips ? job.Say(CommandWord.SkipStep).Dictate("no papers")
                : step.Kind == StepKind.Read ? job.Say("line_voltage", 118m).Say("control_voltage", 24m).Say(CommandWord.Next)
                : step.Id == "draft-by" ? job.Choose("fan")
                : step.Kind == StepKind.Ask ? job.Say(step.Question!.Proper ? AnswerWord.Yes : AnswerWord.No)
                : step.Kind == StepKind.Sign ? job.Say(CommandWord.Finish).Say(AnswerWord.Confirm)
                : job.Say(CommandWord.Done);
        }

        Assert.True(job.Procedure.IsSigned);
        return [.. job.Log, .. job.Procedure.Review("L. Ead", ReviewOutcome.Returned, "look again", job.Present, [.. steps])];
    }

    static Step Cold(string id, StepKind kind) => new() { Id = id, Section = "Section", Title = $"Title of {id}", Kind = kind, Do = $"Do {id}." };
}
