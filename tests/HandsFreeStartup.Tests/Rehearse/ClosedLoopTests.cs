using System.Globalization;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Simulation;
using HandsFreeStartup.Start;
using HandsFreeStartup.Storage.Tests.Support;
using Xunit.Abstractions;

namespace HandsFreeStartup.Tests.Rehearse;

/// <summary>
/// Start-ups by voice alone through real sound devices, zero keys. In CI the beginning of one; whole ones, each to its signature or its end, with
/// HANDSFREE_SPOKEN=all or the names of furnaces (propane, corrected, two-stage, modulating, natural, cracked).
/// </summary>
public sealed class ClosedLoopTests(ITestOutputHelper output)
{
    static readonly string Wanted = Environment.GetEnvironmentVariable("HANDSFREE_SPOKEN") ?? "";

    [SoundRoomFact]
    public async Task The_beginning_of_a_start_up_goes_by_voice_alone()
    {
        SpokenRehearsal rehearsal = await Go("furnace-one-stage-propane", "site-farm", "en-us", 160, "clearances", 0);

        Assert.Contains(rehearsal.Log, happened => happened is ReadingEntered { Reading.Key.FieldId: "room_co" });
    }

    [SoundRoomFact]
    public async Task Whole_start_ups_of_every_kind_end_as_they_should_by_voice_alone()
    {
        (string Name, string Sheet, string Site, string Voice, int Pace, Fault[] Faults)[] all =
        [
            ("propane", "furnace-one-stage-propane", "site-farm", "en-us", 160, []),
            ("corrected", "furnace-one-stage-propane", "site-farm", "en-us+m7", 155, []),
            ("two-stage", "furnace-two-stage-altitude", "site-mountain", "en-gb", 150, [Fault.RegulatorHigh]),
            ("modulating", "furnace-modulating", "site-row-house", "en-us+f3", 165, []),
            ("natural", "furnace-natural-draft", "site-row-house", "en-us+m3", 155, []),
            ("cracked", "furnace-natural-draft", "site-row-house", "en-us", 160, [Fault.CrackedExchanger]),
        ];
        foreach ((string name, string sheet, string site, string voice, int pace, Fault[] faults) in all.Where(one => Wanted == "all" || Wanted.Split(',').Contains(one.Name)))
        {
            SpokenRehearsal rehearsal = await Go(sheet, site, voice, pace, null, name == "corrected" ? 2 : 0, faults);
            Assert.Equal(name != "cracked", rehearsal.Log[^1] is StartupSigned);
            Assert.True(name != "corrected" || rehearsal.Log.OfType<ReadingScratched>().Count() == 2);
            Assert.True(rehearsal.Utterances <= 1.5 * rehearsal.Log.OfType<StepDone>().Count() + 2.2 * rehearsal.Readings);
        }
    }

    async Task<SpokenRehearsal> Go(string sheet, string site, string voice, int pace, string? until, int slips, params Fault[] faults)
    {
        using ListeningEar ear = ListeningEar.Load(null, 2, message => Assert.Fail(message));
        using SoundRoom room = new();
        await room.Ready();
        room.Blow(-34);
        StartupPlan plan = ShippedPlans.Plan("gas-furnace", sheet, site, "new");
        SpokenRehearsal rehearsal = new(Furnace.From(plan, faults, 7), ear, room, voice, pace, slips);
        await rehearsal.Run(until);
        double[] latencies = [.. rehearsal.Latencies.Order()];
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{sheet}: {rehearsal.Utterances} utterances, {rehearsal.Readings} readings, said again {rehearsal.Again.Count} ({string.Join("; ", rehearsal.Again)}), wrong {rehearsal.Wrong.Count}, end of speech to logged ms p50 {latencies[latencies.Length / 2]:0} p95 {latencies[(int)(latencies.Length * 0.95)]:0}, end {rehearsal.Log[^1].GetType().Name}"));
        Assert.Empty(rehearsal.Wrong);
        return rehearsal;
    }
}
