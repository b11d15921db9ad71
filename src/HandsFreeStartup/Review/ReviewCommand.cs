using System.Collections.Immutable;
using System.CommandLine;
using HandsFreeStartup.Fleet;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Review;

/// <summary>The command <c>review</c>: what the lead technician must know about one job, or about all jobs of a folder.</summary>
public static class ReviewCommand
{
    static readonly Argument<string?> Target = new("JOB|FOLDER") { Description = "A job, or a folder of jobs with the folders below; the folder of the records if nothing is given.", Arity = ArgumentArity.ZeroOrOne };
    static readonly Option<bool> Json = new("--json") { Description = "Write JSON (review.schema.json)." };
    static readonly Option<bool> Plain = new("--plain") { Description = "Lines instead of a screen (always so for a folder, and when the output is no terminal)." };
    static readonly Option<string?> Csv = new("--csv") { Description = "Write all readings and results to a table.", HelpName = "FILE" };
    static readonly Option<bool> Fresh = new("--fresh") { Description = "Read every record again, whatever the index knows." };
    static readonly Option<bool> Accept = new("--accept") { Description = "Accept the record; needs --lead." };
    static readonly Option<bool> Return = new("--return") { Description = "Return the record; needs --lead and --remark." };
    static readonly Option<string?> Lead = new("--lead") { Description = "Who reviews and signs for it.", HelpName = "NAME" };
    static readonly Option<bool> Rehearsals = new("--rehearsals") { Description = "How the trainees get on: one line a rehearsal." };
    static readonly Option<string?> Remark = new("--remark") { Description = "What is to be said or done about it.", HelpName = "TEXT" };

    static readonly Option<string[]> Steps = new("--step") { Description = "With --return: a step that is to be done again, by its id. Where steps are named, a job that follows carries over what stands of the others.", HelpName = "ID", AllowMultipleArgumentsPerToken = true };

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Command command = new("review", "Findings of one job or of a folder of jobs; exit code 1 when something must be looked at.")
        {
            Target, Json, Plain, Csv, Fresh, Accept, Return, Lead, Remark, Steps, Rehearsals, FleetOptions.From, FleetOptions.Trust, FleetOptions.PasswordFile,
        };
        foreach (Option option in FleetSelection.Options)
        {
            command.Add(option);
        }

