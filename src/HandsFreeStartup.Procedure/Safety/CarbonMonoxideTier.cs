using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Safety;

/// <summary>A range of concentrations with what it asks for.</summary>
/// <param name="Place">Where it was measured.</param>
/// <param name="From">Lowest concentration of the tier, ppm, itself in it; it reaches up to the next tier.</param>
/// <param name="Action">What is to be done.</param>
/// <param name="Do">The same as told to the technician.</param>
/// <param name="Source">Who says so.</param>
/// <param name="UnsafeAfter">After so many values in the tier the start-up ends, not put into service; null if it never does.</param>
public sealed record CarbonMonoxideTier(MonoxidePlace Place, double From, MonoxideAction Action, Message Do, string Source, int? UnsafeAfter = null)
{
    const string Ambient = "ANSI/BPI-1200-S, tiers of ambient CO (value from memory)";
    const string Outdoors = "40 CFR 50.8: 9 ppm over 8 hours outdoors, used indoors by the trade";
    const string WorkStops = "NREL Standard Work Specifications 2.0105.1: above 35 ppm the work stops";
    const string Flue = "ANSI Z21.47/CSA 2.3, 400 ppm air-free, as quoted in trade literature";

    /// <summary>Every tier, rising within its place. The only place where these numbers stand; local codes come first.</summary>
    public static ImmutableArray<CarbonMonoxideTier> All { get; } =
    [
        new(MonoxidePlace.Room, 0, MonoxideAction.CarryOn, "Carry on.", Ambient),
        new(MonoxidePlace.Room, 9, MonoxideAction.FindSource, "Tell the people in the house, ventilate, and find the source before you go on.", Outdoors),
        new(MonoxidePlace.Room, 36, MonoxideAction.ShutOff, "Shut off the furnace and every other burner, ventilate, and tell the people in the house. Measure again when the air is clear.", WorkStops, UnsafeAfter: 2),
        new(MonoxidePlace.Room, 70, MonoxideAction.Evacuate, "Everybody leaves, call for help from outside.", $"{Ambient}; IRC/IFGC Appendix D, D.2 (value from memory)"),
        new(MonoxidePlace.Flue, 0, MonoxideAction.CarryOn, "Carry on.", "common practice, no source"),
        new(MonoxidePlace.Flue, 100, MonoxideAction.FindSource, "More than good practice wants: look for the cause, and whether it rises.", "common practice, no source"),
        new(MonoxidePlace.Flue, 400, MonoxideAction.ShutOff, "Shut the furnace off. Correct the cause as the maker says, then measure again.", Flue, UnsafeAfter: 2),
    ];

    /// <summary>The tier of a concentration, its expanded uncertainty added: what is not proven to be harmless is taken for harmful.</summary>
    /// <param name="place">Where it was measured.</param>
    /// <param name="ppm">Concentration, ppm.</param>
    /// <param name="expanded">Its expanded uncertainty, ppm; 0 where none is stated.</param>
    public static CarbonMonoxideTier Of(MonoxidePlace place, double ppm, double expanded) =>
        All.Last(tier => tier.Place == place && (tier.From == 0 || ppm + expanded >= tier.From));

    /// <summary>The tier of a value as it was read; more than the field can hold is in the highest one. Air-free carbon monoxide is never less than this.</summary>
    public static CarbonMonoxideTier Of(MonoxidePlace place, EnteredReading reading) =>
        reading.IsOver ? All.Last(tier => tier.Place == place) : Of(place, (double)reading.Value, (double)(reading.ExpandedUncertainty ?? 0));

    /// <summary>Whether a reading of a room, its uncertainty added, is proven to ask for nothing.</summary>
    public static bool IsClear(EnteredReading reading) => Of(MonoxidePlace.Room, reading).Action == MonoxideAction.CarryOn;
}
