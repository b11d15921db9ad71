using System.Collections.Immutable;
using System.Text.Json.Serialization;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Settling;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Events;

/// <summary>A file of the user as it was when the job began.</summary>
/// <param name="Name">File name without folder.</param>
/// <param name="Sha256">Lower-case hexadecimal hash of the text's UTF-8 bytes.</param>
/// <param name="Text">The whole text.</param>
public sealed record FileCopy(string Name, string Sha256, string Text);

/// <summary>The record that a job follows because its lead technician has returned it.</summary>
/// <param name="JobId">Name of that job; its file lies beside this one under that name.</param>
/// <param name="Events">How many events it had.</param>
/// <param name="Hash">Hash of the last of them, upper-case hexadecimal, so that both are verified together.</param>
public sealed record FollowedJob(string JobId, int Events, string Hash)
{
    /// <summary>Who worked there, and measured what is carried over; null in older records.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Technician { get; init; }
}

/// <summary>What a job ran with.</summary>
/// <param name="JobId">Unique name of the job.</param>
/// <param name="Checklist">The procedure's file.</param>
/// <param name="Appliance">The appliance sheet's file.</param>
/// <param name="Site">The site's file.</param>
public sealed record JobDescription(string JobId, FileCopy Checklist, FileCopy Appliance, FileCopy Site)
{
    /// <summary>Who does the work.</summary>
    public required string Technician { get; init; }

    /// <summary>Version of this program.</summary>
    public required string ProgramVersion { get; init; }

    /// <summary>What listens: model file and hash, or "keys".</summary>
    public required string Recogniser { get; init; }

    /// <summary>Whether timers were shortened or recordings played; such a record is no start-up.</summary>
    public required bool IsDemonstration { get; init; }

    /// <summary>1, or the factor that shortens every timer.</summary>
    public required double TimerFactor { get; init; }

    /// <summary>The file of settings; null where none was used.</summary>
    public FileCopy? Settings { get; init; }

    /// <summary>Id of the checklist's occasion; null where it has none.</summary>
    public string? Occasion { get; init; }

    /// <summary>How far the clock on the wall was ahead of UTC when the job began; people are told times by it. Zero in older records.</summary>
    public TimeSpan UtcOffset { get; init; }

    /// <summary>The returned record that this one follows; null where it follows none.</summary>
    public FollowedJob? Follows { get; init; }

    /// <summary>What was rehearsed; null for a start-up. Such a record is none and never becomes one.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public RehearsalNote? Rehearsal { get; init; }

    /// <summary>What else was started up at the same address before this job, and runs while its rooms are walked; null for nothing.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ImmutableArray<ApplianceBeside>? Beside { get; init; }

    /// <summary>The word that stands on everything of a record that is none of a start-up; null for a start-up.</summary>
    [JsonIgnore]
    public string? Mark => Rehearsal is not null ? "REHEARSAL" : IsDemonstration ? "DEMONSTRATION" : null;

    /// <summary>Why it is none, as one or two sentences; empty for a start-up.</summary>
    [JsonIgnore]
    public string MarkReason => Rehearsal is not null ? "The furnace was simulated. No furnace was started."
        : IsDemonstration ? "Timers were shortened or recordings played. No furnace was started." : "";
}

/// <summary>Another appliance at the same address.</summary>
/// <param name="JobId">The job in which it was started up.</param>
/// <param name="Title">What its sheet calls it.</param>
public sealed record ApplianceBeside(string JobId, string Title);

/// <summary>What a rehearsal was made of.</summary>
/// <param name="Seed">Of all chance.</param>
/// <param name="Faults">Names of the faults that were put in, separated by commas; empty for none.</param>
public sealed record RehearsalNote(long Seed, string Faults);

