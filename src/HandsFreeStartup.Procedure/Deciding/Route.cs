using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Safety;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>From step to step: what must be complete before a step is left, and which one follows.</summary>
/// <param name="state">What is so far.</param>
/// <param name="now">The present.</param>
/// <param name="draftBy">What moves the exhaust where it is being decided by the phrase itself; null where the state knows.</param>
sealed class Route(StartupState state, Now now, DraftBy? draftBy = null)
{
    bool Applies(Step step) => state.Applies(step, draftBy ?? state.DraftBy);

    /// <summary>Why the current step cannot be left by <paramref name="word"/>, or null if it can.</summary>
    public Message? WhyStay(CommandWord word)
    {
        Step step = state.Step;
        return step.Kind switch
        {
            StepKind.Ask => step.Question!.Choices.IsEmpty ? (Message)"Answer yes or no." : $"Say {new MessagePart.Form(string.Join(" or ", step.Question.Choices.Select(choice => choice.Says)))}.",
            StepKind.Sign => Undone().Any() ? null : "Say finish to sign.",
            StepKind.Open or StepKind.Close when word == CommandWord.Next => "Say done when it is done.",
            StepKind.Wait => WhyWait(step),
            StepKind.Read or StepKind.Adjust => WhyIncomplete(step),
            _ => null,
        };
    }

    /// <summary>Why there is no way back from the current step, or null if there is.</summary>
    public string? WhyNotBack() => state.StepIndex == 0 ? "This is the first step."
        : state.StepIndex == state.Plan.Steps.Length ? "The furnace is not put into service; this is the first step of making it safe."
        : null;

    /// <summary>Why the current step may not be skipped, or null if it may.</summary>
    public string? WhyNotSkip() => WhyNotSkip(state.Step);

    string? WhyNotSkip(Step step) => step switch
    {
        { Kind: StepKind.Sign } => "Signing cannot be skipped; say finish.",
        { Kind: StepKind.Close } => "What was opened must be closed; this step cannot be skipped.",
        { Kind: StepKind.Wait } => "This wait guards what comes after it; it cannot be skipped.",
        { AgainAfter.IsEmpty: false } => "What is measured later hangs on this step; it cannot be skipped.",
        { Proves.IsEmpty: false } => "What was opened must be checked for leaks; this step cannot be skipped.",
        { IsSafetyStop: true } or { Question.StopsForGas: true } or { Question.UnsafeAfter: not null } => "This is a safety stop; it cannot be skipped.",
        { } when IsJudged(step, limit => limit.IsSafety) => "A safety limit judges this; it cannot be skipped.",
        { } when IsJudged(step, limit => limit.Carries == LimitWeight.Must) => "A limit that must be kept judges this; it cannot be skipped.",
        _ => null,
    };

    /// <summary>Whether such a limit judges readings of the step, or results that need them: what is not measured is not proven.</summary>
    bool IsJudged(Step step, Predicate<DeclaredLimit> which) => step.Readings.Any(demand =>
        (state.Limit(demand.LimitName, step.Scope) is { } own && which(own))
        || ResultRule.All.Any(rule => rule.Needs.Contains(demand.FieldId)
            && rule.Yields.Any(id => state.Limit(id, step.Scope) is { } limit && which(limit))));

    /// <summary>The step is done: what it opened, closed, proved and adjusted, and where to go.</summary>
    public IReadOnlyList<StartupEvent> Leave(Evidence? evidence)
    {
        Step step = state.Step;
        if (step.Kind == StepKind.Sign)
        {
            return Enter(Undone().First(), Arrival.Return);
        }

        ImmutableArray<ReadingVoided> voided = HasChanged(step) ? new Voids(state, now).Of(step, $"{step.Title} changed what it depends on") : [];
        IReadOnlyList<StartupEvent> reopened = HasChanged(step) ? new Reopening(state, now).After([Again.Change], $"{step.Title} changed gas or air") : [];
        return
        [
            new StepDone(now, step.Id, evidence),
            .. step.Opens.Select(thing => new ThingOpened(now, step.Id, thing)),
            .. step.Closes.Where(name => !state.IsMakingSafe || IsOpen(name)).Select(name => new ThingClosed(now, step.Id, name)),
            .. step.Proves.Where(name => !state.IsMakingSafe || IsOpen(name)).Select(name => new ThingProved(now, step.Id, name)),
            .. Started(step),
            .. Adjusted(step),
            .. voided,
            .. reopened,
            .. state.IsMakingSafe ? SafeNext() : EnterNext(step, step.Opens, voided, reopened),
        ];
    }

