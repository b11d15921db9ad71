using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Storage.Log;

/// <summary>The files beside a record that hold a person's name, face or voice: recordings, photos, copies, and what a full disk or a broken run has left unfinished of them.</summary>
public static class PersonalFiles
{
    const string Unfinished = ".part";

    const string CustomerCopy = "customer.pdf";
    const char Between = '+';

    static readonly string[] Copies = ["appliance.pdf", CustomerCopy, "office.pdf", "narrow.txt"];

    /// <summary>Removes a folder of recordings or photos. Behind a link only what is of this program is removed: a file whose name is the hash of its bytes.</summary>
    /// <param name="folder">The folder, or a link in its place.</param>
    /// <returns>How many files were removed, and what could not be reached, as parts of a sentence.</returns>
    public static (int Removed, IReadOnlyList<string> Left) RemoveFolder(string folder)
    {
        switch (FileStatus.Of(folder).Kind)
        {
            case FileKind.None:
                return (0, []);
            case FileKind.Link:
                (int Removed, IReadOnlyList<string> Left) behind = RemoveBehind(folder);
                File.Delete(folder);
                return behind;
            case FileKind.Folder:
                (int Removed, IReadOnlyList<string> Left) inside = RemoveInside(folder);
                Directory.Delete(folder, recursive: true);
                return inside;
            default:
                File.Delete(folder);
                return (0, []);
        }
    }

    /// <summary>Removes the copies beside a record, and what is unfinished of them and of its summary.</summary>
    /// <returns>How many copies, and how many unfinished files.</returns>
    public static (int Copies, int Unfinished) RemoveCopies(string jobPath)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(jobPath))!, name = Path.GetFileNameWithoutExtension(jobPath);
        string[] copies = [.. Copies.Select(copy => Path.Combine(folder, $"{name}-{copy}")).Where(File.Exists), .. Shared(folder, name).Where(file => !file.EndsWith(Unfinished, StringComparison.Ordinal))];
        string[] unfinished = [.. Directory.EnumerateFiles(folder, $"{name}*{Unfinished}").Union(Shared(folder, name).Where(file => file.EndsWith(Unfinished, StringComparison.Ordinal)))];
        foreach (string file in copies.Concat(unfinished))
        {
            File.Delete(file);
        }

        return (copies.Length, unfinished.Length);
    }

    /// <summary>The file name of a customer copy that several jobs of one address share.</summary>
    public static string SharedCopy(IEnumerable<string> jobs) => $"{string.Join(Between, jobs)}-{CustomerCopy}";

    static IEnumerable<string> Shared(string folder, string job) => Directory.EnumerateFiles(folder, $"*{Between}*-{CustomerCopy}*")
        .Where(file => Path.GetFileName(file).Split($"-{CustomerCopy}")[0].Split(Between).Contains(job));

    static (int, IReadOnlyList<string>) RemoveBehind(string link)
    {
        string? target = Directory.ResolveLinkTarget(link, returnFinalTarget: true)?.FullName;
        if (target is null || !Directory.Exists(target))
        {
            return (0, []);
        }

        string[] files = Directory.GetFiles(target);
        string[] ours = [.. files.Where(IsOurs)];
        foreach (string file in ours)
        {
            File.Delete(file);
        }

        return (ours.Length, ours.Length == files.Length ? [] : [FormattableString.Invariant($"{files.Length - ours.Length} files in {target}, to which {link} led: they are not of this program")]);
    }

    /// <summary>What a link inside leads to is removed like what lies behind a linked folder.</summary>
    static (int, IReadOnlyList<string>) RemoveInside(string folder)
    {
        int removed = 0;
        List<string> left = [];
        foreach (string file in Directory.EnumerateFileSystemEntries(folder))
        {
            removed++;
            if (FileStatus.Of(file).Kind != FileKind.Link || File.ResolveLinkTarget(file, returnFinalTarget: true)?.FullName is not { } target || !File.Exists(target))
            {
                continue;
            }

            if (IsOurs(target))
            {
                File.Delete(target);
            }
            else
            {
                left.Add($"{target}, to which {file} led: it is not of this program");
            }
        }

        return (removed, left);
    }

    /// <summary>Named by the hash of its bytes, or unfinished of such a name.</summary>
    static bool IsOurs(string file)
    {
        string name = Path.GetFileName(file);
        bool isHash = name.Length >= 64 && name.AsSpan(0, 64).IndexOfAnyExcept("0123456789abcdef") < 0 && (name.Length == 64 || name[64] == '.');
        return isHash && (name.EndsWith(Unfinished, StringComparison.Ordinal) || Attachment.HashOf(file) == name[..64]);
    }
}
