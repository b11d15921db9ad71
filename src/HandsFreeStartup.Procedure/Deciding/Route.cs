using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>From step to step: what must be complete before a step is left, and which one follows.</summary>
sealed class Route(StartupState state, DateTimeOffset now)
{
    /// <summary>Why the current step cannot be left by <paramref name="word"/>, or null if it can.</summary>
    public string? WhyStay(CommandWord word)
    {
        Step step = state.Step;
        return step.Kind switch
        {
            StepKind.Ask => "Answer yes or no.",
            StepKind.Sign => "Say finish to sign.",
            StepKind.Open or StepKind.Close when word == CommandWord.Next => "Say done when it is done.",
            StepKind.Wait => WhyWait(step),
            StepKind.Read or StepKind.Adjust => WhyIncomplete(step),
            _ => null,
        };
    }

    /// <summary>Why the current step may not be skipped, or null if it may.</summary>
    public string? WhyNotSkip() => state.Step switch
    {
        { Kind: StepKind.Sign } => "Signing cannot be skipped; say finish.",
        { Kind: StepKind.Close } => "What was opened must be closed; this step cannot be skipped.",
        { Proves.IsEmpty: false } => "What was opened must be checked for leaks; this step cannot be skipped.",
        { IsSafetyStop: true } or { Question.StopsForGas: true } or { Question.UnsafeAfter: not null } => "This is a safety stop; it cannot be skipped.",
        { } step when IsJudgedForSafety(step) => "A safety limit judges this; it cannot be skipped.",
        _ => null,
    };

    /// <summary>Whether a safety limit judges readings of the step, or results that need them: what is not measured is not proven.</summary>
    bool IsJudgedForSafety(Step step) => step.Readings.Any(demand =>
        state.Limit(demand.LimitName, step.Scope) is { IsSafety: true }
        || ResultRule.All.Any(rule => rule.Needs.Contains(demand.FieldId) && rule.Yields.Any(id => state.Limit(id, step.Scope) is { IsSafety: true })));

    /// <summary>The step is done: what it opened, closed, proved and adjusted, and where to go.</summary>
    public IReadOnlyList<StartupEvent> Leave(Evidence? evidence)
    {
        Step step = state.Step;
        ImmutableArray<ReadingVoided> voided = HasChanged(step) ? new Voids(state, now).Of(step, $"{step.Title} changed what it depends on") : [];
        return
        [
            new StepDone(now, step.Id, evidence),
            .. step.Opens.Select(thing => new ThingOpened(now, step.Id, thing)),
            .. step.Closes.Select(name => new ThingClosed(now, step.Id, name)),
            .. step.Proves.Select(name => new ThingProved(now, step.Id, name)),
            .. Started(step),
            .. Adjusted(step),
            .. voided,
            .. EnterNext(step, step.Opens, voided),
        ];
    }

    /// <summary>Enters the step that follows the current one, which was left undone.</summary>
    public IReadOnlyList<StartupEvent> EnterNext() => EnterNext(state.Step, [], []);

    /// <summary>Returns to the step before.</summary>
    public IReadOnlyList<StartupEvent> Back() => Enter(state.Plan.Steps[state.StepIndex - 1], Arrival.Back);

    /// <summary>Everything that stands between this start-up and a signature, in plain words.</summary>
    public ImmutableArray<string> ObstaclesToSigning()
    {
        List<string> obstacles = [];
        obstacles.AddRange(state.Open.Select(open => open.IsClosed ? $"{open.Thing.Name} is not checked for leaks" : $"{open.Thing.Name} is open"));
        foreach (Step step in state.Plan.Steps)
        {
            if (step.Kind != StepKind.Sign && state.Status(step) == StepStatus.Ahead)
            {
                obstacles.Add($"'{step.Title}' is not done");
            }

            if (state.Status(step) != StepStatus.Skipped)
            {
                obstacles.AddRange(WhyUnproven(step));
            }
        }

        return [.. obstacles.Distinct()];
    }

