using System.Diagnostics;

namespace HandsFreeStartup.Doors.Tests;

/// <summary>Files that are none, and disks that are full. Real ones.</summary>
public sealed class FileTests : IDisposable
{
    const int Most = 1000;

    readonly string _folder = Directory.CreateTempSubdirectory("handsfree-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_regular_file_is_read_whole_and_through_a_link_unless_links_are_not_followed()
    {
        File.WriteAllText(In("file"), "content");
        File.CreateSymbolicLink(In("link"), In("file"));

        Assert.Equal("content"u8.ToArray(), RegularFile.ReadAll(In("file"), Most));
        Assert.Equal("content"u8.ToArray(), RegularFile.ReadAll(In("link"), Most));
        Refused("link to somewhere else", () => RegularFile.ReadAll(In("link"), Most, follows: false));
    }

    [Fact]
    public void A_pipe_is_refused_at_once_and_nobody_waits_for_its_writer()
    {
        Run("mkfifo", In("pipe"));
        File.CreateSymbolicLink(In("link"), In("pipe"));

        Refused("is a pipe", () => RegularFile.ReadAll(In("pipe"), Most));
        Refused("is a pipe", () => RegularFile.ReadAll(In("link"), Most));
        Refused("nobody reads from", () => WholeFile.WriteText(In("pipe"), "text", "The text"));
    }

    [Fact]
    public void Where_only_the_runtime_can_be_asked_files_folders_and_links_are_told_apart_as_by_the_system()
    {
        File.WriteAllText(In("file"), "content");
        File.CreateSymbolicLink(In("link"), In("file"));
        File.CreateSymbolicLink(In("broken"), In("none"));
        File.CreateSymbolicLink(In("circle"), In("circle"));
        Directory.CreateSymbolicLink(In("way"), _folder);

        foreach (string path in new[] { In("file"), In("link"), In("broken"), In("circle"), In("way"), In("none"), _folder, "", "a\0b" })
        {
            foreach (bool follows in new[] { false, true })
            {
                FileStatus plain = PlainFile.StatusOf(path, follows), known = FileStatus.Of(path, follows);
                Assert.Equal((known.Kind, known.Kind == FileKind.Regular ? known.Bytes : 0), (plain.Kind, plain.Bytes));
            }
        }

        Assert.True(PlainFile.StatusOf(In("file"), false).IsSameFile(PlainFile.StatusOf(In("link"), true)));
        Assert.False(PlainFile.StatusOf(In("file"), false).IsSameFile(PlainFile.StatusOf(_folder, true)));
    }

    [Theory]
    [InlineData("/dev/zero", "is a device")]
    [InlineData("/tmp", "is a folder")]
    [InlineData("", "empty or holds a character")]
    [InlineData("a\0b", "empty or holds a character")]
    public void What_is_no_file_is_refused(string path, string why) => Refused(why, () => RegularFile.ReadAll(path, Most));

    [Fact]
    public void A_file_that_is_not_there_and_a_name_that_is_too_long_are_told_as_such()
    {
        Assert.Throws<FileNotFoundException>(() => RegularFile.ReadAll(In("none"), Most));
        Assert.Throws<FileNotFoundException>(() => RegularFile.ReadAll("/etc/passwd/none", Most));
        Assert.Throws<PathTooLongException>(() => RegularFile.ReadAll(In(new string('a', 5000)), Most));
        File.CreateSymbolicLink(In("circle"), In("circle"));
        Assert.Contains("circle", FileTrouble.Sentence(Assert.ThrowsAny<IOException>(() => RegularFile.ReadAll(In("circle"), Most)), "X cannot be read", "name another"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_too_large_is_refused_by_its_size_and_one_that_lies_about_its_size_by_its_bytes()
    {
        using (FileStream sparse = File.Create(In("large")))
        {
            sparse.SetLength(3L << 30);
        }

        Refused("larger than 1000 bytes", () => RegularFile.ReadAll(In("large"), Most));
        Refused("larger than 1000 bytes", () => RegularFile.ReadAll("/proc/self/smaps", Most));
    }

    [Fact]
    public void Writing_replaces_a_file_only_by_a_whole_one_and_writes_through_a_link()
    {
        File.WriteAllText(In("old"), "old");
        File.CreateSymbolicLink(In("link"), In("old"));
        WholeFile.WriteText(In("link"), "new", "The text");
        Assert.Equal("new", File.ReadAllText(In("old")));
        Assert.Equal(FileKind.Link, FileStatus.Of(In("link")).Kind);

        Assert.Throws<InvalidDataException>(() => WholeFile.Write(In("old"), file =>
        {
            file.Write("half"u8);
            throw new InvalidDataException("broken off");
        }, "The text"));
        Assert.Equal("new", File.ReadAllText(In("old")));
        Assert.Equal(["link", "old"], Directory.GetFiles(_folder).Select(Path.GetFileName).Order());
    }

    [Fact]
    public void What_was_laid_in_the_way_of_writing_is_not_written_through()
    {
        File.WriteAllText(In("precious"), "precious");
        File.CreateSymbolicLink(In("copy.part"), In("precious"));

        WholeFile.WriteText(In("copy"), "text", "The copy");

        Assert.Equal("precious", File.ReadAllText(In("precious")));
    }

    [Theory]
    [InlineData("/dev/full", "the disk is full; free some space, or name another file or folder.")]
    [InlineData("/proc/none", "no such f")]
    [InlineData("/etc/passwd/none", "no such folder")]
    [InlineData("/tmp", "which is a folder")]
    [InlineData("a\0b", "no file can have")]
    public void A_place_that_cannot_be_written_is_one_sentence_with_a_remedy(string path, string why)
    {
        string message = Assert.Throws<UnusableFileException>(() => WholeFile.WriteText(path, "text", "The table")).Message;

        Assert.StartsWith("The table", message, StringComparison.Ordinal);
        Assert.Contains(why, message, StringComparison.Ordinal);
        Assert.EndsWith(".", message, StringComparison.Ordinal);
        Assert.True(FileStatus.Of("/dev/full").Kind == FileKind.Device);
    }

    [Fact]
    public void A_change_of_content_shows_in_the_time_that_nobody_can_set_back()
    {
        File.WriteAllText(In("file"), "one");
        FileStatus before = FileStatus.Of(In("file"));
        DateTime written = File.GetLastWriteTimeUtc(In("file"));

        File.WriteAllText(In("file"), "two");
        File.SetLastWriteTimeUtc(In("file"), written);

        FileStatus after = FileStatus.Of(In("file"));
        Assert.Equal((before.Bytes, before.Written / 100), (after.Bytes, after.Written / 100));
        Assert.NotEqual(before.Changed, after.Changed);
    }

    string In(string name) => Path.Combine(_folder, name);

    static void Refused(string why, Action open) => Assert.Contains(why, Assert.Throws<UnusableFileException>(open).Message, StringComparison.Ordinal);

    static void Run(string program, string argument)
    {
        using Process process = Process.Start(program, [argument]);
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
    }
}
