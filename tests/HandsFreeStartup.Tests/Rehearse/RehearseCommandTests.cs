using HandsFreeStartup.Simulation;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Rehearse;

/// <summary>The command rehearse by a script, and what its record is good for.</summary>
public sealed class RehearseCommandTests
{
    static readonly Lazy<string> Ideal = new(() => Script(new IdealRun(Furnace.From(ShippedPlans.Plan("gas-furnace", "furnace-one-stage-propane", "site-farm", "new"), [], 3)).Run()));

    [Fact]
    public async Task An_ideal_script_is_signed_with_a_full_score_and_its_record_is_never_one_of_a_start_up()
    {
        using TemporaryFolder folder = new();
        (int code, string output, string error) = await Rehearse(folder, Ideal.Value);
        string record = Assert.Single(Directory.GetFiles(Path.Combine(folder.Path, "rehearsals"), "*.db"));

        Assert.Equal((0, ""), (code, error));
        Assert.Contains("REHEARSAL, NO RECORD OF A START-UP", output, StringComparison.Ordinal);
        Assert.Contains("score 100 of 100", output, StringComparison.Ordinal);
        Assert.Contains("Nothing was wrong.", output, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(folder.Path, "jobs")));
        Assert.Contains("REHEARSAL", await File.ReadAllTextAsync(Path.ChangeExtension(record, ".txt")), StringComparison.Ordinal);
        foreach (string[] command in (string[][])[["verify", record], ["review", record], ["review", record, "--accept", "--lead", "Lead"]])
        {
            (int refused, string nothing, string why) = await InProcess.Run([.. command, "--data", folder.Path]);
            Assert.Equal((2, ""), (refused, nothing));
            Assert.Contains("record of a rehearsal", why, StringComparison.Ordinal);
        }

