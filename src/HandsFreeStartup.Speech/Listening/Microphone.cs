using System.Runtime.CompilerServices;

namespace HandsFreeStartup.Speech.Listening;

/// <summary>A live microphone, read through a recording program that is started again whenever it fails, and looked for again while there is none.</summary>
/// <param name="find">The recording program, or null where there is none now.</param>
/// <param name="none">What to say where there is none.</param>
/// <param name="clock">Measures silence, back-off and the rate of arrival.</param>
public sealed class Microphone(Func<CaptureCommand?> find, string none, TimeProvider clock) : IAudioSource
{
    /// <summary>A microphone whose recording program is known to be there.</summary>
    /// <param name="command">The recording program.</param>
    /// <param name="clock">Measures silence, back-off and the rate of arrival.</param>
    public Microphone(CaptureCommand command, TimeProvider clock) : this(() => command, "", clock)
    {
    }

    static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(800);
    static readonly TimeSpan FirstSound = TimeSpan.FromSeconds(3);
    static readonly TimeSpan FirstBackOff = TimeSpan.FromMilliseconds(250);
    static readonly TimeSpan LongestBackOff = TimeSpan.FromSeconds(2);

    string? _device;

    /// <summary>Told when another device is heard than the one that was opened; may come from any thread.</summary>
    public Action Moved { get; init; } = () => { };

    /// <inheritdoc/>
    public bool IsLive => true;

    /// <inheritdoc/>
    public async IAsyncEnumerable<AudioFrame> Frames([EnumeratorCancellation] CancellationToken cancellation)
    {
        FrameMaker maker = new();
        TimeSpan backOff = FirstBackOff;
        while (true)
        {
            long before = maker.Position;
            if (find() is { } command)
            {
                Recording recording = Recording.Start(command, clock);
                try
                {
                    await foreach (AudioFrame frame in Take(command, recording, maker, cancellation))
                    {
                        yield return frame;
                    }

                    await recording.LastWords();
                    yield return Lost(command, maker, recording.Complaint);
                }
                finally
                {
                    await recording.DisposeAsync();
                }
            }
            else
            {
                yield return new AudioFrame(maker.Position, default, SoundState.Lost, none);
            }

            backOff = maker.Position > before ? FirstBackOff : backOff;
            await Task.Delay(backOff, clock, cancellation);
            backOff = backOff * 2 < LongestBackOff ? backOff * 2 : LongestBackOff;
        }
    }

    // Ends when the program does, or when it has gone quiet for too long.
    async IAsyncEnumerable<AudioFrame> Take(CaptureCommand command, Recording recording, FrameMaker maker, [EnumeratorCancellation] CancellationToken cancellation)
    {
        maker.StartAgain();
        ArrivalRate rate = new(clock);
        TimeSpan waited = TimeSpan.Zero;
        bool heard = false;
        while (true)
        {
            bool? arrival = await Arrival(recording, cancellation);
            if (recording.Device is { } device && device != _device)
            {
                if (_device is not null)
                {
                    Moved();
                    yield return new AudioFrame(maker.Position, default, SoundState.Moved, $"The microphone is gone; another one is heard now: {device}.");
                }

                _device = device;
            }

            switch (arrival)
            {
                case null:
                    yield return Lost(command, maker, recording.Complaint);
                    waited += Patience;
                    if (heard || waited >= FirstSound)
                    {
                        yield break;
                    }

                    break;
                case false:
                    yield break;
                default:
                    heard = true;
                    while (recording.Sound.TryRead(out float[]? samples))
                    {
                        rate.Arrived(samples.Length);
                        foreach (AudioFrame frame in maker.Add(samples))
                        {
                            yield return rate.IsWrong ? frame with { State = SoundState.WrongRate, Message = WrongRate(command) } : frame;
                        }
                    }

                    break;
            }
        }
    }

    // True: sound is there; false: the program has ended; null: nothing came for the time of patience.
    async Task<bool?> Arrival(Recording recording, CancellationToken cancellation)
    {
        try
        {
            return await recording.Sound.WaitToReadAsync(cancellation).AsTask().WaitAsync(Patience, clock, cancellation);
        }
        catch (TimeoutException)
        {
            return null;
        }
    }

    static AudioFrame Lost(CaptureCommand command, FrameMaker maker, string complaint) => new(maker.Position, default, SoundState.Lost,
        $"No sound from the microphone ({(complaint.Length > 0 ? $"{command.Name}: {complaint.TrimEnd('.')}" : command.Name)}): check that it is plugged in; trying again, and the keys work on.");

    static string WrongRate(CaptureCommand command) => $"{command.Name} does not deliver 16000 samples per second: choose another device with --microphone.";
}
