using System.Runtime.CompilerServices;
using System.Threading.Channels;

namespace HandsFreeStartup.Speech.Listening;

/// <summary>Tells how likely each frame of a sound holds speech; what came before counts too.</summary>
public interface ISpeechDetector
{
    /// <summary>Probability of speech in the next 512 samples at 16 kHz.</summary>
    float Probability(ReadOnlySpan<float> frame);
}

/// <summary>When speech begins and ends.</summary>
/// <remarks>Values of the project, resting on the detector's own defaults (on at 0.5, off 0.15 below) and on measured word lengths.</remarks>
public sealed record CutterSettings
{
    /// <summary>A frame at or above it is speech; three of four such frames begin an utterance.</summary>
    public float On { get; init; } = 0.5f;

    /// <summary>A frame below it may be the beginning of silence.</summary>
    public float Off { get; init; } = 0.35f;

    /// <summary>Sound kept from before the first speech frame: soft consonants come before the detector is sure.</summary>
    public TimeSpan PreRoll { get; init; } = TimeSpan.FromMilliseconds(400);

    /// <summary>Speech shorter than this is no word.</summary>
    public TimeSpan Shortest { get; init; } = TimeSpan.FromMilliseconds(160);

    /// <summary>Speech longer than this is refused as a whole.</summary>
    public TimeSpan Longest { get; init; } = TimeSpan.FromSeconds(6);

    /// <summary>Speech that lasts longer is told of while it goes on, with so much of its end; the longest call for help fits in.</summary>
    public TimeSpan Lately { get; init; } = TimeSpan.FromSeconds(2.4);

    /// <summary>How often it is told of: so often that each call lies whole in one of the ends.</summary>
    public TimeSpan LatelyEvery { get; init; } = TimeSpan.FromSeconds(0.6);

    /// <summary>Silence after which an utterance has perhaps ended.</summary>
    public TimeSpan Pause { get; init; } = TimeSpan.FromMilliseconds(160);

    /// <summary>Silence that ends an utterance, as long as nobody sets another for it.</summary>
    public TimeSpan HangOver { get; init; } = TimeSpan.FromMilliseconds(350);

    /// <summary>Quiet that must lie between the end of a deaf span and the first speech, or its beginning counts as lost.</summary>
    public TimeSpan LeadIn { get; init; } = TimeSpan.FromMilliseconds(64);

    /// <summary>Deafness that goes on after the tool's own voice: loudspeaker, room and buffers lag behind.</summary>
    public TimeSpan Guard { get; init; } = TimeSpan.FromMilliseconds(300);
}

/// <summary>Cuts utterances out of a stream of frames.</summary>
/// <remarks>
/// <see cref="Hear"/> is for one thread; <see cref="HangOver"/> and <see cref="Deaf"/> may be used from any.
/// The same samples give the same events, however they arrived.
/// </remarks>
public sealed class SpeechCutter
{
    const int Votes = 4;
    const int VotesNeeded = 3;
    const int FramesPerLevel = 4;

    /// <summary>Speech whose loudest frame lies below it is too faint for 16 bits, in dBFS (common practice, no source).</summary>
    const double FaintBelow = -50;

    const string TooFaint = "The microphone is too low: turn its level up or bring it nearer.";
    static readonly TimeSpan Kept = TimeSpan.FromSeconds(10);

    readonly ISpeechDetector _detector;
    readonly CutterSettings _settings;
    readonly SampleRing _ring = new((int)Samples(Kept));
    readonly Queue<(long Position, bool Speech)> _votes = new(Votes);
    long _hangOver;
    volatile bool _deaf;

    bool _wasDeaf;
    long _deafUntil;
    long _earliest;
    long _speechStart = -1;
    long _quietSince = -1;
    long _latelyTold;
    bool _beganTold;
    bool _pauseTold;
    bool _asPaused;
    bool _beginningLost;
    double _loudest = AudioFrame.Floor;
    int _sinceLevel;
    SoundState _state = SoundState.Good;
    bool _isFaint;

    /// <summary>A cutter for one source.</summary>
    /// <param name="detector">Used by this cutter alone, since it remembers.</param>
    /// <param name="settings">Null for the usual ones.</param>
    public SpeechCutter(ISpeechDetector detector, CutterSettings? settings = null)
    {
        (_detector, _settings) = (detector, settings ?? new CutterSettings());
        HangOver = _settings.HangOver;
    }

