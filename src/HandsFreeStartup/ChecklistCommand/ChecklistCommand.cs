using System.CommandLine;
using HandsFreeStartup.NewAppliance;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.ChecklistCommand;

/// <summary>The command <c>checklist</c>: checks a file of the user, prints it as a table, draws its steps.</summary>
public static class ChecklistCommand
{
    static readonly Argument<string> File = new("FILE") { Description = "A checklist, an appliance sheet or a site, as YAML." };
    static readonly Option<bool> Mermaid = new("--mermaid") { Description = "Draw the steps of a checklist as a Mermaid flowchart instead." };
    static readonly Option<string?> Appliance = new("--appliance") { Description = "Check a checklist together with this appliance sheet (needs --site).", HelpName = "FILE" };
    static readonly Option<string?> Site = new("--site") { Description = "Check a checklist together with this site (needs --appliance).", HelpName = "FILE" };

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Command command = new("checklist", "Check a checklist, an appliance sheet or a site, and print it as a table.") { File, Mermaid, Appliance, Site, NewApplianceCommand.Build() };
        command.SetAction(Run);
        return command;
    }

    static int Run(ParseResult parsed)
    {
        TextWriter output = parsed.InvocationConfiguration.Output;
        FileCopy file = UserFile.Copy(parsed.GetRequiredValue(File));
        UserFileKind kind = UserFile.KindOf(file);
        if (kind != UserFileKind.Checklist && (parsed.GetValue(Mermaid) || parsed.GetValue(Appliance) is not null || parsed.GetValue(Site) is not null))
        {
            throw new WrongUseException($"--mermaid, --appliance and --site belong to a checklist; {file.Name} is none.");
        }

        switch (kind)
        {
            case UserFileKind.ApplianceSheet:
                UserFileTable.Write(UserFile.ReadApplianceSheet(file), output);
                break;
            case UserFileKind.Settings:
                UserFileTable.Write(UserFile.ReadSettings(file), output);
                break;
            case UserFileKind.Site:
                UserFileTable.Write(UserFile.ReadSite(file), output);
                break;
            default:
                Checklist checklist = Read(file, parsed.GetValue(Appliance), parsed.GetValue(Site));
                output.Write(parsed.GetValue(Mermaid) ? StepDrawing.Of(checklist) : "");
                if (!parsed.GetValue(Mermaid))
                {
                    UserFileTable.Write(checklist, output);
                }
                break;
        }
        return ExitCode.Done;
    }

    static Checklist Read(FileCopy file, string? appliance, string? site) => (appliance, site) switch
    {
        (null, null) => UserFile.ReadChecklist(file),
        ({ } sheet, { } place) => UserFile.ReadTogether(file, UserFile.Copy(sheet), UserFile.Copy(place)).Checklist,
        _ => throw new WrongUseException("--appliance and --site go together: limits are for a furnace, rooms are of a site."),
    };
}
