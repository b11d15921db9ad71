using System.Globalization;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Speech.Phrases;

/// <summary>What a legal phrase means. Two readings of one field are the same meaning when their numbers are equal (7.6 and 7.60).</summary>
public abstract record Meaning
{
    /// <summary>A field with its value.</summary>
    /// <param name="Field">Which field.</param>
    /// <param name="Value">In the field's unit, with the decimals as spoken.</param>
    public sealed record Reading(Field Field, decimal Value) : Meaning
    {
        /// <summary>Whether "over range", or a number above the field's range, was said; the value is then the end of the range.</summary>
        public bool IsOver { get; init; }

        /// <summary>The reading of a number that may lie above the range of a field that may be over it.</summary>
        public static Reading Of(Field field, decimal value) => field.MayBeOver && value > field.Highest ? Over(field) : new Reading(field, value);

        /// <summary>More than the field's range.</summary>
        public static Reading Over(Field field) => new(field, field.Highest) { IsOver = true };

        /// <inheritdoc/>
        public bool Equals(Reading? other) => other is not null && other.Field.Id == Field.Id && other.Value == Value && other.IsOver == IsOver;

        /// <inheritdoc/>
        public override int GetHashCode() => HashCode.Combine(Field.Id, Value, IsOver);
    }

    /// <summary>The lowest and the highest of something.</summary>
    /// <param name="Field">Of what.</param>
    /// <param name="Lower">In the field's unit, with the decimals as spoken.</param>
    /// <param name="Upper">Above the lower one.</param>
    public sealed record Range(Field Field, decimal Lower, decimal Upper) : Meaning
    {
        /// <inheritdoc/>
        public bool Equals(Range? other) => other is not null && (other.Field.Id, other.Lower, other.Upper) == (Field.Id, Lower, Upper);

        /// <inheritdoc/>
        public override int GetHashCode() => HashCode.Combine(Field.Id, Lower, Upper);
    }

    /// <summary>A command.</summary>
    /// <param name="Word">Which.</param>
    public sealed record Command(CommandWord Word) : Meaning
    {
        /// <summary>Whether a fire was called out.</summary>
        public bool IsFire { get; init; }
    }

    /// <summary>An answer.</summary>
    /// <param name="Word">Which.</param>
    public sealed record Answer(AnswerWord Word) : Meaning;

    /// <summary>One of the choices that were offered.</summary>
    /// <param name="Value">Which, as it is kept.</param>
    public sealed record Choice(string Value) : Meaning;

    /// <summary>A step that somebody wants to return to.</summary>
    /// <param name="Step">Which; its words do not matter.</param>
    public sealed record Jump(SpokenStep Step) : Meaning
    {
        /// <inheritdoc/>
        public bool Equals(Jump? other) => other?.Step.Id == Step.Id;

        /// <inheritdoc/>
        public override int GetHashCode() => Step.Id.GetHashCode(StringComparison.Ordinal);
    }

    /// <summary>As in a measuring manifest: <c>oxygen=7.6</c>, <c>flue_co=over</c>, <c>command=done</c>, <c>command=yes</c>, <c>choice=II</c>, <c>step=warm-up</c>.</summary>
    public sealed override string ToString() => this switch
    {
        Reading { IsOver: true } over => $"{over.Field.Id}=over",
        Reading reading => string.Create(CultureInfo.InvariantCulture, $"{reading.Field.Id}={reading.Value}"),
        Range range => string.Create(CultureInfo.InvariantCulture, $"{range.Field.Id}={range.Lower}..{range.Upper}"),
        Command command => $"command={Commands.Of(command.Word).Id}",
        Answer answer => $"command={Answers.Of(answer.Word).Ways[0]}",
        Choice choice => $"choice={choice.Value}",
        Jump jump => $"step={jump.Step.Id}",
        _ => "",
    };
}
