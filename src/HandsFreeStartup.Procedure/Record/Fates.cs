using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Procedure.Record;

/// <summary>What became of a step.</summary>
public enum StepEnd
{
    /// <summary>Nothing yet.</summary>
    NotReached,
    /// <summary>Entered, or to be done again.</summary>
    UnderWay,
    /// <summary>Done.</summary>
    Done,
    /// <summary>Left undone, for a reason.</summary>
    Skipped,
}

/// <summary>A step with what became of it. A step that was returned to is under way again.</summary>
/// <param name="Step">The step.</param>
/// <param name="End">What became of it.</param>
/// <param name="Entered">When it was first come to, UTC.</param>
/// <param name="Left">When it was done or skipped, UTC.</param>
/// <param name="Reason">Why it was skipped, as dictated; empty otherwise.</param>
/// <param name="EndedByItself">Whether the tool ended it because there was nothing to do.</param>
public sealed record StepFate(Step Step, StepEnd End, DateTimeOffset? Entered, DateTimeOffset? Left, string Reason, bool EndedByItself)
{
    /// <summary>Name of the returned job in which it was done; empty where it was done in this one.</summary>
    public string From { get; init; } = "";
}

/// <summary>What became of a value that was heard.</summary>
public enum ReadingEnd
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
/// <param name="At">When, UTC.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Reading">The value and its judgment.</param>
/// <param name="End">What became of it.</param>
/// <param name="WasReadBack">Whether it was read back before it was entered.</param>
/// <param name="Because">Why it is void, or what was doubtful about it.</param>
public sealed record ReadingFate(DateTimeOffset At, string StepId, EnteredReading Reading, ReadingEnd End, bool WasReadBack, string Because)
{
    /// <summary>Which of the entered values of the job it is, from 1; 0 for one that was only read back.</summary>
    public int Number { get; init; }

    /// <summary>Name of the returned job in which it was measured; empty where it was measured in this one.</summary>
    public string From { get; init; } = "";

    /// <summary>Whether it was ever final: something was accepted after it, so it was no mishearing, whatever took its place later.</summary>
    public bool WasFinal { get; init; }

    /// <summary>Whether it stands.</summary>
    public bool Counts => End is ReadingEnd.Final or ReadingEnd.Provisional;
}

/// <summary>A result, and why it no longer counts.</summary>
/// <param name="At">When, UTC.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Scope">Stage, or empty.</param>
/// <param name="Result">The result and its judgment.</param>
/// <param name="NoLonger">Why it no longer counts; empty while it does.</param>
public sealed record ResultFate(DateTimeOffset At, string StepId, string Scope, CalculatedResult Result, string NoLonger = "")
{
    /// <summary>Whether it stands.</summary>
    public bool Counts => NoLonger.Length == 0;
}

/// <summary>A wait, from one start of its timer.</summary>
/// <param name="StepId">Of the step, or of the safety wait.</param>
/// <param name="Started">When, UTC.</param>
/// <param name="Steady">The clock that cannot be set, at the start; null in older records.</param>
/// <param name="Duration">How long it runs.</param>
/// <param name="Starts">The how many-th start it is.</param>
public sealed record TimerFate(string StepId, DateTimeOffset Started, TimeSpan? Steady, TimeSpan Duration, int Starts)
{
    /// <summary>When half of it was told, UTC.</summary>
    public DateTimeOffset? Halfway { get; init; }

    /// <summary>When its end was told, UTC.</summary>
    public DateTimeOffset? Ended { get; init; }

    /// <summary>Whether it no longer stands for its wait: what it waits for stopped, or is to be done again.</summary>
    public bool IsWithdrawn { get; init; }

    /// <summary>Whether it was started since the program was started.</summary>
    public bool IsOfThisRun { get; init; } = true;
}

/// <summary>A thing that was opened.</summary>
/// <param name="Thing">What.</param>
/// <param name="Opened">When, UTC.</param>
/// <param name="Closed">When it was closed, UTC; null while it is open.</param>
/// <param name="Proved">When it was checked for leaks, UTC; null while it was not.</param>
public sealed record ThingFate(Thing Thing, DateTimeOffset Opened, DateTimeOffset? Closed, DateTimeOffset? Proved)
{
    /// <summary>Whether it must still be closed, or checked for leaks.</summary>
    public bool IsOpen => Closed is null || (Thing.IsGasSide && Proved is null);
}

/// <summary>How the job stands at its last event.</summary>
public enum JobEnd
{
    /// <summary>Neither signed nor ended.</summary>
    Unfinished,
    /// <summary>Stopped for safety and not resumed.</summary>
    Stopped,
    /// <summary>Ended, and the furnace was not put into service.</summary>
    OutOfService,
    /// <summary>Signed.</summary>
    Signed,
}
