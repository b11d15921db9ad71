using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace HandsFreeStartup.Doors;

/// <summary>
/// What the runtime alone tells of files, for systems other than Linux. It knows no inode: a file is told from another by its whole path, and one that is exchanged between looking and opening
/// is not noticed.
/// </summary>
static class PlainFile
{
    /// <summary>The status of what lies at <paramref name="path"/>; a link is not followed unless <paramref name="follows"/>.</summary>
    public static FileStatus StatusOf(string path, bool follows)
    {
        if (path.Length == 0 || path.Contains('\0'))
        {
            return default;
        }

        try
        {
            return Of(path, follows);
        }
        catch (IOException)
        {
            // Links in a circle lead to nothing.
            return default;
        }
    }

    static FileStatus Of(string path, bool follows)
    {
        FileSystemInfo found = Directory.Exists(path) ? new DirectoryInfo(path) : new FileInfo(path);
        if (found.LinkTarget is not null)
        {
            return !follows ? Of(found, FileKind.Link) : found.ResolveLinkTarget(returnFinalTarget: true) is { Exists: true } target ? Of(target, KindOf(target)) : default;
        }

        return found.Exists ? Of(found, KindOf(found)) : default;
    }

    static FileKind KindOf(FileSystemInfo found) => found is DirectoryInfo ? FileKind.Folder : (found.Attributes & FileAttributes.Device) != 0 ? FileKind.Device : FileKind.Regular;

    static FileStatus Of(FileSystemInfo found, FileKind kind) => new(
        kind, kind == FileKind.Regular ? ((FileInfo)found).Length : 0, Nanoseconds(found.LastWriteTimeUtc),
        Math.Max(Nanoseconds(found.LastWriteTimeUtc), Nanoseconds(found.CreationTimeUtc)), Number(found.FullName), 0);

    static long Nanoseconds(DateTime at) => 100 * (at - DateTime.UnixEpoch).Ticks;

    static ulong Number(string path) => BinaryPrimitives.ReadUInt64LittleEndian(SHA256.HashData(Encoding.UTF8.GetBytes(OperatingSystem.IsWindows() ? path.ToUpperInvariant() : path)));
}
