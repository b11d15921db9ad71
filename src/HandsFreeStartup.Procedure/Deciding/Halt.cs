using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Safety;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>How a start-up is stopped, is led back deliberately, or ends because the furnace is unsafe.</summary>
sealed class Halt(StartupState state, Now now)
{
    /// <summary>Stops. Everything that is waited for stops with the burner, but not what clears the air; the wait of the alarm begins anew.</summary>
    public IReadOnlyList<StartupEvent> Stop(StopCause cause, Evidence evidence, bool isFire = false) =>
    [
        .. state.Timers.Where(timer => !timer.Value.IsEnded && SafetyWait.Find(timer.Key) is null && MonoxideAgain.StepOf(timer.Key) is null).Select(timer => new TimerStopped(now, timer.Key)),
        new StartupStopped(now, cause, evidence, isFire),
        .. SafetyWait.After(cause) is { } wait ? [StartOf(wait)] : Array.Empty<StartupEvent>(),
    ];

    public IReadOnlyList<StartupEvent> WhileStopped(Phrase phrase) => phrase switch
    {
        Phrase.Reading { Field.Id: FieldId.RoomCo } reading => Measure(reading),
        Phrase.Answer { Word: AnswerWord.Confirm } confirm => Refuse(confirm.Evidence.Words, "Answer yes or no."),
        Phrase.Answer answer => Answer(answer.Word == AnswerWord.Yes, answer.Evidence),
        Phrase.Command { Word: CommandWord.Finish } => [new FinishAsked(now, false)],
        Phrase.Command { Word: CommandWord.SayAgain or CommandWord.WhatIsOpen or CommandWord.HowLong or CommandWord.Help } command => [new QuestionAsked(now, command.Word)],
        Phrase.Command command => Refuse(Commands.Of(command.Word).Id, IsStopped),
        _ => [],
    };

    public IReadOnlyList<StartupEvent> WhileCondemning(Phrase phrase) => phrase switch
    {
        Phrase.Answer { Word: AnswerWord.No } or Phrase.Command { Word: CommandWord.Disregard } => Deny(),
        Phrase.Answer answer =>
        [
            new UnsafeFound(now, state.Condition!.StepId, state.Condition.Condition, answer.Evidence),
            .. new Ending(state, now).Decide(EndKind.Unsafe, state.Condition.Condition.Shown),
        ],
        Phrase.Command { Word: CommandWord.SayAgain or CommandWord.WhatIsOpen } command => [new QuestionAsked(now, command.Word)],
        Phrase.Command command => Refuse(Commands.Of(command.Word).Id, "First answer: confirm, or no if it was misheard."),
        _ => [],
    };

    /// <summary>The first condition that is not met yet, as asked; null when only who declared it safe is missing.</summary>
    public static string? Question(StartupState state) =>
        state.HasEnded ? "It has ended. Finish."
        : state.AsksFreshSmell ? FreshSmell
        : MustMeasure(state) ? "Is it safe to go on? First measure the room where you stand: say room monoxide and the number."
        : "Is it safe to go on?";

    /// <summary>Said to everything that waits until it goes on.</summary>
    public const string IsStopped = "The start-up is stopped.";

    /// <summary>Said to a doubtful value where nothing can be read back.</summary>
    public const string NotClear = "That was not clear. Say room monoxide and the number again.";

    /// <summary>The fresh question of the smell.</summary>
    public const string FreshSmell = "Smell again, also near the floor: do you smell gas now?";

    /// <summary>Whether the room must be measured before it goes on.</summary>
    public static bool MustMeasure(StartupState state) =>
        state.Causes.Contains(StopCause.CarbonMonoxide) && !state.IsAirClear && state.Timers.GetValueOrDefault(SafetyWait.After(StopCause.CarbonMonoxide)!.Id) is { IsEnded: true };

