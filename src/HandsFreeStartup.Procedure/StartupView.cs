using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure;

/// <summary>What the procedure is waiting for; the checklist's steps are data beside it.</summary>
public enum Phase
{
    /// <summary>Nothing has begun.</summary>
    Preparing,
    /// <summary>The current step waits for its readings, answer or command.</summary>
    Asking,
    /// <summary>A doubtful reading was read back and waits for "confirm", "no" or the reading, said clearly or typed.</summary>
    Confirming,
    /// <summary>"Go to" waits for its confirmation: it was said what going there takes back.</summary>
    Jumping,
    /// <summary>Free speech is expected.</summary>
    Dictating,
    /// <summary>Free speech was read back and waits for "confirm", or "no" to say it again.</summary>
    ReadingBack,
    /// <summary>One of several words is expected.</summary>
    Choosing,
    /// <summary>"finish" waits for its confirmation.</summary>
    Signing,
    /// <summary>A condition that must end the start-up waits for "confirm", or for "no" if it was misheard.</summary>
    Condemning,
    /// <summary>Stopped for safety.</summary>
    Stopped,
    /// <summary>Signed, or ended out of service.</summary>
    Finished,
}

/// <summary>State of one reading on the screen.</summary>
public enum ReadingState
{
    /// <summary>Asked for, not yet said.</summary>
    Missing,
    /// <summary>Read back, waits for confirmation; not in the record.</summary>
    Doubtful,
    /// <summary>Entered; the next accepted phrase makes it final.</summary>
    Provisional,
    /// <summary>In the record.</summary>
    Final,
    /// <summary>No longer counts.</summary>
    Void,
    /// <summary>Said before the time was over after which it may be judged; does not count.</summary>
    Early,
}

/// <summary>One line of the readings of this stage.</summary>
/// <param name="Label">Field, as shown.</param>
/// <param name="Value">Value with its decimals as spoken, or "--".</param>
/// <param name="UnitSymbol">Unit.</param>
/// <param name="State">Missing to void.</param>
/// <param name="Verdict">Verdict, or null where no limit applies.</param>
/// <param name="Limit">The limit in words with its source, shown only beside a value that was already said; else empty.</param>
public sealed record ReadingLine(string Label, string Value, string UnitSymbol, ReadingState State, Verdict? Verdict, string Limit)
{
    /// <summary>Value with uncertainty and unit; value and unit alone where it does not count.</summary>
    public string Text { get; init; } = $"{Value} {UnitSymbol}".TrimEnd();

    /// <summary>The verdict in words; empty where nothing was judged.</summary>
    public string Judged { get; init; } = "";

    /// <summary>The value that was found first, where another one has taken its place; else empty.</summary>
    public string Found { get; init; } = "";

    /// <summary>What is good, with its source, shown before it is measured: it stands on the plate too. Empty where no file states it; what the tool itself works out is never among it.</summary>
    public string Good { get; init; } = "";
}

/// <summary>One line of the results of this stage.</summary>
/// <param name="Label">As shown.</param>
/// <param name="Text">Value with uncertainty and unit, or why it cannot be told.</param>
/// <param name="Verdict">Verdict, or null.</param>
/// <param name="Limit">Limit in words with its source, or empty.</param>
public sealed record ResultLine(string Label, string Text, Verdict? Verdict, string Limit)
{
    /// <summary>The verdict in words; empty where nothing was judged.</summary>
    public string Judged { get; init; } = "";
}

/// <summary>Values of one reading that were said one after the other, because it settles.</summary>
/// <param name="Label">Field, as shown.</param>
/// <param name="Values">In the order in which they were said.</param>
/// <param name="IsMoving">Whether it was found not to have settled.</param>
public sealed record SeriesLine(string Label, ImmutableArray<double> Values, bool IsMoving);

/// <summary>A running or ended timer.</summary>
/// <param name="Title">Of its step.</param>
/// <param name="Remaining">Zero when ended.</param>
/// <param name="Total">Whole duration.</param>
public sealed record TimerLine(string Title, TimeSpan Remaining, TimeSpan Total);

