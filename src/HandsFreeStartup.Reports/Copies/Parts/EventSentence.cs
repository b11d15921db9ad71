using HandsFreeStartup.Calculations.Settling;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Reports.Copies.Parts;

/// <summary>An event as a sentence; a test holds that every kind has one.</summary>
static class EventSentence
{
    public static string Of(StartupEvent happened, Func<string, string> title) => TextLines.EndedOnce(Told(happened, title));

    static string Told(StartupEvent happened, Func<string, string> title) => happened switch
    {
        StartupBegan began => $"The job {began.Job.JobId} began; technician {began.Job.Technician}.",
        StepEntered entered => $"Step \"{title(entered.StepId)}\" {Arrived(entered.Arrival)}.",
        StepDone done => $"Step \"{title(done.StepId)}\" done{(done.Evidence is { } how ? $", {EvidenceWords.Of(how, false)}" : " by itself")}.",
        StepCarried carried => $"Step \"{title(carried.StepId)}\" STANDS from the returned job{string.Concat(carried.Readings.Select(one => $"; {Reading(one.Reading)}"))}.",
        StepSkipped skipped => $"Step \"{title(skipped.StepId)}\" SKIPPED: {skipped.Reason}",
        ReadingEntered or ReadingStood or ReadingScratched or ReadingVoided or ConfirmationAsked or ConfirmationRefused => OfReading(happened),
        ResultsComputed computed => $"Worked out{Labels.In(computed.Scope)}: {string.Join("; ", computed.Results.Select(result => $"{result.Label} {ResultWords.Of(result)}"))}.",
        AdjustmentMade made => $"ADJUSTED in step \"{title(made.StepId)}\": {Labels.Of(made)}.",
        AnswerGiven answer => $"The question of step \"{title(answer.StepId)}\" was answered {Labels.YesNo(answer.Answer)}, {EvidenceWords.Of(answer.Evidence, false)}.",
        TimerStarted timer => $"Timer of step \"{title(timer.StepId)}\" started, {Durations.Text(timer.Duration)}.",
        TimerHalfway timer => $"Timer of step \"{title(timer.StepId)}\" at half time.",
        TimerEnded timer => $"Timer of step \"{title(timer.StepId)}\" ended.",
        ThingOpened opened => $"OPENED: {opened.Thing.Name}{(opened.Thing.IsGasSide ? " (gas side)" : "")}.",
        ThingClosed closed => $"Closed: {closed.Name}.",
        ThingProved proved => $"Checked for leaks: {proved.Name}.",
        NoteTaken note => $"Note in step \"{title(note.StepId)}\": {note.Text}",
        CommandRefused refused => $"\"{refused.Said}\" was not carried out: {refused.Reason}",
        StartupStopped stopped => $"STOPPED: {StopWords.Of(stopped.Cause)}{(stopped.IsFire ? ", fire was called out" : "")}, {EvidenceWords.Of(stopped.Evidence, false)}.",
        StartupResumed resumed => $"Went on after the stop: {resumed.Reason}",
        FinishAsked asked => asked.Signs ? "Asked whether to sign." : "Asked whether to end without putting the appliance into service.",
        FinishDeclined => "Not finished; the start-up goes on.",
        StartupSigned signed => $"SIGNED by {signed.Technician}.",
        EndedOutOfService ended => $"ENDED without putting the appliance into service: {ended.Reason}",
        _ => OfTalk(happened, title),
    };

    static string InWords(Settled settled) => settled switch
    {
        Settled.Yes => "settled",
        Settled.NotYet => "not settled yet",
        _ => "too short to say",
    };

    static string Arrived(Arrival arrival) => arrival switch
    {
        Arrival.Back => "entered again by \"go back\"",
        Arrival.Return => "returned to",
        Arrival.Jump => "entered again by \"go to\"; what lies between stands",
        _ => "entered",
    };

    static string OfReading(StartupEvent happened) => happened switch
    {
        ReadingEntered entered => $"Entered, provisional: {Reading(entered.Reading)}.",
        ReadingStood stood => $"Final: {Labels.Of(stood.Key)}.",
        ReadingScratched scratched => $"DISREGARDED: {Labels.Of(scratched.Key)}.",
        ReadingVoided voided => $"VOID: {Labels.Of(voided.Key)}, {voided.Because}.",
        ConfirmationAsked asked => $"Read back, not entered: {Reading(asked.Reading)}.",
        _ => "The value that was read back was NOT CONFIRMED.",
    };

    static string Reading(EnteredReading reading) => $"{Labels.Of(reading.Key)} {ShownValue.Of(reading).Text}, {EvidenceWords.Of(reading.Evidence, false)}"
        + (reading.Verdict is { } verdict && reading.Limit is { } limit ? $", {VerdictWords.Of(verdict, limit)} ({limit.Text.TrimEnd()})" : "");

