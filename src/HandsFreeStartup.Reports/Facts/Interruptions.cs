using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Reports.Facts;

/// <summary>What broke into the start-up: stops, carbon monoxide, unsafe conditions, pauses.</summary>
static class Interruptions
{
    /// <summary>All of them.</summary>
    /// <param name="facts">The record.</param>
    /// <param name="language">In which they are told; null for English.</param>
    public static IEnumerable<string> Of(JobRecord facts, Language? language = null) =>
        facts.Interruptions.Select(happened => Sentence(happened, stepId => StepTitles.Of(facts.Plan, stepId), facts.Times)).OfType<Message>().Select((language ?? Language.English).Shown);

    static Message? Sentence(StartupEvent happened, Func<string, string> title, LocalTime times) => happened switch
    {
        StartupStopped stopped => (Message)$"{times.Time(stopped.At)} STOPPED: {StopWords.Of(stopped.Cause)}{(stopped.IsFire ? ", fire was called out" : "")}",
        FreshSmellAnswered answered => $"{times.Time(answered.At)} gas smelled afresh: {Labels.YesNo(answered.Smells)}",
        MonoxideJudged { Action: not MonoxideAction.CarryOn } judged => $"{times.Time(judged.At)} {MonoxideWords.Sentence(judged)} [{judged.Source}]",
        UnsafeAsked asked => $"{times.Time(asked.At)} to be confirmed as unsafe: {asked.Condition}",
        UnsafeDenied denied => $"{times.Time(denied.At)} that was misheard and does not count",
        UnsafeFound found => $"{times.Time(found.At)} UNSAFE: {found.Condition}",
        StartupResumed resumed => $"{times.Time(resumed.At)} went on: {resumed.Reason}",
        ChoiceMade { Topic: ChoiceTopic.SafeBy } chosen => $"{times.Time(chosen.At)} declared safe by {SafeWords(chosen)}",
        StepReopened reopened => $"{times.Time(reopened.At)} to be done again: {title(reopened.StepId)}, {Message.Recorded(reopened.Because.TrimEnd('.'))}",
        TimerStopped stopped => $"{times.Time(stopped.At)} wait stopped, it begins anew: {title(stopped.StepId)}",
        ClockJumped jumped => $"{times.Time(jumped.At)} the clock was set {(jumped.By < TimeSpan.Zero ? "back" : "forward")} by {jumped.By.Duration()}",
        EndDecided decided => $"{times.Time(decided.At)} not to be put into service: {decided.Reason.TrimEnd('.')}",
        ListeningPaused paused => $"{times.Time(paused.At)} listening paused",
        ListeningResumed resumed => $"{times.Time(resumed.At)} listening again",
        _ => null,
    };

    static string SafeWords(ChoiceMade chosen) => chosen.Value.Replace('-', ' ');
}
