using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Wording;

/// <summary>What readings, results and limits are called, with their stage or room.</summary>
public static class Labels
{
    /// <summary>"Oxygen (low)".</summary>
    public static string Of(ReadingKey key) => $"{Fields.Find(key.FieldId)?.Label ?? key.FieldId}{In(key.Scope)}";

    /// <summary>"oxygen (low)", in the middle of a sentence.</summary>
    public static string Within(ReadingKey key) => Within(Of(key));

    /// <summary>A label in the middle of a sentence: "Oxygen" becomes "oxygen", "CO in flue" stays.</summary>
    public static string Within(string label) => label is [var first, >= 'a' and <= 'z', ..] ? $"{char.ToLowerInvariant(first)}{label[1..]}" : label;

    /// <summary>"CO air-free (high)".</summary>
    public static string Of(CalculatedResult result, string scope) => $"{result.Label}{In(scope)}";

    /// <summary>" (low)"; empty where a value belongs to no stage or room.</summary>
    public static string In(string? scope) => string.IsNullOrEmpty(scope) ? "" : $" ({scope})";

    /// <summary>"3.2 to 3.8 in. w.c. (rating plate)"; empty for none.</summary>
    public static string WithSource(DeclaredLimit? limit) => limit is null ? "" : $"{limit.Text.TrimEnd()} ({limit.Source})";

    /// <summary>Reading, value and unit before and after an adjustment: "Manifold pressure (high): from 3.9 to 3.5 in. w.c.".</summary>
    public static string Of(AdjustmentMade made) => Told(made).Shown;

    /// <summary>The same, part by part.</summary>
    public static Message Told(AdjustmentMade made) =>
        $"{new MessagePart.Name(Of(made.Key))}: from {made.From} to {ShownValue.Alone(made.To, made.UnitSymbol ?? Fields.Find(made.Key.FieldId)?.Unit.Symbol ?? "")}";

    /// <summary>"yes" or "no".</summary>
    public static string YesNo(bool answer) => answer ? "yes" : "no";
}
