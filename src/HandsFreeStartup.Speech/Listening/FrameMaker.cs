namespace HandsFreeStartup.Speech.Listening;

/// <summary>Cuts sound that arrives in pieces of any size into frames, and watches it for overload, dead silence and the hum of the mains.</summary>
sealed class FrameMaker
{
    const int Watched = 25;
    const int OverloadedFrames = 3;
    const float FullScale = 0.999f;
    const int ClippedRun = 3;
    const float StillMicrophone = 2f / 32768;

    readonly Queue<(bool Clipped, bool Still)> _recent = new(Watched);
    readonly HumWatch _hum = new();
    float[] _frame = new float[AudioFrame.Length];
    int _filled;

    /// <summary>Number of samples in the frames made so far.</summary>
    public long Position { get; private set; }

    /// <summary>The frames that <paramref name="samples"/> completes.</summary>
    public IEnumerable<AudioFrame> Add(ReadOnlyMemory<float> samples)
    {
        while (!samples.IsEmpty)
        {
            int taken = Math.Min(samples.Length, AudioFrame.Length - _filled);
            samples[..taken].CopyTo(_frame.AsMemory(_filled));
            samples = samples[taken..];
            _filled += taken;
            if (_filled == AudioFrame.Length)
            {
                yield return Complete();
            }
        }
    }

    /// <summary>Forgets a frame that is not complete, and what was watched: the sound after a loss is another sound.</summary>
    public void StartAgain()
    {
        _filled = 0;
        _recent.Clear();
        _hum.StartAgain();
    }

    AudioFrame Complete()
    {
        if (_recent.Count == Watched)
        {
            _recent.Dequeue();
        }

        _recent.Enqueue((IsClipped(_frame), _frame.Max() - _frame.Min() <= StillMicrophone));
        _hum.Add(_frame);
        SoundState state =
            _recent.Count(frame => frame.Clipped) >= OverloadedFrames ? SoundState.Overloaded
            : _recent.Count == Watched && _recent.All(frame => frame.Still) ? SoundState.Dead
            : _hum.Hums ? SoundState.Humming
            : SoundState.Good;
        AudioFrame made = new(Position, _frame, state, Sentence(state));
        Position += AudioFrame.Length;
        (_frame, _filled) = (new float[AudioFrame.Length], 0);
        return made;
    }

    static string Sentence(SoundState state) => state switch
    {
        SoundState.Overloaded => "The microphone is too loud: turn its level down or hold it further away.",
        SoundState.Dead => "The microphone gives dead silence: unmute it or plug it in.",
        SoundState.Humming => "The microphone hums: look at its plug and cable, or run the computer from its battery.",
        _ => "",
    };

    static bool IsClipped(float[] samples)
    {
        int run = 0;
        foreach (float sample in samples)
        {
            run = Math.Abs(sample) >= FullScale ? run + 1 : 0;
            if (run == ClippedRun)
            {
                return true;
            }
        }

        return false;
    }
}
