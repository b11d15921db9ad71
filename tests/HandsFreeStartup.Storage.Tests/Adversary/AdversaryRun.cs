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
        IReadOnlyDictionary<string, (JobDescription Job, StartupPlan Plan)> unstated = facts.Select(fact => fact.Unstated).OfType<string>().ToDictionary(id => id, id => Without(description, id));
        ConcurrentBag<string> wrong = [];
        int signed = 0;
        Parallel.For(first, first + jobs, job =>
        {
            UnsafeFact fact = facts[job % facts.Count];
            (JobDescription led, StartupPlan by) = fact.Unstated is { } id ? unstated[id] : (description, plan);
            Saboteur saboteur = new(by, fact, new Random(job), led);
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

            LogJudge judge = new(by, saboteur.Job.Log, saboteur.Job.Times);
            Interlocked.Add(ref signed, judge.IsSigned ? 1 : 0);
            if (judge.Violations() is { Count: > 0 } violations)
            {
                wrong.Add($"job {job}, {fact.Name}: {string.Join("; ", violations.Distinct())}");
            }
        });
        return new AdversaryRun(jobs, facts.Count, signed, wrong);
    }

    /// <summary>The same job at a site that does not state how well that field is read.</summary>
    static (JobDescription Job, StartupPlan Plan) Without(JobDescription description, string fieldId)
    {
        string text = string.Join('\n', description.Site.Text.Split('\n').Where(line => !line.Contains($"field: {fieldId},", StringComparison.Ordinal)));
        JobDescription job = description with { Site = UserFile.Copy(description.Site.Name, text) };
        return (job, UserFile.PlanOf(job));
    }
}
