using System.Diagnostics;
using System.Globalization;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Simulation;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Start;
using HandsFreeStartup.Storage.Tests.Support;
using Xunit.Abstractions;

namespace HandsFreeStartup.Tests.Rehearse;

/// <summary>
/// Whole start-ups by voice alone through real sound devices, zero keys, each to its signature or its end. They go on at the same time, each in a room of its own. The first five are those that two
/// cores can listen to at once beside the other tests; HANDSFREE_SPOKEN=all takes all, HANDSFREE_SPOKEN=NAME,NAME those.
/// </summary>
[Trait("Sound", "Live")]
public sealed class ClosedLoopTests(ITestOutputHelper output)
{
    /// <summary>The speech stands so many dB above the blower.</summary>
    public const double BlowerBelowSpeech = 10;

    const int Usual = 5;

    static readonly string? Wanted = Environment.GetEnvironmentVariable("HANDSFREE_SPOKEN");

    static readonly (string Name, string Sheet, string Site, Speaker Speaker, int Slips, string? Loses, Fault[] Faults)[] All =
    [
        ("corrected", "furnace-one-stage-propane", "site-farm", new("en-us+m7", 155), 2, null, []),
        ("two-stage", "furnace-two-stage-altitude", "site-mountain", new("en-gb", 165), 0, null, [Fault.RegulatorHigh]),
        ("natural", "furnace-natural-draft", "site-row-house", new("flite:awb"), 0, null, []),
        ("cracked", "furnace-natural-draft", "site-row-house", new("en-us+f3", 160), 0, null, [Fault.CrackedExchanger]),
        ("lost", "furnace-one-stage-propane", "site-farm", new("en-us+m3", 165), 0, "combustion-high", []),
        ("propane", "furnace-one-stage-propane", "site-farm", new("en-us", 160), 0, null, []),
        ("modulating", "furnace-modulating", "site-row-house", new("flite:slt"), 0, null, []),
    ];

    [SoundRoomFact]
    public async Task Whole_start_ups_of_every_kind_end_as_they_should_by_voice_alone()
    {
        using ListeningEar ear = ListeningEar.Load(null, 2, message => Assert.Fail(message));
        TimeSpan busy = Process.GetCurrentProcess().TotalProcessorTime;
        string[] complaints = await Task.WhenAll(All.Where((one, number) => Wanted is null ? number < Usual : Wanted == "all" || Wanted.Split(',').Contains(one.Name))
            .Select(one => Task.Run(() => Complaint(one.Name, one.Sheet, one.Site, one.Speaker, one.Slips, one.Loses, one.Faults, ear))));
        output.WriteLine(FormattableString.Invariant($"processor time of this process: {(Process.GetCurrentProcess().TotalProcessorTime - busy).TotalSeconds:0} s"));

        Assert.Equal("", string.Join("\n", complaints.Where(complaint => complaint.Length > 0)));
    }

    async Task<string> Complaint(string name, string sheet, string site, Speaker speaker, int slips, string? loses, Fault[] faults, ListeningEar ear)
    {
        using SileroDetector detector = SoundRoom.Detector();
        using SoundRoom room = new();
        await room.Open();
        room.Blow(BlowerBelowSpeech);
        StartupPlan plan = ShippedPlans.Plan("gas-furnace", sheet, site, "new");
        SpokenRehearsal rehearsal = new(Furnace.From(plan, faults, 7), ear, detector, room, speaker, slips, loses);
        Stopwatch watch = Stopwatch.StartNew();
        string broken = "";
        try
        {
            await rehearsal.Run();
        }
        catch (Exception e) when (e is Xunit.Sdk.XunitException or InvalidOperationException or IOException or TimeoutException)
        {
            broken = $"{name}: {e.Message}";
        }

        output.WriteLine(Figures(name, rehearsal, watch.Elapsed));
        return broken.Length > 0 ? broken
            : rehearsal.Wrong.Count > 0 ? $"{name}: wrong in the record: {string.Join("; ", rehearsal.Wrong)}"
            : rehearsal.Log[^1] is StartupSigned != (name != "cracked") ? $"{name} ended with {rehearsal.Log[^1]}"
            : rehearsal.Log.OfType<ReadingScratched>().Count() != slips ? $"{name}: not as many readings were taken back as slipped"
            : loses is not null && !rehearsal.HasLostAndFound ? $"{name}: of the device it was told: {string.Join(" | ", rehearsal.OfTheDevice)}"
            : rehearsal.ForReadings > 2 * rehearsal.Readings ? $"{name}: {rehearsal.ForReadings} utterances for {rehearsal.Readings} readings"
            : "";
    }

    static string Figures(string name, SpokenRehearsal rehearsal, TimeSpan time)
    {
        double[] latencies = [.. rehearsal.Latencies.Order().DefaultIfEmpty()];
        return string.Create(CultureInfo.InvariantCulture,
            $"{name}: {time.TotalMinutes:0.0} min, {rehearsal.Utterances} utterances, {rehearsal.Readings} readings by {rehearsal.ForReadings}, wrong {rehearsal.Wrong.Count}, end of speech to logged ms p50 {latencies[latencies.Length / 2]:0} p95 {latencies[(int)(latencies.Length * 0.95)]:0}, end {rehearsal.Log[^1].GetType().Name}; again: {string.Join(" | ", rehearsal.Again)}");
    }
}
