using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Interview;

/// <summary>A question as it is shown, as it is said, and what may be answered.</summary>
/// <param name="Prompt">As shown, without the colon behind it.</param>
/// <param name="Form">What may be answered by voice. Typed, every line is an answer; whoever asks tells what is wrong with it.</param>
sealed record Asked(string Prompt, AnswerForm Form)
{
    /// <summary>Typed or said where something may be left out: all that may be left out from there on, in this part, is.</summary>
    public const string Rest = "skip the rest";

    /// <summary>In so few words that it is said in four seconds.</summary>
    public required Message Says { get; init; }

    /// <summary>As it is said: what was answered the last time is said with it, and "yes" takes that.</summary>
    public Message Question => HasLast ? $"{Says} {new MessagePart.Form(Last!)}?" : Says;

    /// <summary>The line that leaves it out; null where that cannot be.</summary>
    public string? Skips { get; init; }

    /// <summary>What was answered the last time, which an empty line takes; null or empty for nothing.</summary>
    public string? Last { get; init; }

    /// <summary>Whether something was answered the last time.</summary>
    public bool HasLast => Last is { Length: > 0 };

    /// <summary>Whether it is one of several: the lines "back" and "why" are understood, and where it may be left out, <see cref="Rest"/>.</summary>
    public bool IsInList { get; init; }

    /// <summary>Whether a line leaves out the rest of the part.</summary>
    public static bool IsRest(string line) => Plain(line) == Rest;

    /// <summary>Whether it is what would be said to the tool, and no name.</summary>
    public static bool IsToTheTool(string line) => IsRest(line) || Plain(line) is "back" or "go back" or "why" or "tell me more" or "skip" or "skip step" or "the same" or "yes" or "no" or "confirm" or "again" or "say again" or "help";

    /// <summary>The ear for free speech puts marks between the words: "Skip, step."</summary>
    static string Plain(string line) => string.Join(' ', line.Split([' ', ',', '.', '!', '?', ';'], StringSplitOptions.RemoveEmptyEntries)).ToLowerInvariant();

    /// <summary>The line without the space around it. What would be said to the tool may be typed to it, and becomes no name.</summary>
    public string LineOf(string typed) => Plain(typed) switch
    {
        "back" or "go back" when IsInList => "back",
        "why" or "tell me more" when IsInList => "why",
        "skip" or "skip step" when IsInList || Skips is not null => Skips ?? "",
        "yes" or "the same" when HasLast => "",
        _ => typed.Trim(),
    };
}

/// <summary>What may be answered by voice.</summary>
abstract record AnswerForm
{
    AnswerForm()
    {
    }

    /// <summary>Yes or no.</summary>
    public sealed record YesOrNo : AnswerForm;

    /// <summary>Free speech: a name, a place.</summary>
    /// <param name="IsList">Whether it names several things: they stand with commas between in the line.</param>
    public sealed record Words(bool IsList = false) : AnswerForm;

    /// <summary>A day that is over; the line has year, month and day.</summary>
    public sealed record Day : AnswerForm;

    /// <summary>One of a few things.</summary>
    /// <param name="Choices">The line of each, and the words for it.</param>
    public sealed record OneOf(ImmutableArray<SpokenChoice> Choices) : AnswerForm;

    /// <summary>Nothing that could be said: a path.</summary>
    public sealed record TypedAlone : AnswerForm;

    /// <summary>One number or several.</summary>
    /// <param name="Fields">What may be said, each with its unit, range and decimals.</param>
    /// <param name="Line">The line of the numbers that were said, by the ids of their fields.</param>
    public sealed record Numbers(ImmutableArray<ExpectedReading> Fields, Func<IReadOnlyDictionary<string, string>, string> Line) : AnswerForm
    {
        /// <summary>Of what a range may be said; its ends have the ids <see cref="Calculations.Vocabulary.FieldId.LimitLower"/> and <see cref="Calculations.Vocabulary.FieldId.LimitUpper"/>.</summary>
        public Field? Range { get; init; }

        /// <summary>A single number.</summary>
        public static Numbers Of(Field field) => new([new ExpectedReading(field, [])], said => said[field.Id]);
    }

    /// <summary>What can be said, as it is shown.</summary>
    public IEnumerable<string> Forms => this switch
    {
        YesOrNo => ["yes", "no"],
        Words { IsList: true } => ["their names"],
        Words => ["words"],
        Day => ["month, day and year"],
        OneOf one => one.Choices.Select(choice => choice.Says),
        Numbers numbers => [.. numbers.Range is { } range ? [$"number to number {range.Unit.Spoken[0]}"] : Array.Empty<string>(), .. numbers.Fields.Select(FormOf)],
        _ => [],
    };

    static string FormOf(ExpectedReading reading) => $"{string.Concat(reading.Names.Take(1).Select(name => $"{name} "))}number {reading.Field.Unit.Spoken[0]}";
}

/// <summary>Where answers come from.</summary>
interface IAnswers
{
    /// <summary>Tells something.</summary>
    void Tell(string line);

    /// <summary>Tells something in answer to what was answered.</summary>
    void Reply(string line);

    /// <summary>Asks.</summary>
    /// <returns>The answer as a line; null where the answers are over.</returns>
    string? Next(Asked asked);
}
