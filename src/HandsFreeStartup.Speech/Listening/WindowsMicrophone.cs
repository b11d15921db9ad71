using System.Runtime.Versioning;
using NAudio.CoreAudioApi;
using NAudio.Wave;

namespace HandsFreeStartup.Speech.Listening;

/// <summary>The recorder of Windows: this program itself, as a child of the one that listens.</summary>
[SupportedOSPlatform("windows")]
public static class WindowsMicrophone
{
    /// <summary>What Windows holds for a reader that is late.</summary>
    const int BufferMilliseconds = 200;

    /// <summary>Writes the microphone's sound, raw 16-bit little-endian samples, 16 kHz, one channel, until nobody wants it any more.</summary>
    /// <param name="name">Name of the device or a part of it; null for the default.</param>
    /// <param name="output">Takes the sound; the recording ends when it takes nothing more.</param>
    /// <param name="tell">Told which device is recorded.</param>
    /// <param name="stop">Ends the recording.</param>
    /// <exception cref="SoundDeviceException">There is no such microphone, or it was taken away.</exception>
    public static Task Record(string? name, Stream output, Action<string> tell, CancellationToken stop) => WindowsDevices.Use(DataFlow.Capture, async () =>
    {
        using MMDevice device = WindowsDevices.Find(DataFlow.Capture, name);
        using WasapiRecorder recorder = new WasapiRecorderBuilder().WithDevice(device).WithSharedMode()
            .WithFormat(new WaveFormat(WavFile.Rate, 16, 1)).WithBufferLength(BufferMilliseconds).Build();
        TaskCompletionSource<Exception?> over = new(TaskCreationOptions.RunContinuationsAsynchronously);
        await using CancellationTokenRegistration stopped = stop.Register(() => over.TrySetResult(null));
        recorder.DataAvailable += (sound, flags, _, _) => Write(output, sound, flags, over);
        recorder.RecordingStopped += (_, end) => over.TrySetResult(end.Exception);
        tell(Recording.OwnDevice + device.FriendlyName);
        recorder.StartRecording();
        return await over.Task;
    });

    static void Write(Stream output, ReadOnlySpan<byte> sound, AudioClientBufferFlags flags, TaskCompletionSource<Exception?> over)
    {
        try
        {
            // What lies in the buffer of a silent packet is not defined.
            output.Write(flags.HasFlag(AudioClientBufferFlags.Silent) ? new byte[sound.Length] : sound);
            output.Flush();
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException)
        {
            over.TrySetResult(null);
        }
    }
}
