using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Procedure.Record;

// A rule for every kind of event. What only the talk of the moment is made of changes nothing here, and says so.
partial class JobRecord : IEventFold
{
    void IEventFold.Take(StartupBegan happened) => Job = happened.Job;

    void IEventFold.Take(StepEntered happened) => _steps.Enter(happened);

    void IEventFold.Take(StepDone happened) => _steps.Do(happened);

    void IEventFold.Take(StepSkipped happened) => _steps.Skip(happened);

    void IEventFold.Take(StepCarried happened)
    {
        string from = Job?.Follows?.JobId ?? throw new InvalidOperationException("Nothing is carried over where no record is followed.");
        _steps.Carry(happened, from);
        _readings.Carry(happened, from);
        if (happened.Answer is { } answer)
        {
            _answers.Add(new AnswerGiven(answer.At, happened.StepId, answer.Answer, answer.Evidence));
        }
    }

    void IEventFold.Take(StepReopened happened)
    {
        _steps.DoAgain(happened.StepId);
        _timers.Withdraw(happened.StepId);
        _interruptions.Add(happened);
    }

    void IEventFold.Take(ReadingEntered happened)
    {
        _readings.Enter(happened);
        _steps.Measure(happened);
    }

    void IEventFold.Take(ReadingStood happened) => _readings.Stand(happened.Key);

    void IEventFold.Take(ReadingScratched happened) => _readings.Scratch(happened.Key);

    void IEventFold.Take(ReadingVoided happened) => _readings.Void(happened.Key, happened.Because);

    void IEventFold.Take(ConfirmationAsked happened) => _readings.ReadBack(happened);

    void IEventFold.Take(ConfirmationRefused happened) => _readings.Refuse();

    void IEventFold.Take(ResultsComputed happened) => _readings.Compute(happened);

    void IEventFold.Take(AdjustmentMade happened) => _adjustments.Add(happened);

    void IEventFold.Take(AnswerGiven happened) => _answers.Add(happened);

    void IEventFold.Take(TimerStarted happened) => _timers.Start(happened);

    void IEventFold.Take(TimerHalfway happened) => _timers.Half(happened);

    void IEventFold.Take(TimerEnded happened) => _timers.End(happened);

    void IEventFold.Take(TimerStopped happened)
    {
        _timers.Withdraw(happened.StepId);
        _interruptions.Add(happened);
    }

    void IEventFold.Take(ThingOpened happened)
    {
        _things.Open(happened);
        _steps.Open(happened.Thing.Name);
    }

    void IEventFold.Take(ThingClosed happened) => _things.Close(happened);

    void IEventFold.Take(ThingProved happened) => _things.Prove(happened);

    void IEventFold.Take(NoteTaken happened) => _notes.Add(happened);

    void IEventFold.Take(PhotoAttached happened) => _photos.Add(happened);

    void IEventFold.Take(CommandRefused happened) => _refusals.Add(happened);

    void IEventFold.Take(ListeningPaused happened)
    {
        _pauses.Add(new ListeningPause(happened.At, null));
        _interruptions.Add(happened);
    }

    void IEventFold.Take(ListeningResumed happened)
    {
        if (_pauses is [.., { To: null } last])
        {
            _pauses[^1] = last with { To = happened.At };
        }

        _interruptions.Add(happened);
    }

    void IEventFold.Take(StartupStopped happened)
    {
        if (Signature is not null)
        {
            _steps.Unsign();
        }

        _readings.BreakOff();
        (Signature, Stop, End, EndText) = (null, happened, JobEnd.Stopped, StopWords.Of(happened.Cause));
        _interruptions.Add(happened);
    }

    void IEventFold.Take(StartupResumed happened)
    {
        (Stop, End, EndText) = (null, JobEnd.Unfinished, "");
        _interruptions.Add(happened);
    }

    void IEventFold.Take(FreshSmellAnswered happened) => _interruptions.Add(happened);

    void IEventFold.Take(MonoxideJudged happened)
    {
        if (happened is { IsDoubtful: false, Counts: true })
        {
            _readings.ActUpon(happened.Key);
        }

        if (happened.Action != MonoxideAction.CarryOn)
        {
            _interruptions.Add(happened);
        }
    }

    void IEventFold.Take(UnsafeAsked happened) => _interruptions.Add(happened);

    void IEventFold.Take(UnsafeDenied happened) => _interruptions.Add(happened);

    void IEventFold.Take(UnsafeFound happened)
    {
        _unsafe.Add(happened);
        _interruptions.Add(happened);
    }

    void IEventFold.Take(SeriesJudged happened) => _series.Add(happened);

    void IEventFold.Take(ClockJumped happened) => _interruptions.Add(happened);

    void IEventFold.Take(RunBegan happened) => _timers.BeginRun();

    void IEventFold.Take(ChoiceMade happened)
    {
        if (happened.Topic == ChoiceTopic.SafeBy)
        {
            _interruptions.Add(happened);
        }
    }

    void IEventFold.Take(EndDecided happened)
    {
        Decided = happened;
        _interruptions.Add(happened);
    }

    void IEventFold.Take(StartupSigned happened)
    {
        _steps.Sign(happened.At);
        (Signature, End, EndText) = (happened, JobEnd.Signed, happened.Technician);
    }

    void IEventFold.Take(EndedOutOfService happened) => (OutOfService, End, EndText) = (happened, JobEnd.OutOfService, happened.Reason);

    void IEventFold.Take(RecordReviewed happened) => _reviews.Add(happened);

    void IEventFold.Take(DictationAsked happened)
    {
    }

    void IEventFold.Take(DictationHeard happened)
    {
    }

    void IEventFold.Take(DictationCancelled happened)
    {
    }

    void IEventFold.Take(QuestionAsked happened)
    {
    }

    void IEventFold.Take(PromptsChosen happened)
    {
    }

    void IEventFold.Take(FreshSmellAsked happened)
    {
    }

    void IEventFold.Take(ChoiceAsked happened)
    {
    }

    void IEventFold.Take(LimitDoubted happened)
    {
    }

    void IEventFold.Take(LimitStated happened)
    {
    }

    void IEventFold.Take(FinishAsked happened)
    {
    }

    void IEventFold.Take(JumpAsked happened)
    {
    }

    void IEventFold.Take(JumpDeclined happened)
    {
    }

    void IEventFold.Take(FinishDeclined happened)
    {
    }

    void IEventFold.Take(UtteranceHeard happened)
    {
    }

    void IEventFold.Take(DangerAsked happened)
    {
    }

    void IEventFold.Take(ExceptionMade happened)
    {
    }

    void IEventFold.Take(PersonalDataForgotten happened)
    {
    }
}
