using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Settling;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Deciding;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Procedure.Showing;

/// <summary>What the tool says about events. Limits are named only after a value was said.</summary>
sealed class Announcer(StartupState state, Now now)
{
    public IReadOnlyList<Announcement> Announce(IReadOnlyList<StartupEvent> happened) => [.. happened.SelectMany(Of)];

    /// <summary>Where a job stands that is gone on with.</summary>
    public Announcement Resuming()
    {
        Message question = Views.Question(state, now) is { } asked ? (Message)$" {asked}" : "";
        return new($"Resuming. {Title(state.Step.Id)}. {Views.Do(state)}{question}") { Said = $"Resuming. {Title(state.Step.Id)}. Say again tells the step." };
    }

    /// <summary>What free speech is asked for.</summary>
    public static string DictationPrompt(DictationPurpose purpose) => purpose switch
    {
        DictationPurpose.Note => "Say the note.",
        DictationPurpose.SkipReason => "Say why this step is left undone.",
        DictationPurpose.ResumeReason => "Say what the cause was, and what was done about it.",
        DictationPurpose.LimitReason => "Outside of what practice wants. Say why it stays so.",
        DictationPurpose.AnswerReason => "It was answered otherwise before. Say what was done about it.",
        _ => "Say why the furnace is not put into service.",
    };

    /// <summary>What a confirmation of a condition that must end the start-up does.</summary>
    public const string CondemnPrompt = "This ends the start-up: the furnace is unsafe and not put into service. Confirm, or say no if it was misheard.";

    /// <summary>Free speech as it was heard.</summary>
    public static Message ReadBack(HeardText heard) => $"\"{heard.Text}\"? Confirm, or say no to say it again.";

    /// <summary>What one of several words is asked for.</summary>
    public static string ChoicePrompt(ChoiceTopic? topic) => topic == ChoiceTopic.SafeBy
        ? "Who declared that it is safe: gas supplier, fire service, or own finding?"
        : "Is it not in order, or is it the owner's wish?";

    /// <summary>What going to a step takes back, before it is done.</summary>
    public static Message JumpPrompt(StartupState state, Now now)
    {
        TakenBack taken = new Route(state, now).TakenBackBy(state.Target!);
        Message first = taken.First.IsEmpty ? (Message)"" : $" First again: {Names(", ", taken.First)}.";
        Message opened = taken.Opened.IsEmpty ? (Message)"" : $" Open again: {Names(", ", taken.Opened)}.";
        Message started = taken.Started.IsEmpty ? (Message)"" : $" When it is done, the wait begins anew: {Names(", ", taken.Started)}.";
        Message voided = taken.Voided.IsEmpty ? (Message)"" : $" If you change a value there, do these again: {Names("; ", taken.Voided)}.";
        return $"Go to {new MessagePart.Name(state.Target!.Title)}? What lies between stays.{first}{opened}{started}{voided} Confirm, or say no.";
    }

    /// <summary>What a confirmation of "finish" does.</summary>
    public static Message FinishPrompt(StartupState state) => (state.Signs, state.Exceptions) switch
    {
        (false, _) => (Message)"The start-up is not complete. Confirm to end it: the furnace is not put into service.",
        (true, []) => "Everything is done and closed. Confirm to sign the record.",
        (true, [var only]) => $"{1} exception: {only.Told.WithoutStop()}. Confirm to sign the record with it.",
        (true, var several) => $"{several.Length} exceptions. The gravest: {several[0].Told.WithoutStop()}. Read back tells all. Confirm to sign the record with them.",
    };

