using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;

namespace HandsFreeStartup.Simulation;

/// <summary>What each step wants of the hands. Steps are known by what they open, close and read; only where that says nothing, by the ids of the shipped procedures.</summary>
static class StepHands
{
    /// <summary>Names of things in the procedures, by a word in them, with the hands that open and close them.</summary>
    static readonly (string Word, string Thing, string Open, string Close)[] Things =
    [
        ("inlet", "inlet port", "open inlet", "plug inlet"),
        ("manifold", "manifold port", "open manifold", "plug manifold"),
        ("test hole", "test hole", "drill hole", "seal hole"),
        ("sampling", "test hole", "open sampling port", "close sampling port"),
        ("duct", "duct ports", "open duct ports", "plug duct ports"),
        ("return air", "covered return", "block return", "free return"),
        ("rollout", "rollout circuit", "open rollout", "close rollout"),
        ("hose", "pressure hose", "pull hose", "hose back"),
        ("blocked-vent", "blocked-vent circuit", "open spill switch", "close spill switch"),
        ("worst case", "worst case", "close house", "house back"),
    ];

    static readonly string[] NeedFire =
    [
        "flame", "flame-blower", "leak-check-running", "flame-current", "flame-high", "flame-low", "inlet-running", "spillage", "vent-joints",
        "prove-ports", "room-after", "room-walk", "warm-up", "controls", "pressure-holds",
    ];

    /// <summary>What is not as the step wants it, as the hands that put it so, in order; "wait" where only time helps.</summary>
    /// <param name="step">Which step.</param>
    /// <param name="plan">With the rooms.</param>
    /// <param name="hands">Now.</param>
    /// <param name="state">Now.</param>
    /// <param name="entered">The hands when the step was entered.</param>
    public static IEnumerable<string> Missing(Step step, StartupPlan plan, Hands hands, FurnaceState state, Hands entered)
    {
        string id = step.Id.Split('/')[0];
        IEnumerable<(string Words, bool IsSo)> wants = Wants(step, id, plan, hands, state, entered);
        return wants.Where(want => !want.IsSo).Select(want => want.Words);
    }

    static IEnumerable<(string Words, bool IsSo)> Wants(Step step, string id, StartupPlan plan, Hands hands, FurnaceState state, Hands entered)
    {
        foreach (Thing thing in step.Opens)
        {
            foreach ((string, bool) want in Opening(thing.Name, hands, state))
            {
                yield return want;
            }
        }

        foreach (string thing in step.Closes)
        {
            foreach ((string, bool) want in Closing(thing, hands))
            {
                yield return want;
            }
        }

        if (step.FireBlock is "high" or "low" || step.Scope is "high" or "low" || id is "high-fire" or "low-fire" or "highest-rate" or "lowest-rate")
        {
            bool high = (step.FireBlock ?? step.Scope ?? id).StartsWith("high", StringComparison.Ordinal);
            yield return (high ? "high fire" : "low fire", plan.Appliance.Stages == 1 || hands.High == high);
        }

        foreach ((string, bool) want in Reading(step, hands, plan, entered))
        {
            yield return want;
        }

        foreach ((string, bool) want in ById(id, hands, state))
        {
            yield return want;
        }

        bool needsFire = NeedFire.Contains(id) || step.Scope is "high" or "low" or "dynamic" || step.FireBlock is not null || step.Kind == StepKind.Adjust;
        if (needsFire)
        {
            yield return ("open gas", hands.GasOn);
            yield return ("call for heat", hands.Calls);
            yield return ("wait", state.Phase == BurnerPhase.Burning && (state.BlowerOn || state.BurnSeconds < 20));
        }
    }

    static IEnumerable<(string Words, bool IsSo)> Opening(string name, Hands hands, FurnaceState state)
    {
        if (name.Contains("caps", StringComparison.Ordinal))
        {
            yield return ("go outside", hands.Probe == ProbePlace.Outside || hands.Zeroings > 0);
            yield return ("zero analyzer", hands.Zeroings > 0);
            yield return ("go to furnace", hands.Probe is ProbePlace.Room or ProbePlace.Flue);
        }
        else if (Find(name) is { Thing: { } thing } known)
        {
            bool isGas = thing is "inlet port" or "manifold port";
            yield return ("close gas", !isGas || !hands.GasOn || hands.IsOpen(thing));
            yield return ("wait", !isGas || state.Inlet < 50 || hands.IsOpen(thing));
            if (thing is "covered return" or "rollout circuit" or "pressure hose" or "blocked-vent circuit" && !hands.IsOpen(thing))
            {
                yield return ("open gas", hands.GasOn);
                yield return ("call for heat", hands.Calls);
                yield return ("wait", state is { Phase: BurnerPhase.Burning, BlowerOn: true });
            }

            yield return (known.Open, hands.IsOpen(thing));
            yield return ("insert probe", thing != "test hole" || hands.Probe == ProbePlace.Flue);
        }
    }

