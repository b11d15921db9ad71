namespace HandsFreeStartup.Rehearse;

/// <summary>The time of a rehearsal: as fast as was asked for, and forward by whole waits. Both of its clocks go together, so that no clock seems to have been set.</summary>
/// <param name="real">What it runs by; null for one that goes on only when it is told to.</param>
/// <param name="speed">Seconds of the rehearsal for one of <paramref name="real"/>, above zero.</param>
/// <param name="began">Its wall clock at the beginning.</param>
sealed class RehearsalClock(TimeProvider? real, double speed, DateTimeOffset began) : TimeProvider
{
    readonly long _start = real?.GetTimestamp() ?? 0;
    long _ahead;

    /// <summary>Since the beginning.</summary>
    public TimeSpan Elapsed => (real is null ? TimeSpan.Zero : real.GetElapsedTime(_start) * speed) + new TimeSpan(Interlocked.Read(ref _ahead));

    /// <inheritdoc/>
    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    /// <summary>Puts it forward.</summary>
    public void Forward(TimeSpan by) => Interlocked.Add(ref _ahead, by.Ticks);

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => began + Elapsed;

    /// <inheritdoc/>
    public override long GetTimestamp() => Elapsed.Ticks;

    /// <inheritdoc/>
    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        (real ?? System).CreateTimer(callback, state, Scaled(dueTime), Scaled(period));

    TimeSpan Scaled(TimeSpan span) => span > TimeSpan.Zero ? TimeSpan.FromMilliseconds(Math.Max(1, span.TotalMilliseconds / speed)) : span;
}
