using System.CommandLine;
using System.Text;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Compute;

/// <summary>The command <c>compute</c>: the calculation core on a CSV file, or on one reading.</summary>
public static class ComputeCommand
{
    static readonly Argument<string> Table = new("table") { Description = $"One of {string.Join(", ", ComputeTables.All.Select(table => table.Name))}." };
    static readonly Option<string> In = new("--in") { Description = "CSV file with the input columns of the table; other columns are ignored.", HelpName = "FILE", Required = true };
    static readonly Option<string?> Out = new("--out") { Description = "CSV file for inputs and results; standard output if it is left out.", HelpName = "FILE" };
    static readonly Option<string?> Fuels = new("--fuels") { Description = "CSV file with fuels of your own: fuel, component, mole_fraction.", HelpName = "FILE" };

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Command command = new("compute", "Work out what readings mean: a table of a CSV file, or one reading.")
        {
            Table, In, Out, Fuels, ReadingCommand.Build(), ExplainCommand.Build(),
        };
        Table.AcceptOnlyFromAmong([.. ComputeTables.All.Select(table => table.Name)]);
        command.SetAction((parsed, cancellation) => Task.FromResult(Run(parsed, cancellation)));
        return command;
    }

    static int Run(ParseResult parsed, CancellationToken cancellation)
    {
        ComputeTable table = ComputeTables.All.Single(table => table.Name == parsed.GetValue(Table));
        string input = parsed.GetValue(In)!;
        FuelBook fuels = FuelBook.Open(parsed.GetValue(Fuels));
        TableRun run = new(table, fuels, parsed.InvocationConfiguration.Error, TimeProvider.System);
        if (parsed.GetValue(Out) is not { } output)
        {
            return run.Over(input, text => parsed.InvocationConfiguration.Output.Write(Encoding.UTF8.GetString(text)), cancellation);
        }
        if (FileStatus.AreSame(input, output))
        {
            throw new WrongUseException("--out must be another file than --in.");
        }
        // The header is read first, so that a wrong input file does not cost an old output file.
        CsvRows.Open(input, table.Inputs).Dispose();
        int code = ExitCode.Done;
        WholeFile.Write(output, file => code = run.Over(input, file.Write, cancellation), "The table", canBeMadeAgain: true);
        return code;
    }
}
