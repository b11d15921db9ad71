using System.Runtime.CompilerServices;
using System.Text;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Storage.Tests.Adversary;

/// <summary>
/// Whether a signature stands on a log that allows it: judged from the log, the real time of its events and the files, by rules that are written here anew and share nothing
/// with those of the procedure.
/// </summary>
sealed class LogJudge(StartupPlan plan, IReadOnlyList<StartupEvent> log, IReadOnlyList<TimeSpan> times)
{
    static readonly TimeSpan Rounding = TimeSpan.FromSeconds(1);

    static readonly HashSet<string> CanHurt =
        ["co_air_free", "flue_co", "room_co", "draft", "inlet_pressure", "manifold_pressure", "input_rate", "temperature_rise", "flue_temperature", "supply_temperature"];

    readonly List<string> _wrong = [];

    /// <summary>Whether the log ends signed.</summary>
    public bool IsSigned => Last(happened => happened is StartupSigned) is >= 0 and var signed && Last(happened => happened is StartupStopped) < signed;

    /// <summary>Everything that speaks against the signature; empty where there is none.</summary>
    public IReadOnlyList<string> Violations()
    {
        if (!IsSigned)
        {
            return [];
        }

        foreach (Step step in Steps)
        {
            Done(step);
            Readings(step);
            Results(step);
            Answers(step);
            Waits(step);
        }

        Stops();
        Changes();
        Things();
        Monoxide();
        AirFree();
        Check(!log.Any(happened => happened is UnsafeFound or EndDecided or EndedOutOfService), "it was ended before");
        return _wrong;
    }

    Step[]? _steps;

    Step[] Steps => _steps ??= StepsOf(log.OfType<ChoiceMade>().LastOrDefault(made => made.Topic == ChoiceTopic.Step)?.Value);

    Step[] StepsOf(string? draws) =>
        [.. plan.Steps.Where(step => step.OnlyFor.DraftBy is not { } drawn || draws is null || (drawn == DraftBy.Natural) == (draws == "natural"))];

    void Check(bool holds, [InterpolatedStringHandlerArgument(nameof(holds))] Otherwise otherwise)
    {
        if (!holds)
        {
            _wrong.Add(otherwise.Text);
        }
    }

    void Check(bool holds, string otherwise)
    {
        if (!holds)
        {
            _wrong.Add(otherwise);
        }
    }

    /// <summary>Places in the log of everything that belongs to a step.</summary>
    ILookup<string, int> OfStep => field ??= Enumerable.Range(0, log.Count).Where(at => StepIdOf(log[at]) is not null).ToLookup(at => StepIdOf(log[at])!);

    /// <summary>Places in the log of everything that a reading became.</summary>
    ILookup<ReadingKey, int> OfReading => field ??= Enumerable.Range(0, log.Count).Where(at => KeyOf(log[at]) is not null).ToLookup(at => KeyOf(log[at])!.Value);

    static string? StepIdOf(StartupEvent happened) => happened switch
    {
        StepDone one => one.StepId,
        StepSkipped one => one.StepId,
        StepReopened one => one.StepId,
        StepEntered one => one.StepId,
        AnswerGiven one => one.StepId,
        TimerStarted one => one.StepId,
        TimerEnded one => one.StepId,
        ExceptionMade one => one.StepId,
        _ => null,
    };

    static ReadingKey? KeyOf(StartupEvent happened) => happened switch
    {
        ReadingEntered one => one.Reading.Key,
        ReadingVoided one => one.Key,
        ReadingScratched one => one.Key,
        _ => null,
    };

    int LastOf(string stepId, Predicate<StartupEvent> which, int before = int.MaxValue) => Last(OfStep[stepId], which, before);

    int Last(IEnumerable<int> places, Predicate<StartupEvent> which, int before)
    {
        int last = -1;
        foreach (int at in places)
        {
            last = at < before && which(log[at]) ? at : last;
        }

        return last;
    }

    int Last(Predicate<StartupEvent> which, int before = int.MaxValue)
    {
        int at = Math.Min(before, log.Count) - 1;
        while (at >= 0 && !which(log[at]))
        {
            at--;
        }

        return at;
    }

    void Done(Step step)
    {
        int done = LastOf(step.Id, happened => happened is StepDone);
        int skipped = LastOf(step.Id, happened => happened is StepSkipped);
        int undone = LastOf(step.Id, happened => happened is StepReopened or StepEntered { Arrival: not Arrival.Forward });
        Check(Math.Max(done, skipped) > undone, $"{step.Id} is not done");
        if (skipped > done)
        {
            bool guards = step.IsSafetyStop || step.Kind is StepKind.Wait or StepKind.Close or StepKind.Sign || !step.Proves.IsEmpty || !step.AgainAfter.IsEmpty || step.Question is { StopsForGas: true } or { UnsafeAfter: not null };
            Check(!guards, $"{step.Id} was skipped, which guards");
            Check(IsReason(((StepSkipped)log[skipped]).Reason), $"{step.Id} was skipped without a reason");
        }
    }