    bool IsOpen(string name) => state.Open.Any(open => open.Thing.Name == name);

    /// <summary>The next step of making safe; after the last one the start-up has ended.</summary>
    IReadOnlyList<StartupEvent> SafeNext() =>
        state.Plan.All.Skip(state.StepIndex + 1).FirstOrDefault(step => step.Kind != StepKind.Close || step.Closes.Any(name => state.Open.Any(open => open.Thing.Name == name && !open.IsClosed))) is { } next
            ? Enter(next, Arrival.Forward)
            : [new EndedOutOfService(now, state.End!.Reason)];

    /// <summary>Steps that must be done again after an improper answer; the first of them is entered.</summary>
    public IReadOnlyList<StartupEvent> Repeat(Question question)
    {
        if (question.Repeats.IsEmpty)
        {
            return [];
        }

        ImmutableArray<Step> steps = [.. question.Repeats.Select(id => state.Plan.Steps[state.Plan.IndexOf(id)])];
        IReadOnlyList<StartupEvent> reopened = new Reopening(state, now).Of(steps, "the answer was not the proper one");
        return [.. reopened, .. EnterAgain(steps.MinBy(step => state.Plan.IndexOf(step.Id))!, reopened)];
    }

    /// <summary>Returns to a step that must be done again.</summary>
    public IReadOnlyList<StartupEvent> EnterAgain(Step step, IReadOnlyList<StartupEvent> reopened)
    {
        bool isAnew = reopened.OfType<StepReopened>().Any(one => one.StepId == step.Id) || !state.Timers.ContainsKey(step.Id);
        return step.Timer is { } timer && isAnew
            ? [new StepEntered(now, step.Id, Arrival.Return), new TimerStarted(now, step.Id, timer.Duration, now.Steady)]
            : [new StepEntered(now, step.Id, Arrival.Return), .. Withdrawn(step)];
    }

    /// <summary>Enters the step that follows the current one, which was left undone.</summary>
    public IReadOnlyList<StartupEvent> EnterNext() => EnterNext(state.Step, [], [], []);

    /// <summary>Leaves a step that is skipped. What it would have opened may be open already, and is closed and checked like anything that was opened.</summary>
    public IReadOnlyList<StartupEvent> Skip() =>
        [.. state.Step.Opens.Select(thing => new ThingOpened(now, state.Step.Id, thing)), .. EnterNext(state.Step, state.Step.Opens, [], [])];

    /// <summary>Returns to the step before.</summary>
    public IReadOnlyList<StartupEvent> Back() => Enter(state.Plan.All.Take(state.StepIndex).Last(Applies), Arrival.Back);

    /// <summary>Why <paramref name="step"/> cannot be gone to from here, or null if it can: only what was come to before; the order of what is ahead guards people.</summary>
    public string? WhyNotTo(Step step) => step.Id == state.Step.Id ? "This is that step."
        : state.IsMakingSafe ? "The furnace is not put into service: make it safe first."
        : !Applies(step) ? $"'{step.Title}' does not belong to this furnace."
        : state.Plan.IndexOf(step.Id) > state.StepIndex ? $"'{step.Title}' comes later: what lies before it is done first."
        : null;

