using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>Sees to it that every utterance that led to something is named, with its recording, by an event.</summary>
static class HeardClips
{
    /// <summary>The events of <paramref name="phrase"/>, led by how it was heard where none of them tells.</summary>
    public static IReadOnlyList<StartupEvent> Tied(Phrase phrase, IReadOnlyList<StartupEvent> events, Now now) =>
        phrase.Evidence.Clip is not { } clip || events.Count == 0 || events.Any(happened => EvidenceOf(happened)?.Clip == clip)
            ? events
            : [new UtteranceHeard(now, phrase.Evidence), .. events];

    static Evidence? EvidenceOf(StartupEvent happened) => happened switch
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
        _ => null,
    };
}
