using System.Globalization;
using System.Security.Cryptography;
using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Storage.Log;

/// <summary>A file in a folder beside a job: a recording or a photo. Only a regular file of bounded size is opened, and no link is followed out of the folder.</summary>
static class Attachment
{
    /// <summary>More than any recording or photo has.</summary>
    public const int MostBytes = 64 << 20;

    /// <summary>Bytes of a sample from the beginning, the middle and the end of a file.</summary>
    const int Sample = 4096;

    /// <summary>What lies at that name in that folder; nothing is said of a name that leads out of it.</summary>
    public static FileStatus StatusOf(string folder, string name) =>
        name.Length > 0 && name == Path.GetFileName(name) && FileStatus.Of(folder).Kind == FileKind.Folder ? FileStatus.Of(Path.Combine(folder, name)) : default;

    /// <summary>Whether it can be opened.</summary>
    public static bool IsUsable(FileStatus status) => status is { Kind: FileKind.Regular, Bytes: <= MostBytes };

    /// <summary>Lower-case hexadecimal SHA-256 of a file, read piece by piece; null where it cannot be read.</summary>
    public static string? HashOf(string path)
    {
        try
        {
            using FileStream file = RegularFile.Open(path, MostBytes, follows: false);
            return Convert.ToHexStringLower(SHA256.HashData(file));
        }
        catch (Exception error) when (FileTrouble.Is(error))
        {
            return null;
        }
    }

    /// <summary>
    /// Changes with the content of a file, as good as surely: sizes, both times, and a hash of samples. The time of the last change cannot be set back by who
    /// writes to the file; the samples tell files apart that were exchanged on a disk without such times.
    /// </summary>
    public static string FingerprintOf(string path)
    {
        FileStatus status = FileStatus.Of(path);
        return string.Create(CultureInfo.InvariantCulture, $"{status.Kind} {status.Bytes} {status.Written} {status.Changed} {(IsUsable(status) ? SamplesOf(path) : "")}");
    }

    /// <summary>The fingerprints of everything in a folder, by name.</summary>
    public static string FingerprintOfAll(string folder)
    {
        if (FileStatus.Of(folder).Kind != FileKind.Folder)
        {
            return FileStatus.Of(folder).Kind.ToString();
        }

        using IncrementalHash all = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (string file in Directory.EnumerateFileSystemEntries(folder).Order(StringComparer.Ordinal))
        {
            all.AppendData(System.Text.Encoding.UTF8.GetBytes($"{Path.GetFileName(file)}\0{FingerprintOf(file)}\0"));
        }

        return Convert.ToHexStringLower(all.GetHashAndReset().AsSpan(0, 16));
    }

    static string SamplesOf(string path)
    {
        try
        {
            using FileStream file = RegularFile.Open(path, MostBytes, follows: false);
            using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
            byte[] sample = new byte[Sample];
            foreach (long at in (long[])[0, Math.Max(0, file.Length / 2 - Sample / 2), Math.Max(0, file.Length - Sample)])
            {
                file.Position = at;
                hash.AppendData(sample, 0, file.ReadAtLeast(sample, Sample, throwOnEndOfStream: false));
            }

            return Convert.ToHexStringLower(hash.GetHashAndReset().AsSpan(0, 16));
        }
        catch (Exception error) when (FileTrouble.Is(error))
        {
            return "";
        }
    }
}
