using System.CommandLine;
using HandsFreeStartup.ChecklistCommand;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Interview;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.NewAppliance;

/// <summary>The command <c>checklist new-appliance</c>: writes an appliance sheet by questions.</summary>
public static class NewApplianceCommand
{
    static readonly Argument<string> File = new("FILE") { Description = "The sheet to write, such as my-furnace.yaml." };
    static readonly Option<bool> Overwrite = new("--overwrite") { Description = "Write over a file that is there already, without asking." };

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Command command = new("new-appliance", "Write an equipment data sheet: asks for what the rating plate and the maker's instructions say.") { File, Overwrite };
        command.SetAction(parsed => new Interview(StandardStreams.Input, parsed.InvocationConfiguration.Output).Run(parsed.GetRequiredValue(File), parsed.GetValue(Overwrite)));
        return command;
    }

    /// <summary>Asks, reads answers line by line, and writes at the end.</summary>
    sealed class Interview(TypedLines input, TextWriter output)
    {
        readonly Conversation _conversation = new(new TypedAnswers(input, output));

        public int Run(string path, bool overwrites)
        {
            string id = IdOf(path);
            if (System.IO.File.Exists(path) && !overwrites && !_conversation.Agrees($"{path} is there already. Write over it?"))
            {
                throw new WrongUseException($"Nothing was written. Name another file than {path}, or add --overwrite.");
            }

            output.WriteLine("Type what the plate and the instructions say. \"why\" tells why something is asked, \"back\" returns to the question before, \"skip the rest\" leaves out all that may be left out from there on, \"stop\" ends without writing.");
            ApplianceSheet sheet = SheetInterview.Ask(_conversation, new Draft(id)) ?? throw new WrongUseException("The answers ended before the sheet was complete. Nothing was written.");
            output.WriteLine();
            UserFileTable.Write(sheet, output);
            output.WriteLine();
            if (!_conversation.Agrees($"Write it to {path}?"))
            {
                throw new WrongUseException("Nothing was written.");
            }

            WholeFile.WriteText(path, ApplianceSheetWriter.Text(sheet, SheetInterview.Comment), "The sheet");
            output.WriteLine($"Written: {path}. Check it beside the plate; start with --appliance {path}.");
            return ExitCode.Done;
        }

        static string IdOf(string path)
        {
            string id = Path.GetFileNameWithoutExtension(path).ToLowerInvariant();
            return id.Length > 0 && id.All(letter => letter is '-' or >= 'a' and <= 'z' or >= '0' and <= '9') && Path.GetExtension(path) == ".yaml"
                ? id
                : throw new WrongUseException($"'{path}' cannot be the name of a sheet. Expected letters, digits and hyphens, ending in .yaml, such as my-furnace.yaml.");
        }
    }
}
