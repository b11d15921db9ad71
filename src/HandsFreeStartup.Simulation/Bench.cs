using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Simulation;

/// <summary>What an instrument showed around the moment of an entry.</summary>
/// <param name="FieldId">Which field.</param>
/// <param name="Lowest">Lowest number of the last seconds.</param>
/// <param name="Highest">Highest number of the last seconds.</param>
/// <param name="IsSettled">Whether it stood still.</param>
public sealed record Showed(string FieldId, decimal Lowest, decimal Highest, bool IsSettled);

/// <summary>One thing that happened in a rehearsal, with how everything stood.</summary>
/// <param name="At">Since the beginning.</param>
/// <param name="StepId">Step at that moment.</param>
public sealed record JournalEntry(TimeSpan At, string StepId)
{
    /// <summary>What the procedure recorded; null for a hand.</summary>
    public required StartupEvent? Event { get; init; }

    /// <summary>What the hands did; null for an event.</summary>
    public required string? Hand { get; init; }

    /// <summary>How everything stood after it.</summary>
    public required Hands Hands { get; init; }

    /// <summary>The furnace at that moment.</summary>
    public required FurnaceState State { get; init; }

    /// <summary>What the instruments of the step showed.</summary>
    public required ImmutableArray<Showed> Showed { get; init; }

    /// <summary>What was to be seen.</summary>
    public required Sight Sight { get; init; }

    /// <summary>What the step wants of the hands and was not done yet.</summary>
    public required ImmutableArray<string> Missing { get; init; }
}

/// <summary>The furnace of a rehearsal with hands and instruments, and the journal of what was done. It has no clock: whoever has one tells the time.</summary>
/// <param name="furnace">Which furnace.</param>
public sealed class Bench(Furnace furnace)
{
    /// <summary>So long ago a number may have been read that is said now: reading, speaking, understanding.</summary>
    static readonly TimeSpan SpeakingTime = TimeSpan.FromSeconds(12);

    readonly List<JournalEntry> _journal = [];
    readonly Queue<(TimeSpan At, FurnaceState State, Hands Hands)> _lately = [];
    Hands _entered = new();

    StartupPlan Plan => furnace.Plan;

    /// <summary>The furnace.</summary>
    public Furnace Furnace => furnace;

    /// <summary>How the furnace stands.</summary>
    public FurnaceState State { get; private set; } = furnace.Start();

    /// <summary>How the hands stand.</summary>
    public Hands Hands { get; private set; } = new();

    /// <summary>Time since the beginning up to which the furnace has run.</summary>
    public TimeSpan At { get; private set; }

    /// <summary>The step that the procedure is at.</summary>
    public Step Step { get; private set; } = furnace.Plan.Steps[0];

    /// <summary>Everything so far.</summary>
    public IReadOnlyList<JournalEntry> Journal => _journal;

    /// <summary>Hints that were taken.</summary>
    public int Hints { get; private set; }

    /// <summary>Lets time pass up to a moment; whole seconds, the rest is left for the next time.</summary>
    public void Advance(TimeSpan to)
    {
        while (At + TimeSpan.FromSeconds(1) <= to)
        {
            State = furnace.Step(State, Hands, 1);
            At += TimeSpan.FromSeconds(1);
            Remember();
        }
    }

    /// <summary>Does what the hands do; waits and questions are not theirs.</summary>
    public void Do(Act.Move move)
    {
        ImmutableArray<string> missing = Missing;
        Hands = move.Change(Hands, Plan);
        Remember();
        Keep(null, move.Words, missing);
    }

    /// <summary>A hint is taken.</summary>
    public void CountHint()
    {
        Hints++;
        Keep(null, "hint", []);
    }

    /// <summary>Takes note of what the procedure has recorded.</summary>
    public void Witness(IEnumerable<StartupEvent> events)
    {
        foreach (StartupEvent happened in events)
        {
            Keep(happened, null, Missing);
            if (happened is StepEntered entered)
            {
                Step = Plan.All[Plan.IndexOf(entered.StepId)];
                _entered = Hands;
            }
        }
    }

    /// <summary>What is to be seen for the step.</summary>
    public Sight Sight => Sight.Of(furnace, State, Hands, Step);

    /// <summary>What the step wants of the hands and is not done yet, in order.</summary>
    public ImmutableArray<string> Missing => [.. StepHands.Missing(Step, Plan, Hands, State, _entered)];

    /// <summary>The displays of the instruments that this step needs, as they would be read.</summary>
    public ImmutableArray<Display> Displays => [.. FieldsOf(Step).Select(DisplayOf).OfType<Display>()];

    /// <summary>The display of a field.</summary>
    public Display? DisplayOf(string fieldId) => Simulation.Displays.Of(furnace, State, Hands, fieldId);

    static IEnumerable<string> FieldsOf(Step step) => step.Readings.Select(demand => demand.FieldId);

    void Remember()
    {
        _lately.Enqueue((At, State, Hands));
        while (_lately.Peek().At < At - SpeakingTime)
        {
            _lately.Dequeue();
        }
    }

    void Keep(StartupEvent? happened, string? hand, ImmutableArray<string> missing) => _journal.Add(new JournalEntry(At, Step.Id)
    {
        Event = happened,
        Hand = hand,
        Hands = Hands,
        State = State,
        Showed = happened is ReadingEntered or ConfirmationAsked ? [.. FieldsOf(Step).Select(Lately).OfType<Showed>()] : [],
        Sight = Sight,
        Missing = missing,
    });

    /// <summary>What the display of a field has shown in the last seconds; null where it showed no number.</summary>
    Showed? Lately(string fieldId)
    {
        Display[] shown = [.. _lately.Select(then => Simulation.Displays.Of(furnace, then.State, then.Hands, fieldId)).OfType<Display>().Where(display => display.Value is not null)];
        return shown.Length == 0 ? null : new Showed(fieldId, shown.Min(display => display.Value!.Value), shown.Max(display => display.Value!.Value), shown[^1].IsSettled);
    }
}
