using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Safety;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Reports.Facts;

/// <summary>What broke into the start-up: stops, carbon monoxide, unsafe conditions, pauses.</summary>
static class Interruptions
{
    public static IEnumerable<string> Of(StartupPlan plan, IEnumerable<StartupEvent> events) =>
        events.Select(happened => Sentence(happened, stepId => StepTitles.Of(plan, stepId))).OfType<string>();

    static string? Sentence(StartupEvent happened, Func<string, string> title) => happened switch
    {
        StartupStopped stopped => $"{Words.Time(stopped.At)} STOPPED: {StartupFacts.InWords(stopped.Cause)}{(stopped.IsFire ? ", fire was called out" : "")}",
        FreshSmellAnswered answered => $"{Words.Time(answered.At)} gas smelled afresh: {Words.YesNo(answered.Smells)}",
        MonoxideJudged { Action: not MonoxideAction.CarryOn } judged => $"{Words.Time(judged.At)} {MonoxideWords.Sentence(judged)} [{judged.Source}]",
        UnsafeAsked asked => $"{Words.Time(asked.At)} to be confirmed as unsafe: {asked.Condition}",
        UnsafeDenied denied => $"{Words.Time(denied.At)} that was misheard and does not count",
        UnsafeFound found => $"{Words.Time(found.At)} UNSAFE: {found.Condition}",
        StartupResumed resumed => $"{Words.Time(resumed.At)} went on: {resumed.Reason}",
        ChoiceMade { Topic: ChoiceTopic.SafeBy } chosen => $"{Words.Time(chosen.At)} declared safe by {chosen.Value.Replace('-', ' ')}",
        StepReopened reopened => $"{Words.Time(reopened.At)} to be done again: {title(reopened.StepId)}, {reopened.Because.TrimEnd('.')}",
        TimerStopped stopped => $"{Words.Time(stopped.At)} wait stopped, it begins anew: {title(stopped.StepId)}",
        ClockJumped jumped => $"{Words.Time(jumped.At)} the clock was set {(jumped.By < TimeSpan.Zero ? "back" : "forward")} by {Words.Span(jumped.By.Duration())}",
        EndDecided decided => $"{Words.Time(decided.At)} not to be put into service: {decided.Reason.TrimEnd('.')}",
        ListeningPaused paused => $"{Words.Time(paused.At)} listening paused",
        ListeningResumed resumed => $"{Words.Time(resumed.At)} listening again",
        _ => null,
    };
}
