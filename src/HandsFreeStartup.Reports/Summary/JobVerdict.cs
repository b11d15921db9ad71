using HandsFreeStartup.Reports.Facts;

namespace HandsFreeStartup.Reports.Summary;

/// <summary>The verdict over a job in one sentence.</summary>
static class JobVerdict
{
    public static string Sentence(StartupFacts facts, int exceptions, int openQuestions)
    {
        string open = CopyVerdict.Counted(exceptions, openQuestions);
        int done = facts.Steps.Count(step => step.End == StepEnd.Done);
        return facts.End switch
        {
            JobEnd.Signed => $"SIGNED by {facts.EndText}{open}.",
            JobEnd.OutOfService => $"NOT PUT INTO SERVICE: {facts.EndText}{open}.",
            JobEnd.Stopped => $"STOPPED FOR SAFETY, {facts.EndText}, and not resumed: not put into service{open}.",
            _ => FormattableString.Invariant($"UNFINISHED: {done} of {facts.Steps.Count} steps done, not signed{open}."),
        };
    }
}
