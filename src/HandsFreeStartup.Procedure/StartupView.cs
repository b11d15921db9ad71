using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Procedure;

/// <summary>What the procedure is waiting for; the checklist's steps are data beside it.</summary>
public enum Phase
{
    /// <summary>Nothing has begun.</summary>
    Preparing,
    /// <summary>The current step waits for its readings, answer or command.</summary>
    Asking,
    /// <summary>A doubtful reading was read back and waits for "confirm", "no" or the reading again.</summary>
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
public sealed record Alarm(string Title, ImmutableArray<string> Lines);

/// <summary>Everything a screen or a voice needs to know; a value without behavior.</summary>
/// <param name="Title">Title of the checklist.</param>
/// <param name="Appliance">Title of the appliance sheet.</param>
/// <param name="Site">Title of the site.</param>
/// <param name="IsDemonstration">Whether the record is marked as a demonstration.</param>
/// <param name="Phase">What the procedure waits for.</param>
/// <param name="StepNumber">1-based position of the step.</param>
/// <param name="StepCount">Number of steps.</param>
/// <param name="Section">Chapter.</param>
/// <param name="StepTitle">Few words.</param>
/// <param name="Do">What to do.</param>
/// <param name="Why">Reason, or null.</param>
/// <param name="Caution">Safety note, or null.</param>
/// <param name="ListeningFor">What may be said now, as short texts: fields still missing first, then answers and commands that move on.</param>
/// <param name="Question">What the tool has asked, or null.</param>
/// <param name="IsPaused">Whether listening is paused.</param>
/// <param name="Readings">Readings of this step's stage or room.</param>
/// <param name="Results">Results of this stage.</param>
/// <param name="Timers">Running timers.</param>
/// <param name="Open">Open things.</param>
/// <param name="Exceptions">What must be looked at before a signature, the gravest first, one line each.</param>
/// <param name="Alarm">The instruction of a stop, or null.</param>
/// <param name="Expectation">What the recognizer and the text reader may accept.</param>
public sealed record StartupView(
    string Title, string Appliance, string Site, bool IsDemonstration,
    Phase Phase, int StepNumber, int StepCount, string Section, string StepTitle, string Do, string? Why, string? Caution,
    ImmutableArray<string> ListeningFor, string? Question, bool IsPaused,
    ImmutableArray<ReadingLine> Readings, ImmutableArray<ResultLine> Results, ImmutableArray<TimerLine> Timers,
    ImmutableArray<string> Open, ImmutableArray<string> Exceptions, Alarm? Alarm, Expectation Expectation)
{
    /// <summary>The one thing to do now, in few words and capitals.</summary>
    public string Imperative { get; init; } = "";

    /// <summary>The firing stage or the room of the step; empty for none.</summary>
    public string Stage { get; init; } = "";

    /// <summary>The reading said last in this step, doubtful ones too; null before one.</summary>
    public ReadingLine? Last { get; init; }

    /// <summary>Series of this step.</summary>
    public ImmutableArray<SeriesLine> Series { get; init; } = [];

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

    /// <summary>As shown.</summary>
    public string Text => Told.Shown;

    /// <summary>What is said, as it would be shown.</summary>
    public string Aloud => Said.Shown;
}
