using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Safety;
using static HandsFreeStartup.Procedure.Deciding.PhaseMachine;

namespace HandsFreeStartup.Procedure.Deciding;

// A rule for every kind of event. What only the record keeps changes nothing in the talk.
partial class StartupState : IEventFold
{
    void IEventFold.Take(StartupBegan happened) => _machine.Fire(Move.Begin);

    void IEventFold.Take(StepEntered happened) => Enter(happened);

    void IEventFold.Take(StepDone happened) => Measured(Plan.All[Plan.IndexOf(happened.StepId)]);

    void IEventFold.Take(StepCarried happened)
    {
        Step step = Plan.All[Plan.IndexOf(happened.StepId)];
        if (!CarryingOver.May(step) || Status(step) != StepStatus.Ahead || !happened.Readings.All(one => step.Readings.Any(demand => new ReadingKey(demand.FieldId, step.Scope ?? "") == one.Reading.Key)))
        {
            throw new InvalidOperationException($"The step '{happened.StepId}' is never carried over.");
        }

        DraftBy = happened.Choice is { } choice ? step.Question?.DraftOf(choice) ?? DraftBy : DraftBy;
    }

    void IEventFold.Take(StepSkipped happened)
    {
        Heard = null;
        _machine.Fire(Move.Settle);
    }

    void IEventFold.Take(ReadingEntered happened) => Keep(happened);

    void IEventFold.Take(ReadingStood happened)
    {
        Demand(happened.Key);
        Provisional = null;
    }

    void IEventFold.Take(ReadingScratched happened)
    {
        ForgetExcess(happened.Key);
        _stated.Remove(happened.Key.Scope);
        Forget(happened.Key);
        TakeBackAir(happened.Key);
    }

    void IEventFold.Take(ReadingVoided happened)
    {
        Demand(happened.Key);
        Forget(happened.Key);
    }

    void IEventFold.Take(ConfirmationAsked happened)
    {
        Doubtful = happened.Reading;
        _machine.Fire(Move.ReadBack);
    }

    void IEventFold.Take(ConfirmationRefused happened)
    {
        Doubtful = null;
        Settle();
    }

    void IEventFold.Take(AdjustmentMade happened) => Adjust(happened);

    void IEventFold.Take(AnswerGiven happened) => Answer(happened);

    void IEventFold.Take(TimerHalfway happened) => Demand(happened.StepId);

    void IEventFold.Take(TimerEnded happened) => Demand(happened.StepId);

    void IEventFold.Take(DictationAsked happened)
    {
        Purpose = happened.Purpose;
        Heard = null;
        _machine.Fire(Move.Dictate);
    }

    void IEventFold.Take(DictationCancelled happened) => Decline();

    void IEventFold.Take(NoteTaken happened)
    {
        Heard = null;
        _machine.Fire(Move.Settle);
    }

    void IEventFold.Take(PromptsChosen happened) => SaysFull = happened.Full;

    void IEventFold.Take(ListeningPaused happened) => IsPaused = true;

    void IEventFold.Take(ListeningResumed happened) => IsPaused = false;

    void IEventFold.Take(StartupStopped happened) => Stop(happened);

    void IEventFold.Take(StartupResumed happened) => Resume();

    void IEventFold.Take(FreshSmellAsked happened) => AsksFreshSmell = true;

    void IEventFold.Take(FreshSmellAnswered happened)
    {
        AsksFreshSmell = false;
        IsSmellGone = !happened.Smells;
    }

    void IEventFold.Take(MonoxideJudged happened) => Count(happened);

    void IEventFold.Take(UnsafeAsked happened)
    {
        Condition = happened;
        _machine.Fire(Move.Condemn);
    }

    void IEventFold.Take(UnsafeDenied happened) => Deny();

    void IEventFold.Take(UnsafeFound happened) => IsUnsafe = true;

    void IEventFold.Take(SeriesJudged happened) => Judge(happened);

    void IEventFold.Take(LimitStated happened)
    {
        DoubtedLimit = null;
        _stated[happened.Limit.Name] = happened.Limit;
    }

    void IEventFold.Take(FinishAsked happened)
    {
        Signs = happened.Signs;
        _machine.Fire(Move.AskFinish);
    }

    void IEventFold.Take(FinishDeclined happened) => Decline();

    void IEventFold.Take(JumpAsked happened)
    {
        Target = Plan.Steps[Plan.IndexOf(happened.StepId)];
        _machine.Fire(Move.AskJump);
    }

    void IEventFold.Take(JumpDeclined happened)
    {
        Target = null;
        _machine.Fire(Move.Settle);
    }

    void IEventFold.Take(StartupSigned happened) => _machine.Fire(Move.Sign);

    void IEventFold.Take(EndedOutOfService happened) => _machine.Fire(Move.Abandon);

    void IEventFold.Take(RunBegan happened) => Clocks = happened.Steady is { } steady ? new ClockMark(happened.At, steady) : null;

    void IEventFold.Take(ClockJumped happened) => Clocks = new ClockMark(happened.At, happened.Steady);

    void IEventFold.Take(StepReopened happened) => _excused.Remove(Plan.All[Plan.IndexOf(happened.StepId)].Id);

    void IEventFold.Take(DictationHeard happened)
    {
        Heard = HeardText.Of(happened);
        _machine.Fire(Move.ReadBack);
    }

    void IEventFold.Take(ExceptionMade happened) => Except(happened);

    void IEventFold.Take(ChoiceAsked happened)
    {
        Choosing = happened.Topic;
        EndReason = happened.Reason;
        Heard = null;
        _machine.Fire(Move.Choose);
    }

    void IEventFold.Take(ChoiceMade happened) => Choose(happened);

    void IEventFold.Take(LimitDoubted happened) => DoubtedLimit = happened;

    void IEventFold.Take(EndDecided happened) => Decide();

    void IEventFold.Take(ResultsComputed happened)
    {
    }

    void IEventFold.Take(TimerStarted happened)
    {
        if (MonoxideAgain.StepOf(happened.StepId) is { } stepId)
        {
            Outdate(stepId);
        }
    }

    void IEventFold.Take(ThingOpened happened)
    {
    }

    void IEventFold.Take(ThingClosed happened)
    {
    }

    void IEventFold.Take(ThingProved happened)
    {
    }

    void IEventFold.Take(QuestionAsked happened)
    {
    }

    void IEventFold.Take(CommandRefused happened)
    {
    }

    void IEventFold.Take(PhotoAttached happened)
    {
    }

    void IEventFold.Take(TimerStopped happened)
    {
    }

    void IEventFold.Take(UtteranceHeard happened)
    {
    }

    void IEventFold.Take(DangerAsked happened)
    {
    }

    void IEventFold.Take(RecordReviewed happened)
    {
    }

    void IEventFold.Take(PersonalDataForgotten happened)
    {
    }
}