    IReadOnlyList<StartupEvent> EnterNext(Step left, ImmutableArray<Thing> opened, ImmutableArray<ReadingVoided> voided)
    {
        List<StartupEvent> events = [];
        bool isReturn = false;
        int from = state.StepIndex;
        if (!voided.IsEmpty)
        {
            int first = left.Voids.Min(state.Plan.IndexOf);
            isReturn = first <= from;
            from = isReturn ? first - 1 : from;
        }

        for (int offset = 1; offset <= state.Plan.Steps.Length; offset++)
        {
            Step step = state.Plan.Steps[(from + offset) % state.Plan.Steps.Length];
            bool isWanted = step.Id != left.Id
                && (state.Status(step) == StepStatus.Ahead || HoldsVoid(step, voided))
                && (step.Kind != StepKind.Sign || from + offset < state.Plan.Steps.Length);
            if (isWanted && HasNothingToDo(step, opened))
            {
                events.Add(new StepDone(now, step.Id, null));
            }
            else if (isWanted)
            {
                bool isEarlier = isReturn || from + offset >= state.Plan.Steps.Length;
                return [.. events, .. Enter(step, isEarlier ? Arrival.Return : Arrival.Forward)];
            }
        }

        return [.. events, .. Enter(state.Plan.Steps[^1], Arrival.Forward)];
    }

    IReadOnlyList<StartupEvent> Enter(Step step, Arrival arrival) =>
        step.Timer is { } timer && !state.Timers.ContainsKey(step.Id) && !state.Step.Starts.Contains(step.Id)
            ? [new StepEntered(now, step.Id, arrival), new TimerStarted(now, step.Id, timer.Duration)]
            : [new StepEntered(now, step.Id, arrival), .. arrival == Arrival.Forward ? [] : Withdrawn(step)];

    /// <summary>Who returns to a step withdraws what it claimed: what it closed is open again, what it proved needs its leak check again.</summary>
    IEnumerable<StartupEvent> Withdrawn(Step step)
    {
        if (state.Status(step) != StepStatus.Done)
        {
            yield break;
        }

        foreach (Thing thing in Things(step.Closes))
        {
            yield return new ThingOpened(now, step.Id, thing);
        }

        foreach (Thing thing in Things(step.Proves).Where(thing => !step.Closes.Contains(thing.Name) && state.Open.All(open => open.Thing.Name != thing.Name)))
        {
            yield return new ThingOpened(now, step.Id, thing);
            yield return new ThingClosed(now, step.Id, thing.Name);
        }
    }

    IEnumerable<Thing> Things(ImmutableArray<string> names) =>
        names.Select(name => state.Plan.Steps.SelectMany(step => step.Opens).FirstOrDefault(thing => thing.Name == name)).OfType<Thing>();

    /// <summary>An adjustment of what is within its range, a closing of what is not open, or a wait that is over, ends by itself.</summary>
    bool HasNothingToDo(Step step, ImmutableArray<Thing> opened) => step.Kind switch
    {
        StepKind.Wait => state.Timers.GetValueOrDefault(step.Id) is { IsEnded: true } && !state.Step.Starts.Contains(step.Id),
        StepKind.Adjust => step.Readings.All(demand => IsWithin(demand, step)),
        StepKind.Close => step.Closes.All(name =>
            opened.All(thing => thing.Name != name) && state.Open.All(open => open.Thing.Name != name || open.IsClosed)),
        _ => false,
    };

    bool IsWithin(ReadingDemand demand, Step step) =>
        state.Counts(demand.FieldId, step.Scope)
        && state.Reading(demand.FieldId, step.Scope)!.Reading.Verdict is null or Verdict.Pass or Verdict.ConditionalPass;

    bool HoldsVoid(Step step, ImmutableArray<ReadingVoided> voided) => step.Readings.Any(demand =>
        state.Reading(demand.FieldId, step.Scope) is { State: ReadingState.Void }
        || voided.Any(gone => gone.Key == new ReadingKey(demand.FieldId, step.Scope ?? "")));

