using System.CommandLine;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.ChecklistCommand;

/// <summary>The command <c>checklist</c>: checks a file of the user, prints it as a table, draws its steps.</summary>
public static class ChecklistCommand
{
    static readonly Argument<string> File = new("FILE") { Description = "A checklist, an equipment data sheet or a site, as YAML." };
    static readonly Option<bool> Mermaid = new("--mermaid") { Description = "Draw the steps of a checklist as a Mermaid flowchart instead." };
    static readonly Option<string?> Appliance = new("--appliance") { Description = "Check a checklist together with this equipment data sheet (needs --site).", HelpName = "FILE" };
    static readonly Option<string?> Site = new("--site") { Description = "Check a checklist together with this site (needs --appliance).", HelpName = "FILE" };

    static readonly Option<string?> Occasion = new("--service-type", "--occasion") { Description = "With --appliance and --site: the steps of this service type.", HelpName = "NAME" };

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Command command = new("checklist", "Check a checklist, an equipment data sheet or a site, and print it as a table.") { File, Mermaid, Appliance, Site, Occasion };
        command.SetAction(Run);
        return command;
    }

    static int Run(ParseResult parsed)
    {
        TextWriter output = parsed.InvocationConfiguration.Output;
        FileCopy file = UserFile.CopyChecklist(parsed.GetRequiredValue(File), ShippedFiles.Checklists);
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
                Write(file, parsed, output);
                break;
        }
        return ExitCode.Done;
    }

    /// <summary>Without a furnace, the checklist with all its branches; with one, the steps that it leads through.</summary>
    static void Write(FileCopy file, ParseResult parsed, TextWriter output)
    {
        (string? appliance, string? site, string? occasion) = (parsed.GetValue(Appliance), parsed.GetValue(Site), parsed.GetValue(Occasion));
        if (appliance is null != site is null)
        {
            throw new WrongUseException("--appliance and --site go together: limits are for a furnace, rooms are of a site.");
        }

        Checklist checklist = appliance is null ? UserFile.ReadChecklist(file) : UserFile.ReadTogether(file, UserFile.Copy(appliance), UserFile.Copy(site!)).Checklist;
        OccasionChoice.Check(checklist, occasion);
        if (parsed.GetValue(Mermaid))
        {
            output.Write(StepDrawing.Of(checklist));
        }
        else if (appliance is null)
        {
            StepTable.Write(checklist, output);
        }
        else
        {
            StepTable.Write(StartupPlan.From(checklist, UserFile.ReadApplianceSheet(UserFile.Copy(appliance)), UserFile.ReadSite(UserFile.Copy(site!)), occasion: occasion), output);
        }
    }
}
