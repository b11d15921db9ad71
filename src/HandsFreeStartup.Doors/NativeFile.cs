using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace HandsFreeStartup.Doors;

/// <summary>Opens files without ever waiting: a pipe would wait for somebody at its other end.</summary>
static partial class NativeFile
{
    const int ReadOnly = 0;
    const int WriteOnly = 1;
    const int DoNotWait = 0x800;
    const int CloseOnExecute = 0x80000;
    const int SetFlags = 4;
    const int Interrupted = 4;
    const int NobodyReads = 6;

    public static SafeFileHandle OpenToRead(string path) => Open(path, ReadOnly | DoNotWait | CloseOnExecute);

    /// <summary>Opens a pipe or a device that is there already; what is written then waits for its reader as usual.</summary>
    public static SafeFileHandle OpenToWrite(string path)
    {
        SafeFileHandle handle = Open(path, WriteOnly | DoNotWait | CloseOnExecute);
        Control((int)handle.DangerousGetHandle(), SetFlags, 0);
        return handle;
    }

    /// <exception cref="UnusableFileException">No file can have that name.</exception>
    public static void CheckName(string path)
    {
        if (path.Length == 0 || path.Contains('\0'))
        {
            throw new UnusableFileException("The name of the file is empty or holds a character that no file can have: look at the name.");
        }
    }

    static SafeFileHandle Open(string path, int flags)
    {
        CheckName(path);
        int descriptor;
        do
        {
            descriptor = OpenFile(path, flags, 0);
        }
        while (descriptor < 0 && Marshal.GetLastPInvokeError() == Interrupted);
        return descriptor >= 0 ? new SafeFileHandle(descriptor, ownsHandle: true) : throw Failed(path, Marshal.GetLastPInvokeError());
    }

    static Exception Failed(string path, int error) => error switch
    {
        2 or 20 => new FileNotFoundException($"There is no file {path}.", path),
        1 or 13 => new UnauthorizedAccessException($"{path} may not be opened."),
        36 => new PathTooLongException($"{path} is too long."),
        NobodyReads => new UnusableFileException($"{VisibleText.Of(path)} is a pipe or a device that nobody reads from: name a regular file."),
        _ => new IOException(Marshal.GetPInvokeErrorMessage(error), error),
    };

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int OpenFile(string path, int flags, int mode);

    [LibraryImport("libc", EntryPoint = "fcntl")]
    private static partial int Control(int descriptor, int command, int value);
}
