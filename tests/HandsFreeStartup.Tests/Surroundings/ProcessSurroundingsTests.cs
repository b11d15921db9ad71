using System.Diagnostics;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Surroundings;

/// <summary>
/// The program as a process, in surroundings that only a process has: its standard streams gone, full or endless, limits, signals, folders and variables missing. Each row is a line
/// of bash in the folder of <see cref="HostilePlace"/>, in which $P is the program; its exit code is that of the program.
/// </summary>
public sealed class ProcessSurroundingsTests : IDisposable
{
    const string Start = "$P start --keys --plain --mute --data data --appliance appliance.yaml --site site.yaml --checklist checklist.yaml --technician T";
    const string Limited = "export DOTNET_EnableWriteXorExecute=0; trap '' XFSZ; ulimit -f";

    static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    readonly HostilePlace _place = new();

    public void Dispose() => _place.Dispose();

    [Theory]
    // Standard output is closed, full, or a pipe whose reader is gone.
    [InlineData("$P checklist checklist.yaml >&-", 2, "Standard output takes nothing more")]
    [InlineData("$P checklist checklist.yaml >/dev/full", 2, "No space left")]
    [InlineData("$P checklist checklist.yaml | (exec <&-; sleep 2); exit ${PIPESTATUS[0]}", 2, "Broken pipe")]
    [InlineData("$P review --data data >&-", 2, "Standard output takes nothing more")]
    [InlineData("$P review --data data --json >/dev/full", 2, "No space left")]
    [InlineData("$P verify job --data data >/dev/full", 2, "No space left")]
    [InlineData("$P copies job --data data --out new >/dev/full", 2, "No space left")]
    [InlineData("$P compute isa --in readings.csv >&-", 2, "Standard output takes nothing more")]
    [InlineData("$P compute isa --in readings.csv >/dev/full", 2, "No space left")]
    [InlineData("$P forget job --keep-readings --by L --data data --help >/dev/full", 2, "No space left")]
    [InlineData("$P checklist new-appliance new.yaml >&-", 2, "Standard output takes nothing more")]
    [InlineData(Start + " >&-", 2, "Continue with 'start --resume")]
    [InlineData(Start + " >/dev/full", 2, "Continue with 'start --resume")]
    [InlineData("yes no 2>/dev/null | head -400 2>/dev/null | " + Start + " | (exec <&-; sleep 3); exit ${PIPESTATUS[2]}", 2, "Standard output is gone. Continue with 'start --resume")]
    // Standard error is closed or full: what is said is lost, and nothing else.
    [InlineData("$P checklist nowhere.yaml 2>&-", 2, "")]
    [InlineData("$P checklist nowhere.yaml 2>/dev/full", 2, "")]
    [InlineData("$P nonsense >&- 2>&- <&-", 2, "")]
    // Standard input is closed, a folder, or no text.
    [InlineData(Start + " <&-", 0, "")]
    [InlineData(Start + " </tmp", 0, "")]
    [InlineData("head -c 300000 /dev/urandom | " + Start, 0, "")]
    [InlineData("$P checklist new-appliance new.yaml <&-", 2, "The answers ended before the sheet was complete. Nothing was written.")]
    [InlineData("head -c 300000 /dev/urandom | $P checklist new-appliance new.yaml", 2, "Nothing was written.")]
    // Files can grow to nothing, or only so far: a disk that is full.
    [InlineData(Limited + " 0; " + Start, 2, "cannot")]
    [InlineData(Limited + " 0; $P copies job --data data --out out", 2, "it would grow larger than this disk or account allows")]
    [InlineData(Limited + " 0; $P compute isa --in readings.csv --out out/table.csv", 2, "it would grow larger than this disk or account allows")]
    [InlineData(Limited + " 0; $P review data/jobs --csv out/table.csv --data data", 2, "it would grow larger than this disk or account allows")]
    [InlineData(Limited + " 0; $P review --data data", 1, "")]
    [InlineData(Limited + " 0; $P forget job --keep-readings --by L --data data", 2, "job.db")]
    [InlineData(Limited + " 40; (echo no; yes what is open) 2>/dev/null | head -3000 2>/dev/null | " + Start, 2, "continue with start --resume")]
    // Folders and variables that are missing.
    [InlineData("env -u HOME -u XDG_DATA_HOME $P checklist checklist.yaml", 0, "")]
    [InlineData("XDG_DATA_HOME=/proc/none $P start --keys --plain --mute --appliance appliance.yaml --site site.yaml", 2, "name another one with --data DIR")]
    [InlineData("XDG_DATA_HOME=/proc/none $P review", 2, "There are no records in /proc/none")]
    [InlineData("TMPDIR=/nowhere " + Start, 0, "")]
    [InlineData("TMPDIR=/nowhere $P start --keys --plain --data data --appliance appliance.yaml --site site.yaml", 0, "")]
    [InlineData("TMPDIR=/nowhere $P copies job --data data --out new", 0, "")]
    [InlineData("head -c 4096 /dev/zero >data/jobs/job.db-wal; TMPDIR=/nowhere $P verify job --data data", 2, "name a folder that can be written in the variable TMPDIR")]
    [InlineData("head -c 4096 /dev/zero >data/jobs/job.db-wal; TMPDIR=/nowhere $P review --data data", 1, "")]
    [InlineData("mkdir gone; cd gone; rmdir ../gone; $P checklist checklist.yaml", 2, "There is no such file")]
    [InlineData("LC_ALL=de_DE.UTF-8 LANG=tr_TR $P compute reading --oxygen 7.6 --co 12 --flue 328F --air 70F --fuel natural-gas", 0, "")]
    [InlineData("LC_ALL=de_DE.UTF-8 $P compute reading --oxygen 7,6 --co 12 --flue 328F --air 70F --fuel natural-gas", 2, "has a comma")]
    [InlineData("TZ=Nowhere/Never $P review --data data", 1, "")]
    // Signals.
    [InlineData("sleep 4 | " + Start + " & sleep 2; kill -HUP $!; wait $!", 0, "")]
    [InlineData("sleep 4 | " + Start + " & sleep 2; kill -TERM $!; wait $!", 0, "")]
    public async Task Is_told_in_a_sentence_or_costs_nothing(string line, int code, string sentence)
    {
        ProgramResult result = await Run(line);

        Assert.True(code == result.ExitCode, $"{result.ExitCode}: {result.Output} {result.Error}");
        Assert.Contains(sentence, result.Error, StringComparison.Ordinal);
        if (result.Error.Length > 0)
        {
            SurroundingsTests.AssertSentence(result.Error);
        }

        Assert.DoesNotContain(_place.Lost(), file => !(line.Contains("forget", StringComparison.Ordinal) && file.EndsWith("job.db", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_start_up_whose_output_went_away_goes_on_afterwards_where_it_stood()
    {
        await Run("(echo no; sleep 1; yes done) 2>/dev/null | head -50 2>/dev/null | " + Start + " 2>/dev/null | head -3");

        ProgramResult resumed = await Run("$P start --keys --plain --mute --data data --resume $(ls -d data/jobs/2*.db) </dev/null");

        Assert.Equal(0, resumed.ExitCode);
        Assert.Contains("Resuming.", resumed.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_endless_line_and_a_flood_of_lines_do_not_fill_the_memory()
    {
        const string bounded = "export DOTNET_GCHeapHardLimit=0x6000000; ";

        ProgramResult endless = await Run($"{bounded}head -c 150000000 /dev/zero 2>/dev/null | {Start}");
        ProgramResult flood = await Run($"{bounded}yes 'oxygen 7,6 and a long line that is refused as often as it is typed' 2>/dev/null | head -6000 2>/dev/null | {Start} >/dev/null");

        Assert.Equal((0, ""), (endless.ExitCode, endless.Error));
        Assert.Equal((0, ""), (flood.ExitCode, flood.Error));
    }

    async Task<ProgramResult> Run(string line)
    {
        ProcessStartInfo start = new("bash", ["-c", line]) { WorkingDirectory = _place.Path, RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["P"] = $"dotnet exec {typeof(CommandLine).Assembly.Location}";
        using Process process = Process.Start(start)!;
        process.StandardInput.Close();
        return await ProgramProcess.Ended(process, process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync()).WaitAsync(Patience);
    }
}
