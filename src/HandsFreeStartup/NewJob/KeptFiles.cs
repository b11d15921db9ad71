using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Running;
using HandsFreeStartup.Start;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.NewJob;

/// <summary>What was answered for earlier jobs and is offered for the next one. Every file is plain and may be edited.</summary>
/// <param name="data">The data folder.</param>
sealed class KeptFiles(DataFolder data)
{
    const string Extension = ".yaml";

    /// <summary>The own set of instruments: the list that each new site file takes over.</summary>
    public string Instruments { get; } = Path.Combine(data.Path, "instruments.yaml");

    /// <summary>Who worked last.</summary>
    public string Technician { get; } = Path.Combine(data.Path, "technician.txt");

    /// <summary>Places, the one used last first.</summary>
    public IReadOnlyList<string> Sites => Newest("sites");

    /// <summary>Furnaces, the one used last first.</summary>
    public IReadOnlyList<string> Appliances => Newest("appliances");

    /// <summary>A path that is free for a new place.</summary>
    public string NewSite(string title) => Free("sites", title);

    /// <summary>A path that is free for a new furnace.</summary>
    public string NewAppliance(string title) => Free("appliances", title);

    /// <summary>Removes every kept place of the same customer and address as a job's site, also where it was edited since.</summary>
    /// <returns>How many there were.</returns>
    public int RemoveSitesLike(FileCopy site)
    {
        string[] same = [.. Sites.Where(path => IsSamePlace(path, site))];
        foreach (string path in same)
        {
            File.Delete(path);
        }

        return same.Length;
    }

    static bool IsSamePlace(string path, FileCopy site)
    {
        try
        {
            return SamePlace.IsOne(UserFile.Copy(path), site);
        }
        catch (ChecklistFileException)
        {
            return false;
        }
    }

    /// <summary>The text of a kept file; empty where it is not there.</summary>
    public static string TextOf(string path) => File.Exists(path) ? UserFile.Copy(path).Text : "";

    /// <summary>Writes a file and the folder in which it lies.</summary>
    public static void Write(string path, string text, string what)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        }
        catch (Exception e) when (FileTrouble.Is(e))
        {
            throw new WrongUseException(FileTrouble.Sentence(e, $"The folder of {path} cannot be made", "name another data folder with --data DIR"));
        }

        WholeFile.WriteText(path, text, what);
    }

    /// <summary>The own set of instruments; empty where it is not there.</summary>
    /// <exception cref="WrongUseException">The file was spoiled; it is told before anybody has answered anything.</exception>
    public string ReadInstruments()
    {
        try
        {
            string text = TextOf(Instruments);
            UserFile.ReadSite(UserFile.Copy(Instruments, $"{text}\nid: place\ntitle: x\ncustomer: x\naddress: x\naltitude_feet: 0\nrooms: [x]\n"));
            return text;
        }
        catch (ChecklistFileException mistakes)
        {
            throw new WrongUseException($"{mistakes.Errors[0]} Mend it, or let 'new instruments' ask again.");
        }
    }

    /// <summary>Finds out whether answers can be kept, before anybody has given any.</summary>
    /// <exception cref="WrongUseException">They cannot; says why.</exception>
    public void Try()
    {
        string trial = Path.Combine(data.Path, FormattableString.Invariant($"trial-{Environment.ProcessId}"));
        Write(trial, "1", "An answer");
        File.Delete(trial);
    }

    IReadOnlyList<string> Newest(string folder)
    {
        string path = Path.Combine(data.Path, folder);
        return Directory.Exists(path) ? [.. Directory.GetFiles(path, $"*{Extension}").OrderByDescending(File.GetLastWriteTimeUtc).ThenBy(name => name, StringComparer.Ordinal)] : [];
    }

    string Free(string folder, string title)
    {
        string id = string.Join('-', string.Concat(title.ToLowerInvariant().Select(letter => letter is >= 'a' and <= 'z' or >= '0' and <= '9' ? letter : ' ')).Split(' ', StringSplitOptions.RemoveEmptyEntries));
        id = id.Length == 0 ? "unnamed" : id[..Math.Min(id.Length, 40)].Trim('-');
        return Enumerable.Range(1, int.MaxValue).Select(number => Path.Combine(data.Path, folder, FormattableString.Invariant($"{id}{(number == 1 ? "" : $"-{number}")}{Extension}")))
            .First(path => !File.Exists(path));
    }
}