/// <summary>Which reading: the field, and the firing stage or room to which it belongs (empty if neither).</summary>
/// <param name="FieldId">The field.</param>
/// <param name="Scope">Stage, room or empty.</param>
public readonly record struct ReadingKey(string FieldId, string Scope)
{
    /// <summary>The scope of carbon monoxide in the room that was said where nothing asked for it.</summary>
    public const string BetweenSteps = "between steps";
}

/// <summary>A value that was heard, with its judgment.</summary>
/// <param name="Key">Which reading.</param>
/// <param name="Value">As spoken, in <paramref name="UnitSymbol"/>, trailing zeros kept.</param>
/// <param name="UnitSymbol">Unit of the value.</param>
/// <param name="Evidence">How it was heard.</param>
public sealed record EnteredReading(ReadingKey Key, decimal Value, string UnitSymbol, Evidence Evidence)
{
    /// <summary>The limit that judged it, or null.</summary>
    [JsonRequired]
    public DeclaredLimit? Limit { get; init; }

    /// <summary>The verdict, or null where no limit applies.</summary>
    [JsonRequired]
    public Verdict? Verdict { get; init; }

    /// <summary>Of the value (k = 2), in the same unit, or null where none is stated.</summary>
    [JsonRequired]
    public decimal? ExpandedUncertainty { get; init; }

    /// <summary>Whether it was said before the time was over after which it may be judged: kept, but not judged, and it does not count.</summary>
    public bool IsEarly { get; init; }

    /// <summary>Whether more than the range of the field was said; the value is then the end of the range.</summary>
    public bool IsOver { get; init; }

    /// <summary>Whether a reading says the same; "over range" is not the value at the end of the range.</summary>
    /// <param name="heard">As heard.</param>
    public bool IsSaidBy(Phrase.Reading heard) => (heard.Field.Id, heard.Value, heard.IsOver) == (Key.FieldId, Value, IsOver);
}

/// <summary>A value that was worked out.</summary>
/// <param name="Id">Which result, for instance <c>co_air_free</c>.</param>
/// <param name="Label">As shown.</param>
public sealed record CalculatedResult(string Id, string Label)
{
    /// <summary>In <see cref="UnitSymbol"/>; null when it cannot be told.</summary>
    [JsonRequired]
    public double? Value { get; init; }

    /// <summary>k = 2, in the same unit; null when it cannot be told.</summary>
    [JsonRequired]
    public double? ExpandedUncertainty { get; init; }

    /// <summary>Unit of both.</summary>
    public required string UnitSymbol { get; init; }

    /// <summary>Decimals to show; the value itself is not rounded.</summary>
    public required int Decimals { get; init; }

    /// <summary>Id and version of the formula.</summary>
    public required string Formula { get; init; }

    /// <summary>Field ids with the values that went in.</summary>
    public required ImmutableSortedDictionary<string, decimal> Inputs { get; init; }

    /// <summary>The limit that judged it, or null.</summary>
    [JsonRequired]
    public DeclaredLimit? Limit { get; init; }

    /// <summary>The verdict, or null where no limit applies.</summary>
    [JsonRequired]
    public Verdict? Verdict { get; init; }

    /// <summary>Why it cannot be told, or another plain remark; empty if there is none.</summary>
    public required Message Remark { get; init; }

    /// <summary>The inputs that were more than the range of their field: field ids. Their values are then the ends of the ranges.</summary>
    public ImmutableArray<string> Over { get; init; } = [];

    /// <summary>Whether it is more than <see cref="Value"/>, and nobody knows how much more.</summary>
    [JsonIgnore]
    public bool IsOver => Value is not null && !Over.IsEmpty;
}

/// <summary>How the procedure came to a step.</summary>
public enum Arrival
{
    /// <summary>In order.</summary>
    Forward,
    /// <summary>By "go back".</summary>
    Back,
    /// <summary>Because readings of it became void.</summary>
    Return,
    /// <summary>By "go to" and its title; what lies between stays.</summary>
    Jump,
}

