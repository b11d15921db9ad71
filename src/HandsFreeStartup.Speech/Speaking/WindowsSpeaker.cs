using System.Runtime.InteropServices;
using System.Runtime.Versioning;
using HandsFreeStartup.Speech.Listening;
using NAudio.CoreAudioApi;
using NAudio.Wave;

namespace HandsFreeStartup.Speech.Speaking;

/// <summary>The player of Windows: this program itself, as a child of the one that speaks.</summary>
[SupportedOSPlatform("windows")]
public static class WindowsSpeaker
{
    /// <summary>With 200 and with 500 ms parts of the sound were lost under Wine on a busy machine; it begins at once all the same.</summary>
    const int BufferMilliseconds = 1000;

    /// <summary>Plays a WAV file to its end.</summary>
    /// <param name="name">Name of the device or a part of it; null for the default.</param>
    /// <param name="path">The file.</param>
    /// <param name="stop">Ends it before.</param>
    /// <exception cref="SoundDeviceException">There is no such speaker, or it was taken away.</exception>
    /// <exception cref="SoundFileException">The file is none that can be played.</exception>
    public static Task Play(string? name, string path, CancellationToken stop)
    {
        (float[] samples, int rate) = WavFile.ReadAsItIs(path);
        return WindowsDevices.Use(DataFlow.Render, async () =>
        {
            using MMDevice device = WindowsDevices.Find(DataFlow.Render, name);
            using WasapiPlayer player = new WasapiPlayerBuilder().WithDevice(device).WithSharedMode().WithLatency(BufferMilliseconds).Build();
            using MemoryStream bytes = new(MemoryMarshal.AsBytes<float>(samples).ToArray());
            using RawSourceWaveStream sound = new(bytes, WaveFormat.CreateIeeeFloatWaveFormat(rate, 1));
            TaskCompletionSource<Exception?> over = new(TaskCreationOptions.RunContinuationsAsynchronously);
            await using CancellationTokenRegistration stopped = stop.Register(() => over.TrySetResult(null));
            player.PlaybackStopped += (_, end) => over.TrySetResult(end.Exception);
            player.Init(sound);
            player.Play();
            return await over.Task;
        });
    }
}