        command.SetAction(Run);
        return command;
    }

    static Task<int> Run(ParseResult parsed, CancellationToken cancellation) =>
        parsed.GetValue(FleetOptions.From) is { } address ? RunFleet(parsed, address, cancellation) : Task.FromResult(RunFiles(parsed));

    static async Task<int> RunFleet(ParseResult parsed, string address, CancellationToken cancellation)
    {
        if (parsed.GetValue(Csv) is not null)
        {
            throw new WrongUseException("With --from, a table of all values is written by fleet --parquet FILE: leave out --csv.");
        }

        await using FleetDatabase database = await FleetDatabase.Open(FleetOptions.Address(parsed, address), cancellation);
        FleetReview review = new(parsed, database);
        bool gives = parsed.GetValue(Accept) || parsed.GetValue(Return);
        return (parsed.GetValue(Target), gives) switch
        {
            (null, true) => throw new WrongUseException("One record at a time is accepted or returned: name the job."),
            (null, false) => await review.List(parsed.GetValue(Json), cancellation),
            ({ } job, true) => await review.Give(job, parsed.GetValue(Lead), Outcome(parsed), parsed.GetValue(Remark), TimeProvider.System, cancellation),
            ({ } job, false) => await review.Tell(job, parsed.GetValue(Json), cancellation),
        };
    }

    static int RunFiles(ParseResult parsed)
    {
        DataFolder data = DataFolder.Of(parsed);
        if (parsed.GetValue(Rehearsals))
        {
            parsed.InvocationConfiguration.Output.Write(Rehearse.TraineeTable.Of(Rehearse.Progress.Read(data)));
            return ExitCode.Done;
        }

        string target = parsed.GetValue(Target) ?? data.Jobs;
        bool gives = parsed.GetValue(Accept) || parsed.GetValue(Return);
        return Directory.Exists(target) && !gives ? RunFolder(parsed, target, data)
            : Directory.Exists(target) ? throw new WrongUseException("One record at a time is accepted or returned: name the job.")
            : parsed.GetValue(Target) is null ? throw new WrongUseException($"There are no records in {target} yet. Name a job or a folder, or move the folder with --data.")
            : gives ? GiveWord(parsed, NoRehearsal.Checked(JobFile.Find(data, target)))
            : RunJob(parsed, NoRehearsal.Checked(JobFile.Find(data, target)));
    }

    static int RunFolder(ParseResult parsed, string folder, DataFolder data)
    {
        TextWriter output = parsed.InvocationConfiguration.Output;
        if (parsed.GetValue(Csv) is { } table)
        {
            return Export(parsed, table, FolderOfRecords.Of(folder, data).Records);
        }

        IReadOnlyList<FolderEntry> entries = ReviewedFolder.Read(folder, data, parsed.GetValue(Fresh));
        if (parsed.GetValue(Json))
        {
            ReviewJson.Write(entries, output);
        }
        else
        {
            ReviewText.Write(entries, output);
        }

        return CodeOf(entries.Any(entry => entry.Review.MustBeLookedAt));
    }

    static int RunJob(ParseResult parsed, string path)
    {
        if (parsed.GetValue(Csv) is { } table)
        {
            return Export(parsed, table, [path]);
        }

        TextWriter output = parsed.InvocationConfiguration.Output;
        ReviewedRecord record = ReviewedRecord.Read(path);
        if (parsed.GetValue(Json))
        {
            ReviewJson.Write([new FolderEntry(record.Path, record.Review, record.Checkpoint)], output);
        }
        else if (parsed.GetValue(Plain) || Console.IsOutputRedirected || Console.IsInputRedirected)
        {
            ReviewText.Write(record, output);
        }
        else
        {
            record = ReviewScreen.Run(record, parsed.GetValue(Lead) ?? "", TimeProvider.System);
        }

        return CodeOf(record.Review.MustBeLookedAt);
    }

    static int GiveWord(ParseResult parsed, string path)
    {
        parsed.InvocationConfiguration.Output.WriteLine(
            LeadsWord.Record(path, parsed.GetValue(Lead) ?? "", Outcome(parsed), parsed.GetValue(Remark) ?? "", TimeProvider.System, StepsOf(parsed)));
        return ExitCode.Done;
    }

    static ImmutableArray<string> StepsOf(ParseResult parsed) => parsed.GetValue(Steps) is { Length: > 0 } steps
        ? parsed.GetValue(Return) ? [.. steps] : throw new WrongUseException("Steps are named with --return only: leave out --step.")
        : [];

    static ReviewOutcome Outcome(ParseResult parsed) => parsed.GetValue(Accept) && parsed.GetValue(Return)
        ? throw new WrongUseException("A record is either accepted or returned: leave out one of the two.")
        : parsed.GetValue(Accept) ? ReviewOutcome.Accepted : ReviewOutcome.Returned;

    static int Export(ParseResult parsed, string table, IEnumerable<string> records)
    {
        (int rows, int unreadable) = ReadingsCsv.Write(table, records);
        parsed.InvocationConfiguration.Output.WriteLine(FormattableString.Invariant($"{rows} values: {table}"));
        if (unreadable > 0)
        {
            parsed.InvocationConfiguration.Error.WriteLine(FormattableString.Invariant($"{unreadable} records could not be read and are not in it; review names them."));
        }

        return CodeOf(unreadable > 0);
    }

    static int CodeOf(bool mustBeLookedAt) => mustBeLookedAt ? ExitCode.FoundSomething : ExitCode.Done;
}
