using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Reports.Facts;

/// <summary>Every reading that the procedure asks for and every result, as found and as left, by stage. What has no value is there too, with the reason.</summary>
sealed class ReadingGroups
{
    const string SupplyTitle = "Gas, power and air";
    const string RoomsTitle = "CO in the rooms";

    readonly JobRecord _facts;
    readonly HashSet<string> _firing;

    ReadingGroups(JobRecord facts)
    {
        _facts = facts;
        _firing = [.. Keys().Where(key => key.FieldId is FieldId.Oxygen or FieldId.CarbonDioxide or FieldId.FlueCo or FieldId.FlueTemperature).Select(key => key.Scope)];
    }

    /// <summary>The groups in the order of the work; empty ones are left out.</summary>
    public static IReadOnlyList<ReadingGroup> Of(JobRecord facts) => new ReadingGroups(facts).All();

    /// <summary>The firing stage or other scope as a title.</summary>
    public static string Title(string scope) => scope switch
    {
        "" => "Firing",
        "low" => "Low fire",
        "middle" or "medium" => "Middle fire",
        "high" => "High fire",
        _ => $"{char.ToUpperInvariant(scope[0])}{scope[1..].Replace('-', ' ')}",
    };

    IReadOnlyList<ReadingGroup> All()
    {
        List<(string Title, FoundAndLeft Line)> lines =
        [
            .. Keys().Select(key => (GroupOf(key), LineOf(key))),
            .. _facts.AllResults.Select(fate => (fate.Scope, fate.Result.Id)).Distinct().Select(result => (GroupOf(new ReadingKey("", result.Scope)), LineOf(result.Scope, result.Id))),
        ];
        IEnumerable<string> titles = [SupplyTitle, .. Keys().Where(key => _firing.Contains(key.Scope)).Select(key => Title(key.Scope)).Distinct(), RoomsTitle];
        return [.. titles.Select(title => new ReadingGroup(title, [.. lines.Where(line => line.Title == title).Select(line => line.Line)])).Where(group => group.Lines.Count > 0)];
    }

    string GroupOf(ReadingKey key) => key.FieldId == FieldId.RoomCo ? RoomsTitle : _firing.Contains(key.Scope) ? Title(key.Scope) : SupplyTitle;

    IEnumerable<ReadingKey> Keys() => _facts.Steps
        .SelectMany(step => step.Step.Readings.Select(demand => new ReadingKey(demand.FieldId, step.Step.Scope ?? "")))
        .Concat(_facts.Readings.Select(fate => fate.Reading.Key))
        .Distinct();

    FoundAndLeft LineOf(ReadingKey key)
    {
        ReadingFate[] fates = [.. _facts.Readings.Where(fate => fate.Reading.Key == key)];
        ReadingFate[] stood = Stood(key);
        ReadingFate? found = FoundOf(stood);
        ReadingFate? left = stood.LastOrDefault(fate => fate.Counts);
        string unit = fates.FirstOrDefault()?.Reading.UnitSymbol ?? Procedure.Hearing.Fields.Find(key.FieldId)?.Unit.Symbol ?? "";
        Message gap = left is null ? WhyNone(key, fates.LastOrDefault()) : left.End == ReadingEnd.Provisional ? "provisional: nothing was accepted after it" : "";
        Message remark = left is null || !gap.IsEmpty ? gap : Sentences.Origin(left, _facts.Times);
        return new FoundAndLeft(LabelOf(key), key.Scope)
        {
            IsResult = false,
            Unit = unit,
            Found = found is null ? null : Shown(found),
            Worst = WorstOf(key, fates, found, left),
            Left = left is null ? null : Shown(left),
            Limit = left?.Reading.Limit,
            Verdict = left?.Reading.Verdict,
            Remark = remark,
            IsGap = !gap.IsEmpty,
        };
    }

    FoundAndLeft LineOf(string scope, string id)
    {
        ResultFate[] fates = [.. _facts.AllResults.Where(fate => fate.Scope == scope && fate.Result.Id == id)];
        ResultFate? left = fates.LastOrDefault(fate => fate.Counts);
        ResultFate? found = fates.FirstOrDefault(IsOfWhatWasFound);
        Message remark = left is null ? (Message)$"none: {Message.Recorded(fates[^1].NoLonger)}" : left.Result.Value is null ? ResultWords.Told(left.Result) : left.Result.Remark;
        return new FoundAndLeft(fates[^1].Result.Label + Suffix(scope), scope)
        {
            IsResult = true,
            Unit = fates[^1].Result.UnitSymbol,
            Found = Shown(found),
            Worst = WorstOf(fates, found, left),
            Left = Shown(left),
            Limit = left?.Result.Limit,
            Verdict = left?.Result.Verdict,
            Remark = remark,
            IsGap = left is null,
        };
    }

    string LabelOf(ReadingKey key) => key.FieldId == FieldId.RoomCo ? Title(key.Scope) : Labels.Of(key with { Scope = "" }) + Suffix(key.Scope);

    string Suffix(string scope) => scope.Length == 0 || _firing.Contains(scope) ? "" : $", {scope}";

    ReadingFate[] Stood(ReadingKey key) =>
        [.. _facts.Readings.Where(fate => fate.Reading.Key == key && (fate.Counts || fate.End is ReadingEnd.Replaced or ReadingEnd.Void))];

