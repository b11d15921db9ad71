using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>What a phrase leads to in a given state. Pure: reads the state, returns events.</summary>
sealed class Decider(StartupState state, Now now)
{
    readonly Route _route = new(state, now);
    readonly Entry _entry = new(state, now);
    readonly Halt _halt = new(state, now);
    readonly Dictating _dictating = new(state, now);

    public IReadOnlyList<StartupEvent> Decide(Phrase phrase)
    {
        if (phrase is Phrase.TimePassed)
        {
            return [.. new Clocks(state, now).Due()];
        }

        if (phrase is Phrase.Command { Word: CommandWord.EmergencyStop or CommandWord.GasSmell } stop)
        {
            return _halt.Stop(stop.Word == CommandWord.GasSmell ? StopCause.GasSmell : StopCause.Emergency, stop.Evidence, stop.IsFire);
        }

        if (phrase is Phrase.NotUnderstood or Phrase.Command { Word: CommandWord.StopTalking } || state.Phase is Phase.Preparing or Phase.Finished)
        {
            return [];
        }

        if (state.IsPaused)
        {
            return phrase is Phrase.Command { Word: CommandWord.GoAhead } ? [new ListeningResumed(now)] : [];
        }

        IReadOnlyList<StartupEvent> events = RoomAir.IsUnasked(state, phrase) ? new RoomAir(state, now).Hear((Phrase.Reading)phrase) : state.Phase switch
        {
            Phase.Asking => WhileAsking(phrase),
            Phase.Confirming => WhileConfirming(phrase),
            Phase.Dictating => _dictating.WhileDictating(phrase),
            Phase.ReadingBack => _dictating.WhileReadingBack(phrase),
            Phase.Choosing => WhileChoosing(phrase),
            Phase.Jumping => WhileJumping(phrase),
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
        bool isUndone = phrase is Phrase.Command { Word: CommandWord.Disregard } || events.Any(happened => happened is ReadingScratched);
        return state.Provisional is { } key && isAccepted && !isUndone ? [new ReadingStood(now, key), .. events] : events;
    }

    IReadOnlyList<StartupEvent> WhileAsking(Phrase phrase) => phrase switch
    {
        _ when LeadsOn(phrase) && RoomAir.WhyStay(state, now) is { } air => Refuse(phrase.Evidence.Words, air),
        Phrase.Reading reading => _entry.Hear(reading),
        Phrase.Answer answer => Answer(answer),
        Phrase.Choice choice => Choose(choice),
        Phrase.Jump jump => _route.WhyNotTo(state.Plan.Steps[state.Plan.IndexOf(jump.Step.Id)]) is { } why ? Refuse(jump.Evidence.Words, why) : [new JumpAsked(now, jump.Step.Id, jump.Evidence)],
        Phrase.Command command => Obey(command),
        Phrase.Photo photo => [new PhotoAttached(now, state.Step.Id, photo.Name, photo.Sha256, photo.Evidence)],
        _ => [],
    };

    /// <summary>Whether the phrase could leave the step, or sign; an unsafe answer never does.</summary>
    bool LeadsOn(Phrase phrase) => phrase switch
    {
        Phrase.Command { Word: CommandWord.Done or CommandWord.Next or CommandWord.SkipStep } or Phrase.Choice or Phrase.Jump => true,
        Phrase.Command { Word: CommandWord.Finish } => state.Step.Kind == StepKind.Sign,
        Phrase.Answer answer => state.Step.Question is not { } question || answer.Word == AnswerWord.Yes == question.Proper,
        _ => false,
    };

    IReadOnlyList<StartupEvent> Answer(Phrase.Answer answer)
    {
        if (state.Step.Question is not { Choices.IsEmpty: true } question || answer.Word == AnswerWord.Confirm)
        {
            return Refuse(answer.Evidence.Words, state.Step.Question is { } choosing && answer.Word != AnswerWord.Confirm ? choosing.Text : "Nothing was asked.");
        }

        bool isYes = answer.Word == AnswerWord.Yes;
        AnswerGiven given = new(now, state.Step.Id, isYes, answer.Evidence);
        return isYes == question.Proper
            ? state.Unexplained(state.Step.Id) is null ? [given, .. _route.Leave(answer.Evidence)] : [given, new DictationAsked(now, DictationPurpose.AnswerReason)]
            : question.StopsForGas ? [given, .. _halt.Stop(StopCause.GasSmell, answer.Evidence)]
            : question.UnsafeAfter <= state.ImproperAnswers(state.Step.Id) + 1
                ? [given, new UnsafeAsked(now, state.Step.Id, $"\"{question.Text}\" was answered {(isYes ? "yes" : "no")}", null)]
            : [given, .. _route.Repeat(question)];
    }

    IReadOnlyList<StartupEvent> Choose(Phrase.Choice choice) => state.Step.Question?.Choices.Any(known => known.Value == choice.Value) == true
        ? [new ChoiceMade(now, state.Step.Id, ChoiceTopic.Step, choice.Value, choice.Evidence), .. new Route(state, now, state.Step.Question.DraftOf(choice.Value)).Leave(choice.Evidence)]
        : Refuse(choice.Evidence.Words, "Nothing was asked.");

    IReadOnlyList<StartupEvent> Obey(Phrase.Command command)
    {
        Step step = state.Step;
        string said = Commands.Of(command.Word).Id;
        return command.Word switch
        {
            CommandWord.Done or CommandWord.Next when PlateQuestion.Of(state) is { } plate => State(plate, said),
            CommandWord.Done or CommandWord.Next => Leave(command, said),
            CommandWord.GoBack => _route.WhyNotBack() is { } why ? Refuse(said, why) : _route.Back(),
            CommandWord.Disregard => state.LastEntered is { } last ? [new ReadingScratched(now, last)]
                : Refuse(said, "There is no entry of this step to disregard. Say go back to return to the step before."),
            CommandWord.SkipStep => _route.WhyNotSkip() is { } why ? Refuse(said, why) : [new DictationAsked(now, DictationPurpose.SkipReason)],
            CommandWord.Note => [new DictationAsked(now, DictationPurpose.Note)],
            CommandWord.StartTimer => step.Timer is { } timer ? [new TimerStarted(now, step.Id, timer.Duration, now.Steady)] : Refuse(said, "This step has no timer."),
            CommandWord.StandBy => [new ListeningPaused(now)],
            CommandWord.GoAhead => Refuse(said, "Listening is on."),
            CommandWord.ShortPrompts or CommandWord.FullPrompts => [new PromptsChosen(now, command.Word == CommandWord.FullPrompts)],
            CommandWord.Finish => Finish(said),
            _ => [new QuestionAsked(now, command.Word)],
        };
    }

    /// <summary>What lies outside of a limit of practice needs a reason, and then stays.</summary>
    IReadOnlyList<StartupEvent> Leave(Phrase.Command command, string said) =>
        _route.WhyStay(command.Word) is { } why ? Refuse(said, why)
        : _route.Unexcused().Any() ? [new DictationAsked(now, DictationPurpose.LimitReason)]
        : _route.Leave(command.Evidence);

    /// <summary>The limit that was said from the plate judges from now on; a strange one is asked a second time.</summary>
    IReadOnlyList<StartupEvent> State(PlateQuestion plate, string said)
    {
        if (plate.Said(state) is not { } limit)
        {
            return Refuse(said, plate.Text);
        }

        Plausible plausible = LimitPlausibility.Of(limit, state.Plan.Appliance);
        return plausible.Impossible is { } impossible ? Refuse(said, $"{impossible} Say the wrong one again.")
            : plausible.Unusual is not { } unusual ? [new LimitStated(now, state.Step.Id, limit)]
            : state.DoubtedLimit?.Limit == limit ? [new LimitStated(now, state.Step.Id, limit with { Unusual = $"{unusual} It was said twice." })]
            : [new LimitDoubted(now, state.Step.Id, limit, unusual)];
    }

    IReadOnlyList<StartupEvent> Finish(string said)
    {
        if (state.End is not null)
        {
            return Refuse(said, "It is ending already: make the furnace safe first.");
        }

        if (state.Step.Kind != StepKind.Sign)
        {
            return [new FinishAsked(now, false)];
        }

        ImmutableArray<Message> obstacles = _route.ObstaclesToSigning();
        return obstacles.IsEmpty ? [new FinishAsked(now, true)]
            : Refuse(said, $"It cannot be signed: {Message.Join("; ", obstacles)}. Say next to go there, or go back and say finish to end without putting the furnace into service.");
    }

    IReadOnlyList<StartupEvent> WhileConfirming(Phrase phrase)
    {
        EnteredReading doubtful = state.Doubtful!;
        return phrase switch
        {
            Phrase.Answer { Word: AnswerWord.No } or Phrase.Command { Word: CommandWord.Disregard } => [new ConfirmationRefused(now)],
            Phrase.Answer => _entry.Enter(doubtful),
            Phrase.Reading again when doubtful.IsSaidBy(again) => _entry.HearAlike(again, doubtful),
            Phrase.Reading when state.IsStopped => Refuse(phrase.Evidence.Words, Halt.IsStopped),
            Phrase.Reading other => [new ConfirmationRefused(now), .. _entry.Hear(other)],
            Phrase.Command { Word: CommandWord.SayAgain or CommandWord.Help or CommandWord.WhatIsOpen or CommandWord.HowLong } command => [new QuestionAsked(now, command.Word)],
            Phrase.Command command => Refuse(Commands.Of(command.Word).Id, "First say confirm or no."),
            _ => [],
        };
    }

    IReadOnlyList<StartupEvent> WhileChoosing(Phrase phrase) => (phrase, state.Choosing) switch
    {
        (Phrase.Choice choice, ChoiceTopic.SafeBy) =>
            [new ChoiceMade(now, state.Step.Id, ChoiceTopic.SafeBy, choice.Value, choice.Evidence), new DictationAsked(now, DictationPurpose.ResumeReason)],
        (Phrase.Choice choice, _) =>
            [new ChoiceMade(now, state.Step.Id, ChoiceTopic.EndKind, choice.Value, choice.Evidence), .. new Ending(state, now).Chosen(choice.Value, state.EndReason)],
        (Phrase.Answer { Word: AnswerWord.No } or Phrase.Command { Word: CommandWord.Disregard }, _) => [new DictationCancelled(now)],
        (Phrase.Command { Word: CommandWord.SayAgain or CommandWord.Help or CommandWord.WhatIsOpen } command, _) => [new QuestionAsked(now, command.Word)],
        (Phrase.Command command, _) => Refuse(Commands.Of(command.Word).Id, "First choose one, or say no."),
        _ => [],
    };

    IReadOnlyList<StartupEvent> WhileJumping(Phrase phrase) => phrase switch
    {
        Phrase.Answer { Word: AnswerWord.No } or Phrase.Command { Word: CommandWord.Disregard } => [new JumpDeclined(now)],
        Phrase.Answer => _route.To(state.Target!),
        Phrase.Reading reading => [new JumpDeclined(now), .. _entry.Hear(reading)],
        Phrase.Command { Word: CommandWord.SayAgain } command => [new QuestionAsked(now, command.Word)],
        Phrase.Command command => Refuse(Commands.Of(command.Word).Id, "First say confirm to go there, or no."),
        _ => [],
    };

    IReadOnlyList<StartupEvent> WhileSigning(Phrase phrase) => phrase switch
    {
        Phrase.Answer { Word: AnswerWord.No } or Phrase.Command { Word: CommandWord.Disregard } => [new FinishDeclined(now)],
        Phrase.Answer { Word: AnswerWord.Yes } yes when state.Signs && !state.Exceptions.IsEmpty => Refuse(yes.Evidence.Words, "There are exceptions: only confirm signs the record with them, or say no."),
        Phrase.Answer when state.Signs => [new StepDone(now, state.Step.Id, phrase.Evidence), new StartupSigned(now, state.Job!.Technician)],
        Phrase.Answer => [new DictationAsked(now, DictationPurpose.EndReason)],
        Phrase.Command { Word: CommandWord.ReadBack or CommandWord.SayAgain } command => [new QuestionAsked(now, command.Word)],
        Phrase.Command command => Refuse(Commands.Of(command.Word).Id, "First answer: confirm, or no."),
        _ => [],
    };

    IReadOnlyList<StartupEvent> Refuse(string said, Message reason) => [new CommandRefused(now, said, reason)];
}