    static string OfTalk(StartupEvent happened, Func<string, string> title) => happened switch
    {
        DictationAsked asked => $"Asked for free speech: {asked.Purpose switch { DictationPurpose.Note => "a note", DictationPurpose.SkipReason => "why the step is skipped", DictationPurpose.ResumeReason => "why the start-up goes on", DictationPurpose.LimitReason => "why the value stays outside of its limit", DictationPurpose.AnswerReason => "what was done about the unsafe answer", _ => "why the start-up ends" }}.",
        DictationCancelled => "The free speech is not wanted after all.",
        QuestionAsked asked => $"The technician asked: {Commands.Of(asked.Word).Id}.",
        PromptsChosen chosen => chosen.Full ? "Prompts are said in full." : "Prompts are said in short.",
        JumpAsked jump => $"Asked whether to go to step \"{title(jump.StepId)}\", {EvidenceWords.Of(jump.Evidence, false)}.",
        JumpDeclined => "The step was not entered after all.",
        ListeningPaused => "Listening paused.",
        ListeningResumed => "Listening again.",
        UtteranceHeard heard => $"Utterance: {EvidenceWords.Of(heard.Evidence, false)}.",
        SeriesJudged series => FormattableString.Invariant($"Series of {series.Count}: {Labels.Of(series.Key)}, {InWords(series.Settled)}; {series.Stands} stands."),
        LimitStated stated => $"Limit stated in step \"{title(stated.StepId)}\": {stated.Limit.Name} {stated.Limit.Text.TrimEnd()} ({stated.Limit.Source}){(stated.Limit.Unusual is { } why ? $"; strange for this furnace, and said again: {why.TrimEnd('.')}" : "")}.",
        PhotoAttached photo => $"Photo attached: {photo.Name}, SHA-256 {photo.Sha256}.",
        RecordReviewed review => $"{(review.Outcome == ReviewOutcome.Accepted ? "ACCEPTED" : "RETURNED")} by the lead technician {review.Lead}{(review.Remark.Length == 0 ? "" : $": {review.Remark}")}.",
        PersonalDataForgotten forgotten => FormattableString.Invariant($"Names, free speech and {forgotten.Recordings} recordings of everything before were removed by {forgotten.By}."),
        _ => OfSafety(happened, title),
    };

    static string OfEnd(StartupEvent happened, Func<string, string> title) => happened switch
    {
        RunBegan => "The program was started for this job.",
        ClockJumped jumped => $"THE CLOCK WAS SET {(jumped.By < TimeSpan.Zero ? "back" : "forward")} by {Durations.Text(jumped.By.Duration())}; waits are not touched by it.",
        TimerStopped timer => $"Timer of step \"{title(timer.StepId)}\" stopped before its end; it begins anew.",
        StepReopened reopened => $"Step \"{title(reopened.StepId)}\" is to be done again: {reopened.Because}",
        DictationHeard heard => $"Read back, not confirmed yet: \"{heard.Text}\", {EvidenceWords.Of(heard.Evidence, false)}.",
        ExceptionMade made => $"EXCEPTION in step \"{title(made.StepId)}\": {made.Subject.Shown.TrimEnd('.')}. Reason: {made.Reason.TrimEnd('.')}; {EvidenceWords.Of(made.Evidence, false)}.",
        ChoiceAsked asked => $"Asked to choose: {Topic(asked.Topic)}.",
        ChoiceMade chosen => $"Chosen in step \"{title(chosen.StepId)}\", {Topic(chosen.Topic)}: {chosen.Value.Replace('-', ' ')}, {EvidenceWords.Of(chosen.Evidence, false)}.",
        LimitDoubted doubted => $"STRANGE LIMIT, asked again in step \"{title(doubted.StepId)}\": {doubted.Limit.Name} {doubted.Limit.Text.TrimEnd()}. {doubted.Why}",
        EndDecided decided => $"DECIDED not to put the furnace into service{decided.Kind switch { EndKind.OwnersWish => ", by the owner's wish", EndKind.Unsafe => ", it is unsafe", _ => "" }}: {decided.Reason}",
        _ => throw new InvalidOperationException($"There is no sentence for {happened.GetType().Name}."),
    };

    static string Topic(ChoiceTopic topic) => topic switch
    {
        ChoiceTopic.SafeBy => "who declared it safe",
        ChoiceTopic.EndKind => "why the furnace stays out of service",
        _ => "the answer of the step",
    };

    static string OfSafety(StartupEvent happened, Func<string, string> title) => happened switch
    {
        FreshSmellAsked => "Asked afresh whether gas is smelled.",
        FreshSmellAnswered answered => $"Gas smelled afresh: {Labels.YesNo(answered.Smells)}, {EvidenceWords.Of(answered.Evidence, false)}.",
        MonoxideJudged judged => $"{MonoxideWords.Sentence(judged)} ({judged.Source}).",
        UnsafeAsked asked => $"To be confirmed as UNSAFE: {asked.Condition}",
        UnsafeDenied => "That was misheard and does not count.",
        UnsafeFound found => $"UNSAFE: {found.Condition}; {EvidenceWords.Of(found.Evidence, false)}.",
        _ => OfEnd(happened, title),
    };
}
