using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;

namespace HandsFreeStartup.Speech.Listening;

/// <summary>
/// The sound server's echo canceling (module-echo-cancel of PulseAudio, also on PipeWire), loaded for as long as this lives: what is played to <see cref="Sink"/> is taken out of what
/// <see cref="Source"/> gives.
/// </summary>
public sealed class EchoCanceller : IDisposable
{
    /// <summary>By itself it would turn the microphone of the whole machine down to a third, and leave it there.</summary>
    const string LevelsStay = "aec_args=\"analog_gain_control=0 digital_gain_control=0\"";

    const string Module = "module-echo-cancel", Prefix = "handsfree_", Ear = "_ear", Speaker = "_voice";

    static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    readonly string _control;
    readonly string _module;

    EchoCanceller(string control, string module, string name) => (_control, _module, Source, Sink) = (control, module, name + Ear, name + Speaker);

    /// <summary>Name of the microphone without the echo.</summary>
    public string Source { get; }

    /// <summary>Name of the speaker whose sound is taken out.</summary>
    public string Sink { get; }

    /// <summary>Loads it, and takes out what a program that was killed has left behind; null where the sound server has none.</summary>
    /// <param name="microphone">Name of a device, or null for the default.</param>
    /// <param name="speaker">Name of a device, or null for the default.</param>
    /// <param name="machine">What is installed; null for this one.</param>
    public static EchoCanceller? Load(string? microphone = null, string? speaker = null, Machine? machine = null)
    {
        if ((machine ?? Machine.This).Find("pactl") is not { } control)
        {
            return null;
        }

        foreach (string orphan in Orphans(Run(control, ["list", "short", "modules"]) ?? ""))
        {
            Run(control, ["unload-module", orphan]);
        }

        string name = string.Create(CultureInfo.InvariantCulture, $"{Prefix}{Environment.ProcessId}");
        ImmutableArray<string> arguments =
        [
            "load-module", Module, "aec_method=webrtc", LevelsStay, $"source_name={name}{Ear}", $"sink_name={name}{Speaker}",
            .. microphone is null ? [] : (string[])[$"source_master={microphone}"], .. speaker is null ? [] : (string[])[$"sink_master={speaker}"],
        ];
        return Run(control, arguments) is { Length: > 0 } module && module.All(char.IsAsciiDigit) ? new EchoCanceller(control, module, name) : null;
    }

    /// <summary>Takes it out of the sound server again.</summary>
    public void Dispose() => Run(_control, ["unload-module", _module]);

    /// <summary>Numbers of the modules whose program is gone.</summary>
    static IEnumerable<string> Orphans(string modules) =>
        from line in modules.Split('\n')
        let cells = line.Split('\t')
        where cells.Length > 2 && cells[1] == Module
        let process = cells[2].Split($"source_name={Prefix}").ElementAtOrDefault(1)?.Split(Ear)[0]
        where int.TryParse(process, NumberStyles.None, CultureInfo.InvariantCulture, out int id) && !Lives(id)
        select cells[0];

    static bool Lives(int id)
    {
        try
        {
            using Process process = Process.GetProcessById(id);
            return true;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }

    /// <summary>What the program answers; null where it fails.</summary>
    static string? Run(string program, ImmutableArray<string> arguments)
    {
        ProcessStartInfo start = new(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true };
        try
        {
            using Process process = Process.Start(start)!;
            Task<string> answer = process.StandardOutput.ReadToEndAsync();
            if (!process.WaitForExit(Patience))
            {
                EndedProcess.Kill(process);
                return null;
            }

            return process.ExitCode == 0 ? answer.GetAwaiter().GetResult().Trim() : null;
        }
        catch (Exception e) when (e is System.ComponentModel.Win32Exception or InvalidOperationException or IOException)
        {
            return null;
        }
    }
}
