using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Hear;

/// <summary>The phrases that a user is asked to say: every kind of reading, teens and tens, signs, commands, a safety phrase.</summary>
static class LivePhrases
{
    /// <summary>What to say, and its label.</summary>
    public static ImmutableArray<(string Words, string Expected)> All { get; } =
    [
        ("oxygen seven point six", "oxygen=7.6"),
        ("monoxide forty five", "flue_co=45"),
        ("flue temperature three twenty eight", "flue_temperature=328"),
        ("draft minus point oh three", "draft=-0.03"),
        ("next", "command=next"),
        ("manifold pressure three point five", "manifold_pressure=3.5"),
        ("supply temperature one fifteen", "supply_temperature=115"),
        ("emergency stop", "command=emergency stop"),
        ("meter fifty eight seconds", "meter_time=58"),
        ("room monoxide zero", "room_co=0"),
        ("disregard", "command=disregard"),
        ("flame current two point one", "flame_current=2.1"),
    ];

    /// <summary>What may be said: everything.</summary>
    public static Expectation Expectation => Expectation.Open;
}
