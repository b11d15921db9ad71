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
    long _count;

    /// <summary>Whether the last whole window was far off.</summary>
    public bool IsWrong { get; private set; }

    /// <summary>Counts samples that have arrived now.</summary>
    public void Arrived(int samples)
    {
        if (_windowStart < 0)
        {
            _windowStart = clock.GetTimestamp();
            return;
        }

        _count += samples;
        TimeSpan elapsed = clock.GetElapsedTime(_windowStart);
        double ratio = _count / (elapsed.TotalSeconds * WavFile.Rate);
        if (elapsed < Window)
        {
            IsWrong |= elapsed >= Soon && ratio is < FarTooSlow or > FarTooFast;
            return;
        }

        IsWrong = ratio is < Slowest or > Fastest;
        (_windowStart, _count) = (clock.GetTimestamp(), 0);
    }
}