/// <summary>Why free speech was asked for.</summary>
public enum DictationPurpose
{
    /// <summary>A note.</summary>
    Note,
    /// <summary>The reason of a skipped step.</summary>
    SkipReason,
    /// <summary>The reason to go on after a stop.</summary>
    ResumeReason,
    /// <summary>The reason to end without putting the appliance into service.</summary>
    EndReason,
    /// <summary>Why a value stays outside of its limit.</summary>
    LimitReason,
    /// <summary>What was done so that an unsafe answer is no longer true.</summary>
    AnswerReason,
}

/// <summary>Why the start-up was stopped.</summary>
public enum StopCause
{
    /// <summary>The words "emergency stop".</summary>
    Emergency,
    /// <summary>Gas was smelled.</summary>
    GasSmell,
    /// <summary>Carbon monoxide in a room asks everybody to leave.</summary>
    CarbonMonoxide,
}

/// <summary>What one of several words was asked for.</summary>
public enum ChoiceTopic
{
    /// <summary>The question of the step.</summary>
    Step,
    /// <summary>Who declared after an alarm that it is safe.</summary>
    SafeBy,
    /// <summary>Whether the furnace stays out of service by the owner's wish or because it is not in order.</summary>
    EndKind,
}

/// <summary>Why the furnace is not put into service.</summary>
public enum EndKind
{
    /// <summary>Something is not in order, or the work is not complete.</summary>
    NotInOrder,
    /// <summary>The owner wants it so; nothing that was found speaks against the furnace.</summary>
    OwnersWish,
    /// <summary>It is unsafe.</summary>
    Unsafe,
}

/// <summary>What the lead technician says of a finished record.</summary>
public enum ReviewOutcome
{
    /// <summary>It stands.</summary>
    Accepted,
    /// <summary>Something must be done about it; the remark says what.</summary>
    Returned,
}

