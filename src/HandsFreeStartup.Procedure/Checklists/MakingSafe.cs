using System.Collections.Immutable;

namespace HandsFreeStartup.Procedure.Checklists;

/// <summary>The steps that leave a furnace safe that is not put into service. Common practice, no source; local codes and the gas supplier come first.</summary>
static class MakingSafe
{
    const string Section = "Make it safe";

    /// <summary>The steps, for whatever the start-up may have opened; what is not open needs no closing.</summary>
    public static ImmutableArray<Step> Of(IEnumerable<Thing> opened)
    {
        ImmutableArray<Thing> things = [.. opened.DistinctBy(thing => thing.Name)];
        ImmutableArray<string> gas = [.. things.Where(thing => thing.IsGasSide).Select(thing => thing.Name)];
        ImmutableArray<string> others = [.. things.Where(thing => !thing.IsGasSide).Select(thing => thing.Name)];
        return
        [
            Step("safe-burner", StepKind.Do, "Burner off", "SWITCH THE BURNER OFF", "Thermostat to off, furnace switch to off. See that the burner is out."),
            Step("safe-gas", StepKind.Ask, "Close the gas", "CLOSE THE GAS", "Close the shutoff of the furnace.") with
            {
                Question = Ask("Is the shutoff closed, its handle across the pipe?", "Close it. If it does not close, close the gas at the meter and call the supplier."),
            },
            .. gas.IsEmpty ? Array.Empty<Step>() : [Step("safe-ports", StepKind.Close, "Plug the gas ports", "PLUG THE GAS PORTS", "Take the gauges off and put every plug back.") with { Closes = gas }],
            Step("safe-leak-check", StepKind.Ask, "Leak check", "CHECK FOR LEAKS", "Open the shutoff for the check only, brush the shutoff, every joint up to the gas valve, and every plug that was out. Then close it again.") with
            {
                Caution = "A plug behind the gas valve has no pressure while the burner is off. It is not proven until the burner runs: say so on the tag.",
                Proves = gas,
                Question = Ask("Are all of them free of bubbles, and is the shutoff closed again?", "Tighten, brush again, and close the shutoff. If it still leaks, close the gas at the meter and call the supplier."),
            },
            .. others.IsEmpty ? Array.Empty<Step>() : [Step("safe-close", StepKind.Close, "Close the rest", "CLOSE THE REST", "Close and put back everything else that is open: test holes, hoses, wires, covers, caps.") with { Closes = others }],
            Step("safe-tag", StepKind.Ask, "Red-tag it", "RED-TAG IT", "Red-tag furnace and shutoff: not in service, why, who, when. Tell the owner, and leave the notice in writing.") with
            {
                Question = Ask("Is it red-tagged, and was the owner told?", "Red-tag it now and tell the owner. The record holds the notice."),
            },
        ];
    }

    static Step Step(string id, StepKind kind, string title, string imperative, string what) =>
        new() { Id = id, Section = Section, Title = title, Imperative = imperative, Kind = kind, Do = what, IsSafetyStop = true };

    static Question Ask(string text, string otherwise) => new(text, true, otherwise, false);
}