    /// <summary>
    /// Silence that ends the utterance in hand; the next pause begins with the setting again.
    /// Have a long setting, and make it shorter when the words are known to be complete: so nothing is cut while the recognizer works.
    /// </summary>
    public TimeSpan HangOver
    {
        get => TimeSpan.FromSeconds((double)Interlocked.Read(ref _hangOver) / WavFile.Rate);
        set => Interlocked.Exchange(ref _hangOver, Samples(value));
    }

    /// <summary>True while the tool itself makes a sound; hearing comes back a guard time after it is set to false.</summary>
    public bool Deaf
    {
        get => _deaf;
        set => _deaf = value;
    }

    /// <summary>Everything noticed in a source until it ends. A live source is followed without waiting for the reader of the events.</summary>
    /// <param name="source">Where the sound comes from.</param>
    /// <param name="cancellation">Ends the listening.</param>
    public IAsyncEnumerable<SpeechEvent> Listen(IAudioSource source, CancellationToken cancellation = default) =>
        source.IsLive ? Ahead(source, cancellation) : InStep(source, cancellation);

    /// <summary>What one more frame brings.</summary>
    public IReadOnlyList<SpeechEvent> Hear(AudioFrame frame)
    {
        List<SpeechEvent> noticed = [];
        Watch(frame, noticed);
        if (frame.State is SoundState.Lost or SoundState.Moved or SoundState.WrongRate)
        {
            Abandon(Refusal.SoundLost, noticed);
            _earliest = frame.Position + frame.Samples.Length;
            return noticed;
        }

        _ring.Add(frame.Position, frame.Samples.Span);
        if (IsDeafFor(frame))
        {
            Abandon(Refusal.SpokenOver, noticed);
            _earliest = _ring.End;
            return noticed;
        }

        float probability = _detector.Probability(frame.Samples.Span);
        if (_speechStart < 0)
        {
            AwaitSpeech(frame, probability);
        }
        else
        {
            FollowSpeech(frame, probability, noticed);
        }

        TellBeginning(noticed);
        return noticed;
    }

    /// <summary>The source has ended: speech that was still under way is refused.</summary>
    public IReadOnlyList<SpeechEvent> Finish()
    {
        List<SpeechEvent> noticed = [];
        Abandon(Refusal.SoundLost, noticed);
        return noticed;
    }

    void Watch(AudioFrame frame, List<SpeechEvent> noticed)
    {
        _loudest = Math.Max(_loudest, frame.Level);
        bool faint = _isFaint && frame.State == SoundState.Good;
        SoundState state = faint ? SoundState.Faint : frame.State;
        if (++_sinceLevel < FramesPerLevel && state == _state && state != SoundState.Lost)
        {
            return;
        }

        noticed.Add(new SpeechEvent.Sound(_loudest, state, faint ? TooFaint : frame.Message));
        (_loudest, _sinceLevel, _state) = (AudioFrame.Floor, 0, state);
    }

    bool IsDeafFor(AudioFrame frame)
    {
        bool deaf = _deaf;
        if (_wasDeaf && !deaf)
        {
            _deafUntil = frame.Position + Samples(_settings.Guard);
        }

        _wasDeaf = deaf;
        return deaf || frame.Position < _deafUntil;
    }

    void AwaitSpeech(AudioFrame frame, float probability)
    {
        if (_votes.Count == Votes)
        {
            _votes.Dequeue();
        }

        _votes.Enqueue((frame.Position, probability >= _settings.On));
        if (_votes.Count(vote => vote.Speech) < VotesNeeded)
        {
            return;
        }

        _speechStart = _votes.First(vote => vote.Speech).Position;
        _beginningLost = _speechStart - _earliest < Samples(_settings.LeadIn);
        HangOver = _settings.HangOver;
    }

    void FollowSpeech(AudioFrame frame, float probability, List<SpeechEvent> noticed)
    {
        if (probability >= _settings.On)
        {
            _quietSince = -1;
            if (_pauseTold)
            {
                _pauseTold = false;
                HangOver = _settings.HangOver;
                noticed.Add(new SpeechEvent.Resumed());
            }
        }
        else if (probability < _settings.Off && _quietSince < 0)
        {
            _quietSince = frame.Position;
        }
        else if (probability >= _settings.Off && _pauseTold)
        {
            _asPaused = false;
        }

        long quiet = _quietSince < 0 ? 0 : _ring.End - _quietSince;
        if (quiet >= Math.Max(Interlocked.Read(ref _hangOver), Samples(_settings.Pause)))
        {
            End(noticed);
        }
        else if (quiet >= Samples(_settings.Pause) && !_pauseTold && Objection() is null)
        {
            (_pauseTold, _asPaused) = (true, true);
            noticed.Add(new SpeechEvent.MaybeEnded(Clip()));
        }
        else
        {
            TellOfLongSpeech(noticed);
        }
    }

