using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;

namespace HandsFreeStartup.Simulation;

/// <summary>Something that hands do in a rehearsal.</summary>
/// <param name="Words">As said or typed, in the words of the list.</param>
public abstract record Act(string Words)
{
    /// <summary>Something is moved.</summary>
    /// <param name="Words">As in the list.</param>
    /// <param name="Change">What becomes of the hands.</param>
    public sealed record Move(string Words, Func<Hands, StartupPlan, Hands> Change) : Act(Words);

    /// <summary>Nothing is done for a while.</summary>
    /// <param name="Words">As said.</param>
    /// <param name="Time">How long.</param>
    public sealed record Wait(string Words, TimeSpan Time) : Act(Words);

    /// <summary>A look at what the step asks about.</summary>
    public sealed record Look() : Act("look");

    /// <summary>One hint is asked for.</summary>
    public sealed record AskHint() : Act("hint");

    /// <summary>What the step wants is done by itself.</summary>
    public sealed record DoIt() : Act("do it");
}

/// <summary>The words of the hands. A new hand is one entry of <see cref="Moves"/>.</summary>
public static class HandWords
{
    const decimal LongestWait = 60;

    static readonly ImmutableArray<(string Word, double Turn)> Turns =
        [("a little", 1 / 16.0), ("an eighth", 1 / 8.0), ("a quarter", 1 / 4.0), ("a half", 1 / 2.0), ("a whole turn", 1)];

    static readonly ImmutableArray<string> Numbers = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>What can be moved, by its words; several words for the same are several entries.</summary>
    public static ImmutableArray<(string Words, Func<Hands, StartupPlan, Hands> Change)> Moves { get; } =
    [
        Opening("open inlet", "inlet port"), Closing("plug inlet", "inlet port"),
        Opening("open manifold", "manifold port"), Closing("plug manifold", "manifold port"),
        Opening("drill hole", "test hole"), Opening("open sampling port", "test hole"), Closing("seal hole", "test hole"), Closing("close sampling port", "test hole"),
        Opening("open duct ports", "duct ports"), Closing("plug duct ports", "duct ports"),
        Opening("block return", "covered return"), Closing("free return", "covered return"),
        Opening("open rollout", "rollout circuit"), Closing("close rollout", "rollout circuit"),
        Opening("pull hose", "pressure hose"), Closing("hose back", "pressure hose"),
        Opening("open spill switch", "blocked-vent circuit"), Closing("close spill switch", "blocked-vent circuit"),
        Opening("close house", "worst case"), Closing("house back", "worst case"),
        Opening("open door", "blower door"), Closing("close door", "blower door"),
        Opening("block drain", "drain"), Closing("free drain", "drain"),
        ("insert probe", (hands, _) => hands with { Probe = ProbePlace.Flue, Room = "" }),
        ("pull probe", (hands, _) => hands with { Probe = ProbePlace.Room, Room = "", Where = "" }),
        ("go to furnace", (hands, _) => hands with { Probe = ProbePlace.Room, Room = "", Where = "" }),
        ("go outside", (hands, _) => hands with { Probe = ProbePlace.Outside, Room = "" }),
        ("caps on", (hands, _) => hands with { Probe = ProbePlace.Capped, Room = "" }),
        ("zero analyzer", (hands, _) => hands with { Zeroings = hands.Zeroings + 1, PutRight = hands.Probe == ProbePlace.Outside ? hands.PutRight.Add(Fault.BadlyZeroed) : hands.PutRight }),
        ("empty trap", (hands, _) => hands with { Emptyings = hands.Emptyings + 1 }),
        ("open gas", (hands, _) => hands with { GasOn = true }), ("close gas", (hands, _) => hands with { GasOn = false }),
        ("call for heat", (hands, _) => hands with { Calls = true }), ("heat off", (hands, _) => hands with { Calls = false }),
        ("high fire", (hands, _) => hands with { High = true }), ("low fire", (hands, plan) => hands with { High = plan.Appliance.Stages == 1 }),
        ("clock meter", (hands, _) => hands with { Clockings = hands.Clockings + 1 }),
        ("reset control", (hands, _) => hands with { Resets = hands.Resets + 1 }),
        ("others on", (hands, _) => hands with { OthersOn = true }), ("others off", (hands, _) => hands with { OthersOn = false }),
        ("open window", (hands, _) => hands with { WindowsOpen = true }), ("close window", (hands, _) => hands with { WindowsOpen = false }),
        Righting("change filter", Fault.DirtyFilter), Righting("swap wires", Fault.ReversedPolarity), Righting("press hose", Fault.LeakingProbe),
        Righting("tighten plugs", Fault.PortLeftOpen), Righting("free the air", Fault.ShortOfAir), Righting("tighten joint", Fault.GasLeak),
    ];

    /// <summary>What a line means for the hands; null where it is nothing of theirs.</summary>
    /// <param name="line">As said or typed.</param>
    /// <param name="plan">With the rooms of the site.</param>
    public static Act? Read(string line, StartupPlan plan)
    {
        string text = string.Join(' ', line.ToLowerInvariant().Split([' ', ',', '.', '!', '?'], StringSplitOptions.RemoveEmptyEntries));
        return text switch
        {
            "look" => new Act.Look(),
            "hint" => new Act.AskHint(),
            "do it" => new Act.DoIt(),
            _ when text.StartsWith("wait ", StringComparison.Ordinal) => Waiting(text),
            _ when text.StartsWith("turn ", StringComparison.Ordinal) => Turning(text),
            _ when text.StartsWith("go to ", StringComparison.Ordinal) && RoomOf(text["go to ".Length..], plan) is { } room => Walking(text, room),
            _ => Moves.Where(move => move.Words == text || move.Words == text.Replace(" the ", " ", StringComparison.Ordinal) || move.Words + "s" == text)
                .Select(move => new Act.Move(move.Words, move.Change)).FirstOrDefault(),
        };
    }