/// <summary>Something that happened during a start-up. The log is a list of these, and the state is what they add up to.</summary>
/// <param name="At">When, in UTC.</param>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(StartupBegan), "startup-began")]
[JsonDerivedType(typeof(StepEntered), "step-entered")]
[JsonDerivedType(typeof(StepDone), "step-done")]
[JsonDerivedType(typeof(StepSkipped), "step-skipped")]
[JsonDerivedType(typeof(StepCarried), "step-carried")]
[JsonDerivedType(typeof(ReadingEntered), "reading-entered")]
[JsonDerivedType(typeof(ReadingStood), "reading-stood")]
[JsonDerivedType(typeof(ReadingScratched), "reading-scratched")]
[JsonDerivedType(typeof(ReadingVoided), "reading-voided")]
[JsonDerivedType(typeof(ConfirmationAsked), "confirmation-asked")]
[JsonDerivedType(typeof(ConfirmationRefused), "confirmation-refused")]
[JsonDerivedType(typeof(ResultsComputed), "results-computed")]
[JsonDerivedType(typeof(AdjustmentMade), "adjustment-made")]
[JsonDerivedType(typeof(AnswerGiven), "answer-given")]
[JsonDerivedType(typeof(TimerStarted), "timer-started")]
[JsonDerivedType(typeof(TimerHalfway), "timer-halfway")]
[JsonDerivedType(typeof(TimerEnded), "timer-ended")]
[JsonDerivedType(typeof(ThingOpened), "thing-opened")]
[JsonDerivedType(typeof(ThingClosed), "thing-closed")]
[JsonDerivedType(typeof(ThingProved), "thing-proved")]
[JsonDerivedType(typeof(DictationAsked), "dictation-asked")]
[JsonDerivedType(typeof(DictationCancelled), "dictation-cancelled")]
[JsonDerivedType(typeof(NoteTaken), "note-taken")]
[JsonDerivedType(typeof(QuestionAsked), "question-asked")]
[JsonDerivedType(typeof(PromptsChosen), "prompts-chosen")]
[JsonDerivedType(typeof(CommandRefused), "command-refused")]
[JsonDerivedType(typeof(ListeningPaused), "listening-paused")]
[JsonDerivedType(typeof(ListeningResumed), "listening-resumed")]
[JsonDerivedType(typeof(StartupStopped), "startup-stopped")]
[JsonDerivedType(typeof(StartupResumed), "startup-resumed")]
[JsonDerivedType(typeof(FreshSmellAsked), "fresh-smell-asked")]
[JsonDerivedType(typeof(FreshSmellAnswered), "fresh-smell-answered")]
[JsonDerivedType(typeof(MonoxideJudged), "monoxide-judged")]
[JsonDerivedType(typeof(UnsafeAsked), "unsafe-asked")]
[JsonDerivedType(typeof(UnsafeDenied), "unsafe-denied")]
[JsonDerivedType(typeof(UnsafeFound), "unsafe-found")]
[JsonDerivedType(typeof(SeriesJudged), "series-judged")]
[JsonDerivedType(typeof(LimitStated), "limit-stated")]
[JsonDerivedType(typeof(PhotoAttached), "photo-attached")]
[JsonDerivedType(typeof(FinishAsked), "finish-asked")]
[JsonDerivedType(typeof(FinishDeclined), "finish-declined")]
[JsonDerivedType(typeof(JumpAsked), "jump-asked")]
[JsonDerivedType(typeof(JumpDeclined), "jump-declined")]
[JsonDerivedType(typeof(StartupSigned), "startup-signed")]
[JsonDerivedType(typeof(EndedOutOfService), "ended-out-of-service")]
[JsonDerivedType(typeof(RunBegan), "run-began")]
[JsonDerivedType(typeof(ClockJumped), "clock-jumped")]
[JsonDerivedType(typeof(TimerStopped), "timer-stopped")]
[JsonDerivedType(typeof(StepReopened), "step-reopened")]
[JsonDerivedType(typeof(DictationHeard), "dictation-heard")]
[JsonDerivedType(typeof(ExceptionMade), "exception-made")]
[JsonDerivedType(typeof(ChoiceAsked), "choice-asked")]
[JsonDerivedType(typeof(ChoiceMade), "choice-made")]
[JsonDerivedType(typeof(LimitDoubted), "limit-doubted")]
[JsonDerivedType(typeof(EndDecided), "end-decided")]
[JsonDerivedType(typeof(UtteranceHeard), "utterance-heard")]
[JsonDerivedType(typeof(DangerAsked), "danger-asked")]
[JsonDerivedType(typeof(RecordReviewed), "record-reviewed")]
[JsonDerivedType(typeof(PersonalDataForgotten), "personal-data-forgotten")]
public abstract record StartupEvent(DateTimeOffset At)
{
    /// <summary>Hands the event to the rule of its kind.</summary>
    public abstract void FoldBy(IEventFold fold);
}

/// <summary>The job began.</summary>
/// <param name="At">When.</param>
/// <param name="Job">What it runs with.</param>
public sealed record StartupBegan(DateTimeOffset At, JobDescription Job) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A step became the current one.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">Which.</param>
/// <param name="Arrival">How.</param>
public sealed record StepEntered(DateTimeOffset At, string StepId, Arrival Arrival) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The work of a step is done.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">Which.</param>
/// <param name="Evidence">How it was said; null when the tool ended it by itself.</param>
public sealed record StepDone(DateTimeOffset At, string StepId, Evidence? Evidence) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A step of the returned record stands: it was done there, and neither what was returned nor anything that is done again touches it.</summary>
/// <param name="At">When it was carried over, at the beginning of the job that follows.</param>
/// <param name="StepId">Which.</param>
/// <param name="Done">When it was done in the returned record.</param>
/// <param name="Readings">The values that stand there, with when each was said.</param>
/// <param name="Answer">The answer that stands there; null where it asks nothing.</param>
/// <param name="Choice">The word that was chosen there; null where it offers none.</param>
public sealed record StepCarried(
    DateTimeOffset At, string StepId, DateTimeOffset Done, ImmutableArray<CarriedReading> Readings, CarriedAnswer? Answer, string? Choice) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A value of the returned record. Its recording stays beside that record.</summary>
