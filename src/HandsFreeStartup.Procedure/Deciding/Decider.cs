using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>What a phrase leads to in a given state. Pure: reads the state, returns events.</summary>
sealed class Decider(StartupState state, DateTimeOffset now)
{
    readonly Route _route = new(state, now);
    readonly Entry _entry = new(state, now);
    readonly Halt _halt = new(state, now);

    public IReadOnlyList<StartupEvent> Decide(Phrase phrase)
    {
        if (phrase is Phrase.TimePassed)
        {
            return [.. DueTimers()];
        }

        if (phrase is Phrase.Order { Word: CommandWord.EmergencyStop or CommandWord.GasSmell } stop)
        {
            return _halt.Stop(stop.Word == CommandWord.GasSmell ? StopCause.GasSmell : StopCause.Emergency, stop.Evidence, stop.IsFire);
        }

        if (phrase is Phrase.NotUnderstood or Phrase.Order { Word: CommandWord.StopTalking } || state.Phase is Phase.Preparing or Phase.Finished)
        {
            return [];
        }

        if (state.IsPaused)
        {
            return phrase is Phrase.Order { Word: CommandWord.GoAhead } ? [new ListeningResumed(now)] : [];
        }

        IReadOnlyList<StartupEvent> events = state.Phase switch
        {
            Phase.Asking => WhileAsking(phrase),
            Phase.Confirming => WhileConfirming(phrase),
            Phase.Dictating => WhileDictating(phrase),
            Phase.Signing => WhileSigning(phrase),
            Phase.Condemning => _halt.WhileCondemning(phrase),
            _ => _halt.WhileStopped(phrase),
        };
        return Settled(phrase, events);
    }

    /// <summary>A provisional reading becomes final with the next accepted phrase, unless that phrase undoes it.</summary>
    IReadOnlyList<StartupEvent> Settled(Phrase phrase, IReadOnlyList<StartupEvent> events)
    {
        bool isAccepted = events.Any(happened => happened is not CommandRefused);
        bool isUndone = phrase is Phrase.Order { Word: CommandWord.Disregard } || events.Any(happened => happened is ReadingScratched);
        return state.Provisional is { } key && isAccepted && !isUndone ? [new ReadingStood(now, key), .. events] : events;
    }

    IEnumerable<StartupEvent> DueTimers()
    {
        foreach ((string stepId, RunningTimer timer) in state.Timers)
        {
            if (timer.IsEnded || state.Phase is Phase.Finished)
            {
                continue;
            }

            if (!timer.IsHalfway && now - timer.StartedAt >= timer.Duration / 2)
            {
                yield return new TimerHalfway(now, stepId);
            }

            if (now - timer.StartedAt >= timer.Duration)
            {
                yield return new TimerEnded(now, stepId);
            }
        }
    }

    IReadOnlyList<StartupEvent> WhileAsking(Phrase phrase) => phrase switch
    {
        Phrase.Reading reading => _entry.Hear(reading),
        Phrase.Answer answer => Answer(answer),
        Phrase.Order order => Obey(order),
        Phrase.Photo photo => [new PhotoAttached(now, state.Step.Id, photo.Name, photo.Sha256, photo.Evidence)],
        _ => [],
    };

    IReadOnlyList<StartupEvent> Answer(Phrase.Answer answer)
    {
        if (state.Step.Question is not { } question || answer.Word == AnswerWord.Confirm)
        {
            return Refuse(answer.Evidence.Words, "Nothing was asked.");
        }

        bool isYes = answer.Word == AnswerWord.Yes;
        AnswerGiven given = new(now, state.Step.Id, isYes, answer.Evidence);
        return isYes == question.Proper ? [given, .. _route.Leave(answer.Evidence)]
            : question.StopsForGas ? [given, .. _halt.Stop(StopCause.GasSmell, answer.Evidence)]
            : question.UnsafeAfter <= state.ImproperAnswers(state.Step.Id) + 1
                ? [given, new UnsafeAsked(now, state.Step.Id, $"\"{question.Text}\" was answered {(isYes ? "yes" : "no")}", null)]
            : [given];
    }

