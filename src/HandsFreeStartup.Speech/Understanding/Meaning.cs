using System.Globalization;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>What a legal phrase means. Two readings of one field are the same meaning when their numbers are equal (7.6 and 7.60).</summary>
public abstract record Meaning
{
    /// <summary>A field with its value.</summary>
    /// <param name="Field">Which field.</param>
    /// <param name="Value">In the field's unit, with the decimals as spoken.</param>
    public sealed record Reading(Field Field, decimal Value) : Meaning
    {
        /// <inheritdoc/>
        public bool Equals(Reading? other) => other is not null && other.Field.Id == Field.Id && other.Value == Value;

        /// <inheritdoc/>
        public override int GetHashCode() => HashCode.Combine(Field.Id, Value);
    }

    /// <summary>A command.</summary>
    /// <param name="Word">Which.</param>
    public sealed record Order(CommandWord Word) : Meaning;

    /// <summary>An answer.</summary>
    /// <param name="Word">Which.</param>
    public sealed record Answer(AnswerWord Word) : Meaning;

    /// <summary>As in a measuring manifest: <c>oxygen=7.6</c>, <c>command=done</c>, <c>command=yes</c>.</summary>
    public sealed override string ToString() => this switch
    {
        Reading reading => string.Create(CultureInfo.InvariantCulture, $"{reading.Field.Id}={reading.Value}"),
        Order order => $"command={Commands.Of(order.Word).Id}",
        Answer answer => $"command={Answers.Of(answer.Word).Ways[0]}",
        _ => "",
    };
}
