using System.Collections.Immutable;
using System.Text.RegularExpressions;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Deciding;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Showing;

/// <summary>What is offered is what is taken: each phrase is tried on the decision itself before it is shown.</summary>
static partial class Offers
{
    /// <summary>What leads on from here, as short texts: readings first, then answers, then commands.</summary>
    public static IEnumerable<string> Of(StartupState state, Now now) => state.Phase switch
    {
        Phase.Finished or Phase.Preparing => [],
        _ when state.IsPaused => [Commands.Of(CommandWord.GoAhead).Id],
        Phase.Dictating => [FreeSpeech, "F6 cancels"],
        Phase.Jumping => ["confirm", "no"],
        Phase.ReadingBack => ["confirm", "no, to say it again"],
        Phase.Confirming => ["confirm", "no", "or the reading again"],
        Phase.Condemning => ["confirm", "no (only if it was misheard)"],
        Phase.Signing => ["confirm", "no", .. state.Signs && !state.Exceptions.IsEmpty ? ["read back"] : Array.Empty<string>()],
        Phase.Choosing => [.. Expectations.Choices(state).Select(choice => choice.Says), "no"],
        Phase.Stopped => Stopped(state, now),
        _ => Asking(state, now),
    };

    /// <summary>Everything that is taken now, for "help".</summary>
    public static IEnumerable<string> All(StartupState state, Now now) =>
    [
        .. Of(state, now),
        .. Expectations.Of(state).Readings.Where(reading => reading.Field.Id == FieldId.RoomCo).Select(_ => Room).Except(Of(state, now)),
        .. Expectations.Of(state).Commands.Where(word => !Commands.Of(word).IsSafetyPhrase && Takes(state, now, Command(word))).Select(word => Commands.Of(word).Id).Except(Of(state, now)),
        .. Expectations.Of(state).Steps.IsEmpty || state.StepIndex == 0 ? Array.Empty<string>() : ["go to + the name of an earlier step"],
        .. Expectations.Of(state).Commands.Where(word => Commands.Of(word).IsSafetyPhrase).Select(word => Commands.Of(word).Id),
    ];

    /// <summary>Whether a phrase leads to anything but a refusal.</summary>
    public static bool Takes(StartupState state, Now now, Phrase phrase) =>
        new Decider(state, now).Decide(phrase) is { Count: > 0 } events && events.All(happened => happened is not CommandRefused);

    static IEnumerable<string> Stopped(StartupState state, Now now) =>
    [
        .. Halt.MustMeasure(state) ? [Room] : Array.Empty<string>(),
        .. Takes(state, now, Answer(AnswerWord.Yes)) ? [state.AsksFreshSmell ? "yes" : "yes (only if it is safe to go on)"] : Array.Empty<string>(),
        .. Takes(state, now, Answer(AnswerWord.No)) ? ["no"] : Array.Empty<string>(),
        .. state.Timers.Values.Any(timer => !timer.IsEnded) ? ["how long"] : Array.Empty<string>(),
        "finish",
    ];

    static IEnumerable<string> Asking(StartupState state, Now now)
    {
        Step step = state.Step;
        if (RoomAir.WhyStay(state, now) is not null)
        {
            return [Room, .. UnsafeAnswers(state, now), .. state.AirAwaited is not null ? ["how long"] : Array.Empty<string>(), .. Moves(state, now, CommandWord.Finish)];
        }

        if (PlateQuestion.Of(state) is { } plate)
        {
            return [.. plate.Bounds.Select(Reading), .. Moves(state, now, CommandWord.Next)];
        }

        ImmutableArray<string> moves = [.. Moves(state, now, step.Kind switch
        {
            StepKind.Sign => [CommandWord.Finish, CommandWord.Next],
            StepKind.Wait => [CommandWord.Next, CommandWord.StartTimer],
            StepKind.Read or StepKind.Adjust => [CommandWord.Next],
            StepKind.Ask => [],
            _ => [CommandWord.Done],
        })];
        bool goesOn = moves.Contains("next");
        return
        [
            .. step.Readings.Where(demand => IsWanted(state, step, demand, goesOn)).Select(demand => state.Plan.FieldOf(demand.FieldId))
                .Select(field => Reading(step.Also.GetValueOrDefault(field.Id, field.SpokenNames)[0], field)),
            .. step.Question is { Choices: { IsEmpty: false } choices } ? choices.Select(choice => choice.Says) : step.Question is null ? [] : ["yes", "no"],
            .. step.Kind == StepKind.Wait && !goesOn && state.Timers.ContainsKey(step.Id) ? ["how long"] : moves,
            .. state.LastEntered is null ? Array.Empty<string>() : ["disregard"],
            .. step.Readings.IsEmpty || goesOn || state.End is not null || step.Readings.Any(demand => !state.Counts(demand.FieldId, step.Scope)) ? Array.Empty<string>() : ["finish"],
        ];
    }

