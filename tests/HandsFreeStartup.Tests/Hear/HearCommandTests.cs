using System.Text.Json;
using System.Text.RegularExpressions;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Hear;

/// <summary>The command hear as a process, on recordings of the demonstration.</summary>
public sealed class HearCommandTests
{
    static readonly string Recordings = Path.Combine(AppContext.BaseDirectory, "Demo", "Recordings");

    [Fact]
    public async Task The_figures_tell_right_refused_and_ignored_apart()
    {
        using TemporaryFolder folder = new();
        string manifest = Write(folder, $"""
            {Recordings}/04.wav	room_co=0	room_co
            {Recordings}/01.wav	command=done	open
            {Recordings}/02.wav	command=no	open,answer
            {Recordings}/22.wav	nothing	open

            """);

        ProgramResult result = await ProgramProcess.Run("hear", manifest, "--json");

        Assert.Equal("", result.Error);
        JsonElement figures = JsonDocument.Parse(result.Output).RootElement;
        Assert.Equal(4, figures.GetProperty("cases").GetInt32());
        Assert.Equal(0, figures.GetProperty("wrong_accepted").GetInt32());
        Assert.Equal(0, figures.GetProperty("false_accepts").GetInt32());
        Assert.Equal(3, figures.GetProperty("exact").GetInt32() + figures.GetProperty("asked_again").GetInt32());
        Assert.True(figures.GetProperty("latency_ms").GetProperty("p95").GetDouble() > 0);
        Assert.Equal(0, result.ExitCode);
    }

    [Fact]
    public async Task A_wrong_label_counts_as_a_wrong_acceptance_and_is_exit_code_1()
    {
        using TemporaryFolder folder = new();
        string manifest = Write(folder, $"{Recordings}/01.wav\tcommand=next\topen\n");

        ProgramResult result = await ProgramProcess.Run("hear", manifest);

        Assert.Equal(1, result.ExitCode);
        Assert.Contains("expected command=next, accepted command=done", result.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a.wav\tpressure=3\topen", "pressure=3")]
    [InlineData("a.wav\toxygen=7.6\tstep", "'step' is no field")]
    [InlineData("a.wav", "separated by tabs")]
    [InlineData("a.wav\tcommand=done\topen\tsomebody\tdone\tover xx: Say done.", "'over xx: Say done.' must name a language (en, es)")]
    [InlineData("a.wav\tcommand=done\topen\tsomebody\tdone\tover en Say done.", "must name a language")]
    public async Task A_mistake_in_the_manifest_is_told_with_its_line(string line, string message)
    {
        using TemporaryFolder folder = new();
        string manifest = Write(folder, $"# a comment\n{line}\n");

        ProgramResult result = await ProgramProcess.Run("hear", manifest);

        Assert.Equal(2, result.ExitCode);
        Assert.Contains($"{manifest}:2: ", result.Error, StringComparison.Ordinal);
        Assert.Contains(message, result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task All_evidence_can_be_written_down_for_other_tools()
    {
        using TemporaryFolder folder = new();
        string manifest = Write(folder, $"{Recordings}/79.wav\troom_co=0\troom_co\tsomebody\troom monoxide zero\n");
        string file = Path.Combine(folder.Path, "evidence.jsonl");

        ProgramResult result = await ProgramProcess.Run("hear", manifest, "--evidence", file);

        Assert.Equal("", result.Error);
        JsonElement line = JsonDocument.Parse(Assert.Single(await File.ReadAllLinesAsync(file))).RootElement;
        Assert.Equal("somebody", line.GetProperty("speaker").GetString());
        JsonElement[] ears = [.. line.GetProperty("ears").EnumerateArray()];
        Assert.Equal(2, ears.Length);
        Assert.All(ears, ear => Assert.Contains(ear.GetProperty("candidates").EnumerateArray(), heard => heard.GetProperty("meaning").GetString() == "room_co=0"));
    }

    [Fact]
    public async Task The_figures_of_the_targets_are_printed_beside_free_decoding()
    {
        using TemporaryFolder folder = new();
        string manifest = Write(folder, $"{Recordings}/01.wav\tcommand=next\topen\n");

        ProgramResult result = await ProgramProcess.Run("hear", manifest, "--noise", $"{Recordings}/22.wav", "--snr", "30");

        Assert.Equal("", result.Error);
        foreach (string figure in (string[])["right, accepted without asking", "WRONG accepted", "free decoding of the same, right", "p95", "start to listening", "MiB", "% of a core"])
        {
            Assert.Contains(figure, result.Output, StringComparison.Ordinal);
        }

        Assert.Contains("expected command=next, accepted command=done", result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_stream_finds_a_call_in_talk_and_tells_when_it_was_said_where_nobody_called()
    {
        using TemporaryFolder folder = new();
        string talk = Path.Combine(folder.Path, "talk.wav"), call = Path.Combine(AppContext.BaseDirectory, "Hear", "Corpus", "52.wav");
        WavFile.Write(talk, [.. WavFile.Read($"{Recordings}/22.wav"), .. new float[WavFile.Rate], .. WavFile.Read(call)]);
        string manifest = Write(folder, $"{talk}\tcommand=emergency stop\topen\n{talk}\tnothing\topen\n{Recordings}/22.wav\tnothing\topen\n");

        ProgramResult result = await ProgramProcess.Run("hear", manifest, "--stream");

        Assert.Equal("", result.Error);
        Assert.Equal(1, result.ExitCode);
        Assert.Matches($@"WRONG {Regex.Escape(talk)}@\d+\.\d: expected nothing, accepted command=emergency stop", result.Output);
        Assert.Matches(@"right, accepted without asking +1 ", result.Output);
        Assert.Matches(@"nothing said, yet accepted +1 ", result.Output);
        Assert.DoesNotContain("free decoding", result.Output, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"p50 0 ms", result.Output);
    }

    [Fact]
    public async Task Words_that_the_tool_says_itself_do_not_count_in_a_stream()
    {
        using TemporaryFolder folder = new();
        string manifest = Write(folder, $"{Recordings}/01.wav\tcommand=done\topen\tsomebody\tdone\tblower5\n{Recordings}/01.wav\tcommand=done\topen\tsomebody\tdone\tblower5\tover en: When it is off, say done.\n");

        ProgramResult result = await ProgramProcess.Run("hear", manifest, "--stream", "--json");

        Assert.Equal("", result.Error);
        Assert.Equal(["command=done", "nothing"], JsonDocument.Parse(result.Output).RootElement.GetProperty("rows").EnumerateArray().Select(row => row.GetProperty("heard").GetString()));
    }

    [Fact]
    public async Task Evidence_of_a_stream_is_wrong_use()
    {
        using TemporaryFolder folder = new();

        ProgramResult result = await ProgramProcess.Run("hear", Write(folder, $"{Recordings}/01.wav\tcommand=done\topen\n"), "--stream", "--evidence", Path.Combine(folder.Path, "e.jsonl"));

        Assert.Equal(2, result.ExitCode);
        Assert.Contains("--stream and --evidence", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_noise_without_a_ratio_is_wrong_use()
    {
        ProgramResult result = await ProgramProcess.Run("hear", "nowhere.tsv", "--noise", "noise.wav");

        Assert.Equal(2, result.ExitCode);
        Assert.Contains("--snr", result.Error, StringComparison.Ordinal);
    }

    static string Write(TemporaryFolder folder, string lines)
    {
        string path = Path.Combine(folder.Path, "manifest.tsv");
        File.WriteAllText(path, lines);
        return path;
    }
}