    /// <summary>Goes to an earlier step. What lies between stays, but for what must be as it was when the step was done: what was open then, and the fire that it waited for.</summary>
    public IReadOnlyList<StartupEvent> To(Step step)
    {
        ImmutableArray<Step> first = LeadingTo(step);
        IReadOnlyList<StartupEvent> reopened = [.. first.Append(step).Where(_ => !first.IsEmpty).Select(again => new StepReopened(now, again.Id, $"gone to '{step.Title}' from '{state.Step.Title}'"))];
        IReadOnlyList<StartupEvent> entered = first.IsEmpty ? Enter(step, Arrival.Jump) : EnterAgain(first[0], reopened);
        return [.. reopened, .. entered, .. OpenThen(step).Except(entered.OfType<ThingOpened>().Select(opened => opened.Thing)).Select(thing => new ThingOpened(now, step.Id, thing))];
    }

    /// <summary>What going to <paramref name="step"/> takes back, before it is done.</summary>
    public TakenBack TakenBackBy(Step step) => new(
        [.. LeadingTo(step).Select(first => first.Title)],
        [.. To(step).OfType<ThingOpened>().Select(opened => opened.Thing.Name).Distinct()],
        [.. step.Starts.Where(state.Timers.ContainsKey).Select(id => StepTitles.Of(state.Plan, id))],
        [.. state.Plan.Steps.Where(other => step.Voids.Contains(other.Id) && state.Status(other) == StepStatus.Done).Select(other => other.Title)]);

    /// <summary>From another chapter the fire may be another one: the waits before the step, and what begins them, come first.</summary>
    ImmutableArray<Step> LeadingTo(Step step)
    {
        if (state.Step.Section == step.Section)
        {
            return [];
        }

        ImmutableArray<Step> before = [.. state.Plan.Steps.TakeWhile(other => other.Id != step.Id).Where(other => other.Section == step.Section && Applies(other))];
        ImmutableArray<string> waits = [.. before.Where(other => other.Kind == StepKind.Wait).Select(other => other.Id)];
        return [.. before.Where(other => other.Kind == StepKind.Wait || other.Starts.Any(waits.Contains))];
    }

    /// <summary>What was open when the step was done, and was closed since.</summary>
    IEnumerable<Thing> OpenThen(Step step)
    {
        int index = state.Plan.IndexOf(step.Id);
        HashSet<string> before = [.. state.Plan.Steps.Take(index).SelectMany(other => other.Opens).Select(thing => thing.Name)];
        before.ExceptWith(state.Plan.Steps.Take(index).SelectMany(other => other.Closes));
        return Things([.. state.Plan.Steps.Skip(index).Where(other => state.Status(other) == StepStatus.Done).SelectMany(other => other.Closes).Where(before.Contains).Distinct()])
            .Where(thing => state.Open.All(open => open.Thing.Name != thing.Name || open.IsClosed));
    }

    /// <summary>Everything that stands between this start-up and a signature, in plain words.</summary>
    public ImmutableArray<Message> ObstaclesToSigning()
    {
        List<Message> obstacles = [];
        obstacles.AddRange(state.Unaired is null ? [] : ["the air of the room is not measured clear"]);
        obstacles.AddRange(state.Open.Select(open => (Message)$"{new MessagePart.Name(open.Thing.Name)} is {(open.IsClosed ? "not checked for leaks" : "open")}"));
        foreach (Step step in state.Plan.Steps.Where(Applies))
        {
            if (step.Kind != StepKind.Sign && state.Status(step) == StepStatus.Ahead)
            {
                obstacles.Add($"'{step.Title}' is not done");
            }

            if (state.Unexplained(step.Id) is not null)
            {
                obstacles.Add($"'{step.Title}' was answered unsafely, and nobody has said what was done about it");
            }

            if (state.Status(step) != StepStatus.Skipped)
            {
                obstacles.AddRange(WhyUnproven(step));
                obstacles.AddRange(Outside(step).Where(outside => outside.Weight == LimitWeight.Must || !state.IsExcused(step.Id)).Select(outside => outside.Text));
            }
            else if (WhyNotSkip(step) is not null)
            {
                obstacles.Add($"'{step.Title}' was skipped and must not be");
            }
        }

        return [.. obstacles.Distinct()];
    }

