using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Surroundings;

/// <summary>
/// Every command in every surrounding that it was led into: one sentence with place and remedy, exit code 2, and nothing lost. The rows are made of what commands read, what they
/// write, and where their data lie; %%name is a hostile place of <see cref="HostilePlace"/>.
/// </summary>
public sealed class SurroundingsTests : IDisposable
{
    const string Start = "start --keys --plain --mute --data %data --technician T";

    readonly HostilePlace _place = new();

    public void Dispose() => _place.Dispose();

    /// <summary>Commands that read what somebody names, with ? for it.</summary>
    static readonly string[] Reading =
    [
        "checklist ?",
        "checklist %checklist.yaml --appliance ? --site %site.yaml",
        "checklist %checklist.yaml --appliance %appliance.yaml --site ?",
        $"{Start} --appliance ? --site %site.yaml",
        $"{Start} --appliance %appliance.yaml --site ?",
        $"{Start} --appliance %appliance.yaml --site %site.yaml --checklist ?",
        $"{Start} --appliance %appliance.yaml --site %site.yaml --settings ?",
        "start --plain --mute --data %data --appliance %appliance.yaml --site %site.yaml --wav ?",
        "start --plain --mute --data %data --appliance %appliance.yaml --site %site.yaml --wav %sound.wav --model ?",
        "compute isa --in ? --out %out/table.csv",
        "compute combustion --in %combustion.csv --fuels ? --out %out/table.csv",
        "compute reading --oxygen 7.6 --co 12 --flue 328F --air 70F --fuel x --fuels ?",
        "hear ? --ears 1",
        "hear %manifest.tsv --ears 1 --noise ? --snr 5",
        "hear %manifest.tsv --ears 1 --model ?",
        "verify ? --data %data",
        "review ? --plain --data %data",
        "review ? --accept --lead L --data %data",
        "copies ? --out %out --data %data",
        "forget ? --keep-readings --by L --data %data",
        $"{Start} --resume ?",
    ];

    static readonly string[] Unreadable =
        ["missing", "folder", "pipe", "device", "circle", "to-zero", "to-pipe", "to-nowhere", "large", "empty", "bytes", "too-long", "much-too-long", "nul", "empty-name", "in-a-file", "in-proc", "endless-line"];

    /// <summary>Commands that write where somebody says.</summary>
    static readonly string[] Writing =
    [
        "compute isa --in %readings.csv --out ?",
        "review %data/jobs/job.db --csv ? --data %data",
        "review %data/jobs --csv ? --data %data",
        "copies job --data %data --out ?",
    ];

    static readonly string[] Unwritable = ["full", "folder", "pipe", "circle", "nul", "too-long", "much-too-long", "in-a-file", "in-proc", "missing-folder"];

    /// <summary>Commands whose data folder is elsewhere.</summary>
    static readonly string[] Keeping =
    [
        "start --keys --plain --mute --appliance %appliance.yaml --site %site.yaml --data ?",
        "start --keys --plain --mute --resume --data ?",
        "verify job --data ?",
        "copies job --data ?",
        "forget job --keep-readings --by L --data ?",
        "review --data ?",
    ];

    static readonly string[] NoFolders = ["bytes", "pipe", "device", "circle", "nul", "empty-name", "much-too-long", "in-a-file", "in-proc"];

    public static TheoryData<string> Rows => [.. Commands];