/// <param name="At">When it was said.</param>
/// <param name="Reading">The value with its judgment.</param>
public sealed record CarriedReading(DateTimeOffset At, EnteredReading Reading);

/// <summary>An answer of the returned record.</summary>
/// <param name="At">When it was given.</param>
/// <param name="Answer">Yes or no.</param>
/// <param name="Evidence">How it was heard.</param>
public sealed record CarriedAnswer(DateTimeOffset At, bool Answer, Evidence Evidence);

/// <summary>A step was left undone.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">Which.</param>
/// <param name="Reason">As dictated.</param>
/// <param name="Evidence">How the reason was heard.</param>
public sealed record StepSkipped(DateTimeOffset At, string StepId, string Reason, Evidence Evidence) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A reading was entered; it is provisional until the next accepted phrase.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Reading">The value and its judgment.</param>
public sealed record ReadingEntered(DateTimeOffset At, string StepId, EnteredReading Reading) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A provisional reading became final.</summary>
/// <param name="At">When.</param>
/// <param name="Key">Which.</param>
public sealed record ReadingStood(DateTimeOffset At, ReadingKey Key) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A reading was undone by "disregard".</summary>
/// <param name="At">When.</param>
/// <param name="Key">Which.</param>
public sealed record ReadingScratched(DateTimeOffset At, ReadingKey Key) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A reading no longer counts.</summary>
/// <param name="At">When.</param>
/// <param name="Key">Which.</param>
/// <param name="Because">Plain reason.</param>
public sealed record ReadingVoided(DateTimeOffset At, ReadingKey Key, string Because) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A doubtful reading was read back and awaits confirmation; it is not in the record.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Reading">What was probably said.</param>
public sealed record ConfirmationAsked(DateTimeOffset At, string StepId, EnteredReading Reading) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The doubtful reading was not confirmed.</summary>
/// <param name="At">When.</param>
public sealed record ConfirmationRefused(DateTimeOffset At) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>Results were worked out from a complete set of readings.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Scope">Stage, or empty.</param>
/// <param name="Results">All of them.</param>
public sealed record ResultsComputed(DateTimeOffset At, string StepId, string Scope, ImmutableArray<CalculatedResult> Results) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>An adjustment brought a reading to a new value; what depended on the old one was voided by events that follow.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Key">Which reading was adjusted.</param>
/// <param name="From">Value before.</param>
/// <param name="To">Value after.</param>
/// <param name="UnitSymbol">Unit of both; null in records made before there was a choice, which have the unit of the field.</param>
public sealed record AdjustmentMade(DateTimeOffset At, string StepId, ReadingKey Key, decimal From, decimal To, string? UnitSymbol = null) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A question was answered.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Answer">Yes or no.</param>
/// <param name="Evidence">How it was heard.</param>
public sealed record AnswerGiven(DateTimeOffset At, string StepId, bool Answer, Evidence Evidence) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The timer of a step was started, or started again.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">Which step.</param>
/// <param name="Duration">How long it runs.</param>
/// <param name="Steady">The clock that cannot be set, at the start; null in older records.</param>
public sealed record TimerStarted(DateTimeOffset At, string StepId, TimeSpan Duration, TimeSpan? Steady = null) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A timer was stopped before its end, because what it waits for stopped too; it begins anew.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">Which step.</param>
public sealed record TimerStopped(DateTimeOffset At, string StepId) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>Half of the time is over.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">Which step.</param>
public sealed record TimerHalfway(DateTimeOffset At, string StepId) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The time is over.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">Which step.</param>
public sealed record TimerEnded(DateTimeOffset At, string StepId) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>Something was opened.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Thing">What.</param>
public sealed record ThingOpened(DateTimeOffset At, string StepId, Thing Thing) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>Something was closed; a gas-side thing still needs its leak check.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Name">What.</param>
public sealed record ThingClosed(DateTimeOffset At, string StepId, string Name) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A closed gas-side thing was checked for leaks.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Name">What.</param>
public sealed record ThingProved(DateTimeOffset At, string StepId, string Name) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>Free speech was asked for.</summary>
/// <param name="At">When.</param>
/// <param name="Purpose">What for.</param>
public sealed record DictationAsked(DateTimeOffset At, DictationPurpose Purpose) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The free speech that was asked for is not wanted after all.</summary>
/// <param name="At">When.</param>
public sealed record DictationCancelled(DateTimeOffset At) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A note was dictated.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Text">As heard.</param>
/// <param name="Evidence">How it was heard.</param>
public sealed record NoteTaken(DateTimeOffset At, string StepId, string Text, Evidence Evidence) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The technician asked the tool something; nothing changed.</summary>
/// <param name="At">When.</param>
/// <param name="Word">What was asked.</param>
public sealed record QuestionAsked(DateTimeOffset At, CommandWord Word) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The technician chose how much is said of each step; it holds for the job.</summary>
/// <param name="At">When.</param>
/// <param name="Full">Every prompt in full; else in short.</param>
public sealed record PromptsChosen(DateTimeOffset At, bool Full) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A command, answer or reading was understood but not carried out.</summary>
/// <param name="At">When.</param>
/// <param name="Said">What was said.</param>
/// <param name="Reason">Why it was refused and what to do instead.</param>
public sealed record CommandRefused(DateTimeOffset At, string Said, Message Reason) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>Listening was paused.</summary>
/// <param name="At">When.</param>
public sealed record ListeningPaused(DateTimeOffset At) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>Listening goes on.</summary>
/// <param name="At">When.</param>
public sealed record ListeningResumed(DateTimeOffset At) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The start-up was stopped for safety.</summary>
/// <param name="At">When.</param>
/// <param name="Cause">Why.</param>
/// <param name="Evidence">How it was heard.</param>
/// <param name="IsFire">Whether a fire was told.</param>
public sealed record StartupStopped(DateTimeOffset At, StopCause Cause, Evidence Evidence, bool IsFire = false) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A stopped start-up goes on, deliberately.</summary>
/// <param name="At">When.</param>
/// <param name="Reason">The cause of the stop, as dictated.</param>
public sealed record StartupResumed(DateTimeOffset At, string Reason) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The program was started for this job, for the first time or again.</summary>
/// <param name="At">When.</param>
/// <param name="Steady">The clock that cannot be set; null where there is none.</param>
public sealed record RunBegan(DateTimeOffset At, TimeSpan? Steady) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The wall clock was set while the program ran: times of day before and after do not fit together. Waits are not touched by it.</summary>
/// <param name="At">When, by the clock that was set.</param>
/// <param name="By">How far it jumped; negative where it was set back.</param>
/// <param name="Steady">The clock that cannot be set.</param>
public sealed record ClockJumped(DateTimeOffset At, TimeSpan By, TimeSpan Steady) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A step that was done must be done again.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">Which.</param>
/// <param name="Because">Plain reason.</param>
public sealed record StepReopened(DateTimeOffset At, string StepId, string Because) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>Free speech was heard and read back; it awaits its confirmation.</summary>
/// <param name="At">When.</param>
/// <param name="Text">As heard.</param>
/// <param name="Evidence">How it was heard.</param>
public sealed record DictationHeard(DateTimeOffset At, string Text, Evidence Evidence) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>Something stays that the limits or the first answer speak against, for a reason.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Purpose">What the reason was asked for.</param>
/// <param name="Subject">What stays, in plain words with its number.</param>
/// <param name="Reason">As dictated.</param>
/// <param name="Evidence">How the reason was heard.</param>
public sealed record ExceptionMade(
    DateTimeOffset At, string StepId, DictationPurpose Purpose, Message Subject, string Reason, Evidence Evidence) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>One of several words was asked for.</summary>
