using System.CommandLine;
using HandsFreeStartup.Fleet;
using HandsFreeStartup.Fleet.Pages;
using HandsFreeStartup.Review;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Publish;

/// <summary>The command <c>fleet</c>: pages for the office, and a table for whoever wants to compute.</summary>
public static class FleetCommand
{
    static readonly Option<string?> Out = new("--out") { Description = "Folder for the pages; it is made if it is missing.", HelpName = "DIR" };
    static readonly Option<int?> Days = NumberOption.Whole("--days", 1, 3660);
    static readonly Option<string?> Parquet = new("--parquet") { Description = "Write all values of these days to a Parquet table.", HelpName = "FILE" };

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Days.Description = "Days of charts and habits, the day of the overview last; 90 if nothing is given.";
        Command command = new("fleet", "Pages of the firm's start-ups: the day, control charts by model of furnace, instruments that drift, waits that are cut short.")
        {
            FleetOptions.From, FleetOptions.Trust, FleetOptions.PasswordFile, Out, FleetSelection.Day, Days, Parquet,
        };
        command.SetAction(Run);
        return command;
    }

    static async Task<int> Run(ParseResult parsed, CancellationToken cancellation)
    {
        TimeProvider clock = TimeProvider.System;
        string address = parsed.GetValue(FleetOptions.From) ?? throw new WrongUseException("Say from where: --from postgres://LOGIN@HOST/DATABASE.");
        (string? folder, string? table) = (parsed.GetValue(Out), parsed.GetValue(Parquet));
        if (folder is null && table is null)
        {
            throw new WrongUseException("Say where to: --out DIR for pages, --parquet FILE for a table, or both.");
        }

        DateOnly day = FleetSelection.DayOf(parsed, FleetSelection.Day) ?? DateOnly.FromDateTime(clock.GetLocalNow().DateTime);
        int days = parsed.GetValue(Days) ?? 90;
        await using FleetDatabase database = await FleetDatabase.Open(FleetOptions.Address(parsed, address), cancellation);
        TextWriter output = parsed.InvocationConfiguration.Output;
        if (folder is not null)
        {
            FleetPicture picture = await FleetPicture.Read(database, day, days, clock, cancellation);
            output.WriteLine(FormattableString.Invariant($"{new FleetPages(picture).Write(folder)} pages: {Path.Combine(Path.GetFullPath(folder), "index.html")}"));
        }

        if (table is not null)
        {
            output.WriteLine(FormattableString.Invariant($"{await ParquetTable.Write(database, table, day.AddDays(1 - days), day, cancellation)} values: {table}"));
        }

        return ExitCode.Done;
    }
}
