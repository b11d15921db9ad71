using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Events;

/// <summary>How an event was heard.</summary>
public static class HowHeard
{
    /// <summary>The evidence behind an event; null where an <see cref="UtteranceHeard"/> before it tells, or nobody said it.</summary>
    public static Evidence? Of(StartupEvent happened) => happened switch
    {
        StepDone done => done.Evidence,
        StepSkipped skipped => skipped.Evidence,
        ReadingEntered entered => entered.Reading.Evidence,
        ConfirmationAsked asked => asked.Reading.Evidence,
        AnswerGiven given => given.Evidence,
        NoteTaken taken => taken.Evidence,
        StartupStopped stopped => stopped.Evidence,
        FreshSmellAnswered answered => answered.Evidence,
        UnsafeFound found => found.Evidence,
        UtteranceHeard heard => heard.Evidence,
        DangerAsked asked => asked.Evidence,
        _ => null,
    };
}