    /// <summary>Words, and not a dot that was typed to get on.</summary>
    static bool IsReason(string reason) => reason.Count(char.IsLetter) > 2;

    bool IsSkipped(Step step) => LastOf(step.Id, happened => happened is StepSkipped) > LastOf(step.Id, happened => happened is StepDone);

    /// <summary>The last value that was entered and that nothing took back, with its place in the log.</summary>
    (int Index, EnteredReading Reading)? Standing(ReadingKey key)
    {
        int index = Last(OfReading[key], happened => happened is ReadingEntered, int.MaxValue);
        int gone = Last(OfReading[key], happened => happened is ReadingVoided or ReadingScratched, int.MaxValue);
        return index >= 0 && index > gone && ((ReadingEntered)log[index]).Reading is { IsEarly: false } reading ? (index, reading) : null;
    }

    DeclaredLimit? Limit(string? name, string? scope) => name is null ? null : plan.Limit(name, scope)
        ?? log.OfType<LimitStated>().LastOrDefault(stated => stated.Limit.Name == (scope is null ? name : $"{name}/{scope}"))?.Limit;

    static bool IsMust(DeclaredLimit limit) =>
        limit.IsSafety || CanHurt.Contains(limit.Name.Split('/')[0]) || !limit.Source.Contains("common practice", StringComparison.Ordinal);

    void Readings(Step step)
    {
        foreach (ReadingDemand demand in step.Readings)
        {
            string what = $"{demand.FieldId} ({step.Id})";
            ReadingKey key = new(demand.FieldId, step.Scope ?? "");
            DeclaredLimit? limit = Limit(demand.LimitName, step.Scope);
            if (IsSkipped(step))
            {
                Check(limit is null || !IsMust(limit), $"{what} was skipped and must keep a limit");
                continue;
            }

            if (Standing(key) is not ({ } index, { } reading))
            {
                _wrong.Add($"{what} is missing");
                continue;
            }

            Settled(step, demand, index, reading);
            if (limit is null)
            {
                continue;
            }

            decimal guard = limit.IsSafety ? Uncertainty(demand.FieldId, reading.Value) : 0;
            bool isInside = !reading.IsOver && !(reading.Value - guard < limit.Lower) && !(reading.Value + guard > limit.Upper);
            Check(isInside || (!IsMust(limit) && IsExcused(step, index)), $"{what} {reading.Value} is outside of {limit.Text}");
        }
    }

    decimal Uncertainty(string fieldId, decimal value) =>
        plan.Site.Instruments.FirstOrDefault(instrument => instrument.FieldId == fieldId) is { } instrument
            ? Math.Max(instrument.Expanded, Math.Abs(value) * instrument.ExpandedPercent / 100)
            : 1_000_000;

    bool IsExcused(Step step, int since) =>
        LastOf(step.Id, happened => happened is ExceptionMade { Purpose: DictationPurpose.LimitReason } made && IsReason(made.Reason)) > since;

    /// <summary>After its wait, and agreeing with a value said long enough before.</summary>
    void Settled(Step step, ReadingDemand demand, int index, EnteredReading reading)
    {
        if (step.After is { } wait && plan.Steps.FirstOrDefault(other => other.Id == wait) is { } waited)
        {
            int started = LastOf(wait, happened => happened is TimerStarted, index);
            Check(started >= 0 && times[index] - times[started] >= waited.Timer!.Duration - Rounding, $"{demand.FieldId} ({step.Id}) was read {times[index] - times[Math.Max(0, started)]} after the wait began");
        }

        if (demand.Settles is { Twice: true } settles)
        {
            bool agrees = OfReading[reading.Key].Any(earlier => earlier < index && log[earlier] is ReadingEntered one && !one.Reading.IsEarly
                && times[index] - times[earlier] >= settles.Window - Rounding && Math.Abs(one.Reading.Value - reading.Value) <= settles.Drift);
            Check(agrees, $"{demand.FieldId} ({step.Id}) {reading.Value} has no second value that agrees");
        }
    }

