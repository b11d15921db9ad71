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
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    readonly string _control;
    readonly string _module;

    EchoCanceller(string control, string module, string name) => (_control, _module, Source, Sink) = (control, module, $"{name}_ear", $"{name}_voice");

    /// <summary>Name of the microphone without the echo.</summary>
    public string Source { get; }

    /// <summary>Name of the speaker whose sound is taken out.</summary>
    public string Sink { get; }

    /// <summary>Loads it; null where the sound server has none.</summary>
    /// <param name="microphone">Name of a device, or null for the default.</param>
    /// <param name="speaker">Name of a device, or null for the default.</param>
    /// <param name="find">Where a program is installed; null for <see cref="InstalledProgram.Find"/>.</param>
    public static EchoCanceller? Load(string? microphone = null, string? speaker = null, Func<string, string?>? find = null)
    {
        if ((find ?? InstalledProgram.Find)("pactl") is not { } control)
        {
            return null;
        }

        string name = string.Create(CultureInfo.InvariantCulture, $"handsfree_{Environment.ProcessId}");
        ImmutableArray<string> arguments =
        [
            "load-module", "module-echo-cancel", "aec_method=webrtc", $"source_name={name}_ear", $"sink_name={name}_voice",
            .. microphone is null ? [] : (string[])[$"source_master={microphone}"], .. speaker is null ? [] : (string[])[$"sink_master={speaker}"],
        ];
        return Run(control, arguments) is { Length: > 0 } module && module.All(char.IsAsciiDigit) ? new EchoCanceller(control, module, name) : null;
    }

    /// <summary>Takes it out of the sound server again.</summary>
    public void Dispose() => Run(_control, ["unload-module", _module]);

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
