namespace HandsFreeStartup.Procedure;

/// <summary>The present on two clocks: the one that can be set, and the one that only runs.</summary>
/// <param name="At">Wall clock, UTC; what the record is dated with.</param>
/// <param name="Steady">Time since a moment that only a restart of the machine changes; waits are measured by it. Null where there is none, as in a record that is read again.</param>
public readonly record struct Now(DateTimeOffset At, TimeSpan? Steady = null)
{
    /// <summary>The present of <paramref name="clock"/>.</summary>
    public static Now Of(TimeProvider clock) => new(clock.GetUtcNow(), clock.GetElapsedTime(0));

    /// <summary>The wall clock alone.</summary>
    public static Now FromDateTimeOffset(DateTimeOffset at) => new(at);

    /// <summary>The wall clock.</summary>
    public DateTimeOffset ToDateTimeOffset() => At;

    /// <summary>The wall clock alone.</summary>
    public static implicit operator Now(DateTimeOffset at) => FromDateTimeOffset(at);

    /// <summary>The wall clock.</summary>
    public static implicit operator DateTimeOffset(Now now) => now.ToDateTimeOffset();
}
