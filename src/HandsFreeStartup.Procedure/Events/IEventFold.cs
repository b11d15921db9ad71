namespace HandsFreeStartup.Procedure.Events;

/// <summary>A reading of the record: a rule for every kind of event. There is no default, so a new event that some reading overlooks does not compile.</summary>
public interface IEventFold
{
    /// <summary>Takes in a <see cref="StartupBegan"/>.</summary>
    void Take(StartupBegan happened);

    /// <summary>Takes in a <see cref="StepEntered"/>.</summary>
    void Take(StepEntered happened);

    /// <summary>Takes in a <see cref="StepDone"/>.</summary>
    void Take(StepDone happened);

    /// <summary>Takes in a <see cref="StepSkipped"/>.</summary>
    void Take(StepSkipped happened);

    /// <summary>Takes in a <see cref="StepCarried"/>.</summary>
    void Take(StepCarried happened);

    /// <summary>Takes in a <see cref="ReadingEntered"/>.</summary>
    void Take(ReadingEntered happened);

    /// <summary>Takes in a <see cref="ReadingStood"/>.</summary>
    void Take(ReadingStood happened);

    /// <summary>Takes in a <see cref="ReadingScratched"/>.</summary>
    void Take(ReadingScratched happened);

    /// <summary>Takes in a <see cref="ReadingVoided"/>.</summary>
    void Take(ReadingVoided happened);

    /// <summary>Takes in a <see cref="ConfirmationAsked"/>.</summary>
    void Take(ConfirmationAsked happened);

    /// <summary>Takes in a <see cref="ConfirmationRefused"/>.</summary>
    void Take(ConfirmationRefused happened);

    /// <summary>Takes in a <see cref="ResultsComputed"/>.</summary>
    void Take(ResultsComputed happened);

    /// <summary>Takes in a <see cref="AdjustmentMade"/>.</summary>
    void Take(AdjustmentMade happened);

    /// <summary>Takes in a <see cref="AnswerGiven"/>.</summary>
    void Take(AnswerGiven happened);

    /// <summary>Takes in a <see cref="TimerStarted"/>.</summary>
    void Take(TimerStarted happened);

    /// <summary>Takes in a <see cref="TimerHalfway"/>.</summary>
    void Take(TimerHalfway happened);

    /// <summary>Takes in a <see cref="TimerEnded"/>.</summary>
    void Take(TimerEnded happened);

    /// <summary>Takes in a <see cref="ThingOpened"/>.</summary>
    void Take(ThingOpened happened);

    /// <summary>Takes in a <see cref="ThingClosed"/>.</summary>
    void Take(ThingClosed happened);

    /// <summary>Takes in a <see cref="ThingProved"/>.</summary>
    void Take(ThingProved happened);

    /// <summary>Takes in a <see cref="DictationAsked"/>.</summary>
    void Take(DictationAsked happened);

    /// <summary>Takes in a <see cref="DictationCancelled"/>.</summary>
    void Take(DictationCancelled happened);

    /// <summary>Takes in a <see cref="NoteTaken"/>.</summary>
    void Take(NoteTaken happened);

    /// <summary>Takes in a <see cref="QuestionAsked"/>.</summary>
    void Take(QuestionAsked happened);

    /// <summary>Takes in a <see cref="PromptsChosen"/>.</summary>
    void Take(PromptsChosen happened);

    /// <summary>Takes in a <see cref="CommandRefused"/>.</summary>
    void Take(CommandRefused happened);

    /// <summary>Takes in a <see cref="ListeningPaused"/>.</summary>
    void Take(ListeningPaused happened);

    /// <summary>Takes in a <see cref="ListeningResumed"/>.</summary>
    void Take(ListeningResumed happened);

    /// <summary>Takes in a <see cref="StartupStopped"/>.</summary>
    void Take(StartupStopped happened);

    /// <summary>Takes in a <see cref="StartupResumed"/>.</summary>
    void Take(StartupResumed happened);

    /// <summary>Takes in a <see cref="FreshSmellAsked"/>.</summary>
    void Take(FreshSmellAsked happened);

    /// <summary>Takes in a <see cref="FreshSmellAnswered"/>.</summary>
    void Take(FreshSmellAnswered happened);

    /// <summary>Takes in a <see cref="MonoxideJudged"/>.</summary>
    void Take(MonoxideJudged happened);

    /// <summary>Takes in a <see cref="UnsafeAsked"/>.</summary>
    void Take(UnsafeAsked happened);

    /// <summary>Takes in a <see cref="UnsafeDenied"/>.</summary>
    void Take(UnsafeDenied happened);

    /// <summary>Takes in a <see cref="UnsafeFound"/>.</summary>
    void Take(UnsafeFound happened);

    /// <summary>Takes in a <see cref="SeriesJudged"/>.</summary>
    void Take(SeriesJudged happened);

    /// <summary>Takes in a <see cref="LimitStated"/>.</summary>
    void Take(LimitStated happened);

    /// <summary>Takes in a <see cref="PhotoAttached"/>.</summary>
    void Take(PhotoAttached happened);

    /// <summary>Takes in a <see cref="FinishAsked"/>.</summary>
    void Take(FinishAsked happened);

    /// <summary>Takes in a <see cref="JumpAsked"/>.</summary>
    void Take(JumpAsked happened);

    /// <summary>Takes in a <see cref="JumpDeclined"/>.</summary>
    void Take(JumpDeclined happened);

    /// <summary>Takes in a <see cref="FinishDeclined"/>.</summary>
    void Take(FinishDeclined happened);

    /// <summary>Takes in a <see cref="StartupSigned"/>.</summary>
    void Take(StartupSigned happened);

    /// <summary>Takes in a <see cref="EndedOutOfService"/>.</summary>
    void Take(EndedOutOfService happened);

    /// <summary>Takes in a <see cref="RunBegan"/>.</summary>
    void Take(RunBegan happened);

    /// <summary>Takes in a <see cref="ClockJumped"/>.</summary>
    void Take(ClockJumped happened);

    /// <summary>Takes in a <see cref="TimerStopped"/>.</summary>
    void Take(TimerStopped happened);

    /// <summary>Takes in a <see cref="StepReopened"/>.</summary>
    void Take(StepReopened happened);

    /// <summary>Takes in a <see cref="DictationHeard"/>.</summary>
    void Take(DictationHeard happened);

    /// <summary>Takes in a <see cref="ExceptionMade"/>.</summary>
    void Take(ExceptionMade happened);

    /// <summary>Takes in a <see cref="ChoiceAsked"/>.</summary>
    void Take(ChoiceAsked happened);

    /// <summary>Takes in a <see cref="ChoiceMade"/>.</summary>
    void Take(ChoiceMade happened);

    /// <summary>Takes in a <see cref="LimitDoubted"/>.</summary>
    void Take(LimitDoubted happened);

    /// <summary>Takes in a <see cref="EndDecided"/>.</summary>
    void Take(EndDecided happened);

    /// <summary>Takes in a <see cref="UtteranceHeard"/>.</summary>
    void Take(UtteranceHeard happened);

    /// <summary>Takes in a <see cref="DangerAsked"/>.</summary>
    void Take(DangerAsked happened);

    /// <summary>Takes in a <see cref="RecordReviewed"/>.</summary>
    void Take(RecordReviewed happened);

    /// <summary>Takes in a <see cref="PersonalDataForgotten"/>.</summary>
    void Take(PersonalDataForgotten happened);
}
