using Microsoft.Win32.SafeHandles;

namespace HandsFreeStartup.Doors;

/// <summary>
/// Opens files that somebody else has named or put there: only regular ones, of bounded size. A pipe, a device, a folder or a socket is refused with a sentence before
/// anything is read from it, so that nothing waits for a writer that never comes or reads without end.
/// </summary>
public static class RegularFile
{
    const int Buffer = 1 << 16;

    /// <summary>Opens a file for reading.</summary>
    /// <param name="path">The file.</param>
    /// <param name="most">Bytes that it may have.</param>
    /// <param name="follows">Whether a link may stand for it. What lies in the folder of a job is never a link.</param>
    /// <exception cref="UnusableFileException">It is none that can be read; the message is a whole sentence.</exception>
    /// <exception cref="IOException">There is none, or it cannot be opened.</exception>
    /// <exception cref="UnauthorizedAccessException">There is no right to read it.</exception>
    public static FileStream Open(string path, long most, bool follows = true)
    {
        Check(path, FileStatus.Of(path, follows), most);
        if (!OperatingSystem.IsLinux())
        {
            NativeFile.CheckName(path);
            return new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, Buffer);
        }

        SafeFileHandle handle = NativeFile.OpenToRead(path);
        try
        {
            // What was looked at may have been exchanged since.
            FileStatus opened = FileStatus.Of((int)handle.DangerousGetHandle());
            Check(path, opened, most);
            return follows || opened.IsSameFile(FileStatus.Of(path))
                ? new FileStream(handle, FileAccess.Read, Buffer)
                : throw new UnusableFileException($"{VisibleText.Of(path)} was exchanged while it was opened: try again.");
        }
        catch
        {
            handle.Dispose();
            throw;
        }
    }

    /// <summary>All bytes of a file; see <see cref="Open"/>.</summary>
    public static byte[] ReadAll(string path, int most, bool follows = true)
    {
        using FileStream file = Open(path, most, follows);
        using MemoryStream kept = new((int)Math.Min(file.Length, most));
        byte[] buffer = new byte[Buffer];
        // A file can be longer than it says: it grows, or it is one of the system's own.
        while (file.Read(buffer) is var read and > 0)
        {
            kept.Write(buffer, 0, read);
            if (kept.Length > most)
            {
                throw TooLarge(path, most);
            }
        }

        return kept.ToArray();
    }

    /// <summary>Refuses what cannot be read as a file; says nothing of what is not there.</summary>
    /// <exception cref="UnusableFileException">It is none that can be read.</exception>
    public static void Check(string path, long most, bool follows = true) => Check(path, FileStatus.Of(path, follows), most);

    static void Check(string path, FileStatus status, long most)
    {
        if (status.Kind is not (FileKind.Regular or FileKind.None))
        {
            throw new UnusableFileException($"{VisibleText.Of(path)} is {Name(status.Kind)}, and no file that can be read: name a regular file.");
        }

        if (status.Bytes > most)
        {
            throw TooLarge(path, most);
        }
    }

    static UnusableFileException TooLarge(string path, long most) =>
        new($"{VisibleText.Of(path)} is larger than {Size(most)}, the most that is read here: name another file, or a smaller one.");

    static string Name(FileKind kind) => kind switch
    {
        FileKind.Folder => "a folder",
        FileKind.Link => "a link to somewhere else",
        FileKind.Pipe => "a pipe",
        FileKind.Device => "a device",
        _ => "a socket",
    };

    static string Size(long bytes) => bytes >= 1 << 20 ? FormattableString.Invariant($"{bytes >> 20} MiB") : FormattableString.Invariant($"{bytes} bytes");
}
