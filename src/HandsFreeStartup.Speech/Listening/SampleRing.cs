namespace HandsFreeStartup.Speech.Listening;

/// <summary>The last seconds of a sound, by position. One thread writes, any may read.</summary>
sealed class SampleRing(int capacity)
{
    readonly float[] _samples = new float[capacity];
    readonly Lock _gate = new();
    long _end;

    /// <summary>Position after the newest sample.</summary>
    public long End
    {
        get
        {
            lock (_gate)
            {
                return _end;
            }
        }
    }

    /// <summary>Adds samples that begin at <paramref name="position"/>.</summary>
    public void Add(long position, ReadOnlySpan<float> samples)
    {
        lock (_gate)
        {
            for (int i = 0; i < samples.Length; i++)
            {
                _samples[(position + i) % capacity] = samples[i];
            }

            _end = position + samples.Length;
        }
    }

    /// <summary>The samples from a position on, as far as they are still kept; the position of the first one comes with them.</summary>
    public (float[] Samples, long Start) From(long position)
    {
        lock (_gate)
        {
            long start = Math.Max(Math.Max(0, _end - capacity), Math.Min(position, _end));
            float[] copy = new float[_end - start];
            for (int i = 0; i < copy.Length; i++)
            {
                copy[i] = _samples[(start + i) % capacity];
            }

            return (copy, start);
        }
    }
}
