using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Record;

/// <summary>What kind of thing must be looked at before a signature, the gravest first.</summary>
public enum ExceptionKind
{
    /// <summary>The furnace was found to be unsafe.</summary>
    Unsafe,
    /// <summary>Gas was smelled, carbon monoxide was too high, or the start-up was stopped.</summary>
    Alarm,
    /// <summary>A question that guards was answered otherwise than it should be, whatever was answered later.</summary>
    UnsafeAnswer,
    /// <summary>Something dangerous was said to have been misheard.</summary>
    Misheard,
    /// <summary>A value stays outside of a limit, or cannot be judged.</summary>
    OutsideLimit,
    /// <summary>A limit that is strange for this furnace was taken.</summary>
    StrangeLimit,
    /// <summary>A step was left undone.</summary>
    SkippedStep,
    /// <summary>A wait was shorter than the checklist has it.</summary>
    ShortenedWait,
    /// <summary>The clock was set during the job.</summary>
    ClockJump,
}

/// <summary>Something that must be looked at before a signature, and stays first on every copy.</summary>
/// <param name="At">When it happened, UTC.</param>
/// <param name="Kind">What kind.</param>
/// <param name="StepId">In which step; empty where it belongs to none.</param>
/// <param name="Subject">What, in plain words, with its number and unit.</param>
/// <param name="Reason">Why it stays, or what was found, as dictated; empty where nobody has said.</param>
/// <param name="Rank">Within its kind: the larger, the graver.</param>
public sealed record JobException(DateTimeOffset At, ExceptionKind Kind, string StepId, Message Subject, string Reason = "", int Rank = 0)
{
    /// <summary>Recordings in which it can be heard.</summary>
    public ImmutableArray<string> Clips { get; init; } = [];

    /// <summary>As shown in one line.</summary>
    public string Text => Told.Shown;

    /// <summary>The same, part by part.</summary>
    public Message Told => Reason.Length == 0 ? Subject : $"{Subject.WithoutStop()}. Reason: {new MessagePart.Form(Reason.TrimEnd('.'))}";
}
