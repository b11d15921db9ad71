using System.Runtime.InteropServices;
using System.Runtime.Versioning;
using NAudio.CoreAudioApi;

namespace HandsFreeStartup.Speech.Listening;

/// <summary>Microphones and speakers of Windows.</summary>
[SupportedOSPlatform("windows")]
static class WindowsDevices
{
    const string Refused = "allow desktop programs to use it in the settings of Windows (Privacy & security, Microphone)";

    /// <summary>The device of that name, or the default one; whoever asks disposes it.</summary>
    /// <exception cref="SoundDeviceException">There is none.</exception>
    public static MMDevice Find(DataFlow flow, string? name)
    {
        string kind = KindOf(flow);
        using MMDeviceEnumerator all = new();
        if (name is null)
        {
            return all.TryGetDefaultAudioEndpoint(flow, Role.Console, out MMDevice? usual) && usual is not null ? usual
                : throw new SoundDeviceException($"There is no {kind}: plug one in and try again.");
        }

        using MMDeviceCollection devices = all.EnumerateAudioEndPoints(flow, DeviceState.Active);
        return devices[DeviceName.Place(name, [.. Enumerable.Range(0, devices.Count).Select(NameAt)], kind)];

        string NameAt(int place)
        {
            using MMDevice device = devices[place];
            return device.FriendlyName;
        }
    }

    /// <summary>Runs what may fail as devices do: taken away, refused, of a format that nobody takes.</summary>
    /// <exception cref="SoundDeviceException">It failed.</exception>
    public static async Task Use(DataFlow flow, Func<Task<Exception?>> use)
    {
        if (await Failure(use) is { } failure)
        {
            throw new SoundDeviceException(failure is UnauthorizedAccessException
                ? $"Windows does not let this program use the {KindOf(flow)}: {Refused}."
                : $"The {KindOf(flow)} failed ({failure.Message.Trim().TrimEnd('.')}): check that it is plugged in.");
        }
    }

    static async Task<Exception?> Failure(Func<Task<Exception?>> use)
    {
        try
        {
            return await use();
        }
        catch (Exception e) when (e is COMException or UnauthorizedAccessException or InvalidOperationException or NotSupportedException or ArgumentException)
        {
            return e;
        }
    }

    static string KindOf(DataFlow flow) => flow == DataFlow.Capture ? "microphone" : "speaker";
}
