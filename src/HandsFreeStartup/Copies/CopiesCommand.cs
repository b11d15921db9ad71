using System.CommandLine;
using System.Text;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Reports.Copies;
using HandsFreeStartup.Reports.Copies.Narrow;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Copies;

/// <summary>The command <c>copies</c>: the three copies of a job as PDF, and a narrow text for a pocket printer.</summary>
public static class CopiesCommand
{
    static readonly Argument<string> Job = new("JOB") { Description = "The job's file, or its name in the folder of the records." };
    static readonly Option<string?> Out = new("--out") { Description = "Folder for the copies, instead of that of the record. It is made if it is missing.", HelpName = "FOLDER" };
    static readonly Option<Paper> Size = new("--paper") { Description = "A4 or Letter.", HelpName = "a4|letter", DefaultValueFactory = _ => Paper.A4 };

    static readonly Option<int> Columns = new("--columns") { Description = "Width of the narrow text in characters.", HelpName = "32|48", DefaultValueFactory = _ => 48 };

    static readonly Option<bool> Charts = new("--chart") { Description = "Draw in the office copy every reading that was entered more than once, over time." };

    static readonly Option<bool> Derivations = new("--derivations") { Description = "Add to the customer copy and the office copy how each result came about: formula, inputs, steps, uncertainty, limit." };

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Columns.AcceptOnlyFromAmong("32", "48");
        Command command = new("copies", "Write the appliance copy, the customer copy and the office copy of a record, and a narrow text for a pocket printer.") { Job, Out, Size, Columns, Charts, Derivations };
        command.SetAction(Run);
        return command;
    }

    static int Run(ParseResult parsed)
    {
        string path = JobFile.Find(DataFolder.Of(parsed), parsed.GetRequiredValue(Job));
        CopySource source = Read(path);
        string folder = parsed.GetValue(Out) ?? Path.GetDirectoryName(Path.GetFullPath(path))!;
        Paper paper = parsed.GetValue(Size);
        foreach ((string name, byte[] bytes) in Made(path, source, paper, parsed))
        {
            parsed.InvocationConfiguration.Output.WriteLine(Write(folder, $"{Path.GetFileNameWithoutExtension(path)}-{name}", bytes));
        }

        foreach (string finding in source.Findings)
        {
            parsed.InvocationConfiguration.Error.WriteLine($"The record does not verify, and every copy says so: {finding}");
        }
        return source.Findings.Count == 0 ? ExitCode.Done : ExitCode.FoundSomething;
    }

    static (string Name, byte[] Bytes)[] Made(string path, CopySource source, Paper paper, ParseResult parsed)
    {
        try
        {
            return
            [
                ("appliance.pdf", StartupCopies.Appliance(source, paper)),
                ("customer.pdf", StartupCopies.Customer(source, paper, parsed.GetValue(Derivations))),
                ("office.pdf", StartupCopies.Office(source, paper, parsed.GetValue(Charts), parsed.GetValue(Derivations))),
                ("narrow.txt", Encoding.ASCII.GetBytes(NarrowCopy.Of(source, parsed.GetValue(Columns)))),
            ];
        }
        catch (Exception error) when (source.Findings.Count > 0 && Damage.Explains(error))
        {
            throw new WrongUseException($"The record {path} is not sound and cannot be copied: {source.Findings[0]} Run verify on it.");
        }
    }

    /// <summary>A full disk or a broken run leaves the earlier copy as it was.</summary>
    static string Write(string folder, string name, byte[] bytes)
    {
        string file = Path.Combine(folder, name);
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception e) when (FileTrouble.Is(e))
        {
            throw new WrongUseException(FileTrouble.Sentence(e, $"The copy {file} cannot be written", "choose another folder with --out"));
        }

        WholeFile.Write(file, copy => copy.Write(bytes), "The copy");
        return file;
    }

    static CopySource Read(string path)
    {
        StoredJob job = StoredJob.Read(path);
        if (job.Events is not [StartupBegan began, ..])
        {
            throw new WrongUseException($"The record {path} holds no start-up yet: there is nothing to copy.");
        }

        Checkpoint? checkpoint = job.Verification.Checkpoint;
        return new CopySource(
            UserFile.PlanOf(began.Job), job.Events, checkpoint?.ToString(),
            checkpoint is null ? null : FormattableString.Invariant($"{checkpoint.Count} events, ends {checkpoint.Hash}"),
            [.. job.Verification.Findings.Select(finding => finding.Message)]);
    }
}
