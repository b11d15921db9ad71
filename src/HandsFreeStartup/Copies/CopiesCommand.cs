using System.CommandLine;
using System.Text;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Languages;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Reports.Copies;
using HandsFreeStartup.Reports.Copies.Narrow;
using HandsFreeStartup.Running;
using HandsFreeStartup.Start;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Copies;

/// <summary>The command <c>copies</c>: the three copies of a job as PDF, and a narrow text for a pocket printer.</summary>
public static class CopiesCommand
{
    static readonly Argument<string[]> Jobs = new("JOB") { Description = "The job's file, or its name in the folder of the records. Several jobs of one customer at one address share one customer copy.", Arity = ArgumentArity.OneOrMore };
    static readonly Option<string?> Out = new("--out") { Description = "Folder for the copies, instead of that of the record. It is made if it is missing.", HelpName = "FOLDER" };
    static readonly Option<Paper> Size = new("--paper") { Description = "A4 or Letter.", HelpName = "a4|letter", DefaultValueFactory = _ => Paper.A4 };

    static readonly Option<int> Columns = new("--columns") { Description = "Width of the narrow text in characters.", HelpName = "32|48", DefaultValueFactory = _ => 48 };

    static readonly Option<bool> Charts = new("--chart") { Description = "Draw in the office copy every reading that was entered more than once, over time." };

    static readonly Option<bool> Derivations = new("--derivations") { Description = "Add to the customer copy and the office copy how each result came about: formula, inputs, steps, uncertainty, limit." };

    static readonly Option<string?> LanguageCode = new("--language") { Description = "In which language the copies are: en, es. Left out, that of the job's settings. What was said and dictated stays as recorded.", HelpName = "CODE" };

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Columns.AcceptOnlyFromAmong("32", "48");
        Command command = new("copies", "Write the appliance copy, the customer copy and the office copy of a record, and a narrow text for a pocket printer.") { Jobs, Out, Size, Columns, Charts, Derivations, LanguageCode };
        command.SetAction(Run);
        return command;
    }

    static int Run(ParseResult parsed)
    {
        string[] paths = [.. parsed.GetRequiredValue(Jobs).Select(job => JobFile.Find(DataFolder.Of(parsed), job)).DistinctBy(Path.GetFullPath)];
        CopySource[] sources = [.. paths.Select(path => Read(path, parsed.GetValue(LanguageCode)))];
        CheckOnePlace(paths, sources);
        for (int i = 0; i < paths.Length; i++)
        {
            WriteAll(paths[i], [sources[i]], Of(sources[i], parsed, isAlone: paths.Length == 1), parsed);
        }

        if (paths.Length > 1)
        {
            string shared = PersonalFiles.SharedCopy(paths.Select(path => Path.GetFileNameWithoutExtension(path)!));
            WriteAll(paths[0], sources, [("", () => StartupCopies.Customer(sources, parsed.GetValue(Size), parsed.GetValue(Derivations)))], parsed, shared);
        }

        string[] findings = [.. sources.SelectMany(source => source.Findings)];
        foreach (string finding in findings)
        {
            parsed.InvocationConfiguration.Error.WriteLine($"The record does not verify, and every copy says so: {finding}");
        }

        return findings.Length == 0 ? ExitCode.Done : ExitCode.FoundSomething;
    }

    /// <summary>What one customer is told about a house is nobody else's.</summary>
    static void CheckOnePlace(string[] paths, CopySource[] sources)
    {
        FileCopy[] sites = [.. sources.Select(source => ((StartupBegan)source.Events[0]).Job.Site)];
        for (int i = 1; i < sites.Length; i++)
        {
            if (!SamePlace.IsOne(sites[0], sites[i]))
            {
                throw new WrongUseException($"The records {paths[0]} and {paths[i]} are not of one customer at one address, so they share no copy. Copy each by itself.");
            }
        }
    }

    static (string Kind, Func<byte[]> Made)[] Of(CopySource source, ParseResult parsed, bool isAlone)
    {
        Paper paper = parsed.GetValue(Size);
        bool derives = parsed.GetValue(Derivations);
        return
        [
            ("appliance.pdf", () => StartupCopies.Appliance(source, paper)),
            .. isAlone ? [("customer.pdf", () => StartupCopies.Customer(source, paper, derives))] : Array.Empty<(string, Func<byte[]>)>(),
            ("office.pdf", () => StartupCopies.Office(source, paper, parsed.GetValue(Charts), derives)),
            ("narrow.txt", () => Encoding.ASCII.GetBytes(NarrowCopy.Of(source, parsed.GetValue(Columns)))),
        ];
    }

    /// <summary>All of them are made before the first is written.</summary>
    static void WriteAll(string path, CopySource[] sources, (string Kind, Func<byte[]> Made)[] copies, ParseResult parsed, string? name = null)
    {
        string folder = parsed.GetValue(Out) ?? Path.GetDirectoryName(Path.GetFullPath(path))!;
        foreach ((string kind, byte[] bytes) in Made(path, sources, copies))
        {
            parsed.InvocationConfiguration.Output.WriteLine(Write(folder, name ?? $"{Path.GetFileNameWithoutExtension(path)}-{kind}", bytes));
        }
    }

    static (string Kind, byte[] Bytes)[] Made(string path, CopySource[] sources, (string Kind, Func<byte[]> Made)[] copies)
    {
        try
        {
            return [.. copies.Select(copy => (copy.Kind, copy.Made()))];
        }
        catch (Exception error) when (sources.SelectMany(source => source.Findings).FirstOrDefault() is not null && Damage.Explains(error))
        {
            throw new WrongUseException($"The record {path} is not sound and cannot be copied: {sources.SelectMany(source => source.Findings).First()} Run verify on it.");
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

    static CopySource Read(string path, string? language)
    {
        StoredJob job = StoredJob.Read(path);
        if (job.Events is not [StartupBegan began, ..])
        {
            throw new WrongUseException($"The record {path} holds no start-up yet: there is nothing to copy.");
        }

        Checkpoint? checkpoint = job.Verification.Checkpoint;
        StartupPlan plan = UserFile.PlanOf(began.Job);
        return new CopySource(
            plan, job.Events, checkpoint?.ToString(),
            checkpoint is null ? null : FormattableString.Invariant($"{checkpoint.Count} events, ends {checkpoint.Hash}"),
            [.. job.Verification.Findings.Select(finding => finding.Message)])
        {
            Language = LanguageFiles.Find(language ?? plan.Settings.Language),
        };
    }
}