    /// <summary>An answer that tells of danger is taken whatever else is waited for.</summary>
    static IEnumerable<string> UnsafeAnswers(StartupState state, Now now) =>
        new[] { AnswerWord.Yes, AnswerWord.No }.Where(word => Takes(state, now, Answer(word))).Select(word => Answers.Of(word).Ways[0]);

    /// <summary>What is missing; where the way on is barred by a value, or it is being adjusted, the value again.</summary>
    static bool IsWanted(StartupState state, Step step, ReadingDemand demand, bool goesOn) =>
        !state.Counts(demand.FieldId, step.Scope)
        || step.Kind == StepKind.Adjust
        || (!goesOn && step.Readings.All(each => state.Counts(each.FieldId, step.Scope))
            && (demand.Settles is { Twice: true } ? !state.Agreed.Contains(new ReadingKey(demand.FieldId, step.Scope ?? "")) || !IsUnsettled(state, step) : !IsUnsettled(state, step)));

    static bool IsUnsettled(StartupState state, Step step) =>
        step.Readings.Any(demand => demand.Settles is { Twice: true } && !state.Agreed.Contains(new ReadingKey(demand.FieldId, step.Scope ?? "")));

    static IEnumerable<string> Moves(StartupState state, Now now, params CommandWord[] words) =>
        words.Where(word => Takes(state, now, Command(word))).Select(word => Commands.Of(word).Id);

    static Phrase.Command Command(CommandWord word) => new(word, Evidence.Typed(Commands.Of(word).Id));

    static Phrase.Answer Answer(AnswerWord word) => new(word, Evidence.Typed(Answers.Of(word).Ways[0]));

    static string Room { get; } = Reading(Fields.Find(FieldId.RoomCo)!);

    /// <summary>A form in another language: what is said stays as it is heard, and only what is told about it is put into other words.</summary>
    public static string In(Language language, string form)
    {
        if (Told.Contains(form))
        {
            return language.Text(form);
        }

        Match parts = Remark.Match(form);
        return parts.Success ? $"{parts.Groups[1].Value}{language.Text(parts.Groups[2].Value)}{parts.Groups[3].Value}" : form;
    }

    /// <summary>Forms in which nothing stands that is said.</summary>
    static readonly ImmutableArray<string> Told = [FreeSpeech, "F6 cancels", "or the reading again"];

    const string FreeSpeech = "free speech: say it in one go";

    [GeneratedRegex(@"^(.+?(?: \+ | \(|, ))(.+?)( \(.+\)|\))?$", RegexOptions.CultureInvariant)]
    private static partial Regex Remark { get; }

    static string Reading(Field field) => Reading(field.SpokenNames[0], field);

    static string Reading(string name, Field field) => $"{name} + {field.FewestDecimals switch
    {
        0 => $"number ({field.Unit.Symbol})",
        1 => $"number with one decimal ({field.Unit.Symbol})",
        _ => FormattableString.Invariant($"number with {field.FewestDecimals} decimals ({field.Unit.Symbol})"),
    }}";
}