    static IEnumerable<string> Commands =>
    [
        .. from command in Reading
           from what in Unreadable
           where !(what == "folder" && command.StartsWith("review ? --plain", StringComparison.Ordinal))
           where !(what == "endless-line" && command.Contains("--model", StringComparison.Ordinal))
           select command.Replace("?", $"%%{what}", StringComparison.Ordinal),
        .. from command in Writing
           from what in Unwritable
           where !(what is "folder" or "missing-folder" && command.StartsWith("copies", StringComparison.Ordinal))
           select command.Replace("?", $"%%{what}", StringComparison.Ordinal),
        .. from command in Keeping
           from what in NoFolders
           select command.Replace("?", $"%%{what}", StringComparison.Ordinal),
        "hear %%nul-path.tsv --ears 1",
        "hear %%pipe-path.tsv --ears 1",
        "review %data/jobs/job.db --csv %data/jobs/job.db --data %data",
        "review %data/jobs --csv %data/jobs/job.db --data %data",
        "compute isa --in %readings.csv --out %data/jobs/job.db",
        "compute isa --in %readings.csv --out %readings.csv",
        "compute isa --in %readings.csv --out %%to-readings",
        "hear %manifest.tsv --ears 1 --evidence %manifest.tsv",
        "hear %manifest.tsv --ears 1 --plot %sound.wav",
        "hear %manifest.tsv --ears 1 --fit %data/jobs/job.db",
        "hear %manifest.tsv --ears 1 --noise %noise.wav --snr 5 --evidence %noise.wav",
        "checklist new-appliance %%in-proc",
        "checklist new-appliance %%nul",
        "checklist new-appliance x.txt",
        "compute reading --oxygen 0,6 --co 12 --flue 328F --air 70F --fuel natural-gas",
        "compute reading --oxygen 7.6 --co 12,5 --flue 328F --air 70F --fuel natural-gas",
        "compute reading --oxygen 7.6 --co 1e2 --flue 328F --air 70F --fuel natural-gas",
        "compute reading --oxygen 7.6 --co 12 --flue 3,28F --air 70F --fuel natural-gas",
        "compute reading --oxygen 7.6 --co 12 --flue 328 --air 70F --fuel natural-gas",
        "compute reading --oxygen 7.6 --co 12 --flue 32800F --air 70F --fuel natural-gas",
        "compute reading --oxygen 76 --co 12 --flue 328F --air 70F --fuel natural-gas",
        "compute reading --oxygen 7.6 --co -12 --flue 328F --air 70F --fuel natural-gas",
        "compute reading --oxygen 7.6 --co 12 --flue 328F --air 70F --fuel natural-gas --humidity 4,5",
        "compute reading --oxygen 7.6 --co 12 --flue 328F --air 70F --fuel natural-gas --altitude 1,500ft",
        "compute reading --oxygen NaN --co 12 --flue 328F --air 70F --fuel natural-gas",
        "compute reading --oxygen ٧ --co 12 --flue 328F --air 70F --fuel natural-gas",
        "hear %manifest.tsv --ears 1 --noise %sound.wav --snr 5,5",
        "hear %manifest.tsv --ears 1 --noise %sound.wav --snr 5 --seed 1.5",
        "hear --live 1,2",
        "hear --live 99",
        "verify job --data %data --checkpoint 41",
        "verify job --data %data --checkpoint ½",
        "review job --accept --data %data",
        "review job --return --lead L --data %data",
        "review job --accept --return --lead L --data %data",
        $"{Start} --appliance %appliance.yaml --site %site.yaml --occasion never",
        "nonsense",
        "",
    ];

    [Theory]
    [MemberData(nameof(Rows))]
    public async Task Is_one_sentence_with_exit_code_2_and_nothing_is_lost(string command)
    {
        ProgramResult result = await InProcess.Run(_place.Filled(command)).WaitAsync(TimeSpan.FromSeconds(60));

        // What a record is not, verify and review tell as a finding.
        bool tells = result.ExitCode == 1 && command.Split(' ')[0] is "verify" or "review";
        Assert.True(result.ExitCode == 2 || tells, $"{result.ExitCode}: {result.Output} {result.Error}");
        AssertSentence(tells ? string.Join('\n', result.Output.Split('\n').Where(line => line.Contains("DANGER", StringComparison.Ordinal) || line.StartsWith("wrong", StringComparison.Ordinal))) : result.Error);
        Assert.Empty(_place.Lost());
    }

    [Fact]
    public void There_are_many_of_them() => Assert.InRange(Commands.Distinct().Count(), 400, 2000);

    /// <summary>One or a few lines for a person: they end as sentences do, and hold nothing of the program's inside and no order for the terminal.</summary>
    internal static void AssertSentence(string error)
    {
        string[] lines = error.TrimEnd('\n').Split('\n');
        Assert.All(lines, line => Assert.Matches(@"[.)]$", line));
        Assert.InRange(error.Length, 10, 20_000);
        Assert.All(
            (string[])["   at ", "Exception", "System.", "Parameter '", "inside the program", "Object reference", "Microsoft."],
            inside => Assert.DoesNotContain(inside, error, StringComparison.Ordinal));
        Assert.All(error, letter => Assert.True(letter == '\n' || !char.IsControl(letter)));
    }
}
