using System.Collections.Immutable;
using HandsFreeStartup.Hear;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Running;
using HandsFreeStartup.Tests.Surroundings;

namespace HandsFreeStartup.Tests.Fuzzing;

/// <summary>The manifest of a measurement. What is expected of a recording that is taken is a strict number, a known word or nothing.</summary>
public sealed class ManifestDoor() : FuzzedDoor("manifest")
{
    public override IReadOnlyList<string> Words { get; } =
        [.. Fields.All.Select(field => field.Id), .. Commands.All.Select(command => $"command={command.Id}"), "nothing", "open", "answer", "command=", "=", ",", "\t", "oxygen=7.6", "flue_co=over", "#", "\r\n", "\ufeff"];

    protected override IEnumerable<byte[]> Seeds() =>
        [File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Hear", "Corpus", "corpus.tsv")), BytesOf("# a remark\na.wav\tdraft=-0.02\tdraft,answer\tanna\tdraft minus\nb.wav\tcommand=yes\tanswer\n"), BytesOf("c.wav\tnothing\topen")];

    public override Outcome Try(byte[] input, Random random)
    {
        string path = In("manifest.tsv");
        File.WriteAllBytes(path, input);
        try
        {
            ImmutableArray<HearCase> cases = HearManifest.Read(path);
            Assert.All(cases, Check);
            return new Outcome(true, string.Join(' ', cases.Select(measured => measured.Expected.Split('=')[0]).Distinct().Order(StringComparer.Ordinal)));
        }
        catch (WrongUseException refused)
        {
            SurroundingsTests.AssertSentence(Doors.VisibleText.OfLines(refused.Message));
            return new Outcome(false, refused.Message);
        }
    }

    static void Check(HearCase measured)
    {
        string[] parts = measured.Expected.Split('=', 2);
        Assert.True(
            measured.Expected == "nothing" || parts[0] == "command" || (Fields.Find(parts[0]) is { } field && (StrictNumber.Of(parts[1]) is not null || (field.MayBeOver && parts[1] == "over"))),
            measured.Expected);
    }
}
