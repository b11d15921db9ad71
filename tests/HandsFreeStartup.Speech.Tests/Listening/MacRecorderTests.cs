using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Tests.Support;

namespace HandsFreeStartup.Speech.Tests.Listening;

/// <summary>The recorders of macOS run here too, but for the device: a recording of another rate and two channels stands in for it.</summary>
public sealed class MacRecorderTests : IDisposable
{
    readonly ScriptFolder _programs = new();

    public void Dispose() => _programs.Dispose();

    [InstalledFact("sox")]
    public async Task Sox_is_told_to_write_16_kHz_raw_sound_of_one_channel()
    {
        string device = Path.Combine(_programs.Path, "device.wav");
        string sox = InstalledProgram.Find("sox")!;
        await new Speech.Speaking.ProgramRun(sox, ["-D", "-r", "48000", "-c", "2", "-n", device, "synth", "1.5", "sine", "440", "gain", "-6"]).Finish("", default);
        _programs.Add("sox", $"""
            for word; do shift; case "$word" in coreaudio) set -- "$@" wav;; default) set -- "$@" '{device}';; *) set -- "$@" "$word";; esac; done
            exec {sox} -D "$@"
            """);
        Recording recording = Recording.Start(CaptureCommand.Find(machine: new Machine(Platform.MacOS, _programs.Find, []))!, TimeProvider.System);

        List<float> sound = [];
        await foreach (float[] samples in recording.Sound.ReadAllAsync())
        {
            sound.AddRange(samples);
        }

        await recording.DisposeAsync();
        Assert.Empty(recording.Complaint);
        Assert.Equal(1.5, sound.Count / (double)WavFile.Rate, 0.01);
        Assert.Equal(880, sound.Skip(4000).Take(WavFile.Rate).Zip(sound.Skip(4001), (one, next) => one < 0 != next < 0 ? 1 : 0).Sum(), 2.0);
        Assert.Equal(0.5, sound.Max(), 0.02);
    }
}

/// <summary>A test that needs a program; without it the test is reported as skipped.</summary>
public sealed class InstalledFactAttribute : FactAttribute
{
    public InstalledFactAttribute(string program) => Skip = InstalledProgram.Find(program) is null ? $"not installed: {program}" : null!;
}
