using System.CommandLine;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Languages;
using HandsFreeStartup.NewJob;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Rehearse;
using HandsFreeStartup.Reports.Summary;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.Index;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Forget;

/// <summary>The command <c>forget</c>: removes names, free speech and recordings from a record, which stays verifiable; or everything that a trainee rehearsed.</summary>
public static class ForgetCommand
{
    static readonly Argument<string?> Job = new("JOB") { Description = "The job's file, or its name in the folder of the records.", Arity = ArgumentArity.ZeroOrOne };
    static readonly Option<bool> KeepReadings = new("--keep-readings") { Description = "What is kept: readings, results, steps, and who signed." };
    static readonly Option<string?> By = new("--by") { Description = "Who removes; the record tells it.", HelpName = "NAME" };

    static readonly Option<string?> Trainee = new("--trainee") { Description = "Instead of a job: remove every rehearsal of this trainee, and how they went.", HelpName = "NAME" };

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Command command = new("forget", "Remove customer, address, free speech and recordings from a record for good; readings stay and the record stays verifiable.") { Job, KeepReadings, By, Trainee };
        command.SetAction(Run);
        return command;
    }

    static int Run(ParseResult parsed)
    {
        DataFolder data = DataFolder.Of(parsed);
        TextWriter output = parsed.InvocationConfiguration.Output;
        return (parsed.GetValue(Job), parsed.GetValue(Trainee)) switch
        {
            ({ } job, null) => OfJob(JobFile.Find(data, job), data, parsed, output),
            (null, { } trainee) => OfTrainee(GivenName.Of(trainee, "The name of the trainee is empty: review --rehearsals shows the names."), data, output),
            _ => throw new WrongUseException("Name either a job, or a trainee with --trainee NAME."),
        };
    }

    /// <summary>Nothing that a furnace depends on is lost, so nothing is kept.</summary>
    static int OfTrainee(string trainee, DataFolder data, TextWriter output)
    {
        (int notes, int folders, IReadOnlyList<string> left) = RemoveTraces(data);
        (int rehearsals, int lines, IReadOnlyList<string> unread) = new KeptRehearsals(data).RemoveOf(trainee);
        output.WriteLine($"Removed: {Numbers.Count(rehearsals, "rehearsal")} and {Numbers.Count(lines, "line")} of progress; {Numbers.Count(notes, "note")} of failures, {Numbers.Count(folders, "temporary folder")} of killed programs.");
        TellOutOfReach([.. left, .. unread], output);
        output.WriteLine("Out of reach: start-ups that this person worked on, for who signs a record answers for it; and whatever was printed, sent, backed up or written to another folder.");
        return ExitCode.Done;
    }

    static int OfJob(string path, DataFolder data, ParseResult parsed, TextWriter output)
    {
        if (NoRehearsal.IsOne(path))
        {
            throw new WrongUseException($"{path} is the record of a rehearsal: forget --trainee NAME removes all that somebody rehearsed.");
        }

        if (!parsed.GetValue(KeepReadings))
        {
            throw new WrongUseException($"Say --keep-readings: names, free speech and recordings are removed for good, readings are kept. To lose everything, delete {path} by hand.");
        }

        string by = GivenName.Of(parsed.GetValue(By), "The record tells who removed: give --by NAME.");
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
        (int notes, int folders, IReadOnlyList<string> left) = RemoveTraces(data);
        LetGo(data.ReviewIndex, path);
        LetGo(data.PublishIndex, path);

        bool isNothing = forgotten.Texts + forgotten.Recordings + forgotten.Photos + copies + unfinished + notes + folders + sites == 0;
        output.WriteLine(isNothing ? "Nothing was left to remove." : FormattableString.Invariant(
            $"Removed: {forgotten.Texts} texts, {forgotten.Recordings} recordings and {forgotten.Photos} photos. The record stays verifiable: {checkpoint}"));
        if (copies + unfinished + notes + folders + sites > 0)
        {
            output.WriteLine($"Removed too: {Numbers.Count(copies, "copy", "copies")} beside the record, {Numbers.Count(unfinished, "unfinished file")}, {Numbers.Count(notes, "note")} of failures, {Numbers.Count(folders, "temporary folder")} of killed programs, {Numbers.Count(sites, "kept place")}.");
        }

        TellOutOfReach([.. forgotten.OutOfReach, .. left], output);
        if (File.Exists(data.PublishIndex))
        {
            output.WriteLine("Out of reach: what was published of it. The next publish removes it from the firm's database, but not from the server's backups.");
        }

        output.WriteLine("Out of reach: copies that were printed, sent, backed up or written to another folder, and the site file that the job began with. They still hold the names.");
        return ExitCode.Done;
    }

    /// <summary>What failed or killed programs left behind may name anybody.</summary>
    static (int Notes, int Folders, IReadOnlyList<string> Left) RemoveTraces(DataFolder data)
    {
        int notes = data.ForgetFailures();
        (int folders, IReadOnlyList<string> left) = ScratchFolder.RemoveAbandoned(TimeProvider.System);
        return (notes, folders, left);
    }

    static void LetGo(string indexPath, string job)
    {
        if (File.Exists(indexPath))
        {
            using JobIndex index = JobIndex.Open(indexPath);
            index.Write([], [Path.GetFullPath(job)]);
        }
    }

    static void TellOutOfReach(IEnumerable<string> left, TextWriter output)
    {
        foreach (string one in left)
        {
            output.WriteLine($"Out of reach: {one}.");
        }
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
            StartupPlan plan = UserFile.PlanOf(began.Job);
            Language language = plan.Settings.Language is { } code && LanguageFiles.Codes.Contains(code) ? LanguageFiles.Find(code) : Language.English;
            string text = StartupSummary.Of(plan, [.. events.Where(happened => happened is not (RecordReviewed or PersonalDataForgotten))], log.Checkpoint?.ToString(), language);
            WholeFile.WriteText(summary, text, "The summary");
        }
        catch (Exception error) when (error is ChecklistFileException || Damage.Explains(error))
        {
            // Without its files the job cannot be summed up; the old summary is gone all the same.
        }
    }
}