/// <param name="At">When.</param>
/// <param name="Topic">What it decides.</param>
/// <param name="Reason">Why the furnace is not put into service, as dictated before; empty for other topics.</param>
public sealed record ChoiceAsked(DateTimeOffset At, ChoiceTopic Topic, string Reason = "") : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>One of several words was chosen.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Topic">What it decides.</param>
/// <param name="Value">Which, as it is kept.</param>
/// <param name="Evidence">How it was heard.</param>
public sealed record ChoiceMade(DateTimeOffset At, string StepId, ChoiceTopic Topic, string Value, Evidence Evidence) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A limit that was said is strange for this furnace; it is asked a second time before it judges.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Limit">As said.</param>
/// <param name="Why">What is strange.</param>
public sealed record LimitDoubted(DateTimeOffset At, string StepId, DeclaredLimit Limit, Message Why) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The furnace is not put into service; the steps that make it safe follow, and nothing leads to a signature any more.</summary>
/// <param name="At">When.</param>
/// <param name="Kind">Why.</param>
/// <param name="Reason">As dictated, or the condition.</param>
public sealed record EndDecided(DateTimeOffset At, EndKind Kind, string Reason) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>After a smell of gas and the wait that follows, the question of the smell was asked afresh.</summary>
/// <param name="At">When.</param>
public sealed record FreshSmellAsked(DateTimeOffset At) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The fresh question of the smell was answered.</summary>
/// <param name="At">When.</param>
/// <param name="Smells">Whether gas is still smelled.</param>
/// <param name="Evidence">How it was heard.</param>
public sealed record FreshSmellAnswered(DateTimeOffset At, bool Smells, Evidence Evidence) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A concentration of carbon monoxide asks for more than to carry on.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Key">Which reading: of a room, or of the flue.</param>
public sealed record MonoxideJudged(DateTimeOffset At, string StepId, ReadingKey Key) : StartupEvent(At)
{
    /// <summary>Room, ppm as read, or flue, ppm air-free.</summary>
    public required MonoxidePlace Place { get; init; }