    static IEnumerable<(string Words, bool IsSo)> Closing(string name, Hands hands)
    {
        if (name.Contains("caps", StringComparison.Ordinal))
        {
            yield return ("go outside", hands.Probe is ProbePlace.Outside or ProbePlace.Capped);
            yield return ("caps on", hands.Probe == ProbePlace.Capped);
        }
        else if (Find(name) is { Thing: { } thing } known)
        {
            bool isGas = thing is "inlet port" or "manifold port";
            yield return ("heat off", !isGas || !hands.Calls || !hands.IsOpen(thing));
            yield return ("close gas", !isGas || !hands.GasOn || !hands.IsOpen(thing));
            yield return ("pull probe", thing != "test hole" || hands.Probe != ProbePlace.Flue);
            yield return (known.Close, !hands.IsOpen(thing));
        }
    }

    static IEnumerable<(string Words, bool IsSo)> Reading(Step step, Hands hands, StartupPlan plan, Hands entered)
    {
        string[] fields = [.. step.Readings.Select(demand => demand.FieldId)];
        if (fields.Length == 0)
        {
            yield break;
        }

        yield return (step.Scope == "dynamic" ? "others on" : "others off", hands.OthersOn == (step.Scope == "dynamic"));
        if (fields.Contains(FieldId.RoomCo))
        {
            string room = plan.Site.Rooms.Contains(step.Scope ?? "") ? step.Scope! : "";
            yield return (room.Length == 0 ? "go to furnace" : $"go to {room}", hands.Probe == ProbePlace.Room && (room.Length == 0 ? hands.Room.Length == 0 : hands.Where == room));
        }

        bool inFlue = fields.Intersect((string[])[FieldId.Oxygen, FieldId.FlueCo, FieldId.FlueTemperature, FieldId.Draft]).Any();
        yield return ("drill hole", !inFlue || hands.IsOpen("test hole"));
        yield return ("insert probe", !inFlue || hands.Probe == ProbePlace.Flue);
        yield return ("clock meter", !fields.Contains(FieldId.MeterTime) || hands.Clockings > entered.Clockings);
    }

    static IEnumerable<(string Words, bool IsSo)> ById(string id, Hands hands, FurnaceState state) => id switch
    {
        "zero" => [("go outside", hands.Probe == ProbePlace.Outside || hands.Zeroings > 0), ("zero analyzer", hands.Zeroings > 0), ("go to furnace", hands.Probe is not (ProbePlace.Capped or ProbePlace.Outside))],
        "filter" => [("change filter", hands.PutRight.Contains(Fault.DirtyFilter))],
        "leak-check" or "floor-check" => [("open gas", hands.GasOn)],
        "inlet-standing" or "inlet-static" => [("open gas", hands.GasOn), ("heat off", !hands.Calls)],
        "light" => [("close door", !hands.IsOpen("blower door")), ("open gas", hands.GasOn), ("call for heat", hands.Calls)],
        "flame-blower" => [("wait", state.BlowerSeconds >= 60)],
        "limit" => [("wait", state.Phase == BurnerPhase.Tripped)],
        "drain-switch" => [],
        "flame-loss" => [("close gas", !hands.GasOn), ("wait", state.Phase is BurnerPhase.LockedOut || !hands.Calls)],
        "relight-wait" => [("close gas", !hands.GasOn)],
        "door" => [("open door", hands.IsOpen("blower door"))],
        "safe-burner" => [("heat off", !hands.Calls)],
        "safe-gas" or "safe-leak-check" => [("close gas", !hands.GasOn)],
        "no-jumper" or "panels" => [("close door", !hands.IsOpen("blower door"))],
        _ => [],
    };

    static (string Word, string Thing, string Open, string Close)? Find(string name)
    {
        foreach ((string Word, string Thing, string Open, string Close) known in Things)
        {
            if (name.Contains(known.Word, StringComparison.OrdinalIgnoreCase))
            {
                return known;
            }
        }

        return null;
    }
}