    /// <summary>The start-up goes on: what the stop made doubtful is done again, in the order of the checklist.</summary>
    public IReadOnlyList<StartupEvent> Resume(string cause)
    {
        Reopening reopening = new(state, now);
        IReadOnlyList<StartupEvent> reopened = state.End is null ? reopening.After(state.Causes.Contains(StopCause.GasSmell) ? [Again.Smell, Again.Stop] : [Again.Stop], "the burner was stopped") : [];
        Step target = reopened.OfType<StepReopened>().Select(step => state.Plan.All[state.Plan.IndexOf(step.StepId)]).Append(state.Step).MinBy(step => state.Plan.IndexOf(step.Id))!;
        return
        [
            new StartupResumed(now, cause),
            .. reopened,
            .. new Route(state, now).EnterAgain(target, reopened),
            .. state is { Condition: { } pending, IsUnsafe: false } ? [pending with { At = now }] : Array.Empty<StartupEvent>(),
        ];
    }

    /// <summary>What was misheard does not count: the reading is disregarded, the answer asked again.</summary>
    IReadOnlyList<StartupEvent> Deny() => state.Condition!.Key is { } key && state.Reading(key) is not null
        ? [new ReadingScratched(now, key), new UnsafeDenied(now, state.Condition.StepId)]
        : [new UnsafeDenied(now, state.Condition.StepId)];

    /// <summary>Is it safe to go on? Each alarm since it last went on must have its wait and its proof; then who declared it safe, then the cause.</summary>
    IReadOnlyList<StartupEvent> Answer(bool isYes, Evidence evidence)
    {
        if (state.AsksFreshSmell)
        {
            FreshSmellAnswered answered = new(now, isYes, evidence);
            return isYes ? [answered, .. Stop(StopCause.GasSmell, evidence)]
                : Missing() is { } missing ? [answered, .. Refuse(evidence.Words, missing)]
                : [answered, new ChoiceAsked(now, ChoiceTopic.SafeBy)];
        }

        return !isYes ? Refuse(evidence.Words, "The start-up stays stopped.")
            : state.HasEnded ? Refuse(evidence.Words, "It ended, not put into service, and cannot go on. Begin a new start-up.")
            : Waiting() is { } wait ? WaitFor(wait, evidence)
            : state.Causes.Contains(StopCause.GasSmell) && !state.IsSmellGone ? [new FreshSmellAsked(now)]
            : Missing() is { } why ? Refuse(evidence.Words, why)
            : [new ChoiceAsked(now, ChoiceTopic.SafeBy)];
    }

    Message? Missing() => state.Causes.Contains(StopCause.CarbonMonoxide) && !state.IsAirClear
        ? "First measure the room where you stand: say room monoxide and the number. Go back in only when whoever you called says so."
        : null;

    SafetyWait? Waiting() => SafetyWait.All.FirstOrDefault(IsRunning);

    bool IsRunning(SafetyWait wait) => state.Causes.Contains(wait.Cause) && state.Timers.GetValueOrDefault(wait.Id) is not { IsEnded: true };

    IReadOnlyList<StartupEvent> WaitFor(SafetyWait wait, Evidence evidence) => state.Timers.GetValueOrDefault(wait.Id) is { } running
        ? Refuse(evidence.Words, $"Wait, {wait.Meanwhile}: {running.Remaining(now)} left.")
        : [StartOf(wait), .. Refuse(evidence.Words, $"Wait first, {wait.Meanwhile}.")];

    /// <summary>The room is measured on the way back; the air must be proven clear. What asks for something is kept whenever it is said, though it proves nothing before its time.</summary>
    IReadOnlyList<StartupEvent> Measure(Phrase.Reading reading)
    {
        // Another alarm's wait may run too, and be named first.
        SafetyWait? wait = SafetyWait.After(StopCause.CarbonMonoxide) is { } air && IsRunning(air) ? air : null;
        Entry entry = new(state, now);
        EnteredReading entered = entry.OnTheWayBack(reading, isEarly: wait is not null);
        bool isWanted = (wait is null && state.Causes.Contains(StopCause.CarbonMonoxide)) || !CarbonMonoxideTier.IsClear(entered);
        return isWanted ? reading.Evidence.Certainty == Certainty.Green ? entry.Enter(entered) : entry.ReadBack(entered)
            : wait is null ? Refuse(reading.Evidence.Words, IsStopped)
            : WaitFor(wait, reading.Evidence);
    }

    public TimerStarted StartOf(SafetyWait wait) => new(now, wait.Id, wait.Duration * state.Plan.TimerFactor, now.Steady);

    IReadOnlyList<StartupEvent> Refuse(string said, Message reason) => [new CommandRefused(now, said, reason)];
}