    void TellOfLongSpeech(List<SpeechEvent> noticed)
    {
        long from = _ring.End - Samples(_settings.Lately);
        if (from < _speechStart || _ring.End - _latelyTold < Samples(_settings.LatelyEvery))
        {
            return;
        }

        _latelyTold = _ring.End;
        (float[] samples, long start) = _ring.From(from);
        noticed.Add(new SpeechEvent.GoesOn(new SpeechClip(samples, start, start, SpeechEnd)));
    }

    void End(List<SpeechEvent> noticed)
    {
        TellBeginning(noticed);
        SpeechClip clip = Clip();
        noticed.Add(Objection() is { } why ? new SpeechEvent.Refused(clip, why) : new SpeechEvent.Ended(clip, _asPaused));
        _isFaint = clip.Samples.Chunk(AudioFrame.Length).Max(frame => AudioFrame.LevelOf(frame)) is > AudioFrame.Floor and < FaintBelow;

        // The next pre-roll must not bring the end of this utterance along.
        _earliest = _quietSince;
        Forget();
    }

    void Abandon(Refusal why, List<SpeechEvent> noticed)
    {
        if (_speechStart >= 0)
        {
            noticed.Add(new SpeechEvent.Refused(Clip(), why));
        }

        Forget();
    }

    void Forget()
    {
        _votes.Clear();
        (_speechStart, _quietSince) = (-1, -1);
        (_beganTold, _pauseTold, _asPaused, _beginningLost) = (false, false, false, false);
    }

    void TellBeginning(List<SpeechEvent> noticed)
    {
        if (_speechStart >= 0 && !_beganTold)
        {
            _beganTold = true;
            noticed.Add(new SpeechEvent.Began(_speechStart));
        }
    }

    Refusal? Objection()
    {
        long length = SpeechEnd - _speechStart;
        return length > Samples(_settings.Longest) ? Refusal.TooLong
            : _beginningLost ? Refusal.BeginningLost
            : length < Samples(_settings.Shortest) ? Refusal.TooShort
            : null;
    }

    long SpeechEnd => _quietSince < 0 ? _ring.End : _quietSince;

    SpeechClip Clip()
    {
        (float[] samples, long start) = _ring.From(Math.Max(_earliest, _speechStart - Samples(_settings.PreRoll)));
        return new SpeechClip(samples, start, _speechStart, SpeechEnd);
    }

    async IAsyncEnumerable<SpeechEvent> InStep(IAudioSource source, [EnumeratorCancellation] CancellationToken cancellation)
    {
        await foreach (AudioFrame frame in source.Frames(cancellation))
        {
            foreach (SpeechEvent noticed in Hear(frame))
            {
                yield return noticed;
            }
        }

        foreach (SpeechEvent noticed in Finish())
        {
            yield return noticed;
        }
    }

    async IAsyncEnumerable<SpeechEvent> Ahead(IAudioSource source, [EnumeratorCancellation] CancellationToken cancellation)
    {
        using CancellationTokenSource stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        Channel<SpeechEvent> channel = Channel.CreateUnbounded<SpeechEvent>(new UnboundedChannelOptions { SingleReader = true, SingleWriter = true });
        Task pump = Task.Run(() => Pump(source, channel.Writer, stop.Token), CancellationToken.None);
        try
        {
            await foreach (SpeechEvent noticed in channel.Reader.ReadAllAsync(cancellation))
            {
                yield return noticed;
            }
        }
        finally
        {
            await stop.CancelAsync();
            await pump;
        }
    }

    async Task Pump(IAudioSource source, ChannelWriter<SpeechEvent> events, CancellationToken cancellation)
    {
        try
        {
            await foreach (SpeechEvent noticed in InStep(source, cancellation))
            {
                await events.WriteAsync(noticed, cancellation);
            }

            events.Complete();
        }
        catch (Exception e)
        {
            events.Complete(e);
        }
    }

    static long Samples(TimeSpan span) => (long)(span.TotalSeconds * WavFile.Rate);
}
