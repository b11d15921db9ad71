using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>Speech that began before the present question was asked: it answers another one, or is the same answer said again.</summary>
static class LateSpeech
{
    /// <summary>Whether an event leaves the question as it is, so that what was begun before it still fits: values follow each other as fast as they are said. Any other event asks anew.</summary>
    /// <param name="happened">The event.</param>
    /// <param name="isStopped">Whether the start-up is stopped: there each value decides whether it may go on.</param>
    public static bool LeavesTheQuestion(StartupEvent happened, bool isStopped) => happened is ReadingEntered ? !isStopped : happened is
        ReadingStood or ReadingScratched or ReadingVoided or ResultsComputed or SeriesJudged or MonoxideJudged or AdjustmentMade
        or TimerStarted or TimerHalfway or TimerEnded or TimerStopped or QuestionAsked or PromptsChosen or CommandRefused or PhotoAttached
        or UtteranceHeard or DangerAsked or RunBegan or ClockJumped;

    /// <summary>Whether it counts all the same: calls for help, questions to the tool and "disregard" mean the same at any time, and bad air is not asked twice.</summary>
    public static bool Counts(StartupState state, Phrase phrase, Now now) => phrase switch
    {
        Phrase.Command { Word: var word } => word is not (CommandWord.Done or CommandWord.Next or CommandWord.GoBack or CommandWord.SkipStep or CommandWord.StartTimer or CommandWord.Finish),
        _ => RoomAir.IsBad(state, phrase, now),
    };
}