    /// <summary>What is not done yet, first to last; signing is none of it.</summary>
    IEnumerable<Step> Undone() => state.Plan.Steps.Where(step =>
        step.Kind != StepKind.Sign && Applies(step)
        && (state.Status(step) == StepStatus.Ahead || (state.Status(step) == StepStatus.Done && HoldsVoid(step, []))));

    /// <summary>The next step that is not done: forward, then from the beginning, and signing only when nothing else is left.</summary>
    IReadOnlyList<StartupEvent> EnterNext(Step left, ImmutableArray<Thing> opened, ImmutableArray<ReadingVoided> voided, IReadOnlyList<StartupEvent> reopened)
    {
        List<StartupEvent> events = [];
        HashSet<string> again = [.. reopened.OfType<StepReopened>().Select(step => step.StepId)];
        int from = state.StepIndex;
        int first = again.Concat(voided.IsEmpty ? [] : left.Voids).Select(state.Plan.IndexOf).Append(from + 1).Min();
        int count = state.Plan.Steps.Length;
        for (int offset = 1; offset <= count; offset++)
        {
            int index = (first - 1 + offset) % count;
            Step step = state.Plan.Steps[index];
            bool isWanted = step.Id != left.Id && step.Kind != StepKind.Sign && Applies(step)
                && (state.Status(step) == StepStatus.Ahead || again.Contains(step.Id) || HoldsVoid(step, voided));
            if (isWanted && !again.Contains(step.Id) && HasNothingToDo(step, opened))
            {
                events.Add(new StepDone(now, step.Id, null));
            }
            else if (isWanted)
            {
                return [.. events, .. index <= from ? EnterAgain(step, reopened) : Enter(step, Arrival.Forward)];
            }
        }

        return [.. events, .. Enter(state.Plan.Steps[^1], Arrival.Forward)];
    }

    IReadOnlyList<StartupEvent> Enter(Step step, Arrival arrival) =>
        step.Timer is { } timer && !state.Timers.ContainsKey(step.Id) && !state.Step.Starts.Contains(step.Id)
            ? [new StepEntered(now, step.Id, arrival), new TimerStarted(now, step.Id, timer.Duration, now.Steady)]
            : [new StepEntered(now, step.Id, arrival), .. Withdrawn(step)];

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

    /// <summary>The timers that the step starts; one that runs already goes on, unless what it waits for was changed.</summary>
    IEnumerable<StartupEvent> Started(Step step) =>
        from id in step.Starts
        where HasChanged(step) || (step.Kind != StepKind.Adjust && state.Timers.GetValueOrDefault(id) is not { IsEnded: false })
        select new TimerStarted(now, id, state.Plan.Steps[state.Plan.IndexOf(id)].Timer!.Duration, now.Steady);

    bool HasChanged(Step step) => step.Kind == StepKind.Adjust
        && state.AdjustedFrom is { } from
        && state.Reading(step.Readings[0].FieldId, step.Scope) is { Reading.Value: var set }
        && set != from;

    IEnumerable<StartupEvent> Adjusted(Step step) => HasChanged(step)
        ? step.Readings.Take(1).Select(demand => new AdjustmentMade(
            now, step.Id, new ReadingKey(demand.FieldId, step.Scope ?? ""), state.AdjustedFrom!.Value, state.Reading(demand.FieldId, step.Scope)!.Reading.Value,
            state.Reading(demand.FieldId, step.Scope)!.Reading.UnitSymbol))
        : [];

    Message? WhyWait(Step step) => state.Timers.GetValueOrDefault(step.Id) switch
    {
        null => (Message)"Start the timer first: say start timer.",
        { IsEnded: false } timer => $"The timer still runs: {timer.Remaining(now)} left.",
        _ => null,
    };

