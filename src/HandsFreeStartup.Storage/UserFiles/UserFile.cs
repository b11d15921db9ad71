using System.Security.Cryptography;
using System.Text;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>A checklist, an appliance sheet and a site that fit together.</summary>
/// <param name="Checklist">The procedure.</param>
/// <param name="Appliance">The furnace.</param>
/// <param name="Site">The place.</param>
/// <param name="Settings">What the lead technician has set.</param>
public sealed record PlanFiles(Checklist Checklist, ApplianceSheet Appliance, Site Site, Settings Settings);

/// <summary>Which of the user's files a text is.</summary>
public enum UserFileKind
{
    /// <summary>A procedure; also what is none of the other two.</summary>
    Checklist,
    /// <summary>What the rating plate and the maker's instructions say.</summary>
    ApplianceSheet,
    /// <summary>Where and for whom.</summary>
    Site,
    /// <summary>What the lead technician sets for every job.</summary>
    Settings,
}

/// <summary>
/// Reads the YAML files that the user owns. Every mistake of a file is told at once, with line and column, by a <see cref="ChecklistFileException"/>.
/// The keys are explained in checklists/README.md.
/// </summary>
public static class UserFile
{
    const int LargestBytes = 1 << 20;
    static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Takes a copy of a file, as a job keeps it.</summary>
    /// <exception cref="ChecklistFileException">It cannot be read, is no UTF-8 text or is larger than one mebibyte.</exception>
    public static FileCopy Copy(string path)
    {
        try
        {
            return Copy(Path.GetFileName(path), StrictUtf8.GetString(RegularFile.ReadAll(path, LargestBytes)).TrimStart('\uFEFF'));
        }
        catch (DecoderFallbackException)
        {
            throw Unusable(path, "The file is no UTF-8 text. Save it as UTF-8 and try again.");
        }
        catch (Exception error) when (error is FileNotFoundException or DirectoryNotFoundException)
        {
            throw Unusable(path, "There is no such file. Look at the name and the folder.");
        }
        catch (Exception error) when (FileTrouble.Is(error))
        {
            throw Unusable(path, FileTrouble.Sentence(error, "The file cannot be read", "name another one"));
        }
    }

    /// <summary>A copy of a text that is at hand.</summary>
    public static FileCopy Copy(string name, string text) => new(name, HashOf(text), text);

