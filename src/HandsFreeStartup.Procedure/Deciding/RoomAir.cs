using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Safety;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>Carbon monoxide in the room that is said where nothing asks for it: a CO alarm on the belt keeps to no checklist.</summary>
sealed class RoomAir(StartupState state, Now now)
{
    readonly Entry _entry = new(state, now);

    /// <summary>Whether the phrase is such a value: the step, a read-back or a stop takes its own.</summary>
    public static bool IsUnasked(StartupState state, Phrase phrase) => phrase is Phrase.Reading { Field.Id: FieldId.RoomCo } reading && state.Phase switch
    {
        Phase.Stopped => false,
        Phase.Confirming when state.Doubtful!.IsSaidBy(reading) => false,
        Phase.Asking or Phase.Confirming or Phase.Jumping => state.IsStopped || PlateQuestion.Of(state) is not null || state.Step.Readings.All(demand => demand.FieldId != FieldId.RoomCo),
        _ => true,
    };

    /// <summary>Whether the phrase is a value of the room that asks for something, its uncertainty added.</summary>
    public static bool IsBad(StartupState state, Phrase phrase, Now now) =>
        phrase is Phrase.Reading { Field.Id: FieldId.RoomCo } reading && !CarbonMonoxideTier.IsClear(new Entry(state, now).BetweenSteps(reading));

    /// <summary>Why nothing leads on from here; null where the air is not in doubt. What makes a furnace safe is never held up.</summary>
    public static Message? WhyStay(StartupState state, Now now) => state is not { Unaired: { } unaired, IsMakingSafe: false } ? null
        : state.AirAwaited is { Value: var running }
            ? (Message)$"{Told(unaired)} Wait {running.Remaining(now)}, then say room monoxide and the number again."
        : $"{Told(unaired)} Measure the room again: say room monoxide and the number.";

    /// <summary>What asks for nothing is not entered; anything else interrupts whatever was being asked.</summary>
    public IReadOnlyList<StartupEvent> Hear(Phrase.Reading reading)
    {
        EnteredReading entered = _entry.BetweenSteps(reading);
        bool asksForNothing = state.Unaired is null && CarbonMonoxideTier.IsClear(entered);
        return asksForNothing && state.Phase == Phase.Dictating ? new Dictating(state, now).WhileDictating(new Phrase.Dictation(reading.Evidence))
            : asksForNothing
            ? [new CommandRefused(now, reading.Evidence.Words, $"CO in the room {ShownValue.Of(entered)} asks for nothing, and nothing asks for it here.")]
            : [.. Interrupting(), .. state.IsStopped ? new Halt(state, now).WhileStopped(reading) : Entered(entered)];
    }

    IReadOnlyList<StartupEvent> Entered(EnteredReading entered) => entered.Evidence.Certainty == Certainty.Green ? _entry.Enter(entered)
        : state.Phase == Phase.Condemning ? [.. _entry.Feared(entered), new CommandRefused(now, entered.Evidence.Words, Halt.NotClear)]
        : _entry.ReadBack(entered);

    /// <summary>What was being asked is taken back, so that it is asked again; only the question whether a furnace is unsafe stays.</summary>
    IReadOnlyList<StartupEvent> Interrupting() => state.Phase switch
    {
        Phase.Signing => [new FinishDeclined(now)],
        Phase.Jumping => [new JumpDeclined(now)],
        Phase.Confirming => [new ConfirmationRefused(now)],
        Phase.Dictating or Phase.ReadingBack or Phase.Choosing => [new DictationCancelled(now)],
        _ => [],
    };

    static Message Told(MonoxideJudged unaired) => $"CO in the room was said to be {MonoxideWords.Value(unaired)!}. {unaired.Do}";
}