    /// <summary>The timers that the step starts; one that runs already goes on.</summary>
    IEnumerable<StartupEvent> Started(Step step) =>
        from id in step.Starts
        where state.Timers.GetValueOrDefault(id) is not { IsEnded: false }
        select new TimerStarted(now, id, state.Plan.Steps[state.Plan.IndexOf(id)].Timer!.Duration);

    bool HasChanged(Step step) => step.Kind == StepKind.Adjust
        && state.AdjustedFrom is { } from
        && state.Reading(step.Readings[0].FieldId, step.Scope)!.Reading.Value != from;

    IEnumerable<StartupEvent> Adjusted(Step step) => HasChanged(step)
        ? step.Readings.Take(1).Select(demand => new AdjustmentMade(
            now, step.Id, new ReadingKey(demand.FieldId, step.Scope ?? ""), state.AdjustedFrom!.Value, state.Reading(demand.FieldId, step.Scope)!.Reading.Value,
            state.Reading(demand.FieldId, step.Scope)!.Reading.UnitSymbol))
        : [];

    string? WhyWait(Step step) => state.Timers.GetValueOrDefault(step.Id) switch
    {
        null => "Start the timer first: say start timer.",
        { IsEnded: false } timer => $"The timer still runs: {Numbers.Text(timer.Remaining(now))} left.",
        _ => null,
    };

    string? WhyIncomplete(Step step)
    {
        ImmutableArray<string> missing = [.. step.Readings
            .Where(demand => !state.Counts(demand.FieldId, step.Scope))
            .Select(demand => Fields.Find(demand.FieldId)!.Label.ToLowerInvariant())];
        if (!missing.IsEmpty)
        {
            string early = state.IsEarly(step) ? $" Wait for the time of '{state.Plan.Steps[state.Plan.IndexOf(step.After!)].Title}'; what is said before is not judged." : "";
            return $"Still missing: {string.Join(", ", missing)}.{early}";
        }

        if (step.Kind == StepKind.Adjust && !step.Readings.All(demand => IsWithin(demand, step)))
        {
            return Adjusting.Of(state).Stop ?? "It is not within its range yet. Adjust, and say the new reading.";
        }

        string? unproven = WhyUnproven(step).FirstOrDefault();
        return unproven is null ? null : $"{char.ToUpperInvariant(unproven[0])}{unproven[1..]}. Measure again, or say finish to end without putting the furnace into service.";
    }

    /// <summary>Missing or void readings of a step, and safety limits that its readings and their results do not prove.</summary>
    IEnumerable<string> WhyUnproven(Step step)
    {
        foreach (ReadingDemand demand in step.Readings)
        {
            string label = Fields.Find(demand.FieldId)!.Label.ToLowerInvariant();
            string where = step.Scope is null ? "" : $" ({step.Scope})";
            if (!state.Counts(demand.FieldId, step.Scope))
            {
                yield return $"{label}{where} is missing or void";
                continue;
            }

            EnteredReading reading = state.Reading(demand.FieldId, step.Scope)!.Reading;
            if (reading.Limit is { IsSafety: true } && reading.Verdict != Verdict.Pass)
            {
                yield return $"{label}{where} is not proven to be {reading.Limit.Text}";
            }

            if (state.IsMoving(reading.Key))
            {
                yield return $"{label}{where} has not settled; say it again";
            }
        }

        foreach (CalculatedResult result in state.Results.GetValueOrDefault(step.Scope ?? "", []))
        {
            if (result.Limit is { IsSafety: true } && result.Verdict != Verdict.Pass && step.Readings.Any(demand => result.Inputs.ContainsKey(demand.FieldId)))
            {
                yield return $"{result.Label}{(step.Scope is null ? "" : $" ({step.Scope})")} is not proven to be {result.Limit.Text}";
            }
        }
    }
}
