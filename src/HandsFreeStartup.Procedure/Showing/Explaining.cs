using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Derivations;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Deciding;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Procedure.Showing;

/// <summary>Answers "explain that": at most six lines on the screen, one sentence aloud.</summary>
static class Explaining
{
    /// <summary>How the last thing that was told comes about: the gravest result that the last reading led to, or else the verdict on that reading.</summary>
    public static IEnumerable<Announcement> Last(StartupState state)
    {
        if (state.LastEntered is not { } key || state.Reading(key) is not { } kept)
        {
            return [new("Nothing was said yet that could be explained.")];
        }

        CalculatedResult? result = state.Results(key.Scope)
            .Where(one => one.Inputs.ContainsKey(key.FieldId))
            .OrderByDescending(one => VerdictGravity.Of(one.Verdict)).ThenBy(one => ResultKind.Find(one.Id)?.IsQuiet).FirstOrDefault();
        return result is null ? Of(kept.Reading) : Of(state, result);
    }

    /// <summary>How each standing result came about, stage by stage in the order in which they were worked out.</summary>
    public static IEnumerable<(string Scope, Derivation Derivation)> All(StartupState state) =>
        from scope in state.ScopesOfResults
        from result in state.Results(scope)
        let derivation = Derive(state, scope, result)
        where derivation is not null
        select (scope, derivation);

    static IEnumerable<Announcement> Of(StartupState state, CalculatedResult result) => Derive(state, state.LastEntered?.Scope ?? "", result) is { } derivation
        ? Lines(Message.Of(derivation.Sentence()), [.. derivation.Lines().Select(Message.Of)])
        : Lines((Message)$"{result.Label} {ResultWords.Told(result)}.",
            [(Message)$"{result.Label} {ResultWords.Told(result)}", $"from {Message.Join("; ", result.Inputs.Keys.Select(id => Input(result, id)))}", $"by {result.Formula}"]);

    static Message Input(CalculatedResult result, string fieldId) => $"{Fields.Find(fieldId)?.Label ?? fieldId} {ResultWords.Input(result, fieldId)}";

    static Derivation? Derive(StartupState state, string scope, CalculatedResult result)
    {
        if (result.Value is null || result.IsOver)
        {
            return null;
        }

        LocalTime times = LocalTime.Of(state.Job);
        ImmutableArray<KeptReading> standing = [.. state.Keys.Where(key => key.Scope == scope).Select(key => state.Reading(key)).OfType<KeptReading>().Where(kept => kept.Counts)];
        ResultInputs inputs = new(standing.ToImmutableSortedDictionary(kept => kept.Reading.Key.FieldId, kept => kept.Reading, StringComparer.Ordinal), state.Plan)
        {
            Scope = scope,
            Stages = state.Stages,
            Adjusted = state.Adjusted(scope),
            Day = state.Day,
            FirstSets = standing.Where(kept => state.FirstOf(kept.Reading.Key) is not null).ToImmutableDictionary(kept => kept.Reading.Key.FieldId, kept => state.FirstOf(kept.Reading.Key)!.Value),
            Origins = standing.ToImmutableDictionary(
                kept => kept.Reading.Key.FieldId, kept => kept.Reading.Evidence.Channel == Channel.Voice ? $"said at {times.Time(kept.At)}" : $"typed at {times.Time(kept.At)}"),
        };
        return JobNumbers.Explain(inputs, result.Id, state.Limit(result.Id, scope)) is not { } derivation ? null
            : (result.ExpandedUncertainty is null ? derivation.WithoutDoubt() : derivation) with { IsUnproven = result.Verdict == Verdict.CannotTell };
    }

    /// <summary>A value that was read off and is compared with its limit as it stands.</summary>
    static IEnumerable<Announcement> Of(EnteredReading reading)
    {
        ShownValue shown = ShownValue.Of(reading);
        Message value = $"{Fields.Find(reading.Key.FieldId)!} {shown}";
        Message heard = $"{value}, {EvidenceWords.Of(reading.Evidence, wasConfirmed: false)}";
        Message doubt = reading.IsOver ? (Message)"More than the instrument shows, and nobody knows how much more." : shown.Uncertainty.Length > 0 ? (Message)$"The instrument may be off by {shown.Uncertainty} {reading.UnitSymbol} (k = 2)." : "The site file states no uncertainty of the instrument.";
        if (reading.Limit is not { } limit || reading.Verdict is null)
        {
            return Lines(reading.IsEarly ? (Message)$"{value}. No limit judges it yet: it was said early." : $"{value}. No limit judges it.", [heard, doubt, "No limit judges it."]);
        }

        Estimate estimate = new((double)reading.Value, (double)(reading.ExpandedUncertainty ?? 0) / Estimate.CoverageFactor);
        Message verdict = Announcer.InWords(reading.Verdict, limit);
        MessagePart bar = new MessagePart.Form(reading.IsOver ? "" : $"{GuardBandBar.Of(estimate, limit.ToJudge())} ");
        return Lines((Message)$"{value}.{verdict}", [heard, doubt, (Message)$"{bar}{verdict} Source: {Message.Written(limit.Source)}."]);
    }

    static IEnumerable<Announcement> Lines(Message sentence, IReadOnlyList<Message> lines) =>
        lines.Select((line, index) => new Announcement(line) { Said = index == 0 ? sentence : "" });
}
