using System.CommandLine;
using HandsFreeStartup.Fleet;
using HandsFreeStartup.Review;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.Log;

namespace HandsFreeStartup.Verify;

/// <summary>The command <c>verify</c>: recomputes the hash chain of a job and compares the checkpoint of its copies.</summary>
public static class VerifyCommand
{
    static readonly Argument<string?> Job = new("JOB") { Description = "The job's file, or its name in the folder of the records; with --from, its name there, or nothing for all.", Arity = ArgumentArity.ZeroOrOne };
    static readonly Option<string?> Printed = new("--checkpoint")
    {
        Description = "The checkpoint printed on the copies, in quotes: \"41 events, ends 7F3A 19C2 88E0 12AB\".",
        HelpName = "TEXT",
    };

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Command command = new("verify", "Recompute the hashes of a record and compare the checkpoint of its copies.") { Job, Printed, FleetOptions.From, FleetOptions.Trust, FleetOptions.PasswordFile };
        foreach (Option option in FleetSelection.Options)
        {
            command.Add(option);
        }

        command.SetAction(Run);
        return command;
    }

    static Task<int> Run(ParseResult parsed, CancellationToken cancellation) =>
        parsed.GetValue(FleetOptions.From) is { } address ? RunFleet(parsed, address, cancellation) : Task.FromResult(RunFile(parsed));

    static async Task<int> RunFleet(ParseResult parsed, string address, CancellationToken cancellation)
    {
        if (parsed.GetValue(Printed) is not null)
        {
            throw new WrongUseException("A checkpoint is compared with the record of the van: leave out --from, or --checkpoint.");
        }

        await using FleetDatabase database = await FleetDatabase.Open(FleetOptions.Address(parsed, address), cancellation);
        return await new FleetVerification(parsed, database).Run(parsed.GetValue(Job), cancellation);
    }

    static int RunFile(ParseResult parsed)
    {
        string job = parsed.GetValue(Job) ?? throw new WrongUseException("Name the job that is to be verified, or a database with --from.");
        string path = JobFile.Find(DataFolder.Of(parsed), job);
        NoRehearsal.Check(path);
        Checkpoint? printed = parsed.GetValue(Printed) is { } text
            ? Checkpoint.Parse(text) ?? throw new WrongUseException($"'{text}' is no checkpoint. Write the number of events and the hexadecimal digits as printed, such as \"41 events, ends 7F3A 19C2 88E0 12AB\".")
            : null;
        return Report(path, StartupLogVerifier.Verify(path, printed), printed, parsed.InvocationConfiguration.Output);
    }

    static int Report(string path, Verification verification, Checkpoint? printed, TextWriter output)
    {
        output.WriteLine(path);
        foreach (LogFinding finding in verification.Findings)
        {
            output.WriteLine($"wrong: {finding.Message}");
        }

        if (verification.Redaction is { } redaction)
        {
            output.WriteLine(FormattableString.Invariant(
                $"redacted: on {redaction.At:yyyy-MM-dd HH:mm:ss zzz} by {redaction.By}: names, free speech and recordings before event {redaction.Sequence} were removed."));
        }

        foreach (string remark in verification.Remarks)
        {
            output.WriteLine($"note: {remark}");
        }

        if (!verification.IsSound)
        {
            return ExitCode.FoundSomething;
        }

        output.WriteLine($"sound: {verification.Checkpoint}");
        if (verification.Redaction is not null)
        {
            output.WriteLine("Everything that was not removed is as it was written.");
        }

        output.WriteLine(printed is null
            ? "Compare this with the checkpoint on the copies: without it a cut end, or a wholly rewritten record, cannot be told from a true one."
            : "It is the record that the checkpoint was printed for.");
        return ExitCode.Done;
    }
}
