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
/// <param name="state">The state.</param>
/// <param name="now">The present.</param>
/// <param name="language">In which the texts are.</param>
sealed class Views(StartupState state, Now now, Language language)
{
    public StartupView View()
    {
        Step step = state.Step;
        string scope = step.Scope ?? "";
        return new StartupView
        {
            Title = language.Name(state.Plan.Title),
            Appliance = state.Plan.Appliance.Title,
            Site = state.Plan.Site.Title,
            IsDemonstration = state.Job?.IsDemonstration ?? false,
            Phase = state.Phase,
            StepNumber = Number(state),
            StepCount = Count(state),
            Section = language.Name(step.Section),
            StepTitle = language.Name(step.Title),
            Do = language.Shown(RoomAir.WhyStay(state, now) ?? Do(state)),
            Why = Shown(step.Why),
            Caution = Shown(step.Caution),
            ListeningFor = [.. Offers.Of(state, now).Select(form => Offers.In(language, form))],
            Question = Shown(Question(state, now)),
            IsPaused = state.IsPaused,
            Readings = [.. Unaired(), .. PlateQuestion.Of(state) is { } plate ? Bounds(plate) : Readings(step, scope)],
            Results = [.. state.Results(scope).Select(Line)],
            Timers = [.. state.Timers.Where(timer => !timer.Value.IsEnded || timer.Key == step.Id).Select(timer => new TimerLine(
                language.Name(StepTitles.Of(state.Plan, timer.Key)), timer.Value.Remaining(now), timer.Value.Duration))],
            Open = [.. state.Open.Select(open => open.IsClosed ? $"{language.Name(open.Thing.Name)} ({language.Text("leak check missing")})" : language.Name(open.Thing.Name))],
            Exceptions = [.. state.Exceptions.Select(exception => language.Shown(exception.Told))],
            Alarm = AlarmOf(state) is { } alarm ? new Alarm(language.Text(alarm.Title), [.. alarm.Lines.Select(language.In)]) : null,
            Expectation = Expectations.Of(state),
            Mark = state.Job?.Mark,
            Imperative = Imperatives.Of(state, now, language),
            Stage = step.Scope switch { null => "", "low" or "high" => language.Text($"{step.Scope} fire"), var room => language.Name(room) },
            Last = Last(),
            Language = language,
            Series = [.. step.Readings.Where(demand => demand.Settles is not null).Select(demand => Series(new ReadingKey(demand.FieldId, scope))).Where(series => series.Values.Length > 1)],
        };
    }

    static Alarm? AlarmOf(StartupState state) => state.IsStopped ? Alarms.Of(state.Cause, state.Plan.Settings)
        : state.Phase == Phase.Condemning || (state.IsUnsafe && state.Phase == Phase.Finished) ? Alarms.Unsafe(state.Condition!.Condition)
        : null;

    SeriesLine Series(ReadingKey key) =>
        new(language.Name(state.Plan.FieldOf(key.FieldId).Label), [.. state.Samples(key, state.Step.Id).Select(sample => sample.Value)], state.IsMoving(key));

    ReadingLine? Last() =>
        (state.Doubtful?.Key ?? state.LastEntered) is { } key && !PlateQuestion.IsBound(key) ? Reading(key.FieldId, key.Scope) : null;

    static int Number(StartupState state) => 1 + state.StepIndex - (state.IsMakingSafe ? state.Plan.Steps.Length : 0);

    static int Count(StartupState state) => state.IsMakingSafe ? state.Plan.MakingSafe.Length : state.Plan.Steps.Length;

    /// <summary>What to do in the current step, with the advice of an adjustment.</summary>
    public static Message Do(StartupState state) => PlateQuestion.Of(state) is { } plate ? plate.Text : Adjusting.Of(state).Sentence is { IsEmpty: false } advice ? $"{state.Step.Do} {advice}" : state.Step.Do;

    ResultLine Line(CalculatedResult result) => new(language.Name(result.Label), language.Shown(ResultWords.Told(result)), result.Verdict, WithSource(result.Limit))
    {
        Judged = language.Text(VerdictWords.Of(result.Verdict, result.Limit)),
    };

