using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>Sees to it that every utterance that led to something is named, with its recording, by an event.</summary>
static class HeardClips
{
    /// <summary>The events of <paramref name="phrase"/>, led by how it was heard where none of them tells.</summary>
    public static IReadOnlyList<StartupEvent> Tied(Phrase phrase, IReadOnlyList<StartupEvent> events, Now now) =>
        phrase.Evidence.Clip is not { } clip || events.Count == 0 || events.Any(happened => HowHeard.Of(happened)?.Clip == clip)
            ? events
            : [new UtteranceHeard(now, phrase.Evidence), .. events];
}
