using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Safety;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>How a start-up is stopped, goes on deliberately, or ends because the furnace is unsafe.</summary>
sealed class Halt(StartupState state, DateTimeOffset now)
{
    /// <summary>Stops. After a smell of gas the wait begins anew.</summary>
    public IReadOnlyList<StartupEvent> Stop(StopCause cause, Evidence evidence, bool isFire = false) => cause == StopCause.GasSmell
        ? [new StartupStopped(now, cause, evidence), StartWait()]
        : [new StartupStopped(now, cause, evidence, isFire)];

    public IReadOnlyList<StartupEvent> WhileStopped(Phrase phrase) => phrase switch
    {
        Phrase.Answer { Word: AnswerWord.Confirm } confirm => Refuse(confirm.Evidence.Words, "Answer yes or no."),
        Phrase.Answer answer => Answer(answer.Word == AnswerWord.Yes, answer.Evidence),
        Phrase.Order { Word: CommandWord.Finish } => [new FinishAsked(now, false)],
        Phrase.Order { Word: CommandWord.SayAgain or CommandWord.WhatIsOpen or CommandWord.HowLong } order => [new QuestionAsked(now, order.Word)],
        Phrase.Order order => Refuse(Commands.Of(order.Word).Id, "The start-up is stopped."),
        _ => [],
    };

    public IReadOnlyList<StartupEvent> WhileCondemning(Phrase phrase) => phrase switch
    {
        Phrase.Answer { Word: AnswerWord.No } or Phrase.Order { Word: CommandWord.Disregard } => Deny(),
        Phrase.Answer answer =>
        [
            new UnsafeFound(now, state.Step.Id, state.Condition!.Condition, answer.Evidence),
            new EndedOutOfService(now, state.Condition.Condition),
        ],
        Phrase.Order { Word: CommandWord.SayAgain or CommandWord.WhatIsOpen } order => [new QuestionAsked(now, order.Word)],
        Phrase.Order order => Refuse(Commands.Of(order.Word).Id, "First answer: confirm, or no if it was misheard."),
        _ => [],
    };

    /// <summary>What was misheard does not count: the reading is disregarded, the answer asked again.</summary>
    IReadOnlyList<StartupEvent> Deny() => state.Condition!.Key is { } key
        ? [new ReadingScratched(now, key), new UnsafeDenied(now, state.Step.Id)]
        : [new UnsafeDenied(now, state.Step.Id)];

    /// <summary>Is it safe to go on? After a smell of gas the wait must be over, and the smell is asked afresh.</summary>
    IReadOnlyList<StartupEvent> Answer(bool isYes, Evidence evidence)
    {
        if (state.AsksFreshSmell)
        {
            FreshSmellAnswered answered = new(now, isYes, evidence);
            return isYes ? [answered, .. Stop(StopCause.GasSmell, evidence)] : [answered, new DictationAsked(now, DictationPurpose.ResumeReason)];
        }

        if (!isYes)
        {
            return Refuse(evidence.Words, "The start-up stays stopped.");
        }

        if (state.HasEnded)
        {
            return Refuse(evidence.Words, "It ended, not put into service, and cannot go on. Begin a new start-up.");
        }

        return state.GasWasSmelled ? AfterGas(evidence) : [new DictationAsked(now, DictationPurpose.ResumeReason)];
    }

    IReadOnlyList<StartupEvent> AfterGas(Evidence evidence) => state.Timers.GetValueOrDefault(GasSmell.WaitId) switch
    {
        null => [StartWait(), .. Refuse(evidence.Words, "Wait first, with the gas off.")],
        { IsEnded: false } wait => Refuse(evidence.Words, $"Wait, with the gas off: {Numbers.Text(wait.Remaining(now))} left."),
        _ => [new FreshSmellAsked(now)],
    };

    TimerStarted StartWait() => new(now, GasSmell.WaitId, GasSmell.Wait * state.Plan.TimerFactor);

    IReadOnlyList<StartupEvent> Refuse(string said, string reason) => [new CommandRefused(now, said, reason)];
}
