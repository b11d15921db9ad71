using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Procedure.Wording;

/// <summary>Why a start-up was stopped, in words.</summary>
public static class StopWords
{
    /// <summary>The cause.</summary>
    public static string Of(StopCause cause) => cause switch
    {
        StopCause.GasSmell => "gas was smelled",
        StopCause.CarbonMonoxide => "carbon monoxide in a room",
        _ => "emergency stop",
    };
}
