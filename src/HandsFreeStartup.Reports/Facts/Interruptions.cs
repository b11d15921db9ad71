using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Safety;

namespace HandsFreeStartup.Reports.Facts;

/// <summary>What broke into the start-up: stops, carbon monoxide, unsafe conditions, pauses.</summary>
static class Interruptions
{
    public static IEnumerable<string> Of(IEnumerable<StartupEvent> events) => events.Select(Sentence).OfType<string>();

    static string? Sentence(StartupEvent happened) => happened switch
    {
        StartupStopped stopped => $"{Words.Time(stopped.At)} STOPPED: {StartupFacts.InWords(stopped.Cause)}",
        FreshSmellAnswered answered => $"{Words.Time(answered.At)} gas smelled afresh: {Words.YesNo(answered.Smells)}",
        MonoxideJudged { Action: not MonoxideAction.CarryOn } judged => $"{Words.Time(judged.At)} {Words.Label(judged.Key)}: {judged.Do} [{judged.Source}]",
        UnsafeAsked asked => $"{Words.Time(asked.At)} to be confirmed as unsafe: {asked.Condition}",
        UnsafeDenied denied => $"{Words.Time(denied.At)} that was misheard and does not count",
        UnsafeFound found => $"{Words.Time(found.At)} UNSAFE: {found.Condition}",
        StartupResumed resumed => $"{Words.Time(resumed.At)} went on: {resumed.Reason}",
        ListeningPaused paused => $"{Words.Time(paused.At)} listening paused",
        ListeningResumed resumed => $"{Words.Time(resumed.At)} listening again",
        _ => null,
    };
}
