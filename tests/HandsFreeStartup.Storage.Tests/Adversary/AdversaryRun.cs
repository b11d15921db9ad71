using System.Collections.Concurrent;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Storage.Tests.Adversary;

/// <summary>What came of many jobs of the same files, each with an unsafe fact in it.</summary>
/// <param name="Jobs">How many.</param>
/// <param name="Facts">How many different facts.</param>
/// <param name="Signed">How many reached a signature.</param>
/// <param name="Wrong">What speaks against a signature, by job; empty where each was rightly signed or not at all.</param>
sealed record AdversaryRun(int Jobs, int Facts, int Signed, IReadOnlyCollection<string> Wrong)
{
    /// <summary>Runs the jobs of these numbers; the same number is the same job.</summary>
    public static AdversaryRun Of(JobDescription description, int first, int jobs)
    {
        StartupPlan plan = UserFile.PlanOf(description);
        IReadOnlyList<UnsafeFact> facts = UnsafeFact.Of(plan);
        ConcurrentBag<string> wrong = [];
        int signed = 0;
        Parallel.For(first, first + jobs, job =>
        {
            UnsafeFact fact = facts[job % facts.Count];
            Saboteur saboteur = new(plan, fact, new Random(job), description);
            try
            {
                saboteur.Work();
            }
            catch (Exception exception)
            {
                wrong.Add($"job {job}, {fact.Name}: the program ended with {exception.GetType().Name}: {exception.Message}");
                return;
            }

            if (saboteur.GoneOnWith is { } edited)
            {
                wrong.Add($"job {job}, {fact.Name}: it was gone on with after {edited}");
            }

            LogJudge judge = new(plan, saboteur.Job.Log, saboteur.Job.Times);
            Interlocked.Add(ref signed, judge.IsSigned ? 1 : 0);
            if (judge.Violations() is { Count: > 0 } violations)
            {
                wrong.Add($"job {job}, {fact.Name}: {string.Join("; ", violations.Distinct())}");
            }
        });
        return new AdversaryRun(jobs, facts.Count, signed, wrong);
    }
}
