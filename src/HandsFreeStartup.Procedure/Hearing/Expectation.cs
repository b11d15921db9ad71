using System.Collections.Immutable;
using System.Globalization;

namespace HandsFreeStartup.Procedure.Hearing;

/// <summary>A reading that may be said now, and the names by which it may be called here.</summary>
/// <param name="Field">Which field.</param>
/// <param name="Names">The field's own spoken names, plus shorter ones where the step leaves no doubt (in the room walk "monoxide" is the room's).</param>
public sealed record ExpectedReading(Field Field, ImmutableArray<string> Names)
{
    /// <summary>The field under its own names.</summary>
    public static ExpectedReading Of(Field field) => new(field, field.SpokenNames);
}

/// <summary>One of several things that may be chosen by voice or by typing.</summary>
/// <param name="Value">As it is kept.</param>
/// <param name="Says">The words that choose it.</param>
public sealed record SpokenChoice(string Value, string Says);

/// <summary>Everything that may be said at this moment. It never holds an expected value or limit.</summary>
/// <param name="Readings">Legal readings.</param>
/// <param name="Commands">Legal commands; the safety phrases are always among them.</param>
/// <param name="Answers">Legal answers; empty unless the tool has asked something.</param>
/// <param name="Dictation">Free speech is expected (a note, the reason of a skip); commands other than the safety phrases are not heard then.</param>
public sealed record Expectation(
    ImmutableArray<ExpectedReading> Readings,
    ImmutableArray<CommandWord> Commands,
    ImmutableArray<AnswerWord> Answers,
    bool Dictation = false)
{
    /// <summary>What may be chosen; empty unless the tool has offered it.</summary>
    public ImmutableArray<SpokenChoice> Choices { get; init; } = [];

    /// <summary>The steps that may be named after "go to"; whether one can be gone to is decided when it was said.</summary>
    public ImmutableArray<SpokenStep> Steps { get; init; } = [];

    /// <summary>Numbers that may be said without a name, in answer to a question; what is heard is always asked.</summary>
    public ImmutableArray<Field> Numbers { get; init; } = [];

    /// <summary>Numbers of which a range may be said without a name: "three point two to three point eight".</summary>
    public ImmutableArray<Field> Ranges { get; init; } = [];

    /// <summary>What the tool says meanwhile, or null. It changes nothing of what may be said: its words around a call for help are only not taken for somebody's who tells a story.</summary>
    public string? Over { get; init; }

    /// <summary>Whether nothing counts but a call for help.</summary>
    public bool IsForCallsAlone => Readings.IsEmpty && Commands.IsEmpty && Answers.IsEmpty && Choices.IsEmpty && Numbers.IsEmpty && Ranges.IsEmpty;

    /// <summary>Whether what is heard ends in the middle of what somebody says: nobody knows yet what follows, and its last word may be half a word.</summary>
    public bool IsCutShort { get; init; }

    /// <summary>All fields that every kit reads and all commands, no answers: the context <c>open</c> of a measuring manifest.</summary>
    public static Expectation Open { get; } =
        new([.. Fields.All.Where(field => !field.NeedsInstrument).Select(ExpectedReading.Of)], [.. Hearing.Commands.All.Select(command => command.Word)], []);

    /// <summary>Equal for expectations that allow the same phrases and find the same values usual; compiled tries, whose phrases know their field, are kept under it.</summary>
    public string Key => string.Join(';',
        string.Join(',', Readings.Select(reading => string.Create(
            CultureInfo.InvariantCulture, $"{reading.Field.Id}:{reading.Field.Unit.Symbol}:{reading.Field.UsualLowest}-{reading.Field.UsualHighest}({string.Join('/', reading.Names)})"))),
        string.Join(',', Commands),
        string.Join(',', Answers),
        string.Join(',', Choices.Select(choice => choice.Says)),
        string.Join(',', Steps.Select(step => step.Says)),
        Nameless(Numbers),
        Nameless(Ranges),
        Dictation);

    static string Nameless(ImmutableArray<Field> fields) => string.Join(',', fields.Select(field => string.Create(
        CultureInfo.InvariantCulture, $"{field.Id}:{field.Unit.Symbol}:{field.Lowest}-{field.Highest}/{field.FewestDecimals}-{field.MostDecimals}")));

    /// <inheritdoc/>
    public bool Equals(Expectation? other) => other is not null && other.Key == Key;

    /// <inheritdoc/>
    public override int GetHashCode() => Key.GetHashCode(StringComparison.Ordinal);
}
