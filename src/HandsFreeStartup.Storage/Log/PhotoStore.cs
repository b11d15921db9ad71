using System.Security.Cryptography;

namespace HandsFreeStartup.Storage.Log;

/// <summary>Keeps copies of photos beside the log, each named by the SHA-256 of its bytes.</summary>
/// <param name="jobPath">The job's file; the photos lie in the folder <c>.photos</c> beside it.</param>
public sealed class PhotoStore(string jobPath)
{
    const long LargestBytes = 50 << 20;

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
            if (new FileInfo(path) is not { Exists: true, Length: <= LargestBytes })
            {
                throw new LogException($"There is no photo {path}, or it is larger than 50 megabytes. Look at the name and the folder.");
            }

            string hash = Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(path)));
            string name = $"{hash}{Path.GetExtension(path).ToLowerInvariant()}";
            Directory.CreateDirectory(FolderOf(jobPath));
            File.Copy(path, Path.Combine(FolderOf(jobPath), name), overwrite: true);
            return (name, hash);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new LogException($"The photo {path} cannot be kept: {error.Message.TrimEnd('.')}.", error);
        }
    }
}
