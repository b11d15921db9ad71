namespace HandsFreeStartup.Speech.Listening;

/// <summary>Notices the hum of the mains. Speech over it neither hides it nor looks like it, because speech does not stand still for a second and a half.</summary>
sealed class HumWatch
{
    /// <summary>Mains of 50 and 60 Hz with their harmonics, Hz.</summary>
    static readonly double[] Tones = [50, 60, 100, 120, 150, 180, 240];

    /// <summary>Half a second: long enough to tell the tones apart.</summary>
    const int Window = 16 * AudioFrame.Length;

    const int Windows = 3;

    /// <summary>A hum that is most of the sound and loud enough to cover words; below the level it does no harm (common practice, no source).</summary>
    const double Share = 0.6, LeastPower = 1e-5;

    /// <summary>It is gone when a tenth of it is left.</summary>
    const double Gone = 0.1;

    readonly float[] _window = new float[Window];
    int _filled;
    int _humming;
    double _power;

    /// <summary>Whether it hums.</summary>
    public bool Hums => _humming >= Windows;

    /// <summary>Takes the next frame.</summary>
    public void Add(ReadOnlySpan<float> frame)
    {
        frame.CopyTo(_window.AsSpan(_filled));
        _filled += frame.Length;
        if (_filled == Window)
        {
            _filled = 0;
            Judge();
        }
    }

    /// <summary>The sound after a loss is another sound.</summary>
    public void StartAgain() => (_filled, _humming) = (0, 0);

    void Judge()
    {
        double tones = Tones.Sum(Power), all = 0;
        foreach (float sample in _window)
        {
            all += sample * sample / Window;
        }

        bool isHum = tones >= LeastPower && tones >= Share * all;
        _power = isHum ? tones : _power;
        _humming = isHum ? _humming + 1 : Hums && tones > Gone * _power ? _humming : 0;
    }

    /// <summary>Power of one tone (Goertzel 1958).</summary>
    double Power(double tone)
    {
        double turn = 2 * Math.Cos(2 * Math.PI * tone / WavFile.Rate), one = 0, two = 0;
        foreach (float sample in _window)
        {
            (one, two) = (sample + (turn * one) - two, one);
        }

        return 2 * ((one * one) + (two * two) - (turn * one * two)) / ((double)Window * Window);
    }
}
