using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Procedure.Record;

/// <summary>The one reading of the record: what the events of a job add up to. Deciding, screen, copies, summary, review and tables read it; nothing else folds events.</summary>
public sealed partial class JobRecord
{
    readonly StepLedger _steps;
    readonly ReadingLedger _readings = new();
    readonly TimerLedger _timers = new();
    readonly ThingLedger _things = new();
    readonly JobExceptions _exceptions;
    readonly List<AnswerGiven> _answers = [];
    readonly List<AdjustmentMade> _adjustments = [];
    readonly List<NoteTaken> _notes = [];
    readonly List<PhotoAttached> _photos = [];
    readonly List<JobAttachment> _attachments = [];
    readonly List<CommandRefused> _refusals = [];
    readonly List<UnsafeFound> _unsafe = [];
    readonly List<SeriesJudged> _series = [];
    readonly List<RecordReviewed> _reviews = [];
    readonly List<StartupEvent> _interruptions = [];
    readonly List<ListeningPause> _pauses = [];
    readonly List<(DateTimeOffset Before, DateTimeOffset After)> _backward = [];

    /// <summary>An empty record.</summary>
    /// <param name="plan">What the job is led by.</param>
    public JobRecord(StartupPlan plan) => (Plan, _steps, _exceptions) = (plan, new StepLedger(plan), new JobExceptions(plan));

    /// <summary>The record of these events, first to last.</summary>
    public static JobRecord Of(StartupPlan plan, IEnumerable<StartupEvent> events)
    {
        JobRecord record = new(plan);
        foreach (StartupEvent happened in events)
        {
            record.Take(happened);
        }

        return record;
    }

    /// <summary>What the job is led by.</summary>
    public StartupPlan Plan { get; }

    /// <summary>What the job runs with; null where its first event is missing.</summary>
    public JobDescription? Job { get; private set; }

    /// <summary>By which people are told times.</summary>
    public LocalTime Times => LocalTime.Of(Job);

    /// <summary>The first event, UTC; null where there is none.</summary>
    public DateTimeOffset? Began { get; private set; }

    /// <summary>The last event, UTC.</summary>
    public DateTimeOffset? LastAt { get; private set; }

    /// <summary>The last event of the start-up itself, whatever was said of the record later, UTC.</summary>
    public DateTimeOffset? StartupEnded { get; private set; }

    /// <summary>Where the job stands.</summary>
    public JobEnd End { get; private set; }

    /// <summary>Reason of the end out of service, cause of the stop, or name of who signed; empty while it goes on.</summary>
    public string EndText { get; private set; } = "";

    /// <summary>The signature that stands; null where none does.</summary>
    public StartupSigned? Signature { get; private set; }

    /// <summary>The stop that nobody has resumed from; null where there is none.</summary>
    public StartupStopped? Stop { get; private set; }

    /// <summary>Why it was decided not to put the furnace into service; null while that was not decided.</summary>
    public EndDecided? Decided { get; private set; }

    /// <summary>The end out of service; null where it did not end so.</summary>
    public EndedOutOfService? OutOfService { get; private set; }

    /// <summary>The steps of the start-up, and those of making safe once an end without service was decided.</summary>
    public IReadOnlyList<StepFate> Steps => [.. (Decided is null ? Plan.Steps : Plan.All).Select(step => _steps[step.Id]!)];

    /// <summary>The fate of one step; null where the plan does not know it.</summary>
    public StepFate? StepOf(string stepId) => _steps[stepId];

    /// <summary>Every value that was ever heard, first to last.</summary>
    public IReadOnlyList<ReadingFate> Readings => _readings.Readings;

    /// <summary>The value of that reading that was entered last and not disregarded, whether it stands or not; null where there is none.</summary>
    public ReadingFate? Reading(ReadingKey key) => _readings[key];

    /// <summary>The readings that were entered and not disregarded, in the order of their first entry.</summary>
    public IEnumerable<ReadingKey> Keys => _readings.Keys;

    /// <summary>The results that still count.</summary>
    public IReadOnlyList<ResultFate> Results => [.. _readings.Results.Where(fate => fate.Counts)];