    IEnumerable<Announcement> Of(StartupEvent happened) => happened switch
    {
        StartupBegan => MonoxideProof.Missing(state.Plan) is { } missing ? [new(missing)] : [],
        StepCarried carried => [new($"Stands from the returned job: {Title(carried.StepId)}.")],
        StepEntered entered => Prompts.Of(state, entered.Arrival),
        ReadingEntered entered => [Entered(entered.Reading)],
        ReadingScratched scratched => [new($"{Name(scratched.Key)} disregarded.")],
        ConfirmationAsked asked => [new(EvidenceWords.ReadBack(asked.Reading), DigitByDigit: true)],
        ConfirmationRefused => [new("Not entered. Say the reading again.")],
        ResultsComputed computed => [.. computed.Results.Select(Result)],
        AdjustmentMade made => [new($"{Name(made.Key)} adjusted from {made.From} to {ShownValue.Alone(made.To, made.UnitSymbol ?? Fields.Find(made.Key.FieldId)!.Unit.Symbol)}.")],
        AnswerGiven given => Answered(given),
        TimerStarted started => [new($"Timer started{OfStep(started.StepId)}: {started.Duration}.")],
        TimerHalfway half => [new($"Half of the time is over{OfStep(half.StepId)}: {state.Timers[half.StepId].Remaining(now)} left.")],
        TimerEnded ended => [new($"{Title(ended.StepId)}: the time is over.{(ended.StepId == state.Step.Id ? " Say next." : "")}")],
        ThingOpened opened => [new($"Open now: {Name(opened.Thing.Name)}.") { Said = $"Open: {Name(opened.Thing.Name)}." }],
        ThingClosed closed => [new($"Closed: {Name(closed.Name)}.{(state.Open.Any(open => open.Thing.Name == closed.Name) ? " It still needs a leak check." : "")}")],
        DictationAsked asked => [new(DictationPrompt(asked.Purpose))],
        DictationCancelled => [new("Canceled.")],
        NoteTaken => [new("Noted.")],
        StepSkipped skipped => [new($"Skipped: {Title(skipped.StepId)}.")],
        QuestionAsked asked => Queried(asked.Word),
        PromptsChosen chosen => [new(chosen.Full ? "Full prompts." : "Short prompts. Say tell me more for the rest.")],
        CommandRefused refused => [new(refused.Reason, DigitByDigit: state.Phase == Phase.Confirming)],
        ListeningPaused => [new("Listening is paused. Say go ahead to go on.")],
        ListeningResumed => [new("Listening.")],
        StartupStopped stopped => [Urgent(Alarms.Of(stopped.Cause, state.Plan.Settings))],
        FreshSmellAsked => [new(Halt.FreshSmell)],
        MonoxideJudged judged => [new(MonoxideWords.Told(judged), IsUrgent: MonoxideWords.IsDanger(judged))],
        ClockJumped jumped => [new($"The clock was set {(jumped.By < TimeSpan.Zero ? "back" : "forward")} by {jumped.By.Duration()}. Waits are not touched by it.")],
        StepReopened reopened => [new($"Again: {Title(reopened.StepId)}.")],
        DictationHeard heard => [new(ReadBack(HeardText.Of(heard)))],
        ExceptionMade { Purpose: DictationPurpose.LimitReason } made => [new($"Exception: {made.Subject}.")],
        ExceptionMade => [new("Exception: an unsafe answer was changed, for a reason.")],
        ChoiceAsked asked => [new(ChoicePrompt(asked.Topic))],
        LimitDoubted doubted => [new($"{doubted.Why} If the plate says so, say next again; else say the wrong one again.")],
        EndDecided => state.IsStopped ? [] : [new("The furnace is not put into service. Make it safe now.")],
        UnsafeAsked asked => [new($"{asked.Condition}. {CondemnPrompt}", IsUrgent: true)],
        UnsafeDenied => [new("Not entered. Say it again.")],
        UnsafeFound found => [Urgent(Alarms.Unsafe(found.Condition))],
        SeriesJudged judged => [new(InWords(judged))],
        LimitStated stated => stated.StepId == state.Step.Id ? [new($"Noted, {PlateQuestion.Source}."), .. Prompts.Of(state, Arrival.Forward)] : [],
        PhotoAttached photo => [new($"Photo {photo.Name} is attached.") { Said = "Photo kept." }],
        StartupResumed => [new("The start-up goes on.")],
        FinishAsked => [new(FinishPrompt(state))],
        FinishDeclined => [new("It goes on.")],
        JumpAsked => [new(JumpPrompt(state, now))],
        JumpDeclined => [new("Staying with this step.")],
        StartupSigned signed => [new($"Signed by {signed.Technician}. One copy stays at the furnace, one with the customer, one in the office.")],
        EndedOutOfService => [new($"Ended. The furnace is not put into service: shut it off, red-tag it, and tell the owner in writing.{StillOpen()}")],
        _ => [],
    };

