using System.Globalization;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Safety;

namespace HandsFreeStartup.Procedure.Wording;

/// <summary>A concentration of carbon monoxide that asks for something, in the same words in every copy, list and finding.</summary>
public static class MonoxideWords
{
    /// <summary>Place and concentration: "CO in the flue, air-free (high) 450 ppm".</summary>
    public static string Measured(MonoxideJudged judged)
    {
        string where = judged.Place == MonoxidePlace.Room ? "in the room" : judged.IsAirFree ? "in the flue, air-free" : "in the flue";
        string scope = judged.Key.Scope.Length == 0 ? "" : $" ({judged.Key.Scope})";
        string ppm = judged.Ppm is { } value ? $"{(judged.IsOver ? "over " : "")}{value.ToString("F0", CultureInfo.InvariantCulture)} ppm" : "too high";
        return $"CO {where}{scope} {ppm}{(judged.IsDoubtful ? ", read back and not confirmed" : "")}";
    }

    /// <summary>The same with what it asks for. Where only its uncertainty reaches the tier, it says that and no more: the value itself lies below.</summary>
    public static string Sentence(MonoxideJudged judged) => judged is { Counts: false, IsDoubtful: false, Ppm: not null } && Tier(judged) is { } tier
        ? $"{Measured(judged)} is not proven to be below {tier.From.ToString("0", CultureInfo.InvariantCulture)} ppm{(judged.Action == MonoxideAction.FindSource ? "" : $": {judged.Do.TrimEnd('.')}")}"
        : $"{Measured(judged)}: {judged.Do.TrimEnd('.')}";

    static CarbonMonoxideTier? Tier(MonoxideJudged judged) =>
        CarbonMonoxideTier.All.LastOrDefault(tier => tier.Place == judged.Place && tier.Action == judged.Action);
}