    void Results(Step step)
    {
        decimal? Value(string fieldId) => Standing(new ReadingKey(fieldId, step.Scope ?? ""))?.Reading.Value;
        void Judge(string name, decimal? value, int since)
        {
            if (value is { } known && Limit(name, step.Scope) is { } limit && IsMust(limit))
            {
                // Formulas differ in the last digits; two percent are far less than what is planted.
                Check(!(known * 1.02m < limit.Lower) && !(known * 0.98m > limit.Upper), $"{name} ({step.Id}) {known:0.##} is outside of {limit.Text}");
            }
        }

        bool Has(string fieldId) => !IsSkipped(step) && step.Readings.Any(demand => demand.FieldId == fieldId);
        if (Has("return_temperature"))
        {
            Judge("temperature_rise", Value("supply_temperature") - Value("return_temperature"), 0);
        }

        if (Has("return_static"))
        {
            Judge("external_static", Value("supply_static") - Value("return_static"), 0);
        }

        if (Has("meter_time") && plan.Site is { MeterDialCubicFeet: { } dial, HeatingValue: { } heating } && Value("meter_time") is { } seconds)
        {
            Judge("input_rate", 3600 * dial * heating / seconds, 0);
        }

        if (Has("flue_co") && Value("oxygen") is { } oxygen && Value("flue_co") is { } ppm)
        {
            Check(oxygen < 17, $"oxygen ({step.Id}) {oxygen} dilutes too much to judge CO");
            Check(new[] { "oxygen", "flue_co" }.All(id => plan.Site.Instruments.Any(instrument => instrument.FieldId == id)), $"air-free CO ({step.Id}) is proven by an instrument without a stated uncertainty");
            Judge("co_air_free", ppm * 20.9m / Math.Max(0.1m, 20.9m - oxygen), 0);
        }
    }

    void Answers(Step step)
    {
        if (step.Question is not { Choices.IsEmpty: true } question || IsSkipped(step))
        {
            return;
        }

        int last = LastOf(step.Id, happened => happened is AnswerGiven);
        Check(last >= 0 && ((AnswerGiven)log[last]).Answer == question.Proper, $"{step.Id} was last answered improperly");
        int[] unsafely = [.. OfStep[step.Id].Where(at => log[at] is AnswerGiven given && given.Answer != question.Proper)];
        Check(!question.StopsForGas || unsafely.All(at => Next(at) is StartupStopped { Cause: StopCause.GasSmell }), $"gas was smelled at {step.Id} and nothing stopped");
        Check(unsafely.Skip((question.UnsafeAfter ?? int.MaxValue) - 1).All(at => Next(at) is UnsafeAsked), $"{step.Id} was answered unsafely {unsafely.Length} times and was not called unsafe");
        bool guards = step.IsSafetyStop || question.StopsForGas || question.UnsafeAfter is not null;
        foreach (int improper in OfStep[step.Id].Where(at => guards && log[at] is AnswerGiven given && given.Answer != question.Proper))
        {
            bool isExplained = log.Skip(improper).Any(happened =>
                (happened is ExceptionMade { Purpose: DictationPurpose.AnswerReason } made && made.StepId == step.Id && IsReason(made.Reason))
                || (happened is StartupResumed && question.StopsForGas)
                || (happened is UnsafeDenied denied && denied.StepId == step.Id && ((AnswerGiven)log[improper]).Evidence.Channel == Channel.Voice));
            Check(isExplained, $"{step.Id} was answered unsafely and nobody said what was done");
        }
    }

    /// <summary>What an answer leads to at once, but for the timers that end with it.</summary>
    StartupEvent? Next(int at) => log.Skip(at + 1).SkipWhile(happened => happened is TimerStopped).FirstOrDefault();

    void Waits(Step step)
    {
        if (step.Kind != StepKind.Wait)
        {
            return;
        }

        int done = LastOf(step.Id, happened => happened is StepDone);
        int ended = LastOf(step.Id, happened => happened is TimerEnded);
        int started = ended < 0 ? -1 : LastOf(step.Id, happened => happened is TimerStarted, ended);
        Check(done >= 0 && started >= 0 && times[ended] - times[started] >= step.Timer!.Duration - Rounding, $"{step.Id} was waited for {(started < 0 ? TimeSpan.Zero : times[ended] - times[started])}");
        Check(started < 0 || !log.Skip(started).Take(ended - started).Any(happened => happened is StartupStopped), $"{step.Id} ran on while it was stopped");
    }