    /// <summary>What it asks for.</summary>
    public required MonoxideAction Action { get; init; }

    /// <summary>The same as told.</summary>
    public required Message Do { get; init; }

    /// <summary>Who says so.</summary>
    public required string Source { get; init; }

    /// <summary>Whether the value itself, not only its uncertainty, lies in the tier; such values are counted.</summary>
    public required bool Counts { get; init; }

    /// <summary>The concentration that was judged, ppm; null in older records.</summary>
    public double? Ppm { get; init; }

    /// <summary>Whether it is the air-free value; otherwise it is the value as read, which the air-free one can only exceed.</summary>
    public bool IsAirFree { get; init; }

    /// <summary>Whether more than the instrument shows was read; <see cref="Ppm"/> is then the end of the range.</summary>
    public bool IsOver { get; init; }

    /// <summary>Whether the value was read back and is not confirmed yet.</summary>
    public bool IsDoubtful { get; init; }

    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A condition that must end the start-up was said; it awaits its confirmation, because it may have been misheard.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Condition">Plain words.</param>
/// <param name="Key">The reading that shows it, or null where an answer does.</param>
public sealed record UnsafeAsked(DateTimeOffset At, string StepId, Message Condition, ReadingKey? Key) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The condition was misheard; what showed it does not count.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
public sealed record UnsafeDenied(DateTimeOffset At, string StepId) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The furnace is unsafe: shut off, tagged, told in writing. Nothing leads from here to a signature.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Condition">Plain words.</param>
/// <param name="Evidence">How it was confirmed.</param>
public sealed record UnsafeFound(DateTimeOffset At, string StepId, Message Condition, Evidence Evidence) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A value said repeatedly was looked at as a series.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Key">Which reading.</param>
/// <param name="Count">Values so far.</param>
/// <param name="Settled">Whether it has settled.</param>
/// <param name="Mean">Mean over the window in the field's unit; null when the series is too short.</param>
/// <param name="Stands">The value that stands: the last one.</param>
public sealed record SeriesJudged(DateTimeOffset At, string StepId, ReadingKey Key, int Count, Settled Settled, double? Mean, decimal Stands) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A limit that no file states was said from the rating plate; it judges from now on.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Limit">The limit, with where it came from.</param>
public sealed record LimitStated(DateTimeOffset At, string StepId, DeclaredLimit Limit) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>A photo was attached.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Name">Name of the copy beside the record.</param>
/// <param name="Sha256">Lower-case hexadecimal hash of its bytes.</param>
/// <param name="Evidence">How it was typed.</param>
public sealed record PhotoAttached(DateTimeOffset At, string StepId, string Name, string Sha256, Evidence Evidence) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>"finish" was said and awaits its confirmation.</summary>
/// <param name="At">When.</param>
/// <param name="Signs">Whether it signs a complete start-up; otherwise it ends one without putting the appliance into service.</param>
public sealed record FinishAsked(DateTimeOffset At, bool Signs) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>"Go to" has named an earlier step; what going there takes back was said, and waits for its confirmation.</summary>
/// <param name="At">When.</param>
/// <param name="StepId">The step that was named.</param>
/// <param name="Evidence">How it was heard.</param>
public sealed record JumpAsked(DateTimeOffset At, string StepId, Evidence Evidence) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The named step is not gone to after all.</summary>
/// <param name="At">When.</param>
public sealed record JumpDeclined(DateTimeOffset At) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The start-up goes on after "finish" was not confirmed.</summary>
/// <param name="At">When.</param>
public sealed record FinishDeclined(DateTimeOffset At) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The complete start-up was signed.</summary>
/// <param name="At">When.</param>
/// <param name="Technician">By whom.</param>
public sealed record StartupSigned(DateTimeOffset At, string Technician) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The start-up ended and the appliance was not put into service.</summary>
/// <param name="At">When.</param>
/// <param name="Reason">As dictated.</param>
public sealed record EndedOutOfService(DateTimeOffset At, string Reason) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>An utterance that led to the events after it, none of which tells how it was heard; it ties the kept recording to the record.</summary>
/// <param name="At">When.</param>
/// <param name="Evidence">How it was heard.</param>
public sealed record UtteranceHeard(DateTimeOffset At, Evidence Evidence) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>Something may have been a call for help, or bad air, and was not clear enough to act on: it was to be said again. What follows tells whether it was.</summary>
/// <param name="At">When.</param>
/// <param name="Evidence">What it may have been, and how it was heard.</param>
public sealed record DangerAsked(DateTimeOffset At, Evidence Evidence) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>The lead technician looked at the finished record. It changes nothing of the start-up.</summary>
/// <param name="At">When.</param>
/// <param name="Lead">By whom.</param>
/// <param name="Outcome">Accepted or returned.</param>
/// <param name="Remark">What is to be said about it; a returned record always has one.</param>
public sealed record RecordReviewed(DateTimeOffset At, string Lead, ReviewOutcome Outcome, string Remark) : StartupEvent(At)
{
    /// <summary>The steps that are returned; empty where the lead has named none, and then everything is.</summary>
    public ImmutableArray<string> Steps { get; init; } = [];

    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}

/// <summary>Names, free speech and recordings of everything before were removed. It changes nothing of the start-up.</summary>
/// <param name="At">When.</param>
/// <param name="By">By whom.</param>
/// <param name="Recordings">How many recordings were removed.</param>
public sealed record PersonalDataForgotten(DateTimeOffset At, string By, int Recordings) : StartupEvent(At)
{
    /// <inheritdoc/>
    public override void FoldBy(IEventFold fold) => fold.Take(this);
}
