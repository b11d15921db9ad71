namespace HandsFreeStartup.Speech.Listening;

/// <summary>Compares how fast samples arrive with the rate they should have: a device that ignores the wanted rate makes speech into babble.</summary>
sealed class ArrivalRate(TimeProvider clock)
{
    // Long and wide enough that a busy machine does not look like a wrong rate; the usual wrong rates are off by half or more.
    static readonly TimeSpan Window = TimeSpan.FromSeconds(3);
    const double Slowest = 0.7, Fastest = 1.3;

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
        if (elapsed < Window)
        {
            return;
        }

        double ratio = _count / (elapsed.TotalSeconds * WavFile.Rate);
        IsWrong = ratio is < Slowest or > Fastest;
        (_windowStart, _count) = (clock.GetTimestamp(), 0);
    }
}
