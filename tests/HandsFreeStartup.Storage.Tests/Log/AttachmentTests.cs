using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;

namespace HandsFreeStartup.Storage.Tests.Log;

/// <summary>Recordings and photos belong to the record: every byte of them, and none of them stays where they are forgotten.</summary>
public sealed class AttachmentTests : IDisposable
{
    readonly TemporaryFolder _folder = new();
    readonly string _job;
    readonly string _clip;
    readonly string _photo;

    public AttachmentTests()
    {
        _job = _folder.File("job.db");
        _clip = new AttachmentStore(_job).Keep([0.1f, -0.2f, 0.3f]);
        File.WriteAllBytes(_folder.File("plate.jpg"), [.. Enumerable.Range(0, 64).Select(i => (byte)(i * 3))]);
        (_photo, string hash) = new AttachmentStore(_job).KeepPhoto(_folder.File("plate.jpg"));
        Evidence spoken = new("words", Channel.Voice, Certainty.Green) { Clip = _clip };
        using StartupLog log = StartupLog.Create(_job);
        foreach (StartupEvent happened in (StartupEvent[])
            [new StartupBegan(Some.Moment, Some.Began().Job with { Checklist = Fixture.Checklist, Appliance = Fixture.Appliance, Site = Fixture.Site }), new UtteranceHeard(Some.Moment, spoken), new PhotoAttached(Some.Moment, "drill", _photo, hash, Evidence.Typed("photo plate.jpg"))])
        {
            log.Append(happened);
        }
    }

    [Fact]
    public void Verify_finds_every_flipped_byte_of_every_attachment()
    {
        Assert.Empty(StartupLogVerifier.Verify(_job).Findings);
        foreach (string path in (string[])[Path.Combine(AttachmentKind.Recording.FolderOf(_job), _clip), Path.Combine(AttachmentKind.Photo.FolderOf(_job), _photo)])
        {
            byte[] whole = File.ReadAllBytes(path);
            for (int i = 0; i < whole.Length; i++)
            {
                byte[] flipped = [.. whole];
                flipped[i] ^= (byte)(1 << (i % 8));
                File.WriteAllBytes(path, flipped);

                Assert.Contains(StartupLogVerifier.Verify(_job).Findings, finding => finding.Message.Contains(Path.GetFileName(path), StringComparison.Ordinal));
            }

            File.WriteAllBytes(path, whole);
        }

        Assert.Empty(StartupLogVerifier.Verify(_job).Findings);
    }

    [Fact]
    public void Forgetting_reaches_what_lies_behind_a_linked_folder_and_names_what_is_not_its_own()
    {
        string elsewhere = _folder.File("elsewhere"), clips = AttachmentKind.Recording.FolderOf(_job);
        Directory.Move(clips, elsewhere);
        Directory.CreateSymbolicLink(clips, elsewhere);
        File.WriteAllText(Path.Combine(elsewhere, $"{_clip}.part"), "half of a voice");
        File.WriteAllText(Path.Combine(elsewhere, "letter.txt"), "somebody's own");
        File.WriteAllText(Path.Combine(elsewhere, $"{new string('a', 64)}.wav"), "named like a hash, but not by its own");

        using StartupLog log = StartupLog.Open(_job);
        Forgotten forgotten = log.ForgetPersonalData("L. Ead");

        Assert.Equal((2, 1), (forgotten.Recordings, forgotten.Photos));
        Assert.Equal([$"{new string('a', 64)}.wav", "letter.txt"], Directory.GetFiles(elsewhere).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Contains("2 files in", Assert.Single(forgotten.OutOfReach), StringComparison.Ordinal);
        Assert.False(Directory.Exists(clips));
        Assert.False(Directory.Exists(AttachmentKind.Photo.FolderOf(_job)));
    }

    public void Dispose() => _folder.Dispose();
}