    ReadingFate? FoundOf(ReadingFate[] stood) => stood.Where((fate, index) => !IsCorrected(fate, stood.ElementAtOrDefault(index + 1))).FirstOrDefault();

    /// <summary>The gravest value that was measured. Carbon monoxide that was measured early counts here too: early withholds proof, not danger.</summary>
    ShownNumber? WorstOf(ReadingKey key, ReadingFate[] fates, ReadingFate? found, ReadingFate? left)
    {
        ReadingFate[] stood = Stood(key);
        ReadingFate[] measured =
        [
            .. stood.Where((fate, index) => !IsCorrected(fate, stood.ElementAtOrDefault(index + 1))),
            .. key.FieldId is FieldId.RoomCo or FieldId.FlueCo ? fates.Where(fate => fate.End == ReadingEnd.Early) : [],
        ];
        ReadingFate? worst = measured.Select(fate => (Fate: fate, Gravity: Gravity.Of(key.FieldId, (double)fate.Reading.Value, fate.Reading.IsOver, fate.Reading.Limit, fate.Reading.Verdict)))
            .Where(one => one.Gravity is not null).OrderByDescending(one => one.Gravity).Select(one => one.Fate).FirstOrDefault();
        return worst is null || ShownValue.Of(worst.Reading).Number == (left is null ? "" : ShownValue.Of(left.Reading).Number) || (found is not null && ShownValue.Of(found.Reading).Number == ShownValue.Of(worst.Reading).Number)
            ? null : Shown(worst);
    }

    ShownNumber? WorstOf(ResultFate[] fates, ResultFate? found, ResultFate? left)
    {
        ResultFate? worst = fates.Where(fate => fate.Result.Value is not null && IsOfMeasured(fate))
            .Select(fate => (Fate: fate, Gravity: Gravity.Of(fate.Result.Id, fate.Result.Value!.Value, fate.Result.IsOver, fate.Result.Limit, fate.Result.Verdict)))
            .Where(one => one.Gravity is not null).OrderByDescending(one => one.Gravity).Select(one => one.Fate).FirstOrDefault();
        return worst is null || (left is not null && ShownValue.Of(left.Result).Number == ShownValue.Of(worst.Result).Number) || (found is not null && ShownValue.Of(found.Result).Number == ShownValue.Of(worst.Result).Number)
            ? null : Shown(worst);
    }

    /// <summary>A result of a value that was disregarded, or corrected before it was final, was never measured.</summary>
    bool IsOfMeasured(ResultFate fate) => fate.Result.Inputs.All(input =>
    {
        ReadingKey key = new(input.Key, fate.Scope);
        ReadingFate[] stood = Stood(key);
        return _facts.Readings.All(reading => reading.Reading.Key != key)
            || stood.Where((one, index) => !IsCorrected(one, stood.ElementAtOrDefault(index + 1))).Any(one => one.Reading.Value == input.Value);
    });

    /// <summary>A result of a value that was corrected was never found.</summary>
    bool IsOfWhatWasFound(ResultFate fate) => fate.Result.Value is not null
        && fate.Result.Inputs.All(input => FoundOf(Stood(new ReadingKey(input.Key, fate.Scope)))?.Reading.Value is not { } value || value == input.Value);

    /// <summary>A value that another one replaced before it was final was misheard or misread, not found; in an adjusting step it was what was found.</summary>
    bool IsCorrected(ReadingFate fate, ReadingFate? next) => fate is { End: ReadingEnd.Replaced, WasFinal: false } && next is not null
        && _facts.Steps.FirstOrDefault(step => step.Step.Id == next.StepId)?.Step.Kind is not StepKind.Adjust;

    static ShownNumber Shown(ReadingFate fate) => new(
        ShownValue.Of(fate.Reading), fate.Counts ? "" : fate.End == ReadingEnd.Void ? "void" : "was");

    static ShownNumber? Shown(ResultFate? fate) => fate?.Result.Value is null ? null : new(
        ShownValue.Of(fate.Result), fate.Counts ? "" : "was");

    /// <summary>The number alone, as it was read.</summary>
    static MessagePart Number(ReadingFate fate) => new MessagePart.Quantity(ShownValue.Of(fate.Reading) with { UnitSymbol = "" });

    Message WhyNone(ReadingKey key, ReadingFate? last)
    {
        StepFate? step = _facts.Steps.FirstOrDefault(step => (step.Step.Scope ?? "") == key.Scope && step.Step.Readings.Any(demand => demand.FieldId == key.FieldId));
        return last?.End switch
        {
            ReadingEnd.Void => (Message)$"none: {Message.Recorded(last.Because)}, not read again",
            ReadingEnd.Disregarded => $"none: {Number(last)} was disregarded, not read again",
            ReadingEnd.Early => $"none: {Number(last)} was said before its time was over",
            ReadingEnd.Refused => $"none: {Number(last)} was not confirmed",
            ReadingEnd.Unanswered => $"none: {Number(last)} was read back and never confirmed",
            _ => step?.End switch
            {
                StepEnd.Skipped => (Message)$"none: step skipped, {new MessagePart.Form(step.Reason)}",
                StepEnd.NotReached => "none: step not reached",
                StepEnd.UnderWay => "none: not read yet",
                _ => "none: not read",
            },
        };
    }
}
