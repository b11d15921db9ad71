using System.CommandLine;
using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Running;

/// <summary>Where records and the program's own notes are kept.</summary>
/// <param name="Path">Full path; it is made when something is first kept in it.</param>
public sealed record DataFolder(string Path)
{
    /// <summary>Moves the folder; every command has it.</summary>
    public static Option<string?> Option { get; } = new("--data")
    {
        Description = "Folder of the records, instead of handsfree-startup in the user's data folder.",
        HelpName = "DIR",
        Recursive = true,
    };

    /// <summary>The records, one file a job.</summary>
    public string Jobs => System.IO.Path.Combine(Path, "jobs");

    /// <summary>The records of rehearsals, apart from those of furnaces, and how each trainee gets on.</summary>
    public string Rehearsals => System.IO.Path.Combine(Path, "rehearsals");

    /// <summary>What the lead technician sets for every job.</summary>
    public string Settings => System.IO.Path.Combine(Path, "settings.yaml");

    /// <summary>What publish remembers of the firm's database; it can be deleted at any time.</summary>
    public string PublishIndex => System.IO.Path.Combine(Path, "publish-index.db");

    /// <summary>What review remembers of records; it can be deleted at any time.</summary>
    public string ReviewIndex => System.IO.Path.Combine(Path, "review-index.db");

    /// <summary>The folder that the user named, or the usual one (XDG base directories).</summary>
    /// <exception cref="WrongUseException">Its name is none.</exception>
    public static DataFolder Of(ParseResult parsed)
    {
        string named = parsed.GetValue(Option) ?? Usual();
        return named.Length > 0 && !named.Contains('\0')
            ? new DataFolder(System.IO.Path.GetFullPath(named))
            : throw new WrongUseException("The name of the data folder is empty or holds a character that no folder can have: give another one with --data DIR.");
    }

    /// <summary>Makes the folder of the records where it is missing.</summary>
    /// <exception cref="WrongUseException">It cannot be made.</exception>
    public void MakeJobs() => Make(Jobs);

    /// <summary>Makes a folder of records where it is missing.</summary>
    /// <exception cref="WrongUseException">It cannot be made.</exception>
    public void Make(string folder)
    {
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception e) when (FileTrouble.Is(e))
        {
            throw new WrongUseException(FileTrouble.Sentence(e, $"The folder of the records {folder} cannot be made", "name another one with --data DIR"));
        }
    }

    /// <summary>Writes the details of a failure to a file of its own.</summary>
    /// <returns>One sentence that says where they are, or why they are lost.</returns>
    public string KeepDetails(Exception failure)
    {
        try
        {
            string folder = System.IO.Path.Combine(Path, "failures");
            Directory.CreateDirectory(folder);
            string file = System.IO.Path.Combine(folder, $"{Guid.CreateVersion7():N}.txt");
            File.WriteAllText(file, VisibleText.OfLines(failure.ToString()));
            return $"Details: {file}";
        }
        catch (Exception e) when (FileTrouble.Is(e))
        {
            return $"The details could not be kept in {Path}.";
        }
    }

    /// <summary>Removes the notes of failures: they may quote what somebody said or typed.</summary>
    /// <returns>How many there were.</returns>
    public int ForgetFailures()
    {
        string folder = System.IO.Path.Combine(Path, "failures");
        if (!Directory.Exists(folder))
        {
            return 0;
        }

        int notes = Directory.GetFiles(folder).Length;
        Directory.Delete(folder, recursive: true);
        return notes;
    }

    static string Usual() => System.IO.Path.Combine(
        Environment.GetEnvironmentVariable("XDG_DATA_HOME") is { Length: > 0 } data
            ? data
            : System.IO.Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".local", "share"),
        "handsfree-startup");
}
