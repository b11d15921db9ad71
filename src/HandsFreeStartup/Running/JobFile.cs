using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Running;

/// <summary>Finds the record that a user means.</summary>
public static class JobFile
{
    const string Extension = ".db";

    /// <summary>The file of that path, or the job of that name in the folder of the records.</summary>
    /// <exception cref="WrongUseException">There is none.</exception>
    public static string Find(DataFolder data, string job) => Find(data.Jobs, job);

    /// <summary>The file of that path, or the record of that name in a folder.</summary>
    /// <exception cref="WrongUseException">There is none.</exception>
    public static string Find(string folder, string job)
    {
        string[] candidates = [job, Path.Combine(folder, job), Path.Combine(folder, job + Extension)];
        string found = candidates.FirstOrDefault(path => FileStatus.Of(path).Kind is not (FileKind.None or FileKind.Folder))
            ?? throw new WrongUseException($"There is no record '{job}', neither as a file nor in {folder}. Look at the name, or move the folder with --data.");
        return FileStatus.Of(found).Kind == FileKind.Link ? Target(found) : found;
    }

    /// <summary>Who names a link means the record that it leads to, with what lies beside that.</summary>
    static string Target(string link)
    {
        try
        {
            return File.ResolveLinkTarget(link, returnFinalTarget: true)?.FullName ?? link;
        }
        catch (IOException)
        {
            return link;
        }
    }
}
