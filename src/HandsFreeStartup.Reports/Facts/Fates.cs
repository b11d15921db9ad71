using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Reports.Facts;

/// <summary>What became of a step.</summary>
enum StepEnd
{
    NotReached,
    UnderWay,
    Done,
    Skipped,
}

/// <summary>A step with what became of it. A step that was returned to is under way again.</summary>
sealed record StepFate(Step Step, StepEnd End, DateTimeOffset? Entered, DateTimeOffset? Left, string Reason, bool EndedByItself);

/// <summary>What became of a value that was heard.</summary>
enum ReadingEnd
{
    /// <summary>In the record.</summary>
    Final,
    /// <summary>In the record, but nothing was accepted after it.</summary>
    Provisional,
    /// <summary>Undone by "disregard".</summary>
    Disregarded,
    /// <summary>A later value of the same reading took its place.</summary>
    Replaced,
    /// <summary>No longer counts.</summary>
    Void,
    /// <summary>Said before the time was over after which it may be judged.</summary>
    Early,
    /// <summary>Read back and not confirmed.</summary>
    Refused,
    /// <summary>Read back; the answer never came.</summary>
    Unanswered,
}

/// <summary>A value that was heard, and what became of it.</summary>
sealed record ReadingFate(DateTimeOffset At, string StepId, EnteredReading Reading, ReadingEnd End, bool WasReadBack, string Because)
{
    /// <summary>Whether it was ever final: something was accepted after it, so it was no mishearing, whatever took its place later.</summary>
    public bool WasFinal { get; init; }

    public bool Counts => End is ReadingEnd.Final or ReadingEnd.Provisional;
}

/// <summary>A result, and why it no longer counts; empty while it does.</summary>
sealed record ResultFate(DateTimeOffset At, string StepId, string Scope, CalculatedResult Result, string NoLonger = "")
{
    public bool Counts => NoLonger.Length == 0;
}

/// <summary>A timer with its last start; <see cref="Starts"/> above one means that it was started again.</summary>
sealed record TimerFate(string StepId, DateTimeOffset Started, TimeSpan Duration, DateTimeOffset? Ended, int Starts);

/// <summary>A thing that was opened.</summary>
sealed record ThingFate(Thing Thing, DateTimeOffset Opened, DateTimeOffset? Closed, DateTimeOffset? Proved)
{
    public bool IsOpen => Closed is null || (Thing.IsGasSide && Proved is null);
}

/// <summary>How the job stands at its last event.</summary>
enum JobEnd
{
    Unfinished,
    Stopped,
    OutOfService,
    Signed,
}
