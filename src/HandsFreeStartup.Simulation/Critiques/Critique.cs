using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Simulation.Critiques;

/// <summary>How much a mistake weighs; the number is what it takes off the score.</summary>
public enum Gravity
{
    /// <summary>It costs time.</summary>
    Small = 2,
    /// <summary>It makes the record wrong.</summary>
    Grave = 8,
    /// <summary>It can hurt somebody.</summary>
    Danger = 25,
}

/// <summary>A mistake of a rehearsal.</summary>
/// <param name="Name">Stable name, for instance <c>wrong-value</c>.</param>
/// <param name="StepId">In which step.</param>
/// <param name="At">When, since the beginning.</param>
/// <param name="What">What was done, one sentence.</param>
/// <param name="Instead">What the ideal path does there, one sentence.</param>
/// <param name="Gravity">How much it weighs.</param>
public sealed record Mistake(string Name, string StepId, TimeSpan At, string What, string Instead, Gravity Gravity);

/// <summary>What became of a fault that was put in.</summary>
/// <param name="Fault">Which.</param>
/// <param name="FoundAt">Step at which something first told of it; null where it stayed hidden.</param>
/// <param name="IsSettled">Whether it was put right, or the furnace was not put into service.</param>
public sealed record FaultFate(NamedFault Fault, string? FoundAt, bool IsSettled);

/// <summary>What is to be said of a finished or broken-off rehearsal.</summary>
public sealed record Critique
{
    /// <summary>In the order in which they were made.</summary>
    public required ImmutableArray<Mistake> Mistakes { get; init; }

    /// <summary>The faults that were put in.</summary>
    public required ImmutableArray<FaultFate> Faults { get; init; }

    /// <summary>Steps of the ideal path that were done without a mistake.</summary>
    public required int StepsRight { get; init; }

    /// <summary>Steps of the ideal path.</summary>
    public required int StepsIdeal { get; init; }

    /// <summary>How long it took.</summary>
    public required TimeSpan Time { get; init; }

    /// <summary>How long the ideal path takes.</summary>
    public required TimeSpan IdealTime { get; init; }

    /// <summary>Hints that were taken.</summary>
    public required int Hints { get; init; }

    /// <summary>Whether it was signed.</summary>
    public required bool IsSigned { get; init; }

    /// <summary>Whether it came to an end.</summary>
    public required bool HasEnded { get; init; }

    /// <summary>0 to 100: the share of the ideal path that was done without a mistake, less the weight of the mistakes and one for each hint. Speed alone gains nothing.</summary>
    public int Score => Math.Clamp((int)Math.Round(100.0 * StepsRight / Math.Max(1, StepsIdeal)) - Mistakes.Sum(mistake => (int)mistake.Gravity) - Hints, 0, 100);

    /// <summary>Judges a rehearsal against the ideal path at the same furnace.</summary>
    /// <param name="bench">With its journal.</param>
    public static Critique Of(Bench bench)
    {
        IdealRun ideal = new IdealRun(bench.Furnace).Run();
        Course course = new(bench);
        ImmutableArray<Mistake> mistakes = [.. CritiqueRules.All.SelectMany(rule => rule(course)).Where(mistake => !course.IsTakenBack(mistake)).DistinctBy(mistake => (mistake.Name, mistake.StepId, mistake.What)).OrderBy(mistake => mistake.At)];
        HashSet<string> wrong = [.. mistakes.Select(mistake => mistake.StepId)];
        HashSet<string> done = [.. course.Events<StepDone>().Select(entry => ((StepDone)entry.Event!).StepId)];
        string[] path = [.. ideal.Log.OfType<StepDone>().Select(step => step.StepId).Distinct()];
        return new Critique
        {
            Mistakes = mistakes,
            Faults = [.. bench.Furnace.Faults.Select(course.FateOf)],
            StepsRight = path.Count(step => done.Contains(step) && !wrong.Contains(step)),
            StepsIdeal = path.Length,
            Time = bench.At,
            IdealTime = ideal.Bench.At,
            Hints = bench.Hints,
            IsSigned = course.IsSigned,
            HasEnded = course.HasEnded,
        };
    }
}

/// <summary>A rehearsal as the rules read it.</summary>
sealed class Course(Bench bench)
{
    public Furnace Furnace => bench.Furnace;

    public StartupPlan Plan => bench.Furnace.Plan;

    public IReadOnlyList<JournalEntry> Journal => bench.Journal;

    public bool IsSigned { get; } = bench.Journal.Any(entry => entry.Event is StartupSigned);

    public bool HasEnded { get; } = bench.Journal.Any(entry => entry.Event is StartupSigned or EndedOutOfService);

    public JournalEntry Last => Journal[^1];

    public IEnumerable<JournalEntry> Events<T>() where T : StartupEvent => Journal.Where(entry => entry.Event is T);

    public IEnumerable<JournalEntry> Moves(string beginning) => Journal.Where(entry => entry.Hand?.StartsWith(beginning, StringComparison.Ordinal) == true);

    public Step StepOf(string id) => Plan.All[Plan.IndexOf(id)];

    public string Title(string id) => StepOf(id).Title;

    /// <summary>Where the entry stands in the journal.</summary>
    public IEnumerable<JournalEntry> After(JournalEntry entry) => Journal.SkipWhile(one => !ReferenceEquals(one, entry)).Skip(1);

    /// <summary>A value that was undone, or said again rightly before the step was left, was no mistake that stayed; what was said stands in the record all the same.</summary>
    public bool IsTakenBack(Mistake mistake) => mistake.Name is "wrong-value" && Journal.Where(entry => entry.At >= mistake.At).TakeWhile(entry => entry.Event is not StepDone)
        .Any(entry => entry.Event is ReadingScratched);

    public FaultFate FateOf(Fault fault)
    {
        bool isRight = Last.Hands.PutRight.Contains(fault) || (fault == Fault.RegulatorHigh && Journal.Any(entry => entry.Event is AdjustmentMade));
        JournalEntry? told = Journal.FirstOrDefault(Tells);
        return new FaultFate(NamedFault.Of(fault), told?.StepId ?? (isRight ? Moves(NamedFault.Of(fault).Remedy ?? "-").FirstOrDefault()?.StepId : null), isRight || (HasEnded && !IsSigned));
    }

    /// <summary>Whether something was recorded, or put right, that tells of a fault.</summary>
    bool Tells(JournalEntry entry) => entry.Event switch
    {
        AnswerGiven given => StepOf(given.StepId).Question is { } question && given.Answer != question.Proper,
        ReadingEntered { Reading.Verdict: Verdict.Fail or Verdict.ConditionalFail } => true,
        ResultsComputed computed => computed.Results.Any(result => result.Verdict is Verdict.Fail or Verdict.ConditionalFail),
        UnsafeAsked or MonoxideJudged { Counts: true } => true,
        FinishAsked { Signs: false } => true,
        _ => entry.Hand is { } hand && Furnace.Faults.Any(fault => NamedFault.Of(fault).Remedy == hand) && (hand != "zero analyzer" || entry.Hands.Probe == ProbePlace.Outside),
    };
}
