using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using HandsFreeStartup.Fleet.Publishing;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Reports.Review;
using HandsFreeStartup.Review;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Publish;

/// <summary>What the review makes of a record, as the firm's database keeps it.</summary>
static class PublishedRecord
{
    /// <summary>Changes with every program that might work anything out differently.</summary>
    public static string Rules { get; } = Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(string.Join(
        ' ', new[] { typeof(JobReview), typeof(StartupProcedure), typeof(Calculations.Judgement.Verdict), typeof(JobToPublish), typeof(PublishedRecord) }.Select(type => type.Module.ModuleVersionId)))).AsSpan(0, 8));

    /// <summary>Reads and verifies a record, and works out everything that is published of it.</summary>
    /// <param name="path">The job's file.</param>
    /// <returns>The job, or why it is not published.</returns>
    public static (JobToPublish? Job, KeptBack? Why) Read(string path)
    {
        if (StoredJob.IsInUse(path))
        {
            return (null, new KeptBack("under way", IsWrong: false));
        }

        try
        {
            return Of(path, CarriedRecord.Read(path));
        }
        catch (Exception error) when (error is LogException or ChecklistFileException)
        {
            return (null, new KeptBack(error.Message, IsWrong: true));
        }
        catch (Exception error) when (Damage.Explains(error))
        {
            return (null, new KeptBack("the record cannot be reviewed: its events contradict one another", IsWrong: true));
        }
    }

    /// <summary>Works out everything that is published of a record.</summary>
    /// <param name="path">The job's file, for messages.</param>
    /// <param name="record">The record.</param>
    public static (JobToPublish? Job, KeptBack? Why) Of(string path, CarriedRecord record)
    {
        if (!record.Verification.IsSound)
        {
            return (null, new KeptBack($"does not verify: {record.Verification.Findings[0].Message}", IsWrong: true));
        }

        if (record.Happened is not [StartupBegan began, ..])
        {
            return (null, new KeptBack("holds no start-up", IsWrong: true));
        }

        if (began.Job.Mark is { } mark)
        {
            return (null, new KeptBack($"a {mark.ToLowerInvariant()}", IsWrong: false));
        }

        StartupPlan plan = UserFile.PlanOf(began.Job);
        JobReview review = JobReview.Of(plan, record.Happened, ReviewedRecord.StateOf(record.Verification));
        return review.Status is not (JobStatus.Signed or JobStatus.OutOfService or JobStatus.Accepted or JobStatus.Returned) ? (null, new KeptBack(ReviewText.Of(review.Status).ToLowerInvariant(), IsWrong: false))
            : (new JobToPublish
            {
                Path = path,
                JobId = review.JobId,
                Status = FleetSelection.Word(review.Status),
                MustBeLookedAt = review.MustBeLookedAt,
                Began = review.Began!.Value,
                Ended = review.Ended!.Value,
                Technician = review.Technician,
                Model = plan.Appliance.Id,
                Appliance = review.Appliance,
                Rules = Rules,
                Findings = [.. review.Findings.Select(Of)],
                Values = [.. ReadingRow.Of(plan, record.Happened).Select(Of)],
                Record = record,
            }, null);
    }

    static FleetFinding Of(ReviewFinding finding) => new(finding.Rule, (int)finding.Weight, finding.At, finding.StepId, finding.Text, finding.Clips, finding.IsException);

    static FleetValue Of(ReadingRow row) => new()
    {
        At = row.At,
        Step = row.StepId,
        Scope = row.Scope,
        Quantity = row.Quantity,
        Value = Number(row.Value),
        Shown = row.Value,
        Unit = row.Unit,
        Uncertainty = Number(row.ExpandedUncertainty),
        Lower = Number(row.Lower),
        Upper = Number(row.Upper),
        LimitSource = row.LimitSource,
        Verdict = row.Verdict,
        State = row.State,
        Heard = row.Heard,
        Certainty = row.Certainty,
        Clip = row.Clip,
    };

    static double? Number(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) ? number : null;
}

/// <summary>Why a record is not published.</summary>
/// <param name="Why">In words.</param>
/// <param name="IsWrong">Whether somebody must look at it; an unfinished job is only not yet at its end.</param>
sealed record KeptBack(string Why, bool IsWrong);
