using System.Diagnostics;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Start;

/// <summary>A live start-up as a process, into which somebody types what nobody should: it goes on, says why it did not take it, and keeps what it took as it was typed.</summary>
public sealed class HostileTypingTests : IDisposable
{
    const string Escape = "\u001b]0;owned\u0007 left \u202E=HYPERLINK(\"x\")";

    readonly TemporaryFolder _data = new();

    public void Dispose() => _data.Dispose();

    [Fact]
    public async Task What_is_no_photo_is_refused_and_the_start_up_goes_on()
    {
        string pipe = Path.Combine(_data.Path, "pipe"), link = Path.Combine(_data.Path, "link"), photo = Path.Combine(_data.Path, "plate.jpg");
        using (Process make = Process.Start("mkfifo", [pipe]))
        {
            await make.WaitForExitAsync();
        }

        File.CreateSymbolicLink(link, "/dev/zero");
        await File.WriteAllBytesAsync(photo, [0xff, 0xd8]);

        ProgramResult result = await Typed($"photo {pipe}", $"photo {link}", "photo /dev/zero", "photo /tmp", "photo a\0b", $"photo {photo}", "done");

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.All(
            (string[])["pipe is a pipe", "link is a device", "/dev/zero is a device", "/tmp is a folder", "holds a character that no file can have"],
            why => Assert.Contains(why, result.Output, StringComparison.Ordinal));
        Assert.Single(StoredJob.Read(_data.Job).Events.OfType<PhotoAttached>());
    }

    [Fact]
    public async Task Digits_of_other_scripts_commas_and_words_without_end_are_refused_and_the_start_up_goes_on()
    {
        ProgramResult result = await Typed("done", "no", "done", "monoxide １２", "monoxide ١٢", "monoxide 1,2", "monoxide 3-5", "monoxide 2½", "monoxide ²96", new string('x', 300_000), "monoxide 4");

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.Equal(["4"], RecordLines.Of(_data.Job).Select(line => line.Split('\t')[3]));
        Assert.Contains("is longer than 4000 letters: make it shorter", result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Escapes_in_a_note_and_in_a_name_are_kept_and_shown_as_marks_everywhere()
    {
        ProgramResult result = await ProgramProcess.RunTyping(["note", Escape, "done"], [.. Start, "--technician", "T\u001b[2J"]);
        string copies = Path.Combine(_data.Path, "copies");
        await ProgramProcess.Run("copies", _data.Job, "--out", copies);

        string summary = await File.ReadAllTextAsync(Path.ChangeExtension(_data.Job, ".txt"));
        string narrow = await File.ReadAllTextAsync(Directory.GetFiles(copies, "*-narrow.txt").Single());
        Assert.Equal(Escape, Assert.Single(StoredJob.Read(_data.Job).Events.OfType<NoteTaken>()).Text);
        Assert.All((string[])[result.Output, summary, narrow], text => Assert.All(text, letter => Assert.True(letter == '\n' || !char.IsControl(letter))));
        Assert.Contains("␛]0;owned␇ left", summary, StringComparison.Ordinal);
        Assert.DoesNotContain('\u202E', result.Output + summary + narrow);
    }

    [Theory]
    [InlineData("folder", "which is a folder: name a file in it")]
    [InlineData("full disk", "the disk is full")]
    public async Task A_summary_that_cannot_be_written_is_one_sentence_and_the_record_is_whole(string what, string why)
    {
        await Typed("done");
        string summary = Path.ChangeExtension(_data.Job, ".txt");
        File.Delete(summary);
        if (what == "folder")
        {
            Directory.CreateDirectory(summary);
        }
        else
        {
            File.CreateSymbolicLink(summary, "/dev/full");
        }

        ProgramResult result = await ProgramProcess.RunTyping([], ["start", "--keys", "--plain", "--mute", "--data", _data.Path, "--resume", _data.Job]);

        Assert.Equal(2, result.ExitCode);
        Assert.Contains("The record is whole, but its summary", result.Error, StringComparison.Ordinal);
        Assert.Contains(why, result.Error, StringComparison.Ordinal);
        Assert.True(StartupLogVerifier.Verify(_data.Job).IsSound);
    }

    Task<ProgramResult> Typed(params string[] lines) => ProgramProcess.RunTyping(lines, Start);

    string[] Start =>
    [
        "start", "--keys", "--plain", "--mute", "--data", _data.Path, "--appliance", Sheet("demo-furnace"), "--site", Sheet("demo-site"), "--checklist", Sheet("two-stage-natural-gas"),
    ];

    static string Sheet(string name) => Path.Combine(Running.ShippedFiles.Checklists, $"{name}.yaml");
}
