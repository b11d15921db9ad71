using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Deciding;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Safety;

namespace HandsFreeStartup.Procedure.Showing;

/// <summary>What may be said in a given state.</summary>
static class Expectations
{
    static readonly ImmutableArray<CommandWord> Safety = [CommandWord.EmergencyStop, CommandWord.GasSmell];

    public static Expectation Of(StartupState state) => Asked(state) is var asked && Hears(state, asked) ? asked with { Readings = [.. asked.Readings, RoomMonoxide] } : asked;

    /// <summary>Carbon monoxide in the room is heard by its full name wherever anything is listened to, asked or not.</summary>
    static bool Hears(StartupState state, Expectation asked) =>
        state is { IsPaused: false, Phase: not (Phase.Preparing or Phase.Finished or Phase.Dictating) } && asked.Readings.All(reading => reading.Field.Id != FieldId.RoomCo);

    static Expectation Asked(StartupState state) => state.Phase switch
    {
        Phase.Preparing or Phase.Finished => Only([]),
        _ when state.IsPaused => Only([CommandWord.GoAhead]),
        Phase.Dictating => new([], Safety, [], Dictation: true),
        Phase.Signing => Only([CommandWord.Disregard, CommandWord.ReadBack, CommandWord.SayAgain], AnswerWord.Confirm, AnswerWord.Yes, AnswerWord.No),
        Phase.Condemning => Only([CommandWord.Disregard, CommandWord.SayAgain, CommandWord.WhatIsOpen], AnswerWord.Confirm, AnswerWord.Yes, AnswerWord.No),
        Phase.Jumping => Only([CommandWord.Disregard, CommandWord.SayAgain], AnswerWord.Confirm, AnswerWord.Yes, AnswerWord.No) with { Readings = Readings(state) },
        Phase.ReadingBack => Only([CommandWord.Disregard, CommandWord.SayAgain], AnswerWord.Confirm, AnswerWord.Yes, AnswerWord.No),
        Phase.Choosing => Only([CommandWord.Disregard, CommandWord.SayAgain, CommandWord.WhatIsOpen, CommandWord.Help], AnswerWord.No) with { Choices = Choices(state) },
        Phase.Stopped => Only([CommandWord.Finish, CommandWord.SayAgain, CommandWord.WhatIsOpen, CommandWord.HowLong, CommandWord.Help], AnswerWord.Yes, AnswerWord.No) with
        {
            Readings = [RoomMonoxide with { Names = [.. RoomMonoxide.Names, "monoxide"] }],
        },
        Phase.Confirming => new(
            state.IsStopped ? [] : Readings(state),
            [CommandWord.Disregard, CommandWord.SayAgain, CommandWord.HowLong, CommandWord.WhatIsOpen, CommandWord.Help, .. Safety],
            [AnswerWord.Confirm, AnswerWord.Yes, AnswerWord.No]),
        _ => new(Readings(state), [.. Commands(state), .. Safety], state.Step.Question is { Choices.IsEmpty: true } ? [AnswerWord.Yes, AnswerWord.No] : [])
        {
            Choices = state.Step.Question?.Choices ?? [],
            Steps = state.IsMakingSafe ? [] : state.Plan.SpokenSteps,
        },
    };

    /// <summary>The words that are asked for; none outside of a choice.</summary>
    public static ImmutableArray<SpokenChoice> Choices(StartupState state) => state.Choosing switch
    {
        ChoiceTopic.SafeBy => SafeBy.All,
        ChoiceTopic.EndKind => Ending.Kinds,
        _ => [],
    };

    static ExpectedReading RoomMonoxide { get; } = ExpectedReading.Of(Fields.Find(FieldId.RoomCo)!);

    static Expectation Only(ImmutableArray<CommandWord> commands, params ImmutableArray<AnswerWord> answers) =>
        new([], [.. commands, .. Safety], answers);

    static ImmutableArray<ExpectedReading> Readings(StartupState state) =>
        PlateQuestion.Of(state) is { } plate ? [.. plate.Bounds.Select(ExpectedReading.Of)] : Readings(state.Plan, state.Step);

    static ImmutableArray<ExpectedReading> Readings(StartupPlan plan, Step step) =>
    [
        .. step.Readings.Select(demand => plan.FieldOf(demand.FieldId, step.Scope))
            .Select(field => new ExpectedReading(field, [.. field.SpokenNames, .. step.Also.GetValueOrDefault(field.Id, [])])),
    ];

    static IEnumerable<CommandWord> Commands(StartupState state)
    {
        Step step = state.Step;
        ImmutableArray<CommandWord> forward = step.Kind switch
        {
            StepKind.Ask => [],
            StepKind.Sign => [CommandWord.Next],
            StepKind.Wait => [CommandWord.Next, CommandWord.Done, CommandWord.StartTimer],
            _ => [CommandWord.Done, CommandWord.Next],
        };

        // In noise "note" loses its end and would answer the question with "no".
        ImmutableArray<CommandWord> noted = step.Question is null ? [CommandWord.Note] : [];
        return
        [
            .. forward,
            CommandWord.GoBack, CommandWord.SayAgain, CommandWord.Disregard, CommandWord.SkipStep, .. noted, CommandWord.HowLong,
            CommandWord.ReadBack, CommandWord.StandBy, CommandWord.WhatIsOpen, CommandWord.Help, CommandWord.Finish,
            CommandWord.TellMore, CommandWord.Explain, CommandWord.ShortPrompts, CommandWord.FullPrompts,
        ];
    }
}
