namespace HandsFreeStartup.Speech.Listening;

/// <summary>Compares how fast samples arrive with the rate they should have: a device that ignores the wanted rate makes speech into babble.</summary>
sealed class ArrivalRate(TimeProvider clock)
{
    // Long and wide enough that a busy machine does not look like a wrong rate; the usual wrong rates are off by half or more.
    static readonly TimeSpan Window = TimeSpan.FromSeconds(3);
    const double Slowest = 0.7, Fastest = 1.3;

    // Those that are off by more are told within the second.
    static readonly TimeSpan Soon = TimeSpan.FromMilliseconds(900);
    const double FarTooSlow = 0.6, FarTooFast = 1.9;

    long _windowStart = -1;
    long _last;
    long _count;
    TimeSpan _longestGap;

    /// <summary>Whether the last whole window was far off, or this one is.</summary>
    public bool IsWrong { get; private set; }

    /// <summary>Counts samples that have arrived now.</summary>
    public void Arrived(int samples)
    {
        long now = clock.GetTimestamp();
        if (_windowStart < 0)
        {
            (_windowStart, _last) = (now, now);
            return;
        }

        TimeSpan gap = clock.GetElapsedTime(_last, now), elapsed = clock.GetElapsedTime(_windowStart, now);
        (_count, _last, _longestGap) = (_count + samples, now, gap > _longestGap ? gap : _longestGap);

        // A slow device is slow all the time: one long wait is a busy machine, and what it held back may not all be here yet.
        double slow = RatioIn(elapsed - _longestGap), fast = RatioIn(elapsed);
        if (elapsed < Window)
        {
            IsWrong |= elapsed >= Soon && (slow < FarTooSlow || fast > FarTooFast);
            return;
        }

        IsWrong = slow < Slowest || fast > Fastest;
        (_windowStart, _count, _longestGap) = (now, 0, TimeSpan.Zero);
    }

    double RatioIn(TimeSpan time) => _count / (Math.Max(time.TotalSeconds, 1e-3) * WavFile.Rate);
}
