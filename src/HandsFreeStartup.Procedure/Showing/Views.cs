using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Deciding;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Procedure.Showing;

/// <summary>Makes the view of a state.</summary>
static class Views
{
    public static StartupView Of(StartupState state, Now now)
    {
        Step step = state.Step;
        string scope = step.Scope ?? "";
        return new StartupView
        {
            Title = state.Plan.Title,
            Appliance = state.Plan.Appliance.Title,
            Site = state.Plan.Site.Title,
            IsDemonstration = state.Job?.IsDemonstration ?? false,
            Phase = state.Phase,
            StepNumber = Number(state),
            StepCount = Count(state),
            Section = step.Section,
            StepTitle = step.Title,
            Do = (RoomAir.WhyStay(state, now) ?? Do(state)).Shown,
            Why = step.Why?.Shown,
            Caution = step.Caution?.Shown,
            ListeningFor = [.. Offers.Of(state, now)],
            Question = Question(state, now)?.Shown,
            IsPaused = state.IsPaused,
            Readings = [.. Unaired(state), .. PlateQuestion.Of(state) is { } plate ? Bounds(state, plate) : Readings(state, step, scope)],
            Results = [.. state.Results(scope).Select(Line)],
            Timers = [.. state.Timers.Where(timer => !timer.Value.IsEnded || timer.Key == step.Id).Select(timer => new TimerLine(
                StepTitles.Of(state.Plan, timer.Key), timer.Value.Remaining(now), timer.Value.Duration))],
            Open = [.. state.Open.Select(open => open.IsClosed ? $"{open.Thing.Name} (leak check missing)" : open.Thing.Name)],
            Exceptions = [.. state.Exceptions.Select(exception => exception.Text)],
            Alarm = AlarmOf(state),
            Expectation = Expectations.Of(state),
            Mark = state.Job?.Mark,
            Imperative = Imperatives.Of(state, now),
            Stage = step.Scope switch { null => "", "low" or "high" => $"{step.Scope} fire", var room => room },
            Last = Last(state),
            Series = [.. step.Readings.Where(demand => demand.Settles is not null).Select(demand => Series(state, new ReadingKey(demand.FieldId, scope))).Where(series => series.Values.Length > 1)],
        };
    }

    static Alarm? AlarmOf(StartupState state) => state.IsStopped ? Alarms.Of(state.Cause, state.Plan.Settings)
        : state.Phase == Phase.Condemning || (state.IsUnsafe && state.Phase == Phase.Finished) ? Alarms.Unsafe(state.Condition!.Condition)
        : null;

    static SeriesLine Series(StartupState state, ReadingKey key) =>
        new(state.Plan.FieldOf(key.FieldId).Label, [.. state.Samples(key, state.Step.Id).Select(sample => sample.Value)], state.IsMoving(key));

    static ReadingLine? Last(StartupState state) =>
        (state.Doubtful?.Key ?? state.LastEntered) is { } key && !PlateQuestion.IsBound(key) ? Reading(state, key.FieldId, key.Scope) : null;

    static int Number(StartupState state) => 1 + state.StepIndex - (state.IsMakingSafe ? state.Plan.Steps.Length : 0);

    static int Count(StartupState state) => state.IsMakingSafe ? state.Plan.MakingSafe.Length : state.Plan.Steps.Length;

    /// <summary>What to do in the current step, with the advice of an adjustment.</summary>
    public static Message Do(StartupState state) => PlateQuestion.Of(state) is { } plate ? plate.Text : Adjusting.Of(state).Sentence is { IsEmpty: false } advice ? $"{state.Step.Do} {advice}" : state.Step.Do;

    static ResultLine Line(CalculatedResult result) => new(result.Label, ResultWords.Of(result), result.Verdict, Labels.WithSource(result.Limit))
    {
        Judged = VerdictWords.Of(result.Verdict, result.Limit),
    };

