namespace HandsFreeStartup.Running;

/// <summary>Folders that come with the program: beside it, or above it in the folder that it was built from.</summary>
public static class ShippedFiles
{
    /// <summary>Recogniser and speech detector.</summary>
    public static string Models => Find("models", "SHA256SUMS");

    /// <summary>Procedures, and sample sheets to copy.</summary>
    public static string Checklists => Find("checklists", "two-stage-natural-gas.yaml");

    /// <summary>Recordings of the demonstration.</summary>
    public static string Demo => Path.Combine(AppContext.BaseDirectory, "Demo");

    /// <summary>Texts in other languages.</summary>
    public static string Languages => Path.Combine(AppContext.BaseDirectory, "Languages");

    static string Find(string folder, string file)
    {
        for (DirectoryInfo? above = new(AppContext.BaseDirectory); above is not null; above = above.Parent)
        {
            string candidate = Path.Combine(above.FullName, folder);
            if (File.Exists(Path.Combine(candidate, file)))
            {
                return candidate;
            }
        }

        throw new WrongUseException($"The folder {folder} that belongs to this program is neither beside it nor above it ({AppContext.BaseDirectory}): copy the whole program again.");
    }
}
