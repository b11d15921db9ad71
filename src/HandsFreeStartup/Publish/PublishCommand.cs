using System.CommandLine;
using HandsFreeStartup.Fleet;
using HandsFreeStartup.Review;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Publish;

/// <summary>The command <c>publish</c>: verified, finished records to the firm's database.</summary>
public static class PublishCommand
{
    static readonly Argument<string?> Target = new("JOB|FOLDER") { Description = "A job, or a folder of jobs with the folders below; the folder of the records if nothing is given.", Arity = ArgumentArity.ZeroOrOne };
    static readonly Option<bool> Watch = new("--watch") { Description = "Go on: send what is finished whenever there is a connection, until it is stopped." };
    static readonly Option<bool> Prepare = new("--prepare") { Description = "Lay out the database, or bring it up to this program, as its owner." };

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Command command = new("publish", "Send finished records that verify to the firm's PostgreSQL; what is there already is not sent again.") { Target, FleetOptions.To, FleetOptions.Trust, FleetOptions.PasswordFile, Watch, Prepare };
        command.SetAction(Run);
        return command;
    }

    static async Task<int> Run(ParseResult parsed, CancellationToken cancellation)
    {
        TextWriter output = parsed.InvocationConfiguration.Output;
        FleetAddress address = FleetOptions.Address(parsed, parsed.GetValue(FleetOptions.To) ?? throw new WrongUseException("Say where to: --to postgres://LOGIN@HOST/DATABASE."));
        if (parsed.GetValue(Prepare))
        {
            output.WriteLine(await FleetDatabase.Prepare(address, cancellation));
            return ExitCode.Done;
        }

        DataFolder data = DataFolder.Of(parsed);
        string? target = parsed.GetValue(Target);
        if (parsed.GetValue(Watch))
        {
            await new PublishWatch(data, output, TimeProvider.System).Run(() => target is null && !Directory.Exists(data.Jobs) ? [] : Records(target, data), address, cancellation);
        }

        PublishCount count = await new PublishRun(data, output.WriteLine, TimeProvider.System).Run(Records(target, data), address, cancellation);
        output.WriteLine(count);
        return count.Refused > 0 ? ExitCode.FoundSomething : ExitCode.Done;
    }

    static IReadOnlyList<string> Records(string? target, DataFolder data) =>
        Directory.Exists(target ?? data.Jobs) ? FolderOfRecords.Of(target ?? data.Jobs, data).Records
        : target is null ? throw new WrongUseException($"There are no records in {data.Jobs} yet. Name a job or a folder, or move the folder with --data.")
        : [NoRehearsal.Checked(JobFile.Find(data, target))];
}
