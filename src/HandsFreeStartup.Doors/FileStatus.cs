using System.Buffers.Binary;
using System.Runtime.InteropServices;

namespace HandsFreeStartup.Doors;

/// <summary>What lies at a path.</summary>
public enum FileKind
{
    /// <summary>Nothing.</summary>
    None,
    /// <summary>A regular file.</summary>
    Regular,
    /// <summary>A folder.</summary>
    Folder,
    /// <summary>A symbolic link.</summary>
    Link,
    /// <summary>A named or unnamed pipe.</summary>
    Pipe,
    /// <summary>A character or block device.</summary>
    Device,
    /// <summary>A socket.</summary>
    Socket,
}

/// <summary>What the system knows of a file without opening it.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="Written">Time of the last change of its content, nanoseconds since 1970; anybody can set it.</param>
/// <param name="Changed">Time of the last change of content, name or rights, nanoseconds since 1970; nobody can set it but the system's clock.</param>
/// <param name="Inode">Its number on its disk.</param>
/// <param name="Disk">The disk's number.</param>
public readonly partial record struct FileStatus(FileKind Kind, long Bytes, long Written, long Changed, ulong Inode, ulong Disk)
{
    // statx(2): its structure is the same on every machine, unlike that of stat(2).
    const int CurrentFolder = -100;
    const int DoNotFollow = 0x100;
    const int OfDescriptor = 0x1000;
    const uint BasicStatistics = 0x7FF;
    const int StructureBytes = 256;

    /// <summary>The status of what lies at <paramref name="path"/>; a link is not followed unless <paramref name="follows"/>.</summary>
    public static FileStatus Of(string path, bool follows = false)
    {
        if (!OperatingSystem.IsLinux())
        {
            return PlainFile.StatusOf(path, follows);
        }

        Span<byte> found = stackalloc byte[StructureBytes];
        return path.Length > 0 && !path.Contains('\0') && Statx(CurrentFolder, path, follows ? 0 : DoNotFollow, BasicStatistics, ref MemoryMarshal.GetReference(found)) == 0 ? Read(found) : default;
    }

    /// <summary>The status of an open file.</summary>
    internal static FileStatus Of(int descriptor)
    {
        Span<byte> found = stackalloc byte[StructureBytes];
        return Statx(descriptor, "", OfDescriptor, BasicStatistics, ref MemoryMarshal.GetReference(found)) == 0 ? Read(found) : default;
    }

    /// <summary>Whether two paths lead to one and the same file, by links or not; false where one leads to none.</summary>
    public static bool AreSame(string path, string other) => Of(path, follows: true) is { Kind: FileKind.Regular } status && status.IsSameFile(Of(other, follows: true));

    /// <summary>Whether both tell of one and the same file.</summary>
    public bool IsSameFile(FileStatus other) => Inode == other.Inode && Disk == other.Disk && Kind == other.Kind;

    static FileStatus Read(ReadOnlySpan<byte> found) => new(
        KindOf(BinaryPrimitives.ReadUInt16LittleEndian(found[28..])),
        BinaryPrimitives.ReadInt64LittleEndian(found[40..]),
        Time(found[112..]),
        Time(found[96..]),
        BinaryPrimitives.ReadUInt64LittleEndian(found[32..]),
        BinaryPrimitives.ReadUInt64LittleEndian(found[136..]));

    static long Time(ReadOnlySpan<byte> at) => unchecked(1_000_000_000 * BinaryPrimitives.ReadInt64LittleEndian(at) + BinaryPrimitives.ReadUInt32LittleEndian(at[8..]));

    static FileKind KindOf(ushort mode) => (mode & 0xF000) switch
    {
        0x8000 => FileKind.Regular,
        0x4000 => FileKind.Folder,
        0xA000 => FileKind.Link,
        0x1000 => FileKind.Pipe,
        0x2000 or 0x6000 => FileKind.Device,
        0xC000 => FileKind.Socket,
        _ => FileKind.None,
    };

    [LibraryImport("libc", EntryPoint = "statx", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Statx(int folder, string path, int flags, uint mask, ref byte found);
}