    void Stops()
    {
        for (int stop = 0; stop < log.Count; stop++)
        {
            if (log[stop] is not StartupStopped stopped)
            {
                continue;
            }

            int resumed = log.ToList().FindIndex(stop, happened => happened is StartupResumed);
            if (resumed < 0)
            {
                _wrong.Add("it was stopped and never resumed");
                continue;
            }

            StartupEvent[] between = [.. log.Skip(stop).Take(resumed - stop)];
            Check(between.Any(happened => happened is ChoiceMade { Topic: ChoiceTopic.SafeBy }), "nobody declared it safe");
            Check(IsReason(((StartupResumed)log[resumed]).Reason), "no cause was told");
            TimeSpan least = stopped.Cause switch { StopCause.GasSmell => TimeSpan.FromMinutes(5), StopCause.CarbonMonoxide => TimeSpan.FromMinutes(10), _ => TimeSpan.Zero };
            Check(times[resumed] - times[stop] >= least - Rounding, $"after {stopped.Cause} it went on after {times[resumed] - times[stop]}");
            Check(stopped.Cause != StopCause.GasSmell || between.OfType<FreshSmellAnswered>().LastOrDefault() is { Smells: false }, "gas was not smelled for afresh");
            if (stopped.Cause == StopCause.CarbonMonoxide)
            {
                ClearAir(stop, resumed);
            }

            Again(stop, resumed, stopped.Cause == StopCause.GasSmell ? [Procedure.Checklists.Again.Stop, Procedure.Checklists.Again.Smell] : [Procedure.Checklists.Again.Stop], "a stop");
        }
    }

    /// <summary>The room was measured clear last, and long enough after it was measured bad.</summary>
    void ClearAir(int stop, int resumed)
    {
        int[] measured = [.. Enumerable.Range(stop, resumed - stop).Where(at => log[at] is ReadingEntered { Reading.Key.FieldId: "room_co" })];
        bool IsClear(int at) => ((ReadingEntered)log[at]).Reading is { IsOver: false, Value: < 9 };
        Check(measured.Length > 0 && IsClear(measured[^1]), "the room was not measured clear");
        Check(!measured.Any(at => !IsClear(at) && times[measured[^1]] - times[at] < TimeSpan.FromMinutes(10) - Rounding), "the room was measured clear right after it was not");
    }

    void Changes()
    {
        for (int at = 0; at < log.Count; at++)
        {
            if (log[at] is AdjustmentMade made)
            {
                Again(at, at, [Procedure.Checklists.Again.Change], "an adjustment");
                foreach (string wait in plan.Steps.First(step => step.Id == made.StepId).Starts)
                {
                    int near = LastOf(wait, happened => happened is TimerStarted, at + 6);
                    Check(near >= 0 && near > at - 6, $"{wait} did not begin anew with the adjustment");
                }
            }
        }
    }

    /// <summary>What was done before must be done again after.</summary>
    void Again(int before, int after, Again[] causes, string what)
    {
        foreach (Step step in Steps.Where(step => step.AgainAfter.Any(causes.Contains)))
        {
            bool wasDone = OfStep[step.Id].Any(at => at < before && log[at] is StepDone);
            bool isDone = OfStep[step.Id].Any(at => at >= after && log[at] is StepDone);
            Check(!wasDone || isDone, $"{step.Id} was not done again after {what}");
        }
    }

    void Things()
    {
        HashSet<string> open = [], unproven = [];
        HashSet<string> gas = [.. plan.Steps.SelectMany(step => step.Opens).Where(thing => thing.IsGasSide).Select(thing => thing.Name)];
        foreach (StartupEvent happened in log)
        {
            switch (happened)
            {
                case ThingOpened opened:
                    open.Add(opened.Thing.Name);
                    unproven.Remove(opened.Thing.Name);
                    break;
                case ThingClosed closed:
                    open.Remove(closed.Name);
                    unproven.UnionWith(gas.Contains(closed.Name) ? [closed.Name] : []);
                    break;
                case ThingProved proved:
                    unproven.Remove(proved.Name);
                    break;
            }
        }

        Check(open.Count == 0, $"open: {string.Join(", ", open)}");
        Check(unproven.Count == 0, $"not checked for leaks: {string.Join(", ", unproven)}");
    }

    /// <summary>What asked to shut the furnace off is not followed at once by the value that passes.</summary>
    void ClearAfter(int bad, ReadingKey key)
    {
        if (Standing(key) is ({ } index, _) && index > bad)
        {
            Check(times[index] - times[bad] >= TimeSpan.FromMinutes(5) - Rounding, $"{key.FieldId} passed {times[index] - times[bad]} after it asked to shut off");
        }
    }