    static Announcement Urgent(Alarm alarm) => new(alarm.Told, IsUrgent: true);

    Message StillOpen() => state.Open.Count == 0 ? (Message)"" : $" Still open: {Names(", ", state.Open.Select(open => open.Thing.Name))}. Close what gas can escape from.";

    static Message InWords(SeriesJudged judged) => judged.Settled switch
    {
        Settled.Yes => (Message)$"Settled: {judged.Count} values, mean {Math.Round((decimal)judged.Mean!.Value, judged.Stands.Scale + 1)}. {judged.Stands} stands.",
        Settled.NotYet => "It has not settled: say it again.",
        _ => $"{judged.Count} values; it takes {SettlingRule.FewestSamples} or more over the time of the checklist to tell whether it has settled. {judged.Stands} stands.",
    };

    Announcement Entered(EnteredReading reading)
    {
        Message advice = Adjusting.Of(state).Sentence;
        string early = reading.IsEarly ? " Early: the wait is not over. It is kept, but not judged; say it again then." : "";
        Message verdict = InWords(reading.Verdict, reading.Limit);
        Message told = advice.IsEmpty ? (Message)"" : $" {advice}";
        Message entered = $"{Name(reading.Key)} {ShownValue.Of(reading)}.{early}";
        return new Announcement($"{entered}{verdict}{told}", IsUrgent: reading is { Limit.IsSafety: true, Verdict: Verdict.Fail or Verdict.ConditionalFail })
        {
            Said = $"{entered}{(reading.Verdict == Verdict.Pass && !state.SaysFull ? " Pass." : verdict)}{told}",
        };
    }

    static Announcement Result(CalculatedResult result)
    {
        Announcement told = new(
            $"{new MessagePart.Name(result.Label)} {ResultWords.Told(result)}.{InWords(result.Verdict, result.Limit)}",
            IsUrgent: result is { Limit.IsSafety: true, Verdict: Verdict.Fail or Verdict.ConditionalFail });
        return ResultKind.Find(result.Id) is { IsQuiet: true } && result.Limit is null ? told with { Said = "" } : told;
    }

    /// <summary>The verdict with its limit, after a blank; empty where nothing was judged.</summary>
    public static Message InWords(Verdict? verdict, DeclaredLimit? limit)
    {
        if (limit is null || VerdictWords.Of(verdict, limit) is not { Length: > 0 } words)
        {
            return "";
        }

        string again = limit.IsSafety && verdict == Verdict.ConditionalPass ? " Measure again." : "";
        string judged = $"{char.ToUpperInvariant(words[0])}{words[1..]}";
        return $" {judged} ({limit}).{again}";
    }

    IEnumerable<Announcement> Answered(AnswerGiven given) =>
        state.Plan.All[state.Plan.IndexOf(given.StepId)].Question is { } question && given.Answer != question.Proper && state.Phase == Phase.Asking
            ? [new Announcement(question.Otherwise)]
            : [];