    Message? WhyIncomplete(Step step)
    {
        ImmutableArray<string> missing = [.. step.Readings.Select(demand => demand.FieldId).Where(id => !state.Counts(id, step.Scope))];
        if (!missing.IsEmpty)
        {
            Message early = missing.Select(id => state.WaitBefore(step, id)).OfType<string>().FirstOrDefault() is { } wait
                ? (Message)$" Wait for the time of '{new MessagePart.Name(StepTitles.Of(state.Plan, wait))}'; what is said before is not judged." : "";
            return $"Still missing: {Names(", ", missing.Select(id => Labels.Within(new ReadingKey(id, ""))))}.{early}";
        }

        if (step.Kind == StepKind.Adjust && !step.Readings.All(demand => IsWithin(demand, step)))
        {
            return Adjusting.Of(state).Stop ?? (Message)"It is not within its range yet. Adjust, and say the new reading.";
        }

        if (WhyUnsettled(step) is { } unsettled)
        {
            return unsettled;
        }

        Message? unproven = WhyUnproven(step).Concat(Outside(step).Where(outside => outside.Weight == LimitWeight.Must && !IsAdjustedLater(step, outside)).Select(outside => outside.Text)).FirstOrDefault();
        return unproven is null ? null : (Message)$"{unproven.Capitalised().WithoutStop()}. Correct it and measure again, or say finish to end without putting the furnace into service.";
    }

    /// <summary>Two sets must agree, the time of the checklist apart.</summary>
    Message? WhyUnsettled(Step step)
    {
        ImmutableArray<string> missing = [.. step.Readings
            .Where(demand => demand.Settles is { Twice: true } && !state.Agreed.Contains(new ReadingKey(demand.FieldId, step.Scope ?? "")))
            .Select(demand => Labels.Within(new ReadingKey(demand.FieldId, "")))];
        Message names = Names(" and ", missing);
        return missing.IsEmpty ? null
            : state.Timers.GetValueOrDefault(SecondSet.IdOf(step.Id)) is { IsEnded: false } running
                ? (Message)$"Not proven to stand still: wait {running.Remaining(now)}, then say {names} once more."
            : $"Not proven to stand still: say {names} once more.";
    }

    /// <summary>A pressure, or the input that follows from it, is brought inside by the adjustment that follows.</summary>
    bool IsAdjustedLater(Step step, Outside outside) => step.Kind == StepKind.Read
        && state.Plan.Steps.Skip(state.Plan.IndexOf(step.Id) + 1).Any(later => later.Kind == StepKind.Adjust && later.Scope == step.Scope
            && (outside.ResultId == ResultId.InputRate || later.Readings.Any(demand => demand.FieldId == outside.Key?.FieldId)));

    /// <summary>What lies outside of a limit of practice in the current step, without a reason so far.</summary>
    public IEnumerable<Message> Unexcused() => state.IsExcused(state.Step.Id) ? []
        : Outside(state.Step).Where(outside => outside.Weight == LimitWeight.Ought).Select(outside => outside.Text);

    /// <summary>Values of a step, and results of them, that lie outside of their limits or cannot be judged by them.</summary>
    public IEnumerable<Outside> Outside(Step step)
    {
        foreach (ReadingDemand demand in step.Readings.Where(demand => state.Counts(demand.FieldId, step.Scope)))
        {
            EnteredReading reading = state.Reading(demand.FieldId, step.Scope)!.Reading;
            if (reading is { Limit: { IsSafety: false } limit, Verdict: Verdict.Fail or Verdict.ConditionalFail })
            {
                yield return new($"{Name(reading.Key)} {ShownValue.Of(reading)} is outside of {limit} ({Message.Written(limit.Source)})", limit.Carries, reading.Key);
            }

            MonoxidePlace? place = reading.Key.FieldId switch { FieldId.RoomCo => MonoxidePlace.Room, FieldId.FlueCo => MonoxidePlace.Flue, _ => null };
            if (place is { } measured && CarbonMonoxideTier.Of(measured, reading) is { Action: >= MonoxideAction.ShutOff } tier)
            {
                yield return new($"{Name(reading.Key)} {ShownValue.Of(reading)}: {tier.Do.WithoutStop()} ({Message.Written(tier.Source)})", LimitWeight.Must, null);
            }
        }

        foreach (CalculatedResult result in state.ResultsBehind(step.Scope))
        {
            if (result is { Limit: { IsSafety: false } limit, Verdict: Verdict.Fail or Verdict.ConditionalFail or Verdict.CannotTell } && step.Readings.Any(demand => result.Inputs.ContainsKey(demand.FieldId)))
            {
                bool isTold = result.Verdict != Verdict.CannotTell;
                yield return new(
                    $"{new MessagePart.Name(Labels.Of(result, step.Scope ?? ""))} {ResultWords.Told(result)} is {(isTold ? "outside of" : "not judged by")} {limit} ({Message.Written(limit.Source)})",
                    isTold ? limit.Carries : LimitWeight.Ought, null)
                { ResultId = result.Id };
            }
        }
    }