    /// <summary>Every result that was ever worked out, first to last.</summary>
    public IReadOnlyList<ResultFate> AllResults => _readings.Results;

    /// <summary>Every wait with its last start.</summary>
    public IReadOnlyList<TimerFate> Timers => _timers.Last;

    /// <summary>Every start of a wait, in order.</summary>
    public IReadOnlyList<TimerFate> AllTimers => _timers.All;

    /// <summary>A wait as it stands; null where it was never begun, or begins anew.</summary>
    public TimerFate? Timer(string stepId) => _timers[stepId];

    /// <summary>Everything that was opened.</summary>
    public IReadOnlyList<ThingFate> Things => _things.All;

    /// <summary>What a reader must not overlook, the gravest first.</summary>
    public ImmutableArray<JobException> Exceptions => _exceptions.Standing;

    /// <summary>Every answer, first to last.</summary>
    public IReadOnlyList<AnswerGiven> Answers => _answers;

    /// <summary>The last answer of a step; null where there is none.</summary>
    public AnswerGiven? Answer(string stepId) => _answers.LastOrDefault(answer => answer.StepId == stepId);

    /// <summary>Every adjustment.</summary>
    public IReadOnlyList<AdjustmentMade> Adjustments => _adjustments;

    /// <summary>Every note.</summary>
    public IReadOnlyList<NoteTaken> Notes => _notes;

    /// <summary>Every photo.</summary>
    public IReadOnlyList<PhotoAttached> Photos => _photos;

    /// <summary>Everything that is kept beside the record, each once: recordings and photos, in the order in which they are named.</summary>
    public IReadOnlyList<JobAttachment> Attachments => _attachments;

    /// <summary>Everything that was understood and not carried out.</summary>
    public IReadOnlyList<CommandRefused> Refusals => _refusals;

    /// <summary>Every condition for which the furnace was found unsafe.</summary>
    public IReadOnlyList<UnsafeFound> Unsafe => _unsafe;

    /// <summary>Every judgment over a series.</summary>
    public IReadOnlyList<SeriesJudged> Series => _series;

    /// <summary>Every word of a lead technician on the record.</summary>
    public IReadOnlyList<RecordReviewed> Reviews => _reviews;

    /// <summary>What broke into the start-up, first to last: alarms, stops, waits that begin anew, decisions to end.</summary>
    public IReadOnlyList<StartupEvent> Interruptions => _interruptions;

    /// <summary>When listening was paused.</summary>
    public IReadOnlyList<ListeningPause> Pauses => _pauses;

    /// <summary>Where an event bears an earlier time than the one before it.</summary>
    public IReadOnlyList<(DateTimeOffset Before, DateTimeOffset After)> BackwardClock => _backward;

    /// <summary>Takes in one event, in order.</summary>
    public void Take(StartupEvent happened)
    {
        if (happened.At < LastAt)
        {
            _backward.Add((LastAt.Value, happened.At));
        }

        (Began, LastAt) = (Began ?? happened.At, happened.At);
        StartupEnded = happened is RecordReviewed or PersonalDataForgotten ? StartupEnded : happened.At;
        _exceptions.Take(happened);
        Attach(happened);
        happened.FoldBy(this);
    }

    void Attach(StartupEvent happened)
    {
        JobAttachment? attached = happened is PhotoAttached photo ? new JobAttachment(photo.At, true, photo.Name)
            : HowHeard.Of(happened)?.Clip is { } clip ? new JobAttachment(happened.At, false, clip)
            : null;
        if (attached is not null && _attachments.All(one => one.Name != attached.Name))
        {
            _attachments.Add(attached);
        }
    }
}

/// <summary>A recording or photo beside the record.</summary>
/// <param name="At">When it was first named, UTC.</param>
/// <param name="IsPhoto">Whether it is a photo; else it is a recording.</param>
/// <param name="Name">Its file name, which begins with the hash of its bytes.</param>
public sealed record JobAttachment(DateTimeOffset At, bool IsPhoto, string Name);

/// <summary>A pause of listening.</summary>
/// <param name="From">When it began, UTC.</param>
/// <param name="To">When listening went on, UTC; null where it never did.</param>
public sealed record ListeningPause(DateTimeOffset From, DateTimeOffset? To);
