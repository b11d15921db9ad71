namespace HandsFreeStartup.Running;

/// <summary>Finds the record that a user means.</summary>
public static class JobFile
{
    const string Extension = ".db";

    /// <summary>The file of that path, or the job of that name in the folder of the records.</summary>
    /// <exception cref="WrongUseException">There is none.</exception>
    public static string Find(DataFolder data, string job)
    {
        string[] candidates = [job, Path.Combine(data.Jobs, job), Path.Combine(data.Jobs, job + Extension)];
        return candidates.FirstOrDefault(File.Exists)
            ?? throw new WrongUseException($"There is no record '{job}', neither as a file nor in {data.Jobs}. Look at the name, or move the folder with --data.");
    }
}
