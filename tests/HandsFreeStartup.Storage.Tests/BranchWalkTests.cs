using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Storage.Tests.Support;

namespace HandsFreeStartup.Storage.Tests;

/// <summary>Every branch of every shipped checklist, walked by phrases to each ending that it can have.</summary>
public sealed class BranchWalkTests
{
    public static TheoryData<string, string, string, string, StageOrder> Rows => ShippedPlans.Rows;

    [Theory]
    [MemberData(nameof(Rows))]
    public void Walked_as_it_should_go_it_is_signed_with_nothing_open(string checklist, string appliance, string site, string occasion, StageOrder order)
    {
        StartupPlan plan = ShippedPlans.Plan(checklist, appliance, site, occasion, order);

        Walker walker = new Walker(plan).GoTo(_ => false);

        Assert.True(walker.Job.Procedure.IsSigned, walker.Job.Last.OfType<CommandRefused>().LastOrDefault()?.Reason.Shown ?? walker.Job.Step);
        AssertNothingOpen(walker, plan);
        Assert.Equal(
            plan.Steps.Where(step => step.OnlyFor.DraftBy != DraftBy.Natural).Select(step => step.Id).Order(),
            walker.Job.Log.OfType<StepDone>().Select(done => done.StepId).Distinct().Order());
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Adjusted_and_measured_again_it_is_signed_with_no_void_reading(string checklist, string appliance, string site, string occasion, StageOrder order)
    {
        StartupPlan plan = ShippedPlans.Plan(checklist, appliance, site, occasion, order);
        Walker walker = new(plan);
        int adjusted = 0;
        foreach (Step adjust in plan.Steps.Where(step => step.Kind == StepKind.Adjust))
        {
            DeclaredLimit limit = plan.Limit(adjust.Readings[0].LimitName, adjust.Scope)!;
            walker.GoTo(step => step.Kind == StepKind.Read && step.Scope == adjust.Scope && step.Readings.Any(demand => demand.FieldId == adjust.Readings[0].FieldId));
            walker.Job.Say(adjust.Readings[0].FieldId, limit.Upper!.Value + 0.20m).Say(CommandWord.Next);
            walker.GoTo(step => step.Id == adjust.Id);
            Assert.Equal(adjust.Id, walker.Job.Step);
            walker.DoStep();
            adjusted++;
        }

        walker.GoTo(_ => false);

        Assert.True(walker.Job.Procedure.IsSigned);
        Assert.Equal(adjusted, walker.Job.Log.OfType<AdjustmentMade>().Count());
        AssertNothingOpen(walker, plan);
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void At_every_step_a_safety_phrase_stops_it_and_it_can_end_out_of_service_or_unfinished(string checklist, string appliance, string site, string occasion, StageOrder order)
    {
        StartupPlan plan = ShippedPlans.Plan(checklist, appliance, site, occasion, order);
        Walker walker = new(plan);
        for (int moves = 0; walker.Job.Procedure.Phase == Phase.Asking; moves++)
        {
            Assert.True(moves < 400);
            foreach (CommandWord word in new[] { CommandWord.GasSmell, CommandWord.EmergencyStop })
            {
                StartupProcedure stopped = walker.Job.Replayed();
                Give(stopped, walker, new Phrase.Command(word, Evidence.Typed("")));
                Assert.Equal((Phase.Stopped, false), (stopped.Phase, stopped.IsSigned));
                Give(stopped, walker, new Phrase.Command(CommandWord.Finish, Evidence.Typed("")), new Phrase.Answer(AnswerWord.Confirm, Evidence.Typed("")), new Phrase.Dictation(Evidence.Typed("gas smelled")));
                Assert.Equal((Phase.Finished, false), (stopped.Phase, stopped.IsSigned));
            }

            if (walker.Step.Kind != StepKind.Sign)
            {
                StartupProcedure ended = walker.Job.Replayed();
                Give(ended, walker, new Phrase.Command(CommandWord.Finish, Evidence.Typed("")), new Phrase.Answer(AnswerWord.Confirm, Evidence.Typed("")), new Phrase.Dictation(Evidence.Typed("no time")), new Phrase.Choice("owners-wish", Evidence.Typed("")));
                for (int steps = 0; ended.Phase == Phase.Asking && steps < 20; steps++)
                {
                    Give(ended, walker, new Phrase.Command(CommandWord.Done, Evidence.Typed("")), new Phrase.Answer(AnswerWord.Yes, Evidence.Typed("")));
                }

                Assert.Equal((Phase.Finished, false), (ended.Phase, ended.IsSigned));
                Assert.Empty(ended.View(walker.Job.Now).Open);
            }

            Assert.False(walker.Job.Replayed().IsSigned, "unfinished");
            walker.DoStep();
        }

        Assert.True(walker.Job.Procedure.IsSigned);
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void A_wrong_answer_to_any_question_leads_to_no_signature(string checklist, string appliance, string site, string occasion, StageOrder order)
    {
        StartupPlan plan = ShippedPlans.Plan(checklist, appliance, site, occasion, order);
        foreach (Step ask in plan.Steps.Where(step => step is { Kind: StepKind.Ask, Question.Choices.IsEmpty: true } && step.OnlyFor.DraftBy != DraftBy.Natural))
        {
            Walker walker = new Walker(plan).GoTo(step => step.Id == ask.Id);
            AnswerWord wrong = ask.Question!.Proper ? AnswerWord.No : AnswerWord.Yes;
            for (int times = 0; times < (ask.Question.StopsForGas ? 1 : ask.Question.UnsafeAfter ?? 3); times++)
            {
                walker.GoTo(step => step.Id == ask.Id).Job.Say(wrong);
            }

            Assert.Equal(ask.Question.Repeats.IsEmpty || ask.Question.UnsafeAfter is not null ? ask.Id : ask.Question.Repeats[0], walker.Job.Step);
            Assert.False(walker.Job.Procedure.IsSigned);
            if (ask.Question.StopsForGas)
            {
                Assert.Equal(Phase.Stopped, walker.Job.Procedure.Phase);
            }
            else if (ask.Question.UnsafeAfter is not null)
            {
                Assert.Equal(Phase.Condemning, walker.Job.Procedure.Phase);
                walker.Job.Say(AnswerWord.Confirm).MakeSafe();
                Assert.IsType<EndedOutOfService>(walker.Job.Last[^1]);
                Assert.Equal((Phase.Finished, false), (walker.Job.Procedure.Phase, walker.Job.Procedure.IsSigned));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void With_every_step_skipped_that_may_be_skipped_nothing_open_or_unproven_is_signed(string checklist, string appliance, string site, string occasion, StageOrder order)
    {
        StartupPlan plan = ShippedPlans.Plan(checklist, appliance, site, occasion, order);
        Walker walker = new(plan);
        for (int moves = 0; walker.Job.Procedure.Phase == Phase.Asking && moves < 400; moves++)
        {
            string before = walker.Job.Step;
            walker.Job.Say(CommandWord.SkipStep);
            if (walker.Job.Procedure.Phase == Phase.Dictating)
            {
                walker.Job.Dictate("not today");
            }

            if (walker.Job.Step == before)
            {
                walker.DoStep();
            }
        }

        Assert.Equal(walker.Job.Procedure.IsSigned, walker.Job.Procedure.Phase == Phase.Finished);
        Assert.All(plan.Steps.Where(step => step.IsSafetyStop), step => Assert.DoesNotContain(walker.Job.Log, happened => happened is StepSkipped skipped && skipped.StepId == step.Id));
        if (walker.Job.Procedure.IsSigned)
        {
            Assert.Empty(walker.Job.View.Open);
        }
    }

    /// <summary>Counted from the log alone, not by the procedure's own state.</summary>
    static void AssertNothingOpen(Walker walker, StartupPlan plan)
    {
        HashSet<string> open = [];
        HashSet<string> unproven = [];
        HashSet<ReadingKey> isVoid = [];
        HashSet<string> gasSide = [.. plan.Steps.SelectMany(step => step.Opens).Where(thing => thing.IsGasSide).Select(thing => thing.Name)];
        foreach (StartupEvent happened in walker.Job.Log)
        {
            switch (happened)
            {
                case ThingOpened opened:
                    open.Add(opened.Thing.Name);
                    break;
                case ThingClosed closed:
                    open.Remove(closed.Name);
                    unproven.UnionWith(gasSide.Contains(closed.Name) ? [closed.Name] : []);
                    break;
                case ThingProved proved:
                    unproven.Remove(proved.Name);
                    break;
                case ReadingVoided gone:
                    isVoid.Add(gone.Key);
                    break;
                case ReadingEntered entered:
                    isVoid.Remove(entered.Reading.Key);
                    break;
            }
        }

        Assert.Empty(open);
        Assert.Empty(unproven);
        Assert.Empty(isVoid);
        Assert.Empty(walker.Job.View.Open);
        Dictionary<string, bool> answers = walker.Job.Log.OfType<AnswerGiven>().GroupBy(given => given.StepId).ToDictionary(same => same.Key, same => same.Last().Answer);
        Assert.All(plan.Steps.Where(step => step is { Kind: StepKind.Ask, Question.Choices.IsEmpty: true } && step.OnlyFor.DraftBy != DraftBy.Natural), step => Assert.Equal(step.Question!.Proper, answers[step.Id]));
    }

    static void Give(StartupProcedure procedure, Walker walker, params Phrase[] phrases)
    {
        foreach (Phrase phrase in phrases)
        {
            foreach (StartupEvent happened in procedure.Decide(phrase, walker.Job.Now))
            {
                procedure.Apply(happened);
            }
        }
    }
}
