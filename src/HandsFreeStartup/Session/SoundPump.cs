using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Session;

/// <summary>Hands what the cutter notices to the session.</summary>
public static class SoundPump
{
    /// <summary>Runs until the source ends or <paramref name="stop"/> is asked for.</summary>
    public static async Task Run(SpeechCutter cutter, IAudioSource source, Action<Input> post, CancellationToken stop)
    {
        try
        {
            await foreach (SpeechEvent noticed in cutter.Listen(source, stop).Where(noticed => source.IsLive || noticed is not SpeechEvent.Sound))
            {
                if (InputOf(noticed) is { } input)
                {
                    post(input);
                }
            }

            post(new Input.SoundEnded());
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // Asked for.
        }
    }

    static Input? InputOf(SpeechEvent noticed) => noticed switch
    {
        SpeechEvent.Began => new Input.SpeechBegan(),
        SpeechEvent.Ended ended => new Input.Spoken(ended.Clip),
        SpeechEvent.Refused refused => new Input.Unusable(refused.Why),
        SpeechEvent.Sound sound => new Input.Sound(sound.Level, sound.State, sound.Message),
        _ => null,
    };
}
