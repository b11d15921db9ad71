using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Safety;

namespace HandsFreeStartup.Procedure.Wording;

/// <summary>A concentration of carbon monoxide that asks for something, in the same words in every copy, list and finding.</summary>
public static class MonoxideWords
{
    /// <summary>Place and concentration: "CO in the flue, air-free (high) 450 ppm".</summary>
    public static Message Measured(MonoxideJudged judged)
    {
        Message ppm = Value(judged) is { } value ? (Message)$"{value}" : "too high";
        return $"CO {Where(judged)}{new MessagePart.Name(Labels.In(judged.Key.Scope))} {ppm}{(judged.IsDoubtful ? ", read back and not confirmed" : "")}";
    }

    /// <summary>"in the room", "in the flue, air-free".</summary>
    public static string Where(MonoxideJudged judged) => judged.Place == MonoxidePlace.Room ? "in the room" : judged.IsAirFree ? "in the flue, air-free" : "in the flue";

    /// <summary>The concentration that was judged, without its doubt; null in older records.</summary>
    public static ShownValue? Value(MonoxideJudged judged) => judged.Ppm is { } ppm && Math.Abs(ppm) < 1e15
        ? ShownValue.Alone(Math.Round((decimal)ppm, 0, MidpointRounding.AwayFromZero), Unit.PartsPerMillion.Symbol, judged.IsOver) : null;

    /// <summary>The same with what it asks for. Where only its uncertainty reaches the tier, it says that and no more: the value itself lies below.</summary>
    public static Message Sentence(MonoxideJudged judged) => judged is { Counts: false, IsDoubtful: false, Ppm: not null } && Tier(judged) is { } tier
        ? (Message)$"{Measured(judged)} is not proven to be below {ShownValue.Alone((decimal)tier.From, Unit.PartsPerMillion.Symbol)}{(judged.Action == MonoxideAction.FindSource ? (Message)"" : $": {judged.Do.WithoutStop()}")}"
        : $"{Measured(judged)}: {judged.Do.WithoutStop()}";

    /// <summary>As it is announced at once: the worse it is, the louder, place and number before what to do.</summary>
    public static Message Told(MonoxideJudged judged)
    {
        Message number = Value(judged) is { } ppm ? (Message)$"{ppm} CO {Where(judged)}{(judged.IsDoubtful ? ", if that was heard right" : "")}. " : "";
        return $"{(IsDanger(judged) ? "DANGER: " : "")}{number}{judged.Do}";
    }

    /// <summary>Whether the furnace must be shut off at once, or worse.</summary>
    public static bool IsDanger(MonoxideJudged judged) => judged.Action >= MonoxideAction.ShutOff;

    static CarbonMonoxideTier? Tier(MonoxideJudged judged) =>
        CarbonMonoxideTier.All.LastOrDefault(tier => tier.Place == judged.Place && tier.Action == judged.Action);
}
