using System.Security.Cryptography;
using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Storage.Log;

/// <summary>Keeps copies of photos beside the log, each named by the SHA-256 of its bytes.</summary>
/// <param name="jobPath">The job's file; the photos lie in the folder <c>.photos</c> beside it.</param>
public sealed class PhotoStore(string jobPath)
{
    const int LargestBytes = 50 << 20;

    /// <summary>The folder of the photos of a job.</summary>
    public static string FolderOf(string jobPath) => $"{jobPath}.photos";

    /// <summary>Copies a photo.</summary>
    /// <param name="path">The photo.</param>
    /// <returns>Name of the copy, and hash of its bytes.</returns>
    /// <exception cref="LogException">It cannot be read or kept; one sentence says why.</exception>
    public (string Name, string Sha256) Keep(string path)
    {
        try
        {
            byte[] photo = RegularFile.ReadAll(path, LargestBytes);
            string hash = Convert.ToHexStringLower(SHA256.HashData(photo));
            string name = $"{hash}{ExtensionOf(path)}";
            Directory.CreateDirectory(FolderOf(jobPath));
            WholeFile.Write(Path.Combine(FolderOf(jobPath), name), kept => kept.Write(photo), "The photo's copy");
            return (name, hash);
        }
        catch (Exception error) when (FileTrouble.Is(error))
        {
            throw new LogException(FileTrouble.Sentence(error, $"The photo {path} cannot be kept", "look at the name and the folder"), error);
        }
    }

    /// <summary>The end of the name where it is one that pictures have; it becomes part of the record.</summary>
    static string ExtensionOf(string path) => Path.GetExtension(path).ToLowerInvariant() is { Length: > 1 and <= 6 } extension && extension.Skip(1).All(char.IsAsciiLetterOrDigit) ? extension : "";
}
