namespace HandsFreeStartup.Calculations.Judgement;

/// <summary>What a value with its uncertainty says about a limit.</summary>
/// <remarks>Zones after ILAC-G8:09/2019 section 4.2.3 (non-binary statement with guard band w = U).</remarks>
public enum Verdict
{
    /// <summary>Inside the limit by at least the guard band.</summary>
    Pass,
    /// <summary>Inside the limit, but not by the guard band; for a safety limit this is not proven.</summary>
    ConditionalPass,
    /// <summary>Outside the limit, but not by the guard band.</summary>
    ConditionalFail,
    /// <summary>Outside the limit by more than the guard band.</summary>
    Fail,
    /// <summary>There is no value, or none that means anything.</summary>
    CannotTell,
}

/// <summary>Which verdict is the graver.</summary>
public static class VerdictGravity
{
    /// <summary>0 for a pass or where nothing was judged, to 4 for a fail: the larger, the graver.</summary>
    public static int Of(Verdict? verdict) => verdict switch
    {
        Verdict.Fail => 4,
        Verdict.ConditionalFail => 3,
        Verdict.CannotTell => 2,
        Verdict.ConditionalPass => 1,
        _ => 0,
    };
}
