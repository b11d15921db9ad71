using System.CommandLine;
using HandsFreeStartup.Doors;
using HandsFreeStartup.NewJob;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Reports.Summary;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.Index;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Forget;

/// <summary>The command <c>forget</c>: removes names, free speech and recordings from a record, which stays verifiable.</summary>
public static class ForgetCommand
{
    static readonly Argument<string> Job = new("JOB") { Description = "The job's file, or its name in the folder of the records." };
    static readonly Option<bool> KeepReadings = new("--keep-readings") { Description = "What is kept: readings, results, steps, and who signed." };
    static readonly Option<string?> By = new("--by") { Description = "Who removes; the record tells it.", HelpName = "NAME" };

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Command command = new("forget", "Remove customer, address, free speech and recordings from a record for good; readings stay and the record stays verifiable.") { Job, KeepReadings, By };
        command.SetAction(Run);
        return command;
    }

    static int Run(ParseResult parsed)
    {
        DataFolder data = DataFolder.Of(parsed);
        string path = JobFile.Find(data, parsed.GetRequiredValue(Job));
        if (!parsed.GetValue(KeepReadings))
        {
            throw new WrongUseException($"Say --keep-readings: names, free speech and recordings are removed for good, readings are kept. To lose everything, delete {path} by hand.");
        }

        string by = GivenName.Of(parsed.GetValue(By), "The record tells who removed: give --by NAME.");
        TextWriter output = parsed.InvocationConfiguration.Output;
        Forgotten forgotten;
        string? checkpoint;
        int sites;
        using (StartupLog log = StartupLog.Open(path, TimeProvider.System))
        {
            // Before the record: once that has forgotten where it was, nobody can find the kept place again.
            sites = log.ReadAll() is [StartupBegan began, ..] ? new KeptFiles(data).RemoveSitesLike(began.Job.Site) : 0;
            forgotten = log.ForgetPersonalData(by);
            RewriteSummary(log);
            checkpoint = log.Checkpoint?.ToString();
        }

        (int copies, int unfinished) = PersonalFiles.RemoveCopies(path);
        int notes = data.ForgetFailures();
        (int folders, IReadOnlyList<string> left) = ScratchFolder.RemoveAbandoned(TimeProvider.System);
        using (JobIndex index = JobIndex.Open(data.ReviewIndex))
        {
            index.Write([], [Path.GetFullPath(path)]);
        }

        bool isNothing = forgotten.Texts + forgotten.Recordings + forgotten.Photos + copies + unfinished + notes + folders + sites == 0;
        output.WriteLine(isNothing ? "Nothing was left to remove." : FormattableString.Invariant(
            $"Removed: {forgotten.Texts} texts, {forgotten.Recordings} recordings and {forgotten.Photos} photos. The record stays verifiable: {checkpoint}"));
        if (copies + unfinished + notes + folders + sites > 0)
        {
            output.WriteLine($"Removed too: {Numbers.Count(copies, "copy", "copies")} beside the record, {Numbers.Count(unfinished, "unfinished file")}, {Numbers.Count(notes, "note")} of failures, {Numbers.Count(folders, "temporary folder")} of killed programs, {Numbers.Count(sites, "kept place")}.");
        }

        foreach (string one in forgotten.OutOfReach.Concat(left))
        {
            output.WriteLine($"Out of reach: {one}.");
        }

        output.WriteLine("Out of reach: copies that were printed, sent, backed up or written to another folder, and the site file that the job began with. They still hold the names.");
        return ExitCode.Done;
    }

    /// <summary>The summary beside the record named the customer; it is written anew from what is left.</summary>
    static void RewriteSummary(StartupLog log)
    {
        string summary = Path.ChangeExtension(log.Path, ".txt");
        IReadOnlyList<StartupEvent> events = log.ReadAll();
        if (!File.Exists(summary) || events is not [StartupBegan began, ..])
        {
            return;
        }

        try
        {
            File.Delete(summary);
            string text = StartupSummary.Of(UserFile.PlanOf(began.Job), [.. events.Where(happened => happened is not (RecordReviewed or PersonalDataForgotten))], log.Checkpoint?.ToString());
            WholeFile.WriteText(summary, text, "The summary");
        }
        catch (Exception error) when (error is ChecklistFileException || Damage.Explains(error))
        {
            // Without its files the job cannot be summed up; the old summary is gone all the same.
        }
    }
}