    /// <summary>
    /// What the ear hears of the hands: it was trained for the words of the procedure, and of these hands five synthetic voices were understood less than half of the time, or as a command. "Do it"
    /// does what they do.
    /// </summary>
    static readonly ImmutableArray<string> TypedOnly =
    [
        "plug inlet", "plug manifold", "drill hole", "seal hole", "open sampling port", "close sampling port", "open duct ports", "plug duct ports", "open rollout", "close rollout", "pull hose", "hose back",
        "open spill switch", "close spill switch", "block drain", "free drain", "insert probe", "pull probe", "caps on", "zero analyzer", "clock meter", "reset control", "others on", "others off",
        "swap wires", "press hose", "tighten plugs", "tighten joint", "hint",
    ];

    /// <summary>Every phrase of the hands that may be said and not only typed.</summary>
    public static IEnumerable<string> Spoken(StartupPlan plan) => All(plan).Where(words => !TypedOnly.Contains(words) && !words.EndsWith("an eighth", StringComparison.Ordinal));

    /// <summary>Every phrase of the hands that has no number in it, for the help.</summary>
    public static IEnumerable<string> All(StartupPlan plan) =>
    [
        "look", "hint", "do it",
        .. Moves.Select(move => move.Words),
        .. plan.Site.Rooms.Select(room => $"go to {room}"),
        .. from side in (string[])["left", "right"] from turn in Turns select $"turn {side} {turn.Word}",
        .. Numbers[1..].SelectMany((number, index) => (string[])[$"wait {number} minute{(index == 0 ? "" : "s")}"]),
        "wait thirty seconds", "wait a minute",
    ];

    static string? RoomOf(string text, StartupPlan plan)
    {
        string name = text.StartsWith("the ", StringComparison.Ordinal) ? text["the ".Length..] : text;
        return plan.Site.Rooms.Where(room => room.ToLowerInvariant() == name).Select(room => (string?)room).FirstOrDefault();
    }

    static Act.Move Walking(string words, string room) => new(words, (hands, plan) => hands with { Probe = ProbePlace.Room, Room = room == plan.Site.Rooms[0] ? "" : room, Where = room });

    static Act.Wait? Waiting(string text)
    {
        string[] words = text.Split(' ');
        (string count, string unit) = words.Length == 3 ? (words[1], words[2].TrimEnd('s')) : ("", "");
        decimal? number = count == "a" ? 1 : count == "thirty" ? 30 : Numbers.IndexOf(count) is > 0 and var index ? index
            : decimal.TryParse(count, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out decimal typed) ? typed : null;
        TimeSpan? time = (number, unit) switch
        {
            ( > 0 and <= LongestWait, "minute") => TimeSpan.FromMinutes((double)number),
            ( > 0 and <= LongestWait * 60, "second") => TimeSpan.FromSeconds((double)number),
            _ => null,
        };
        return time is { } known ? new Act.Wait(text, known) : null;
    }

    static Act.Move? Turning(string text)
    {
        string rest = text["turn ".Length..];
        bool? isClockwise = rest.StartsWith("left", StringComparison.Ordinal) || rest.StartsWith("counter", StringComparison.Ordinal) ? false
            : rest.StartsWith("right", StringComparison.Ordinal) || rest.StartsWith("clockwise", StringComparison.Ordinal) ? true : null;
        string amount = rest.Contains(' ', StringComparison.Ordinal) ? rest[(rest.IndexOf(' ', StringComparison.Ordinal) + 1)..] : "a quarter";
        double turn = Turns.Where(known => known.Word == amount || known.Word == $"a {amount}" || known.Word == $"an {amount}").Select(known => known.Turn).FirstOrDefault();
        return isClockwise is { } right && turn > 0 ? new Act.Move(text, (hands, plan) => Turned(hands, right == (plan.Appliance.TurnToRaise == "clockwise") ? turn : -turn, plan)) : null;
    }

    static Hands Turned(Hands hands, double raises, StartupPlan plan) => hands.High || plan.Appliance.Stages == 1
        ? hands with { HighTurns = hands.HighTurns + raises, Turnings = hands.Turnings + 1 }
        : hands with { LowTurns = hands.LowTurns + raises, Turnings = hands.Turnings + 1 };

    static (string Words, Func<Hands, StartupPlan, Hands> Change) Opening(string words, string thing) => (words, (hands, _) => hands with { Open = hands.Open.Add(thing) });

    static (string Words, Func<Hands, StartupPlan, Hands> Change) Closing(string words, string thing) => (words, (hands, _) => hands with { Open = hands.Open.Remove(thing) });

    static (string Words, Func<Hands, StartupPlan, Hands> Change) Righting(string words, Fault fault) => (words, (hands, _) => hands with { PutRight = hands.PutRight.Add(fault) });
}
