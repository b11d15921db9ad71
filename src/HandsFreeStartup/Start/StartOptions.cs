using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Running;
using HandsFreeStartup.Session;

namespace HandsFreeStartup.Start;

/// <summary>What <c>start</c> was asked to do.</summary>
public sealed record StartOptions
{
    /// <summary>Where the record is kept.</summary>
    public required DataFolder Data { get; init; }

    /// <summary>What leads the job.</summary>
    public JobFiles Files { get; init; } = new();

    /// <summary>How it is heard and spoken to.</summary>
    public SoundOptions Sound { get; init; } = new();

    /// <summary>How it is shown.</summary>
    public ScreenOptions Screen { get; init; } = new();

    /// <summary>In which language everything is shown and said, as its code; null for that of the settings.</summary>
    public string? Language { get; init; }

    /// <summary>The earlier job that goes on or is followed; null for a new one.</summary>
    public EarlierJob? Earlier { get; init; }

    /// <summary>Who works, or null.</summary>
    public string? Technician { get; init; }

    /// <summary>The demonstration.</summary>
    public bool Demo { get; init; }

    /// <summary>Short timers.</summary>
    public bool Quick { get; init; }

    /// <summary>A photo that is attached at the beginning, or null.</summary>
    public string? Photo { get; init; }

    /// <summary>A tour: nothing is left of it, and nothing is told of its record.</summary>
    public bool IsTour { get; init; }

    /// <summary>What is rehearsed; null for a start-up.</summary>
    public RehearsalNote? Rehearsal { get; init; }
}

/// <summary>Paths of the user's files; null for what the program or the data folder has.</summary>
public sealed record JobFiles
{
    /// <summary>The appliance sheet.</summary>
    public string? Appliance { get; init; }

    /// <summary>The procedure.</summary>
    public string? Checklist { get; init; }

    /// <summary>The site.</summary>
    public string? Site { get; init; }

    /// <summary>The lead technician's settings.</summary>
    public string? Settings { get; init; }

    /// <summary>Which of the procedure's occasions; null for its first. No path, but a choice within a file.</summary>
    public string? Occasion { get; init; }
}

/// <summary>What hears and speaks.</summary>
public sealed record SoundOptions
{
    /// <summary>Nothing is heard, everything is typed.</summary>
    public bool Keys { get; init; }

    /// <summary>Recordings to hear instead of the microphone; empty for none.</summary>
    public ImmutableArray<string> Wav { get; init; } = [];

    /// <summary>Which microphone, or null for the system's default.</summary>
    public string? Microphone { get; init; }

    /// <summary>How microphone and voice get along; null for what the command <c>sound</c> chose.</summary>
    public HearingProfile? Hearing { get; init; }

    /// <summary>Path of another recognizer model, or null.</summary>
    public string? Model { get; init; }

    /// <summary>Number of recognizers, 1 or 2.</summary>
    public int Ears { get; init; } = 2;

    /// <summary>Whether the tool keeps silent.</summary>
    public bool Mute { get; init; }

    /// <summary>Whether the sound of accepted and doubtful utterances is kept beside the record.</summary>
    public bool KeepsClips { get; init; }
}

/// <summary>What shows.</summary>
public sealed record ScreenOptions
{
    /// <summary>Lines instead of a screen.</summary>
    public bool Plain { get; init; }

    /// <summary>Dark letters on a light screen.</summary>
    public bool IsLight { get; init; }
}

/// <summary>A job that was there before.</summary>
/// <param name="Name">Its name or path; null for the only one that is unfinished.</param>
/// <param name="IsFollowed">Whether a returned job is followed by a new one; else an interrupted one goes on.</param>
public sealed record EarlierJob(string? Name, bool IsFollowed)
{
    /// <summary>Whether it goes on.</summary>
    public bool GoesOn => !IsFollowed;
}
