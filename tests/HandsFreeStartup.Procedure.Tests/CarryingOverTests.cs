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

    static string[] Walk(StartupProcedure procedure, StartupPlan? of = null)
    {
        StartupPlan plan = of ?? Plan;
        List<string> path = ["smell"];
        for (int moves = 0; path[^1] != "sign" && moves < 30; moves++)
        {
            Step step = plan.Steps[plan.IndexOf(path[^1])];
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

    static IReadOnlyList<StartupEvent> ReturnedSkipping(string skips, params string[] steps) => ReturnedOf(Plan, skips, steps);

    static IReadOnlyList<StartupEvent> ReturnedOf(StartupPlan plan, string skips, params string[] steps)
    {
        LiveJob job = new(plan);
        for (int moves = 0; job.Procedure.Phase != Phase.Finished && moves < 40; moves++)
        {
            Step step = plan.Steps[plan.IndexOf(job.Step)];
            _ = step.Id == skips ? job.Say(CommandWord.SkipStep).Dictate("no papers")
                : step.Kind == StepKind.Read ? job.Say("line_voltage", 118m).Say("control_voltage", 24m).Say(CommandWord.Next)
                : step.Id == "draft-by" ? job.Choose("fan")
                : step.Id == "color" ? job.Choose("natural")
                : step.Kind == StepKind.Ask ? job.Say(step.Question!.Proper ? AnswerWord.Yes : AnswerWord.No)
                : step.Kind == StepKind.Sign ? job.Say(CommandWord.Finish).Say(AnswerWord.Confirm)
                : job.Say(CommandWord.Done);
        }

        Assert.True(job.Procedure.IsSigned);
        return [.. job.Log, .. job.Procedure.Review("L. Ead", ReviewOutcome.Returned, "look again", job.Present, [.. steps])];
    }

    static Step Cold(string id, StepKind kind) => new() { Id = id, Section = "Section", Title = $"Title of {id}", Kind = kind, Do = $"Do {id}." };

    static string[] Carried(StartupPlan plan, IReadOnlyList<StartupEvent> returned) => [.. new StartupProcedure(plan).Begin(Next, Some.Morning.AddDays(2), returned).OfType<StepCarried>().Select(step => step.StepId)];

    static StartupPlan With(string id, Func<Step, Step> change) => Some.PlanOf([.. Steps.Select(step => step.Id == id ? change(step) : step)]);

    [Fact]
    public void What_comes_after_the_first_opening_of_gas_or_hangs_on_the_fire_is_never_carried()
    {
        StartupPlan late = Some.PlanOf([.. Steps.Where(step => step.Id != "filter").SelectMany(step => step.Id == "drill" ? [step, Cold("filter", StepKind.Do)] : new[] { step })]);
        Assert.Equal(["papers", "draft-by"], Carried(late, ReturnedOf(late, "", "power")));

        StartupPlan hangs = Some.PlanOf([.. Steps.SelectMany(step => step.Id == "power" ? [Cold("flame", StepKind.Do) with { AgainAfter = [Again.Stop] }, step] : new[] { step })]);
        Assert.Equal(["papers"], Carried(hangs, ReturnedOf(hangs, "", "filter")));
    }

    [Fact]
    public void What_hangs_on_something_that_is_done_again_is_done_again_too_however_long_the_chain()
    {
        StartupPlan chain = Some.PlanOf([.. Steps.Select(step => step.Id switch
        {
            "filter" => step with { Voids = ["draft-by"] },
            "draft-by" => step with { Voids = ["power"] },
            _ => step,
        })]);
        Assert.Equal(["papers"], Carried(chain, Returned("filter")));

        StartupPlan repeats = With("prove-port", step => step with { Question = step.Question! with { Repeats = ["papers"] } });
        Assert.Equal(["power", "draft-by"], Carried(repeats, Returned("filter")));
    }

    [Fact]
    public void A_step_with_an_exception_or_a_value_that_somebody_must_look_at_is_done_again()
    {
        LiveJob job = new(Plan);
        job.Say(AnswerWord.No).Say(CommandWord.Done).Say("line_voltage", 118m).Say("control_voltage", 24m).Say(CommandWord.Next);
        job.Procedure.Apply(new DictationAsked(job.Now, DictationPurpose.LimitReason));
        Assert.Equal(["papers", "draft-by"], Carried(Plan, Without(Returned("filter"), new ExceptionMade(job.Now, "power", DictationPurpose.LimitReason, "Control voltage", "is replaced", Some.Heard()))));

        Assert.Equal(["papers", "draft-by"], Carried(Plan, Changed(reading => reading with { Verdict = Calculations.Judgement.Verdict.Fail })));
        Assert.Equal(["papers", "draft-by"], Carried(Plan, Changed(reading => reading with { Evidence = reading.Evidence with { Certainty = Certainty.Red } })));
        Assert.Equal(["papers", "power", "draft-by"], Carried(Plan, Changed(reading => reading with { Evidence = reading.Evidence with { Certainty = Certainty.Amber } })));
        Assert.Equal(["papers", "power", "draft-by"], Carried(Plan, Changed(reading => reading with { Verdict = Calculations.Judgement.Verdict.Pass })));
    }

    /// <summary>The returned record with the exception while the voltages were read.</summary>
    static IReadOnlyList<StartupEvent> Without(IReadOnlyList<StartupEvent> returned, ExceptionMade made)
    {
        int at = returned.ToList().FindIndex(happened => happened is StepDone { StepId: "power" });
        return [.. returned.Take(at), new DictationAsked(made.At, made.Purpose), made, .. returned.Skip(at)];
    }

    /// <summary>The returned record with another line voltage.</summary>
    static IReadOnlyList<StartupEvent> Changed(Func<EnteredReading, EnteredReading> change) =>
        [.. Returned("filter").Select(happened => happened is ReadingEntered { Reading.Key.FieldId: "line_voltage" } entered ? entered with { Reading = change(entered.Reading) } : happened)];

    [Fact]
    public void A_choice_is_carried_with_the_branch_that_it_decided_and_not_with_what_was_chosen_elsewhere()
    {
        StartupPlan plan = Some.PlanOf([.. Steps.SelectMany(step => step.Id == "filter"
            ? [step, Cold("hood", StepKind.Do) with { OnlyFor = new() { DraftBy = DraftBy.Natural } }, Cold("inducer", StepKind.Do) with { OnlyFor = new() { DraftBy = DraftBy.Fan } }, Cold("color", StepKind.Ask) with { Question = new("Color?", true, "", false) { Choices = [new("natural", "red"), new("blue", "blue")] } }]
            : new[] { step })
            .Select(step => step.Id == "draft-by" ? step with { Question = new("Natural draft or fan?", true, "", false) { Choices = [new(Question.Natural, "natural"), new(Question.Fan, "fan")], Decides = Question.DecidesDraft } } : step)]);
        IReadOnlyList<StartupEvent> returned = ReturnedOf(plan, "", "filter", "hood", "inducer");

        IReadOnlyList<StartupEvent> events = new StartupProcedure(plan).Begin(Next, Some.Morning.AddDays(2), returned);
        Assert.Equal([null, null, "fan", "natural"], events.OfType<StepCarried>().Select(step => step.Choice));
        StartupProcedure procedure = new(plan);
        foreach (StartupEvent happened in events)
        {
            procedure.Apply(happened);
        }

        string[] path = Walk(procedure, plan);
        Assert.DoesNotContain("hood", path);
        Assert.Contains("inducer", path);
    }

    [Fact]
    public void A_limit_that_was_said_is_carried_as_it_was_said_last_unless_its_step_is_returned()
    {
        IReadOnlyList<StartupEvent> Said(params string[] steps)
        {
            IReadOnlyList<StartupEvent> returned = Returned(steps);
            LimitStated stated = new(Some.Morning, "power", new DeclaredLimit("line_voltage", 100m, 130m, "V", "from rating plate, spoken", false));
            return [.. returned.Take(3), stated, stated with { Limit = stated.Limit with { Upper = 132m } }, .. returned.Skip(3)];
        }

        LimitStated carried = Assert.Single(new StartupProcedure(Plan).Begin(Next, Some.Morning.AddDays(2), Said("filter")).OfType<LimitStated>());
        Assert.Equal((132m, "from rating plate, spoken, as said in job job-1", Some.Morning.AddDays(2)), (carried.Limit.Upper, carried.Limit.Source, carried.At));
        Assert.Single(new StartupProcedure(Plan).Begin(Next, Some.Morning.AddDays(2), Said("filter", "papers")).OfType<LimitStated>());
        Assert.Empty(new StartupProcedure(Plan).Begin(Next, Some.Morning.AddDays(2), Said("filter", "power")).OfType<LimitStated>());
    }

    [Fact]
    public void A_carried_reading_is_one_of_its_step()
    {
        IReadOnlyList<StartupEvent> events = new StartupProcedure(Plan).Begin(Next, Some.Morning.AddDays(2), Returned("filter"));
        StepCarried power = events.OfType<StepCarried>().Single(step => step.StepId == "power");
        StartupProcedure procedure = new(Plan);
        foreach (StartupEvent happened in events.TakeWhile(happened => happened is not StepCarried { StepId: "power" }))
        {
            procedure.Apply(happened);
        }

        CarriedReading foreign = power.Readings[0] with { Reading = power.Readings[0].Reading with { Key = new ReadingKey("room_co", "") } };
        Assert.Throws<InvalidOperationException>(() => procedure.Apply(power with { Readings = [power.Readings[0], foreign] }));
        procedure.Apply(power);
    }

    [Fact]
    public void A_reading_of_a_stage_is_carried_with_its_stage()
    {
        StartupPlan plan = With("power", step => step with { Scope = "before" });

        StepCarried power = new StartupProcedure(plan).Begin(Next, Some.Morning.AddDays(2), ReturnedOf(plan, "", "filter")).OfType<StepCarried>().Single(step => step.StepId == "power");
        Assert.All(power.Readings, reading => Assert.Equal("before", reading.Reading.Key.Scope));
        StartupProcedure procedure = new(plan);
        foreach (StartupEvent happened in new StartupProcedure(plan).Begin(Next, Some.Morning.AddDays(2), ReturnedOf(plan, "", "filter")))
        {
            procedure.Apply(happened);
        }
    }
}
