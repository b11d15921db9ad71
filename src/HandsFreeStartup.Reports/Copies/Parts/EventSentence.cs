using HandsFreeStartup.Calculations.Settling;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Reports.Copies.Parts;

/// <summary>An event as a sentence; a test holds that every kind has one.</summary>
static class EventSentence
{
    public static string Of(StartupEvent happened, Func<string, string> title, Language? language = null) => TextLines.EndedOnce((language ?? Language.English).Shown(Told(happened, title)));

    static Message Told(StartupEvent happened, Func<string, string> title) => happened switch
    {
        StartupBegan began => (Message)$"The job {As(began.Job.JobId)} began; technician {As(began.Job.Technician)}.",
        StepEntered entered => $"Step \"{title(entered.StepId)}\" {Arrived(entered.Arrival)}.",
        StepDone { Evidence: { } how } done => $"Step \"{title(done.StepId)}\" done, {Heard(how)}.",
        StepDone done => $"Step \"{title(done.StepId)}\" done by itself.",
        StepCarried carried => $"Step \"{title(carried.StepId)}\" STANDS from the returned job{Message.Join("", carried.Readings.Select(one => (Message)$"; {Reading(one.Reading)}"))}.",
        StepSkipped skipped => $"Step \"{title(skipped.StepId)}\" SKIPPED: {As(skipped.Reason)}",
        ReadingEntered or ReadingStood or ReadingScratched or ReadingVoided or ConfirmationAsked or ConfirmationRefused => OfReading(happened),
        ResultsComputed computed => $"Worked out{Labels.In(computed.Scope)}: {Message.Join("; ", computed.Results.Select(result => (Message)$"{result.Label} {ResultWords.Told(result)}"))}.",
        AdjustmentMade made => $"ADJUSTED in step \"{title(made.StepId)}\": {Labels.Told(made)}.",
        AnswerGiven answer => $"The question of step \"{title(answer.StepId)}\" was answered {Labels.YesNo(answer.Answer)}, {Heard(answer.Evidence)}.",
        TimerStarted timer => $"Timer of step \"{title(timer.StepId)}\" started, {timer.Duration}.",
        TimerHalfway timer => $"Timer of step \"{title(timer.StepId)}\" at half time.",
        TimerEnded timer => $"Timer of step \"{title(timer.StepId)}\" ended.",
        ThingOpened opened => $"OPENED: {opened.Thing.Name}{(opened.Thing.IsGasSide ? " (gas side)" : "")}.",
        ThingClosed closed => $"Closed: {closed.Name}.",
        ThingProved proved => $"Checked for leaks: {proved.Name}.",
        NoteTaken note => $"Note in step \"{title(note.StepId)}\": {As(note.Text)}",
        CommandRefused refused => $"\"{As(refused.Said)}\" was not carried out: {refused.Reason}",
        StartupStopped stopped => $"STOPPED: {StopWords.Of(stopped.Cause)}{(stopped.IsFire ? ", fire was called out" : "")}, {Heard(stopped.Evidence)}.",
        StartupResumed resumed => $"Went on after the stop: {As(resumed.Reason)}",
        FinishAsked asked => asked.Signs ? "Asked whether to sign." : "Asked whether to end without putting the appliance into service.",
        FinishDeclined => "Not finished; the start-up goes on.",
        StartupSigned signed => $"SIGNED by {As(signed.Technician)}.",
        EndedOutOfService ended => $"ENDED without putting the appliance into service: {Message.Written(ended.Reason)}",
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

    static Message OfReading(StartupEvent happened) => happened switch
    {
        ReadingEntered entered => (Message)$"Entered, provisional: {Reading(entered.Reading)}.",
        ReadingStood stood => $"Final: {Labels.Of(stood.Key)}.",
        ReadingScratched scratched => $"DISREGARDED: {Labels.Of(scratched.Key)}.",
        ReadingVoided voided => $"VOID: {Labels.Of(voided.Key)}, {Message.Recorded(voided.Because)}.",
        ConfirmationAsked asked => $"Read back, not entered: {Reading(asked.Reading)}.",
        _ => "The value that was read back was NOT CONFIRMED.",
    };

    static Message Reading(EnteredReading reading)
    {
        Message judged = reading is { Verdict: { } verdict, Limit: { } limit } ? (Message)$", {VerdictWords.Of(verdict, limit)} ({limit})" : "";
        return $"{Labels.Of(reading.Key)} {new MessagePart.Quantity(ShownValue.Of(reading), TellsDoubt: true)}, {Heard(reading.Evidence)}{judged}";
    }

    static Message Heard(Evidence evidence) => EvidenceWords.Of(evidence, wasConfirmed: false);

    /// <summary>What somebody said or named: it stands as it was recorded in every language.</summary>
    static MessagePart As(string recorded) => new MessagePart.Form(recorded);

    static Message OfTalk(StartupEvent happened, Func<string, string> title) => happened switch
    {
        DictationAsked asked => (Message)$"Asked for free speech: {asked.Purpose switch { DictationPurpose.Note => "a note", DictationPurpose.SkipReason => "why the step is skipped", DictationPurpose.ResumeReason => "why the start-up goes on", DictationPurpose.LimitReason => "why the value stays outside of its limit", DictationPurpose.AnswerReason => "what was done about the unsafe answer", _ => "why the start-up ends" }}.",
        DictationCancelled => "The free speech is not wanted after all.",
        QuestionAsked asked => $"The technician asked: {As(Commands.Of(asked.Word).Id)}.",
        PromptsChosen chosen => chosen.Full ? "Prompts are said in full." : "Prompts are said in short.",
        JumpAsked jump => $"Asked whether to go to step \"{title(jump.StepId)}\", {Heard(jump.Evidence)}.",
        JumpDeclined => "The step was not entered after all.",
        ListeningPaused => "Listening paused.",
        ListeningResumed => "Listening again.",
        UtteranceHeard heard => $"Utterance: {Heard(heard.Evidence)}.",
        DangerAsked asked => $"It may have been danger, and was to be said again: {Heard(asked.Evidence)}.",
        SeriesJudged series => $"Series of {series.Count}: {Labels.Of(series.Key)}, {InWords(series.Settled)}; {series.Stands} stands.",
        LimitStated { Limit: { Unusual: { } why } limit } stated => $"Limit stated in step \"{title(stated.StepId)}\": {As(limit.Name)} {limit} ({limit.Source}); strange for this furnace, and said again: {Message.Recorded(why).WithoutStop()}.",
        LimitStated stated => $"Limit stated in step \"{title(stated.StepId)}\": {As(stated.Limit.Name)} {stated.Limit} ({stated.Limit.Source}).",
        PhotoAttached photo => $"Photo attached: {As(photo.Name)}, SHA-256 {As(photo.Sha256)}.",
        RecordReviewed { Outcome: ReviewOutcome.Accepted } review => $"ACCEPTED by the lead technician {As(review.Lead)}{Remark(review)}.",
        RecordReviewed review => $"RETURNED by the lead technician {As(review.Lead)}{Remark(review)}.",
        PersonalDataForgotten forgotten => $"Names, free speech and {forgotten.Recordings} recordings of everything before were removed by {As(forgotten.By)}.",
        _ => OfSafety(happened, title),
    };

    static MessagePart Remark(RecordReviewed review) => As(review.Remark.Length == 0 ? "" : $": {review.Remark}");

    static Message OfEnd(StartupEvent happened, Func<string, string> title) => happened switch
    {
        RunBegan => (Message)"The program was started for this job.",
        ClockJumped jumped => $"THE CLOCK WAS SET {(jumped.By < TimeSpan.Zero ? "back" : "forward")} by {jumped.By.Duration()}; waits are not touched by it.",
        TimerStopped timer => $"Timer of step \"{title(timer.StepId)}\" stopped before its end; it begins anew.",
        StepReopened reopened => $"Step \"{title(reopened.StepId)}\" is to be done again: {Message.Recorded(reopened.Because)}",
        DictationHeard heard => $"Read back, not confirmed yet: \"{As(heard.Text)}\", {Heard(heard.Evidence)}.",
        ExceptionMade made => $"EXCEPTION in step \"{title(made.StepId)}\": {made.Subject.WithoutStop()}. Reason: {As(made.Reason.TrimEnd('.'))}; {Heard(made.Evidence)}.",
        ChoiceAsked asked => $"Asked to choose: {Topic(asked.Topic)}.",
        ChoiceMade chosen => $"Chosen in step \"{title(chosen.StepId)}\", {Topic(chosen.Topic)}: {chosen.Value.Replace('-', ' ')}, {Heard(chosen.Evidence)}.",
        LimitDoubted doubted => $"STRANGE LIMIT, asked again in step \"{title(doubted.StepId)}\": {As(doubted.Limit.Name)} {doubted.Limit}. {doubted.Why}",
        EndDecided decided => $"DECIDED not to put the furnace into service{decided.Kind switch { EndKind.OwnersWish => ", by the owner's wish", EndKind.Unsafe => ", it is unsafe", _ => "" }}: {Message.Written(decided.Reason)}",
        _ => throw new InvalidOperationException($"There is no sentence for {happened.GetType().Name}."),
    };

    static string Topic(ChoiceTopic topic) => topic switch
    {
        ChoiceTopic.SafeBy => "who declared it safe",
        ChoiceTopic.EndKind => "why the furnace stays out of service",
        _ => "the answer of the step",
    };

    static Message OfSafety(StartupEvent happened, Func<string, string> title) => happened switch
    {
        FreshSmellAsked => (Message)"Asked afresh whether gas is smelled.",
        FreshSmellAnswered answered => $"Gas smelled afresh: {Labels.YesNo(answered.Smells)}, {Heard(answered.Evidence)}.",
        MonoxideJudged judged => $"{MonoxideWords.Sentence(judged)} ({judged.Source}).",
        UnsafeAsked asked => $"To be confirmed as UNSAFE: {asked.Condition}",
        UnsafeDenied => "That was misheard and does not count.",
        UnsafeFound found => $"UNSAFE: {found.Condition}; {Heard(found.Evidence)}.",
        _ => OfEnd(happened, title),
    };
}