    /// <summary>The step's own readings first, then others of the same stage.</summary>
    IEnumerable<ReadingLine> Readings(Step step, string scope)
    {
        ImmutableArray<string> own = [.. step.Readings.Select(demand => demand.FieldId)];
        IEnumerable<string> others = scope.Length == 0 ? [] : state.Keys.Where(key => key.Scope == scope).Select(key => key.FieldId);
        foreach (string fieldId in own.Concat(others).Distinct())
        {
            string? limit = step.Readings.FirstOrDefault(demand => demand.FieldId == fieldId)?.LimitName;
            ReadingLine line = Reading(fieldId, scope);
            string found = state.Found(new ReadingKey(fieldId, scope)) is { } first ? language.Number(ShownValue.Of(first).Number) : "";
            yield return line.State == ReadingState.Missing ? line with { Good = Good(limit, step.Scope) } : found == line.Value ? line : line with { Found = found };
        }
    }

    ReadingLine Reading(string fieldId, string scope)
    {
        Field field = state.Plan.FieldOf(fieldId);
        string label = language.Name(field.Label);
        return state.Doubtful is { } doubtful && doubtful.Key == new ReadingKey(fieldId, scope)
                ? new ReadingLine(label, ShownValue.Of(doubtful).Number, doubtful.UnitSymbol, ReadingState.Doubtful, null, "")
            : state.Reading(fieldId, scope) is { } kept
                ? new ReadingLine(
                    label, language.Number(ShownValue.Of(kept.Reading).Number), kept.Reading.UnitSymbol, kept.Reading.IsEarly && kept.State != ReadingState.Void ? ReadingState.Early : kept.State,
                    kept.State == ReadingState.Void ? null : kept.Reading.Verdict, WithSource(kept.Reading.Limit))
                {
                    Text = language.Value(ShownValue.Of(kept.Reading), tellsDoubt: true),
                    Judged = kept.State == ReadingState.Void ? "" : language.Text(VerdictWords.Of(kept.Reading.Verdict, kept.Reading.Limit)),
                }
            : new ReadingLine(label, "--", field.Unit.Symbol, ReadingState.Missing, null, "");
    }

    /// <summary>What holds up the step stands before its own readings.</summary>
    IEnumerable<ReadingLine> Unaired() => state.Unaired is { Key: var key } ? [Reading(key.FieldId, key.Scope)] : [];

    /// <summary>The limit of the files in the unit that is said.</summary>
    string Good(string? name, string? scope) =>
        state.Limit(name, scope) is { } limit ? language.Shown($"{limit.In(Unit.Find(limit.UnitSymbol) is { } own ? state.Plan.Settings.In(own) : null)}, {limit.Source}") : "";

    /// <summary>"3.2 to 3.8 in. w.c. (rating plate)"; empty for none.</summary>
    string WithSource(DeclaredLimit? limit) => limit is null ? "" : language.Shown($"{limit} ({limit.Source})");

    string? Shown(Message? message) => message is null ? null : language.Shown(message);

    /// <summary>What was said from the rating plate so far.</summary>
    IEnumerable<ReadingLine> Bounds(PlateQuestion plate) => plate.Bounds.Select(bound =>
        state.Doubtful is { } doubtful && doubtful.Key == new ReadingKey(bound.Id, plate.Name)
            ? new ReadingLine(language.Name(bound.Label), ShownValue.Of(doubtful).Number, doubtful.UnitSymbol, ReadingState.Doubtful, null, "")
        : state.Reading(bound.Id, plate.Name) is { } kept
            ? new ReadingLine(language.Name(bound.Label), ShownValue.Of(kept.Reading).Number, kept.Reading.UnitSymbol, kept.State, null, "")
            : new ReadingLine(language.Name(bound.Label), "--", bound.Unit.Symbol, ReadingState.Missing, null, ""));

    /// <summary>What is asked now, or null.</summary>
    public static Message? Question(StartupState state, Now now) => state.Phase switch
    {
        Phase.Confirming => EvidenceWords.ReadBack(state.Doubtful!),
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
