using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Running;
using HandsFreeStartup.Session;

namespace HandsFreeStartup.Start;

/// <summary>What <c>start</c> was asked to do.</summary>
/// <param name="Wav">Recordings to hear instead of the microphone; empty for none.</param>
/// <param name="Keys">Nothing is heard, everything is typed.</param>
/// <param name="Demo">The demonstration.</param>
/// <param name="Quick">Short timers.</param>
/// <param name="Plain">Lines instead of a screen.</param>
/// <param name="Appliance">Path of the appliance sheet, or null.</param>
/// <param name="Checklist">Path of the procedure, or null.</param>
/// <param name="Occasion">Which of the procedure's occasions, or null for its first.</param>
/// <param name="Site">Path of the site, or null.</param>
/// <param name="Settings">Path of the settings, or null for those of the data folder.</param>
/// <param name="Technician">Who works, or null.</param>
/// <param name="Microphone">Which microphone, or null for the system's default.</param>
/// <param name="Hearing">How microphone and voice get along; null for what the command <c>sound</c> chose.</param>
/// <param name="Model">Path of another recogniser model, or null.</param>
/// <param name="Ears">Number of recognisers, 1 or 2.</param>
/// <param name="Resume">Whether an earlier job goes on.</param>
/// <param name="Job">Which job goes on; null for the newest unfinished one.</param>
/// <param name="Mute">Whether the tool keeps silent.</param>
/// <param name="KeepsClips">Whether the sound of accepted and doubtful utterances is kept beside the record.</param>
/// <param name="Data">Where the record is kept.</param>
/// <param name="IsLight">Dark letters on a light screen.</param>
/// <param name="Follow">The returned record that the new job follows; null where it follows none.</param>
/// <param name="Photo">A photo that is attached at the beginning, or null.</param>
public sealed record StartOptions(
    ImmutableArray<string> Wav, bool Keys, bool Demo, bool Quick, bool Plain,
    string? Appliance, string? Checklist, string? Occasion, string? Site, string? Settings, string? Technician, string? Microphone, HearingProfile? Hearing, string? Model, int Ears,
    bool Resume, string? Job, bool Mute, bool KeepsClips, DataFolder Data, bool IsLight = false, string? Follow = null, string? Photo = null)
{
    /// <summary>What is rehearsed; null for a start-up.</summary>
    public RehearsalNote? Rehearsal { get; init; }
}
