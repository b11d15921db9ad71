using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>Schemas of the user's files, so that editors complete and check them while they are written.</summary>
public static class UserFileSchema
{
    /// <summary>The schema of a kind of file (JSON Schema, draft 2020-12).</summary>
    /// <param name="kind">Which.</param>
    /// <param name="samples">Sound files of that kind; together they use every key.</param>
    public static string Of(UserFileKind kind, IEnumerable<FileCopy> samples)
    {
        FileShape shape = new();
        foreach (FileCopy sample in samples)
        {
            Read(kind, sample.Text, new Findings(sample.Name) { Shape = shape });
        }

        Findings missing = new("empty");
        Read(kind, "id: empty\n", missing);
        ImmutableArray<string> required = ["id", .. missing.All.Where(error => error.Message.StartsWith("The key '", StringComparison.Ordinal)).Select(error => error.Message.Split('\'')[1])];
        return shape.Schema(kind switch
        {
            UserFileKind.ApplianceSheet => "Equipment data sheet of HandsFree Startup",
            UserFileKind.Site => "Site of HandsFree Startup",
            _ => "Checklist of HandsFree Startup",
        }, required);
    }

    static void Read(UserFileKind kind, string text, Findings findings)
    {
        switch (kind)
        {
            case UserFileKind.ApplianceSheet:
                ApplianceSheetReader.Read(text, findings);
                break;
            case UserFileKind.Site:
                SiteReader.Read(text, findings);
                break;
            default:
                ChecklistReader.Read(text, findings);
                break;
        }
    }
}
