using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Storage.Tests.Support;

namespace HandsFreeStartup.Storage.Tests;

/// <summary>Whatever going back reopened has its closing step ahead of it again, on every plan, whichever branch is taken afterwards.</summary>
public sealed class GoingBackTests
{
    /// <summary>How many steps back: a few, across a chapter, and all the way.</summary>
    static readonly int[] Depths = [1, 2, 3, 5, 8, 13, 21, 34, 200];

    /// <summary>Where no answer decides a branch.</summary>
    static readonly int[] FewerDepths = [2, 200];

    public static TheoryData<string, string, string, string> Rows
    {
        get
        {
            TheoryData<string, string, string, string> rows = [];
            foreach (object[] row in ShippedPlans.Rows.Where(row => (StageOrder)row[4] == StageOrder.AsWritten))
            {
                rows.Add((string)row[0], (string)row[1], (string)row[2], (string)row[3]);
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void From_every_step_back_and_forward_again_by_the_other_branch_all_is_closed_before_it_is_signed(string checklist, string appliance, string site, string occasion)
    {
        StartupPlan plan = ShippedPlans.Plan(checklist, appliance, site, occasion);
        bool hasBranch = plan.Steps.Any(step => step.Question?.Decides is not null);
        List<string> wrong = [];
        int signed = 0;
        foreach (bool first in hasBranch ? new[] { true, false } : [true])
        {
            Walker walker = new(plan) { TakesFirst = first };
            for (; walker.Job.Procedure.Phase == Procedure.Phase.Asking; walker.DoStep())
            {
                foreach (int depth in (hasBranch ? Depths : FewerDepths).Where(depth => depth <= plan.IndexOf(walker.Job.Step) || depth == 200))
                {
                    Walker back = new(plan, Back(new LiveJob(walker.Job), depth)) { TakesFirst = !first };
                    back.GoTo(_ => false);
                    signed += back.Job.Procedure.IsSigned ? 1 : 0;
                    wrong.AddRange(OpenAt(back.Job.Log).Select(open => $"{depth} back from {walker.Job.Step}: {open}"));
                    if (!back.Job.Procedure.IsSigned)
                    {
                        wrong.Add($"{depth} back from {walker.Job.Step}: not signed, {back.Job.Step}, {back.Job.Last.OfType<CommandRefused>().LastOrDefault()?.Reason.Shown}");
                    }
                }
            }
        }

        Assert.Empty(wrong);
        Assert.True(signed > plan.Steps.Length, $"only {signed} walks");
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void From_every_step_to_an_earlier_one_by_name_and_forward_again_all_is_closed_before_it_is_signed(string checklist, string appliance, string site, string occasion)
    {
        StartupPlan plan = ShippedPlans.Plan(checklist, appliance, site, occasion);
        List<string> wrong = [];
        int signed = 0;
        Walker walker = new(plan);
        for (; walker.Job.Procedure.Phase == Procedure.Phase.Asking; walker.DoStep())
        {
            foreach (int depth in FewerDepths.Append(21).Select(depth => Math.Min(depth, plan.IndexOf(walker.Job.Step))).Where(depth => depth > 0).Distinct())
            {
                string target = plan.Steps[plan.IndexOf(walker.Job.Step) - depth].Id;
                LiveJob job = new LiveJob(walker.Job).Give(new Phrase.Jump(new SpokenStep(target, ""), Evidence.Typed("")));
                if (job.Procedure.Phase != Procedure.Phase.Jumping)
                {
                    continue;
                }

                HashSet<string> openThen = [.. OpenAt([.. job.Log.TakeWhile(happened => happened is not StepDone done || done.StepId != target)])];
                job.Say(AnswerWord.Confirm);
                wrong.AddRange(openThen.Except(OpenAt(job.Log)).Select(thing => $"{walker.Job.Step} to {target}: {thing} was open, and is closed"));
                Walker back = new(plan, job);
                back.GoTo(_ => false);
                signed += back.Job.Procedure.IsSigned ? 1 : 0;
                wrong.AddRange(OpenAt(back.Job.Log).Select(open => $"{walker.Job.Step} to {target}: {open}"));
                if (!back.Job.Procedure.IsSigned)
                {
                    wrong.Add($"{walker.Job.Step} to {target}: not signed, {back.Job.Step}, {back.Job.Last.OfType<CommandRefused>().LastOrDefault()?.Reason.Shown}");
                }
            }
        }

        Assert.Empty(wrong);
        Assert.True(signed > plan.Steps.Length, $"only {signed} walks");
    }

    static LiveJob Back(LiveJob job, int depth)
    {
        string before = "";
        for (int times = 0; times < depth && job.Step != before; times++)
        {
            before = job.Step;
            job.Say(CommandWord.GoBack);
        }

        return job;
    }

    /// <summary>Read from the log alone.</summary>
    static IEnumerable<string> OpenAt(IReadOnlyList<StartupEvent> log)
    {
        HashSet<string> open = [];
        foreach (StartupEvent happened in log)
        {
            _ = happened switch
            {
                ThingOpened opened => open.Add(opened.Thing.Name),
                ThingClosed closed => open.Remove(closed.Name),
                _ => false,
            };
        }

        return open;
    }
}