    IReadOnlyList<StartupEvent> Obey(Phrase.Order order)
    {
        Step step = state.Step;
        string said = Commands.Of(order.Word).Id;
        return order.Word switch
        {
            CommandWord.Done or CommandWord.Next when PlateQuestion.Of(state) is { } plate => State(plate, said),
            CommandWord.Done or CommandWord.Next => _route.WhyStay(order.Word) is { } why ? Refuse(said, why) : _route.Leave(order.Evidence),
            CommandWord.GoBack => state.StepIndex == 0 ? Refuse(said, "This is the first step.") : _route.Back(),
            CommandWord.Disregard => state.LastEntered is { } last ? [new ReadingScratched(now, last)]
                : Refuse(said, "There is no entry of this step to disregard. Say go back to return to the step before."),
            CommandWord.SkipStep => _route.WhyNotSkip() is { } why ? Refuse(said, why) : [new DictationAsked(now, DictationPurpose.SkipReason)],
            CommandWord.Note => [new DictationAsked(now, DictationPurpose.Note)],
            CommandWord.StartTimer => step.Timer is { } timer ? [new TimerStarted(now, step.Id, timer.Duration)] : Refuse(said, "This step has no timer."),
            CommandWord.StandBy => [new ListeningPaused(now)],
            CommandWord.GoAhead => Refuse(said, "Listening is on."),
            CommandWord.Finish => Finish(said),
            _ => [new QuestionAsked(now, order.Word)],
        };
    }

    /// <summary>The limit that was said from the plate judges from now on.</summary>
    IReadOnlyList<StartupEvent> State(PlateQuestion plate, string said) => plate.Said(state) switch
    {
        null => Refuse(said, plate.Text),
        { Lower: { } lower, Upper: { } upper } when lower > upper => Refuse(said, "The lowest is above the highest. Say the wrong one again."),
        var limit => [new LimitStated(now, state.Step.Id, limit)],
    };

    IReadOnlyList<StartupEvent> Finish(string said)
    {
        if (state.Step.Kind != StepKind.Sign)
        {
            return [new FinishAsked(now, false)];
        }

        ImmutableArray<string> obstacles = _route.ObstaclesToSigning();
        return obstacles.IsEmpty ? [new FinishAsked(now, true)] : Refuse(said, $"It cannot be signed: {string.Join("; ", obstacles)}.");
    }

    IReadOnlyList<StartupEvent> WhileConfirming(Phrase phrase)
    {
        EnteredReading doubtful = state.Doubtful!;
        return phrase switch
        {
            Phrase.Answer { Word: AnswerWord.No } or Phrase.Order { Word: CommandWord.Disregard } => [new ConfirmationRefused(now)],
            Phrase.Answer => _entry.Enter(doubtful),
            Phrase.Reading again when again.Field.Id == doubtful.Key.FieldId && again.Value == doubtful.Value => _entry.Enter(doubtful),
            Phrase.Reading other => [new ConfirmationRefused(now), .. _entry.Hear(other)],
            Phrase.Order { Word: CommandWord.SayAgain or CommandWord.Help or CommandWord.WhatIsOpen or CommandWord.HowLong } order => [new QuestionAsked(now, order.Word)],
            Phrase.Order order => Refuse(Commands.Of(order.Word).Id, "First say confirm or no, or say the reading again."),
            _ => [],
        };
    }

    IReadOnlyList<StartupEvent> WhileDictating(Phrase phrase)
    {
        if (phrase is Phrase.Order { Word: CommandWord.Disregard })
        {
            return [new DictationCancelled(now)];
        }

        string text = phrase.Evidence.Words.Trim();
        return phrase is not Phrase.Dictation || text.Length == 0 ? [] : state.Purpose switch
        {
            DictationPurpose.Note => [new NoteTaken(now, state.Step.Id, text, phrase.Evidence)],
            DictationPurpose.SkipReason => [new StepSkipped(now, state.Step.Id, text, phrase.Evidence), .. _route.EnterNext()],
            DictationPurpose.ResumeReason => [new StartupResumed(now, text), new StepEntered(now, state.Step.Id, Arrival.Return)],
            _ => [new EndedOutOfService(now, text)],
        };
    }

    IReadOnlyList<StartupEvent> WhileSigning(Phrase phrase) => phrase switch
    {
        Phrase.Answer { Word: AnswerWord.No } or Phrase.Order { Word: CommandWord.Disregard } => [new FinishDeclined(now)],
        Phrase.Answer when state.Signs => [new StepDone(now, state.Step.Id, phrase.Evidence), new StartupSigned(now, state.Job!.Technician)],
        Phrase.Answer => [new DictationAsked(now, DictationPurpose.EndReason)],
        Phrase.Order order => Refuse(Commands.Of(order.Word).Id, "First answer: confirm, or no."),
        _ => [],
    };

    IReadOnlyList<StartupEvent> Refuse(string said, string reason) => [new CommandRefused(now, said, reason)];
}
