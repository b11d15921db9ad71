using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Reports.Facts;

/// <summary>Facts as sentences that all copies share.</summary>
static class Sentences
{
    /// <summary>Stands once on everything that is not English.</summary>
    public const string Recorded = "What was said and dictated stands as it was recorded, in English.";

    /// <summary>Heading of the exceptions.</summary>
    public static string ExceptionsTitle(int count, Language? language = null) => (language ?? Language.English).Shown($"Exceptions ({count}): read these first");

    /// <summary>Where nothing else is to be looked at.</summary>
    public static string NothingElse(int exceptions, Language language) => language.Text(exceptions switch { 0 => "Nothing.", 1 => "Nothing but the exception above.", _ => "Nothing but the exceptions above." });

    /// <summary>An exception in full, with its time; never shortened.</summary>
    public static string Of(JobException exception, LocalTime times, Language? language = null) => $"{times.Time(exception.At)} {(language ?? Language.English).Shown(exception.Told)}";

    /// <summary>What was carried over from the returned record, step by step with its values and times, and why no more was; empty where this job follows none.</summary>
    public static IReadOnlyList<string> CarriedOver(JobRecord facts, Language language) => facts.Job?.Follows is not { } followed ? [] :
    [
        language.Shown($"This job follows {new MessagePart.Form(followed.JobId)}, which its lead technician returned: {followed.Events} events, ends {new MessagePart.Form(followed.Hash)}"),
        .. facts.Steps.Where(step => step.From.Length > 0).Select(step => $"{language.Shown($"{step.Step.Title}: done in job {new MessagePart.Form(step.From)}, {facts.Times.Stamp(step.Left!.Value)}")}{Values(facts, step, language)}"),
        language.Text(facts.Steps.Any(step => step.From.Length > 0) ? Procedure.Deciding.CarryingOver.Why : "Nothing is carried over: everything was done and measured anew."),
    ];

    /// <summary>What else was started up at the same address before, and that it ran while the rooms were walked; empty where nothing was.</summary>
    public static IReadOnlyList<string> Beside(JobRecord facts, Language language) =>
    [
        .. (facts.Job?.Beside ?? []).Select(other => language.Shown($"{new MessagePart.Form(other.Title)} was started up in the same visit, job {new MessagePart.Form(other.JobId)}; {(WithOthers.IsAnswered(facts) ? "it ran while the rooms were walked for this job" : "the rooms were NOT walked for this job with it running")}")),
    ];

    static string Values(JobRecord facts, StepFate step, Language language) => string.Concat(facts.Readings.Where(fate => fate.StepId == step.Step.Id && fate.From.Length > 0)
        .Select(fate => $"; {language.Name(Labels.Of(fate.Reading.Key))} {language.Value(ShownValue.Of(fate.Reading), tellsDoubt: true)}"));

    /// <summary>"from job ..., measured at ..."; empty for a value of this job.</summary>
    public static Message Origin(ReadingFate fate, LocalTime times) => fate.From.Length == 0 ? (Message)"" : $"from job {new MessagePart.Form(fate.From)}, measured {times.Stamp(fate.At)}";

    public static IReadOnlyList<string> Adjustments(JobRecord facts, Language? language = null) =>
        [.. facts.Adjustments.Select(made => $"{(language ?? Language.English).Shown(Labels.Told(made))} ({facts.Times.Time(made.At)})")];

    public static string Of(ThingFate thing, LocalTime times, Language? language = null)
    {
        Message closed = thing.Closed is { } at ? (Message)$"closed {times.Time(at)}" : "STILL OPEN";
        Message proved = thing.Proved is { } checkedAt ? (Message)$", checked for leaks {times.Time(checkedAt)}"
            : thing.Thing.IsGasSide && thing.Closed is not null ? ", NOT CHECKED FOR LEAKS" : "";
        return (language ?? Language.English).Shown($"{thing.Thing.Name}{(thing.Thing.IsGasSide ? " (gas side)" : "")}: opened {times.Time(thing.Opened)}, {closed}{proved}");
    }

    /// <summary>What became of a value that was heard; a value that does not count says so in capitals.</summary>
    public static Message Of(ReadingFate fate) => fate.End switch
    {
        ReadingEnd.Final => "stands",
        ReadingEnd.Provisional => "stands, provisional: nothing was accepted after it",
        ReadingEnd.Disregarded => "DISREGARDED, does not count",
        ReadingEnd.Replaced => "REPLACED by a later value, does not count",
        ReadingEnd.Void => (Message)$"VOID, does not count: {Message.Recorded(fate.Because)}",
        ReadingEnd.Early => "EARLY, before its time was over: not judged, does not count",
        ReadingEnd.Refused => "NOT CONFIRMED, not in the record",
        _ => "NEVER CONFIRMED, not in the record",
    };
}
