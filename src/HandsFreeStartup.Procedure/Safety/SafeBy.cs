using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Safety;

/// <summary>Who can declare after an alarm that it is safe.</summary>
static class SafeBy
{
    /// <summary>All of them, the best first.</summary>
    public static ImmutableArray<SpokenChoice> All { get; } =
    [
        new("gas-supplier", "gas supplier"),
        new("fire-service", "fire service"),
        new("own-finding", "own finding"),
    ];

    /// <summary>As shown.</summary>
    public static string Words(string value) => All.FirstOrDefault(choice => choice.Value == value)?.Says ?? value;
}
