using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Deciding;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Showing;

/// <summary>What may be said in a given state.</summary>
static class Expectations
{
    static readonly ImmutableArray<CommandWord> Safety = [CommandWord.EmergencyStop, CommandWord.GasSmell];

    public static Expectation Of(StartupState state) => state.Phase switch
    {
        Phase.Preparing or Phase.Finished => Only([]),
        _ when state.IsPaused => Only([CommandWord.GoAhead]),
        Phase.Dictating => new([], Safety, [], Dictation: true),
        Phase.Signing => Only([CommandWord.Disregard], AnswerWord.Confirm, AnswerWord.Yes, AnswerWord.No),
        Phase.Condemning => Only([CommandWord.Disregard, CommandWord.SayAgain, CommandWord.WhatIsOpen], AnswerWord.Confirm, AnswerWord.Yes, AnswerWord.No),
        Phase.Stopped => Only([CommandWord.Finish, CommandWord.SayAgain, CommandWord.WhatIsOpen, CommandWord.HowLong], AnswerWord.Yes, AnswerWord.No),
        Phase.Confirming => new(
            Readings(state),
            [CommandWord.Disregard, CommandWord.SayAgain, CommandWord.HowLong, CommandWord.WhatIsOpen, CommandWord.Help, .. Safety],
            [AnswerWord.Confirm, AnswerWord.Yes, AnswerWord.No]),
        _ => new(Readings(state), [.. Commands(state.Step), .. Safety], state.Step.Question is null ? [] : [AnswerWord.Yes, AnswerWord.No]),
    };

    static Expectation Only(ImmutableArray<CommandWord> commands, params ImmutableArray<AnswerWord> answers) =>
        new([], [.. commands, .. Safety], answers);

    static ImmutableArray<ExpectedReading> Readings(StartupState state) =>
        PlateQuestion.Of(state) is { } plate ? [.. plate.Bounds.Select(ExpectedReading.Of)] : Readings(state.Plan, state.Step);

    static ImmutableArray<ExpectedReading> Readings(StartupPlan plan, Step step) =>
    [
        .. step.Readings.Select(demand => plan.FieldOf(demand.FieldId))
            .Select(field => new ExpectedReading(field, [.. field.SpokenNames, .. step.Also.GetValueOrDefault(field.Id, [])])),
    ];

    static IEnumerable<CommandWord> Commands(Step step)
    {
        ImmutableArray<CommandWord> forward = step.Kind switch
        {
            StepKind.Ask => [],
            StepKind.Sign => [],
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
        ];
    }
}