    /// <summary>Missing or void readings of a step, and safety limits that its readings and their results do not prove.</summary>
    IEnumerable<Message> WhyUnproven(Step step)
    {
        foreach (ReadingDemand demand in step.Readings)
        {
            MessagePart label = new MessagePart.Name(Labels.Within(new ReadingKey(demand.FieldId, step.Scope ?? "")));
            if (!state.Counts(demand.FieldId, step.Scope))
            {
                yield return $"{label} is missing or void";
                continue;
            }

            EnteredReading reading = state.Reading(demand.FieldId, step.Scope)!.Reading;
            if (reading.Limit is { IsSafety: true } && reading.Verdict != Verdict.Pass)
            {
                yield return $"{label} is not proven to be {reading.Limit}{Unstated(reading.ExpandedUncertainty is null ? [Labels.Within(new ReadingKey(demand.FieldId, ""))] : [])}";
            }

            if (state.IsBeforeShutOff(reading.Key))
            {
                yield return $"{label} is from before the furnace was to be shut off; measure it again when the wait is over";
            }

            if (state.IsMoving(reading.Key))
            {
                yield return $"{label} has not settled; say it again";
            }
        }

        foreach (CalculatedResult result in state.ResultsBehind(step.Scope))
        {
            if (result.Limit is { IsSafety: true } && result.Verdict != Verdict.Pass && step.Readings.Any(demand => result.Inputs.ContainsKey(demand.FieldId)))
            {
                yield return $"{new MessagePart.Name(Labels.Of(result, step.Scope ?? ""))} is not proven to be {result.Limit}{Unstated(
                    result.Inputs.Keys.Where(id => state.Reading(id, step.Scope) is { Reading.ExpandedUncertainty: null }).Select(id => Labels.Within(new ReadingKey(id, ""))))}";
            }
        }
    }

    static MessagePart Name(ReadingKey key) => new MessagePart.Name(Labels.Of(key));

    static Message Names(string between, IEnumerable<string> labels) => Message.Join(between, labels.Select(label => (Message)$"{new MessagePart.Name(label)}"));

    static Message Unstated(IEnumerable<string> labels) => Names(" and ", labels) is { IsEmpty: false } which ? (Message)$", because the site file states no uncertainty of the instrument for {which}" : "";
}

/// <summary>A value outside of its limit.</summary>
/// <param name="Text">With its limit and source.</param>
/// <param name="Weight">What passing over it means.</param>
/// <param name="Key">The reading; null for a result.</param>
sealed record Outside(Message Text, LimitWeight Weight, ReadingKey? Key)
{
    /// <summary>The result; null for a reading.</summary>
    public string? ResultId { get; init; }
}

/// <summary>What going to an earlier step takes back of what was done after it.</summary>
/// <param name="First">Titles of what is done again before it.</param>
/// <param name="Opened">Names of what is open again.</param>
/// <param name="Started">Titles of the waits that begin anew when it is done again.</param>
/// <param name="Voided">Titles of the steps whose readings are void when it changes a value.</param>
sealed record TakenBack(ImmutableArray<string> First, ImmutableArray<string> Opened, ImmutableArray<string> Started, ImmutableArray<string> Voided);