    /// <summary>Lower-case hexadecimal SHA-256 of the text's UTF-8 bytes.</summary>
    public static string HashOf(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    /// <summary>Tells by its keys which kind of file it is.</summary>
    public static UserFileKind KindOf(FileCopy file)
    {
        string[] keys = [.. YamlTree.Read(file.Text, new Findings(file.Name))?.Entries.Select(entry => entry.Key.Text) ?? []];
        return keys.Contains("sections") || keys.Contains(ChecklistOverlay.Extends) ? UserFileKind.Checklist
            : keys.Contains("rooms") || keys.Contains("altitude_feet") ? UserFileKind.Site
            : keys.Contains("fuel") || keys.Contains("stages") ? UserFileKind.ApplianceSheet
            : keys.Any(key => SettingsReader.Keys.Contains(key)) ? UserFileKind.Settings
            : UserFileKind.Checklist;
    }

    /// <summary>Takes a copy of a checklist; one that extends another is laid over it, and the copy is the whole.</summary>
    /// <param name="path">The file.</param>
    /// <param name="shipped">Folder in which the other one is looked for where it does not lie beside the file.</param>
    /// <exception cref="ChecklistFileException">One of both cannot be used.</exception>
    public static FileCopy CopyChecklist(string path, string shipped)
    {
        FileCopy file = Copy(path);
        Findings findings = new(file.Name);
        if (YamlTree.Read(file.Text, findings) is not { } above || above.Entries.FirstOrDefault(entry => entry.Key.Text == ChecklistOverlay.Extends).Value is not { } extends)
        {
            return file;
        }

        string name = extends is YamlText { Text: { } text } && text == Path.GetFileName(text) && text.Length > 0 ? text : "";
        string beside = Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path))!, name);
        if (name.Length == 0 || Path.GetFullPath(path) == beside)
        {
            throw Unusable(path, "'extends' names the checklist below by its file, such as gas-furnace.yaml: a shipped one, or one beside this file.");
        }

        FileCopy below = Copy(File.Exists(beside) ? beside : Path.Combine(shipped, name));
        ReadChecklist(below);
        YamlMap whole = new ChecklistOverlay(findings).Lay(YamlTree.Read(below.Text, new Findings(below.Name))!, above);
        Findings.ThrowIfAny(findings);
        ChecklistReader.Read(whole, findings);
        Findings.ThrowIfAny(findings);
        return Copy(file.Name, $"# {file.Name} (sha256 {file.Sha256}) laid over {below.Name} (sha256 {below.Sha256}).\n{ChecklistOverlay.Text(whole)}");
    }

    /// <summary>Reads a checklist by itself.</summary>
    /// <exception cref="ChecklistFileException">It has mistakes.</exception>
    public static Checklist ReadChecklist(FileCopy file) => Read(file, ChecklistReader.Read).Checklist;

    /// <summary>Reads an appliance sheet by itself.</summary>
    /// <exception cref="ChecklistFileException">It has mistakes.</exception>
    public static ApplianceSheet ReadApplianceSheet(FileCopy file) => Read(file, ApplianceSheetReader.Read).Sheet;

    /// <summary>Reads a site by itself.</summary>
    /// <exception cref="ChecklistFileException">It has mistakes.</exception>
    public static Site ReadSite(FileCopy file) => Read(file, SiteReader.Read);

    /// <summary>Reads settings by themselves.</summary>
    /// <exception cref="ChecklistFileException">They have mistakes.</exception>
    public static Settings ReadSettings(FileCopy file) => Read(file, SettingsReader.Read);

    /// <summary>The plan of a job, made anew from the copies that the job keeps.</summary>
    /// <param name="job">What it runs with.</param>
    /// <param name="isNew">Whether it is to begin; a job that has begun is not judged by rules that are newer than it.</param>
    /// <exception cref="ChecklistFileException">The copies cannot be used.</exception>
    public static StartupPlan PlanOf(JobDescription job, bool isNew = false)
    {
        if (job.TimerFactor is not (> 0 and <= 1))
        {
            throw Unusable(job.JobId, FormattableString.Invariant($"The job shortens its timers by the factor {job.TimerFactor}. Expected one above 0 and at most 1; no program wrote this."));
        }

        PlanFiles files = ReadTogether(job.Checklist, job.Appliance, job.Site, job.Settings, isNew);
        return StartupPlan.From(
            files.Checklist, files.Appliance, files.Site, job.TimerFactor, files.Settings, job.Occasion,
            [.. (job.Beside ?? []).Select(beside => beside.Title == files.Appliance.Title ? $"the other {beside.Title}" : beside.Title).Distinct()]);
    }

    /// <summary>Reads the files of a job and checks that they fit together: every limit found, every unit fitting.</summary>
    /// <param name="checklist">The procedure.</param>
    /// <param name="appliance">The furnace.</param>
    /// <param name="site">The place.</param>
    /// <param name="settings">What the lead technician has set, or null for nothing.</param>
    /// <param name="isNew">Whether a job is to begin with them.</param>
    /// <exception cref="ChecklistFileException">One of them has mistakes; all mistakes of all are in it.</exception>
    public static PlanFiles ReadTogether(FileCopy checklist, FileCopy appliance, FileCopy site, FileCopy? settings = null, bool isNew = true)
    {
        Findings[] findings = [new(checklist.Name, isNew), new(appliance.Name, isNew), new(site.Name, isNew), new(settings?.Name ?? "", isNew)];
        ChecklistEntry? steps = ChecklistReader.Read(checklist.Text, findings[0]);
        ApplianceEntry? sheet = ApplianceSheetReader.Read(appliance.Text, findings[1]);
        Site? place = SiteReader.Read(site.Text, findings[2]);
        Settings? set = settings is null ? Settings.Default : SettingsReader.Read(settings.Text, findings[3]);
        Findings.ThrowIfAny(findings);
        PlanRules.Check(steps!, sheet!, place!);
        Findings.ThrowIfAny(findings);
        return new PlanFiles(steps!.Checklist, sheet!.Sheet, place!, set!);
    }

    static T Read<T>(FileCopy file, Func<string, Findings, T?> read)
        where T : class
    {
        Findings findings = new(file.Name);
        T? value = read(file.Text, findings);
        Findings.ThrowIfAny(findings);
        return value!;
    }

    static ChecklistFileException Unusable(string path, string message) => new([new ChecklistFileError(path, 0, 0, message)]);
}
