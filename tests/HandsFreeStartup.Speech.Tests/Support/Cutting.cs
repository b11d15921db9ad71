using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Speech.Tests.Support;

/// <summary>The cutter with the shipped detector on a whole sound.</summary>
public static class Cutting
{
    public static List<SpeechEvent> Of(float[] sound, Action<SpeechCutter>? onPause = null, Func<int>? pieces = null)
    {
        using SileroDetector detector = SileroDetector.Load(Shipped.DetectorModel);
        SpeechCutter cutter = new(detector);
        FrameMaker maker = new();
        List<SpeechEvent> events = [];
        for (int at = 0, size; at < sound.Length; at += size)
        {
            size = Math.Min(pieces?.Invoke() ?? sound.Length, sound.Length - at);
            foreach (SpeechEvent noticed in maker.Add(sound.AsMemory(at, size)).SelectMany(cutter.Hear))
            {
                events.Add(noticed);
                if (noticed is SpeechEvent.MaybeEnded)
                {
                    onPause?.Invoke(cutter);
                }
            }
        }

        return [.. events, .. cutter.Finish()];
    }
}
