using System.Globalization;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Storage.Tests.Support;

namespace HandsFreeStartup.Storage.Tests.Adversary;

/// <summary>Whole jobs with an unsafe fact in each, driven by somebody who wants the signature: none may be signed against its log.</summary>
public sealed class AdversaryTests
{
    /// <summary>How many jobs; more by the variable of that name.</summary>
    const string Jobs = "HANDSFREE_ADVERSARY_JOBS";

    const int FewestJobs = 20_000;

    static int JobsOfARow => (int.TryParse(Environment.GetEnvironmentVariable(Jobs), CultureInfo.InvariantCulture, out int wanted) ? wanted : FewestJobs) / Rows.Count + 1;

    public static TheoryData<string, string, string, string, StageOrder> Rows => ShippedPlans.Rows;

    [Theory]
    [MemberData(nameof(Rows))]
    public void No_unsafe_job_is_ever_signed(string checklist, string appliance, string site, string occasion, StageOrder order)
    {
        AdversaryRun run = AdversaryRun.Of(EditedRecord.JobOf(checklist, appliance, site, occasion, order), 0, JobsOfARow);

        Assert.Empty(run.Wrong);
        Assert.True(run.Facts >= 60, $"only {run.Facts} facts");
        Assert.True(run.Signed > 0, "nobody reached a signature, so nothing was tried");
    }
}
