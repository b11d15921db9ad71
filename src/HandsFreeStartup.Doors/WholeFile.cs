namespace HandsFreeStartup.Doors;

/// <summary>
/// Writes files that somebody has named: beside the old file first, which is replaced only when the new one is whole. A full disk or a broken run leaves the old one as it was.
/// </summary>
public static class WholeFile
{
    const string Unfinished = ".part";

    /// <summary>How a record begins (SQLite file format, section 1.3).</summary>
    static ReadOnlySpan<byte> Database => "SQLite format 3\0"u8;

    /// <summary>Writes a file.</summary>
    /// <param name="path">Where. A link is written through; a device, such as the terminal, is written to as it is.</param>
    /// <param name="write">Writes the content.</param>
    /// <param name="what">What it is, for the sentence: "The table".</param>
    /// <param name="canBeMadeAgain">Whether it is not waited until the disk itself has it: what a loss of power takes is made again.</param>
    /// <exception cref="UnusableFileException">It cannot be written; one sentence says why, and nothing was lost.</exception>
    public static void Write(string path, Action<Stream> write, string what, bool canBeMadeAgain = false)
    {
        try
        {
            FileKind kind = FileStatus.Of(path, follows: true).Kind;
            if (kind is FileKind.Device or FileKind.Pipe)
            {
                using FileStream there = OperatingSystem.IsLinux() ? new(NativeFile.OpenToWrite(path), FileAccess.Write) : new(path, FileMode.Open, FileAccess.Write);
                write(there);
                there.Flush();
                return;
            }

            if (kind == FileKind.Folder)
            {
                throw new UnusableFileException($"{what} cannot be written to {VisibleText.Of(path)}, which is a folder: name a file in it.");
            }

            RefuseOverRecord(path, what);

            WriteBeside(Target(path), write, canBeMadeAgain);
        }
        catch (Exception error) when (FileTrouble.Is(error))
        {
            throw new UnusableFileException(FileTrouble.Sentence(error, $"{what} {path} cannot be written", "name another file or folder"));
        }
    }

    /// <summary>Writes a text as UTF-8; see <see cref="Write"/>.</summary>
    public static void WriteText(string path, string text, string what) => Write(path, file => file.Write(System.Text.Encoding.UTF8.GetBytes(text)), what);

    /// <summary>A record is the one thing that cannot be made again: no slip of a name writes over it.</summary>
    /// <exception cref="UnusableFileException">A record, or another database, lies there.</exception>
    public static void RefuseOverRecord(string path, string what)
    {
        if (FileStatus.Of(path, follows: true).Kind != FileKind.Regular)
        {
            return;
        }

        using FileStream there = RegularFile.Open(path, long.MaxValue);
        byte[] begins = new byte[Database.Length];
        there.ReadAtLeast(begins, begins.Length, throwOnEndOfStream: false);
        if (begins.AsSpan().SequenceEqual(Database))
        {
            throw new UnusableFileException($"{what} is not written over {VisibleText.Of(path)}, which is a record or another database: name another file.");
        }
    }

    static void WriteBeside(string path, Action<Stream> write, bool canBeMadeAgain)
    {
        string unfinished = $"{path}{Unfinished}";
        Remove(unfinished);
        try
        {
            using (FileStream file = new(unfinished, FileMode.CreateNew, FileAccess.Write))
            {
                write(file);
                file.Flush(flushToDisk: !canBeMadeAgain);
            }

            File.Move(unfinished, path, overwrite: true);
        }
        catch
        {
            Remove(unfinished);
            throw;
        }
    }

    static void Remove(string unfinished)
    {
        try
        {
            File.Delete(unfinished);
        }
        catch (Exception error) when (FileTrouble.Is(error))
        {
            // The disk that could not be written cannot be cleaned either; what is left is named as unfinished.
        }
    }

    static string Target(string path) => FileStatus.Of(path).Kind == FileKind.Link ? File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName ?? path : path;
}