        Assert.Contains("rehearsal", (await InProcess.Run(["review", Path.Combine(folder.Path, "rehearsals"), "--data", folder.Path])).Output, StringComparison.Ordinal);
        Assert.Equal(0, (await InProcess.Run(["copies", record, "--data", folder.Path])).ExitCode);
        Assert.Contains("REHEARSAL", await File.ReadAllTextAsync(Assert.Single(Directory.GetFiles(Path.Combine(folder.Path, "rehearsals"), "*-narrow.txt"))), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_number_in_a_script_is_named_and_the_progress_is_kept_for_the_lead()
    {
        using TemporaryFolder folder = new();
        string line = Ideal.Value.Split('\n').First(one => one.StartsWith("manifold", StringComparison.Ordinal));
        await Rehearse(folder, Ideal.Value.Replace(line, "manifold 9.75", StringComparison.Ordinal));
        (_, string output, _) = await Rehearse(folder, Ideal.Value);
        (int code, string table, _) = await InProcess.Run(["review", "--rehearsals", "--data", folder.Path]);

        Assert.Equal(0, code);
        Assert.Contains("Trainee: 2 rehearsals", table, StringComparison.Ordinal);
        Assert.Contains("wrong-value", table, StringComparison.Ordinal);
        Assert.Contains("score 100", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_rehearsal_that_is_interrupted_at_any_place_goes_on_as_if_it_had_not_been()
    {
        string[] lines = Ideal.Value.Split('\n');
        foreach (int share in new[] { 3, 7, 9 })
        {
            using TemporaryFolder folder = new();
            int until = lines.Length * share / 10;
            (_, string before, _) = await Rehearse(folder, string.Join('\n', lines[..until]));
            (int code, string output, string error) = await Resumed(folder, string.Join('\n', lines[until..]));

            Assert.Contains("interrupted", before, StringComparison.Ordinal);
            Assert.Equal((0, ""), (code, error));
            Assert.Contains("score 100 of 100", output, StringComparison.Ordinal);
            Assert.Contains("Nothing was wrong.", output, StringComparison.Ordinal);
            Assert.Contains("Trainee: 2 rehearsals", (await InProcess.Run(["review", "--rehearsals", "--data", folder.Path])).Output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_record_of_a_rehearsal_is_not_resumed_as_a_start_up_nor_one_that_has_ended()
    {
        using TemporaryFolder folder = new();
        await Rehearse(folder, "done\n");
        string record = Assert.Single(Directory.GetFiles(Path.Combine(folder.Path, "rehearsals"), "*.db"));
        (int asJob, _, string why) = await InProcess.Run(["start", "--resume", record, "--keys", "--plain", "--data", folder.Path]);
        await Resumed(folder, string.Join('\n', Ideal.Value.Split('\n')[1..]));
        (int ended, _, string closed) = await Resumed(folder, "done\n", record);

        Assert.Equal((2, 2), (asJob, ended));
        Assert.Contains("record of a rehearsal", why, StringComparison.Ordinal);
        Assert.Contains("has ended", closed, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("rehearse --fault sunspots", "There is no fault 'sunspots'")]
    [InlineData("rehearse --fault not-derated", "above 2000 feet")]
    [InlineData("rehearse --keys --speed 0", "--speed")]
    [InlineData("rehearse --resume", "no unfinished record")]
    [InlineData("rehearse --resume --seed 4", "leave out")]
    public async Task What_cannot_be_rehearsed_is_one_sentence(string command, string why)
    {
        using TemporaryFolder folder = new();
        (int code, _, string error) = await InProcess.Run([.. command.Split(' '), "--data", folder.Path]);

        Assert.Equal(2, code);
        Assert.Contains(why, error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_line_of_a_script_that_means_nothing_is_named_with_its_number()
    {
        using TemporaryFolder folder = new();
        (int code, _, string error) = await Rehearse(folder, "done\nfly to the moon\n");

        Assert.Equal(2, code);
        Assert.Contains("Line 2 of the script", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_rehearsal_is_shown_in_another_language_and_its_record_is_the_same()
    {
        using TemporaryFolder english = new(), spanish = new();
        await Rehearse(english, Ideal.Value);
        (int code, string output, string error) = await Rehearse(spanish, Ideal.Value, "--language", "es");
        (int unknown, _, string why) = await Rehearse(spanish, Ideal.Value, "--language", "xx");

        Assert.Equal((0, ""), (code, error));
        Assert.Contains("Antes de empezar: Lea la placa", output, StringComparison.Ordinal);
        Assert.Contains("score 100 of 100", output, StringComparison.Ordinal);
        Assert.Equal(Recorded(english), Recorded(spanish));
        Assert.Equal(2, unknown);
        Assert.Contains("There is no language \"xx\"", why, StringComparison.Ordinal);
    }

    /// <summary>Everything that happened after the beginning, which holds the number of the job.</summary>
    static string[] Recorded(TemporaryFolder folder) =>
        [.. StoredJob.Read(Assert.Single(Directory.GetFiles(Path.Combine(folder.Path, "rehearsals"), "*.db"))).Events.Skip(1).Select(happened => $"{happened}")];

    static async Task<ProgramResult> Resumed(TemporaryFolder folder, string script, params string[] name)
    {
        string file = Path.Combine(folder.Path, "rest.txt");
        await File.WriteAllTextAsync(file, script);
        return await InProcess.Run(["rehearse", "--resume", .. name, "--script", file, "--data", folder.Path]);
    }

    static async Task<ProgramResult> Rehearse(TemporaryFolder folder, string script, params string[] more)
    {
        string file = Path.Combine(folder.Path, "script.txt");
        await File.WriteAllTextAsync(file, script);
        string sheets = Path.Combine(AppContext.BaseDirectory, "checklists");
        return await InProcess.Run(["rehearse", "--appliance", Path.Combine(sheets, "furnace-one-stage-propane.yaml"), "--seed", "3", "--script", file, "--technician", "Trainee", "--data", folder.Path, .. more]);
    }

    /// <summary>What the ideal technician did, as lines.</summary>
    static string Script(IdealRun run) => string.Join('\n', run.Done.Select(done => done[(done.IndexOf(": ", StringComparison.Ordinal) + 2)..]));
}