    /// <summary>The step's own readings first, then others of the same stage.</summary>
    static IEnumerable<ReadingLine> Readings(StartupState state, Step step, string scope)
    {
        ImmutableArray<string> own = [.. step.Readings.Select(demand => demand.FieldId)];
        IEnumerable<string> others = scope.Length == 0 ? [] : state.Keys.Where(key => key.Scope == scope).Select(key => key.FieldId);
        foreach (string fieldId in own.Concat(others).Distinct())
        {
            string? limit = step.Readings.FirstOrDefault(demand => demand.FieldId == fieldId)?.LimitName;
            ReadingLine line = Reading(state, fieldId, scope);
            string found = state.Found(new ReadingKey(fieldId, scope)) is { } first ? ShownValue.Of(first).Number : "";
            yield return line.State == ReadingState.Missing ? line with { Good = Good(state, limit, step.Scope) } : found == line.Value ? line : line with { Found = found };
        }
    }

    static ReadingLine Reading(StartupState state, string fieldId, string scope)
    {
        Field field = state.Plan.FieldOf(fieldId);
        return state.Doubtful is { } doubtful && doubtful.Key == new ReadingKey(fieldId, scope)
                ? new ReadingLine(field.Label, ShownValue.Of(doubtful).Number, doubtful.UnitSymbol, ReadingState.Doubtful, null, "")
            : state.Reading(fieldId, scope) is { } kept
                ? new ReadingLine(
                    field.Label, ShownValue.Of(kept.Reading).Number, kept.Reading.UnitSymbol, kept.Reading.IsEarly && kept.State != ReadingState.Void ? ReadingState.Early : kept.State,
                    kept.State == ReadingState.Void ? null : kept.Reading.Verdict, Labels.WithSource(kept.Reading.Limit))
                {
                    Text = ShownValue.Of(kept.Reading).Text,
                    Judged = kept.State == ReadingState.Void ? "" : VerdictWords.Of(kept.Reading.Verdict, kept.Reading.Limit),
                }
            : new ReadingLine(field.Label, "--", field.Unit.Symbol, ReadingState.Missing, null, "");
    }

    /// <summary>What holds up the step stands before its own readings.</summary>
    static IEnumerable<ReadingLine> Unaired(StartupState state) => state.Unaired is { Key: var key } ? [Reading(state, key.FieldId, key.Scope)] : [];

    /// <summary>The limit of the files in the unit that is said.</summary>
    static string Good(StartupState state, string? name, string? scope) =>
        state.Limit(name, scope) is { } limit ? $"{limit.In(Unit.Find(limit.UnitSymbol) is { } own ? state.Plan.Settings.In(own) : null).Text}, {limit.Source}" : "";

    /// <summary>What was said from the rating plate so far.</summary>
    static IEnumerable<ReadingLine> Bounds(StartupState state, PlateQuestion plate) => plate.Bounds.Select(bound =>
        state.Doubtful is { } doubtful && doubtful.Key == new ReadingKey(bound.Id, plate.Name)
            ? new ReadingLine(bound.Label, ShownValue.Of(doubtful).Number, doubtful.UnitSymbol, ReadingState.Doubtful, null, "")
        : state.Reading(bound.Id, plate.Name) is { } kept
            ? new ReadingLine(bound.Label, ShownValue.Of(kept.Reading).Number, kept.Reading.UnitSymbol, kept.State, null, "")
            : new ReadingLine(bound.Label, "--", bound.Unit.Symbol, ReadingState.Missing, null, ""));

    /// <summary>What is asked now, or null.</summary>
    public static Message? Question(StartupState state, Now now) => state.Phase switch
    {
        Phase.Confirming => Announcer.ReadBack(state.Doubtful!),
        Phase.Dictating => Announcer.DictationPrompt(state.Purpose),
        Phase.ReadingBack => Announcer.ReadBack(state.Heard!),
        Phase.Jumping => Announcer.JumpPrompt(state, now),
        Phase.Choosing => Announcer.ChoicePrompt(state.Choosing),
        Phase.Signing => Announcer.FinishPrompt(state),
        Phase.Stopped => Halt.Question(state),
        Phase.Condemning => Announcer.CondemnPrompt,
        Phase.Asking => state.Step.Question?.Text,
        _ => null,
    };
}