    IEnumerable<Announcement> Queried(CommandWord word) => word switch
    {
        CommandWord.SayAgain when state.Phase == Phase.Asking => RoomAir.WhyStay(state, now) is { } air ? [new(air)] : Prompts.Of(state, null),
        CommandWord.SayAgain => [new(Pending(), DigitByDigit: true)],
        CommandWord.TellMore => [Prompts.More(state)],
        CommandWord.Explain => Explaining.Last(state),
        CommandWord.HowLong => [new(HowLong())],
        CommandWord.WhatIsOpen => [new(state.Open.Count == 0 ? (Message)"Nothing is open." : $"Open: {Message.Join(", ", state.Open.Select(open => (Message)$"{Name(open.Thing.Name)}{(open.IsClosed ? ", leak check missing" : "")}"))}.")],
        CommandWord.ReadBack when state.Phase == Phase.Signing || state.Step.Kind == StepKind.Sign => ReadBackExceptions(),
        CommandWord.ReadBack => [new(EntriesOfStep())],
        _ => [CanSay([.. Offers.All(state, now)])],
    };

    IEnumerable<Announcement> ReadBackExceptions() => state.Exceptions is { IsEmpty: false } exceptions
        ? exceptions.Select((exception, index) => new Announcement($"Exception {index + 1} of {exceptions.Length}: {exception.Told.WithoutStop()}."))
        : [new Announcement("There is no exception.")];

    /// <summary>The safety phrases are only shown: an echo of them would stop the start-up.</summary>
    static Announcement CanSay(ImmutableArray<string> words)
    {
        static Message Sentence(IEnumerable<string> some) => $"You can say: {new MessagePart.Form(string.Join(", ", some))}.";
        return new(Sentence(words)) { Said = Sentence(words.Where(word => Commands.Find(word) is not { IsSafetyPhrase: true })) };
    }

    /// <summary>All running timers, the first to end first; with its title where several run.</summary>
    Message HowLong()
    {
        (MessagePart Title, TimeSpan Left)[] running = [.. state.Timers.Where(timer => !timer.Value.IsEnded)
            .Select(timer => (Title(timer.Key), timer.Value.Remaining(now))).OrderBy(timer => timer.Item2)];
        return running switch
        {
            [] => (Message)"No timer runs.",
            [(_, var left)] => $"{left} left.",
            _ => Message.Join(" ", running.Select(timer => (Message)$"{timer.Title}: {timer.Left} left.")),
        };
    }

    Message Pending() => state.Phase switch
    {
        Phase.Confirming => EvidenceWords.ReadBack(state.Doubtful!),
        Phase.Stopped => Message.Join(" ", Alarms.Of(state.Cause, state.Plan.Settings).Lines),
        Phase.Condemning => $"{state.Condition!.Condition}. {CondemnPrompt}",
        Phase.Signing => FinishPrompt(state),
        Phase.ReadingBack => ReadBack(state.Heard!),
        Phase.Choosing => ChoicePrompt(state.Choosing),
        Phase.Jumping => JumpPrompt(state, now),
        _ => DictationPrompt(state.Purpose),
    };

    Message EntriesOfStep()
    {
        ImmutableArray<Message> entries = [.. state.Step.Readings
            .Where(demand => state.Counts(demand.FieldId, state.Step.Scope))
            .Select(demand => state.Reading(demand.FieldId, state.Step.Scope)!.Reading)
            .Select(reading => (Message)$"{Name(reading.Key)} {ShownValue.Of(reading)}")];
        return entries.IsEmpty ? "Nothing is entered in this step." : (Message)$"{Message.Join(". ", entries)}.";
    }

    /// <summary>Which timer is meant, where that is not the one of the current step.</summary>
    Message OfStep(string stepId) => stepId == state.Step.Id ? (Message)"" : $" ({Title(stepId)})";

    MessagePart Title(string stepId) => Name(StepTitles.Of(state.Plan, stepId));

    static MessagePart Name(string words) => new MessagePart.Name(words);

    static Message Names(string between, IEnumerable<string> names) => Message.Join(between, names.Select(name => (Message)$"{Name(name)}"));

    static MessagePart Name(ReadingKey key) => new MessagePart.Name(Labels.Of(key));
}