/// <summary>The large plain instruction of a stop.</summary>
/// <param name="Title">One or two words.</param>
/// <param name="Lines">What to do, in order.</param>
public sealed record Alarm(string Title, ImmutableArray<Message> Lines)
{
    /// <summary>Title and lines, as told.</summary>
    public Message Told => $"{Title}. {Message.Join(" ", Lines)}";
}

/// <summary>Everything a screen or a voice needs to know; a value without behavior.</summary>
public sealed record StartupView
{
    /// <summary>Title of the checklist.</summary>
    public required string Title { get; init; }

    /// <summary>Title of the appliance sheet.</summary>
    public required string Appliance { get; init; }

    /// <summary>Title of the site.</summary>
    public required string Site { get; init; }

    /// <summary>Whether the record is marked as a demonstration.</summary>
    public bool IsDemonstration { get; init; }

    /// <summary>What the procedure waits for.</summary>
    public required Phase Phase { get; init; }

    /// <summary>1-based position of the step.</summary>
    public required int StepNumber { get; init; }

    /// <summary>Number of steps.</summary>
    public required int StepCount { get; init; }

    /// <summary>Chapter.</summary>
    public required string Section { get; init; }

    /// <summary>Few words.</summary>
    public required string StepTitle { get; init; }

    /// <summary>What to do.</summary>
    public required string Do { get; init; }

    /// <summary>Reason, or null.</summary>
    public string? Why { get; init; }

    /// <summary>Safety note, or null.</summary>
    public string? Caution { get; init; }

    /// <summary>What may be said now, as short texts: fields still missing first, then answers and commands that move on.</summary>
    public required ImmutableArray<string> ListeningFor { get; init; }

    /// <summary>What the tool has asked, or null.</summary>
    public string? Question { get; init; }

    /// <summary>Whether listening is paused.</summary>
    public bool IsPaused { get; init; }

    /// <summary>Readings of this step's stage or room.</summary>
    public required ImmutableArray<ReadingLine> Readings { get; init; }

    /// <summary>Results of this stage.</summary>
    public required ImmutableArray<ResultLine> Results { get; init; }

    /// <summary>Running timers.</summary>
    public required ImmutableArray<TimerLine> Timers { get; init; }

    /// <summary>Open things.</summary>
    public required ImmutableArray<string> Open { get; init; }

    /// <summary>What must be looked at before a signature, the gravest first, one line each.</summary>
    public required ImmutableArray<string> Exceptions { get; init; }

    /// <summary>The instruction of a stop, or null.</summary>
    public Alarm? Alarm { get; init; }

    /// <summary>What the recognizer and the text reader may accept.</summary>
    public required Expectation Expectation { get; init; }

    /// <summary>The one thing to do now, in few words and capitals.</summary>
    public string Imperative { get; init; } = "";

    /// <summary>The firing stage or the room of the step; empty for none.</summary>
    public string Stage { get; init; } = "";

    /// <summary>The reading said last in this step, doubtful ones too; null before one.</summary>
    public ReadingLine? Last { get; init; }

    /// <summary>Series of this step.</summary>
    public ImmutableArray<SeriesLine> Series { get; init; } = [];

    /// <summary>In which its texts are; what may be said is English in each.</summary>
    public Language Language { get; init; } = Language.English;

    /// <summary>The word that stands on everything of a record that is none of a start-up; null for a start-up.</summary>
    public string? Mark { get; init; }
}

/// <summary>Something the tool says, on the screen and aloud.</summary>
/// <param name="Told">Part by part; the screen shows it, the voice says it.</param>
/// <param name="DigitByDigit">Numbers are to be spoken digit by digit (a doubtful reading).</param>
/// <param name="IsUrgent">Cuts off whatever is being said.</param>
public sealed record Announcement(Message Told, bool DigitByDigit = false, bool IsUrgent = false)
{
    /// <summary>What is said where that is not what is shown, because it stands on the screen; empty for nothing.</summary>
    public Message Said { get; init; } = Told;

    /// <summary>The same in another language.</summary>
    public Announcement In(Language language) => this with { Told = language.In(Told), Said = language.In(Said) };

    /// <summary>As shown.</summary>
    public string Text => Told.Shown;

    /// <summary>What is said, as it would be shown.</summary>
    public string Aloud => Said.Shown;
}
