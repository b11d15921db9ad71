using HandsFreeStartup.Hear;
using HandsFreeStartup.Running;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Hear;

/// <summary>hear --live as a process, with recordings of the demonstration in the place of a microphone.</summary>
public sealed class LiveHearingTests
{
    static readonly string Recordings = Path.Combine(AppContext.BaseDirectory, "Demo", "Recordings");

    [Fact, Trait("Sound", "Live")]
    public async Task Whoever_says_something_else_is_told_so_and_the_verdict_is_kept_for_the_microphone()
    {
        using TemporaryFolder folder = new();
        string recorder = Path.Combine(folder.Path, "recorder");
        File.WriteAllText(recorder, $$"""
            say() { tail -c +45 "$1" | { while :; do head -c 16000 > "$0.part"; [ -s "$0.part" ] || break; cat "$0.part"; sleep 0.47; done; }; }
            quiet() { i=0; while [ $i -lt $1 ]; do head -c 16000 /dev/zero; sleep 0.47; i=$((i+1)); done; }
            quiet 2; say '{{Recordings}}/01.wav'; quiet 6; say '{{Recordings}}/01.wav'; while :; do quiet 2; done

            """);

        ProgramResult result = await ProgramProcess.Run("hear", "--live", "1", "--microphone", $"sh {recorder}", "--ears", "1", "--data", folder.Path);

        Assert.Equal("", result.Error);
        Assert.Contains("Say: oxygen seven point six", result.Output, StringComparison.Ordinal);
        Assert.Contains("command=done", result.Output, StringComparison.Ordinal);
        Assert.Contains("Not fit for work by voice", result.Output, StringComparison.Ordinal);
        Assert.Equal(1, result.ExitCode);
        string[] kept = await File.ReadAllLinesAsync(Assert.Single(Directory.GetFiles(Path.Combine(folder.Path, "microphones"))));
        Assert.Equal("when\tright\tconfirmed\tagain\twrong", kept[0]);
        Assert.EndsWith("\t0\t0\t0\t1", kept[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(12, 0, 0, 0, "Fit for work.")]
    [InlineData(10, 1, 1, 0, "Fit for work.")]
    [InlineData(9, 2, 1, 0, "Usable")]
    [InlineData(6, 3, 3, 0, "Not fit")]
    [InlineData(11, 0, 0, 1, "Not fit for work by voice: something wrong was accepted")]
    public void The_verdict_follows_what_was_heard(int right, int confirmed, int again, int wrong, string verdict)
    {
        LiveResult result = new(right, confirmed, again, wrong);
        Assert.Contains(verdict, result.Verdict, StringComparison.Ordinal);
        Assert.Equal(verdict.StartsWith("Not fit", StringComparison.Ordinal), result.IsUnfit);
    }

    [Fact]
    public void Every_phrase_that_is_asked_means_what_its_label_says() => Assert.All(LivePhrases.All, phrase => Assert.Equal(
        phrase.Expected,
        Assert.Single(HandsFreeStartup.Speech.Phrases.PhraseText.Read(phrase.Words, LivePhrases.Expectation).Meanings).ToString()));

    [Fact]
    public void Each_microphone_has_a_file_of_its_own() => Assert.NotEqual(
        new MicrophoneNotes(new DataFolder("/d"), "head set").Path,
        new MicrophoneNotes(new DataFolder("/d"), "desk").Path);
}