    /// <summary>Air-free carbon monoxide that asked to shut the furnace off is measured again, whatever oxygen was said afterwards.</summary>
    void AirFree()
    {
        Dictionary<ReadingKey, EnteredReading> counts = [];
        for (int at = 0; at < log.Count; at++)
        {
            if (KeyOf(log[at]) is not { FieldId: "oxygen" or "flue_co" } key)
            {
                continue;
            }

            counts.Remove(key);
            if (log[at] is not ReadingEntered { Reading: { IsOver: false } reading })
            {
                continue;
            }

            ReadingKey monoxide = key with { FieldId = "flue_co" };
            EnteredReading? other = counts.GetValueOrDefault(key with { FieldId = key.FieldId == "oxygen" ? "flue_co" : "oxygen" });
            counts.Add(key, reading);
            if (other is { IsEarly: false } && (key.FieldId == "oxygen" ? (reading.Value, other.Value) : (other.Value, reading.Value)) is var (oxygen, ppm)
                && oxygen < 15 && ppm * 20.9m / (20.9m - oxygen) > 408)
            {
                Check(Standing(monoxide) is not ({ } standing, _) || standing > at, $"flue_co {ppm} at {oxygen} % oxygen asked to shut off, and was not measured again");
                ClearAfter(at, monoxide);
            }
        }
    }

    /// <summary>Air that was not clear was measured clear, late enough, before any step was left.</summary>
    void ClearedBefore(int bad, TimeSpan wait)
    {
        int clear = Enumerable.Range(bad + 1, log.Count - bad - 1).FirstOrDefault(at => times[at] - times[bad] >= wait
            && log[at] is ReadingEntered { Reading: { Key.FieldId: "room_co", Value: < 9, IsEarly: false } }, -1);
        int left = Enumerable.Range(bad + 1, log.Count - bad - 1).FirstOrDefault(at => log[at] is StepDone or StepSkipped or StartupSigned, -1);
        Check(clear >= 0 && clear < left, $"a room was not measured clear after {bad} before the work went on");
    }

    /// <summary>Each value that was heard had its tier told at once, and none of the grave ones is the last.</summary>
    void Monoxide()
    {
        for (int at = 0; at < log.Count; at++)
        {
            if (log[at] is MonoxideJudged { IsDoubtful: true, Key: { FieldId: "room_co", Scope: "between steps" } })
            {
                ClearedBefore(at, TimeSpan.Zero);
            }

            if (log[at] is not ReadingEntered { Reading: { Key.FieldId: "room_co" or "flue_co" } reading })
            {
                continue;
            }

            bool isRoom = reading.Key.FieldId == "room_co";
            MonoxideAction least = (isRoom, reading.IsOver ? 99999 : reading.Value) switch
            {
                (true, >= 70) => MonoxideAction.Evacuate,
                (true, >= 36) => MonoxideAction.ShutOff,
                (true, >= 9) => MonoxideAction.FindSource,
                (false, >= 400) => MonoxideAction.ShutOff,
                (false, >= 100) => MonoxideAction.FindSource,
                _ => MonoxideAction.CarryOn,
            };
            if (least == MonoxideAction.ShutOff && reading.Key.Scope != "between steps")
            {
                ClearAfter(at, reading.Key);
            }

            if (isRoom && reading.Key.Scope == "between steps" && least != MonoxideAction.CarryOn)
            {
                ClearedBefore(at, least == MonoxideAction.FindSource ? TimeSpan.Zero : TimeSpan.FromMinutes(5) - Rounding);
            }

            StartupEvent[] told = [.. log.Skip(at).Take(20)];
            Check(least == MonoxideAction.CarryOn || told.OfType<MonoxideJudged>().Any(judged => judged.Key == reading.Key && judged.Action >= least && judged.Ppm > 0),
                $"{reading.Key.FieldId} {reading.Value} was not told as {least}");
            Check(least != MonoxideAction.Evacuate || told.Any(happened => happened is StartupStopped), $"{reading.Value} ppm in a room did not stop it");
        }
    }
}

/// <summary>A sentence that is put together only where something is wrong: most checks hold.</summary>
[InterpolatedStringHandler]
readonly ref struct Otherwise
{
    readonly StringBuilder? _text;

    public Otherwise(int literalLength, int formattedCount, bool holds, out bool isWanted)
    {
        isWanted = !holds;
        _text = holds ? null : new StringBuilder(literalLength + 8 * formattedCount);
    }

    public string Text => _text?.ToString() ?? "";

    public void AppendLiteral(string text) => _text!.Append(text);

    public void AppendFormatted<T>(T value, string? format = null) =>
        _text!.Append(value is IFormattable formattable ? formattable.ToString(format, System.Globalization.CultureInfo.InvariantCulture) : value?.ToString());
}
