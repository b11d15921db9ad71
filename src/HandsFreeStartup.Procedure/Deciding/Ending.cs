using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Record;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>How a start-up ends without a signature: why, and the steps that make the furnace safe.</summary>
sealed class Ending(StartupState state, Now now)
{
    const string NotInOrder = "not-in-order";
    const string OwnersWish = "owners-wish";

    /// <summary>Why it is not put into service, as chosen.</summary>
    public static ImmutableArray<SpokenChoice> Kinds { get; } = [new(NotInOrder, "not in order"), new(OwnersWish, "owner's wish")];

    /// <summary>The reason was given. Where anything speaks against the furnace, the owner's wish is no reason.</summary>
    public IReadOnlyList<StartupEvent> Because(string reason) =>
        state.End is not null ? [new EndedOutOfService(now, reason)]
        : state.IsStopped || SpeaksAgainst() ? Decide(EndKind.NotInOrder, reason)
        : [new ChoiceAsked(now, ChoiceTopic.EndKind, reason)];

    /// <summary>The kind was chosen.</summary>
    public IReadOnlyList<StartupEvent> Chosen(string kind, string reason) => Decide(kind == OwnersWish ? EndKind.OwnersWish : EndKind.NotInOrder, reason);

    /// <summary>It is decided. While it is stopped for safety nobody is sent back to the furnace.</summary>
    public IReadOnlyList<StartupEvent> Decide(EndKind kind, string reason) => state.IsStopped
        ? [new EndDecided(now, kind, reason), new EndedOutOfService(now, reason)]
        : [new EndDecided(now, kind, reason), new StepEntered(now, state.Plan.MakingSafe[0].Id, Arrival.Forward)];

    bool SpeaksAgainst() =>
        state.Exceptions.Any(exception => exception.Kind <= ExceptionKind.UnsafeAnswer)
        || state.Plan.Steps.Any(step => new Route(state, now).Outside(step).Any(outside => outside.Weight == LimitWeight.Must));
}
