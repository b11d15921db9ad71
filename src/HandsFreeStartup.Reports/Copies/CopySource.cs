using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Derivations;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Reports.Facts;

namespace HandsFreeStartup.Reports.Copies;

/// <summary>What copies are made from.</summary>
/// <param name="Plan">What the job was led by.</param>
/// <param name="Events">All events of the job, first to last, at least one.</param>
/// <param name="Checkpoint">Count and last hash as people write it, or null where the record has none that can be believed.</param>
/// <param name="WholeCheckpoint">The same with every digit, for the code that a camera reads; or null.</param>
/// <param name="Findings">What the verification of the record found wrong; empty for a sound one.</param>
public sealed record CopySource(
    StartupPlan Plan, IReadOnlyList<StartupEvent> Events, string? Checkpoint, string? WholeCheckpoint, IReadOnlyList<string> Findings)
{
    /// <summary>In which the copies are written; what was said and dictated stands as it was recorded.</summary>
    public Language Language { get; init; } = Language.English;
}

/// <summary>Everything that all copies of a job share, worked out once: the copies cannot differ in a number.</summary>
sealed class CopyFacts
{
    public CopyFacts(CopySource source)
    {
        Source = source;
        Facts = JobRecord.Of(source.Plan, source.Events);
        Groups = [.. ReadingGroups.Of(Facts).Select(In)];
        Questions = OpenQuestions.Of(Facts, Language);
        Verdict = CopyVerdict.Of(Facts, Questions.Count, Language);
        IEnumerable<DeclaredLimit?> limits =
        [
            .. Groups.SelectMany(group => group.Lines).Select(line => line.Limit),
            .. Facts.Readings.Select(fate => fate.Reading.Limit),
            .. Facts.AllResults.Select(fate => fate.Result.Limit),
        ];
        Sources = [.. limits.OfType<DeclaredLimit>().Select(SourceOf).Distinct()];
    }

    public CopySource Source { get; }

    /// <summary>In which it is written.</summary>
    public Language Language => Source.Language;

    public JobRecord Facts { get; }

    public IReadOnlyList<ReadingGroup> Groups { get; }

    public IReadOnlyList<string> Questions { get; }

    /// <summary>What a reader must not overlook, the gravest first; it stands before everything else, in full.</summary>
    public ImmutableArray<JobException> Exceptions => Facts.Exceptions;

    public CopyVerdict Verdict { get; }

    /// <summary>Who set the limits, each once, in the order in which they are met.</summary>
    public IReadOnlyList<string> Sources { get; }

    public StartupPlan Plan => Source.Plan;

    public IReadOnlyList<StartupEvent> Events => Source.Events;

    public LocalTime Times => Facts.Times;

    public string JobId => Facts.Job?.JobId ?? Language.Text("unknown job");

    public bool IsDemonstration => Facts.Job is { IsDemonstration: true };

    /// <summary>How each standing result came about, by its stage: the calculation itself, worked out once more from the record.</summary>
    public IEnumerable<(string Scope, Derivation Derivation)> Derivations()
    {
        StartupProcedure procedure = new(Plan);
        foreach (StartupEvent happened in Events)
        {
            procedure.Apply(happened);
        }

        return procedure.Derivations();
    }

    /// <summary>What must be said on every page of every copy, in large letters first; empty for a sound and signed record.</summary>
    public IReadOnlyList<(string Large, string Small)> Banners =>
    [
        .. Source.Findings.Take(1).Select(finding => (Language.Text("RECORD DOES NOT VERIFY"), finding)),
        .. Facts.Job is { Mark: { } mark } job ? [(Language.Text(mark), Language.Text(job.MarkReason))] : Array.Empty<(string, string)>(),
        .. Verdict.IsSigned ? [] : new[] { (Language.Text("NOT SIGNED"), Verdict.Short) },
    ];

    /// <summary>The letter that stands beside a limit for its source.</summary>
    public string Mark(DeclaredLimit limit) => Mark(Sources.ToList().IndexOf(SourceOf(limit)));

    /// <summary>"a rating plate; b maker's instructions".</summary>
    public string SourceLegend => string.Join("; ", Sources.Select((source, index) => $"{Mark(index)} {SourceTold(source)}"));

    /// <summary>The title of a step, or its id where the plan does not know it.</summary>
    public string StepTitle(string stepId) => Language.Name(StepTitles.Of(Plan, stepId));

    /// <summary>A number with its doubt, its fate before it.</summary>
    public string Whole(ShownNumber number) => $"{(number.Stands ? "" : $"{number.Fate} ")}{Language.Value(number.Value, tellsDoubt: true)}";

    /// <summary>That words of people are not translated; empty where all of the copy is English.</summary>
    public string Recorded => Language.IsEnglish ? "" : T(Sentences.Recorded);

    /// <summary>A text in the language of the copy.</summary>
    public string T(string english) => Language.Text(english);

    /// <summary>A sentence in the language of the copy.</summary>
    public string Told(Message message) => Language.Shown(message);

    /// <summary>The limit without its unit where the line has the same one.</summary>
    public string LimitText(FoundAndLeft line) => line.Limit is not { } limit ? ""
        : Language.Shown($"{(limit.UnitSymbol == line.Unit ? limit with { UnitSymbol = "" } : limit)}").TrimEnd();

    ReadingGroup In(ReadingGroup group) => Language.IsEnglish ? group : new ReadingGroup(Language.Name(group.Title), [.. group.Lines.Select(line => line with
    {
        Label = Label(line.Label),
        Remark = Language.In(line.Remark),
        Found = In(line.Found),
        Worst = In(line.Worst),
        Left = In(line.Left),
    })]);

    ShownNumber? In(ShownNumber? number) => number is null ? null : new ShownNumber(number.Value with { Number = Language.Number(number.Value.Number) }, Language.Text(number.Fate));

    /// <summary>"Temperature rise, low" by its parts.</summary>
    string Label(string english) => english.LastIndexOf(", ", StringComparison.Ordinal) is var comma and > 0 && Language.Name(english) == english
        ? $"{Language.Name(english[..comma])}, {Language.Text(english[(comma + 2)..])}" : Language.Name(english);

    static string Mark(int index) => index < 26 ? $"{(char)('a' + index)}" : FormattableString.Invariant($"{index + 1}");

    const string Safety = " (safety limit)";

    string SourceTold(string source) => source.EndsWith(Safety, StringComparison.Ordinal)
        ? $"{Language.Name(source[..^Safety.Length])} ({Language.Text("safety limit")})" : Language.Name(source);

    static string SourceOf(DeclaredLimit limit) => limit.IsSafety ? limit.Source + Safety : limit.Source;
}
