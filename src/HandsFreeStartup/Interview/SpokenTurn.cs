using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Speaking;
using SpokenNumber = HandsFreeStartup.Speech.Speaking.SpokenNumber;

namespace HandsFreeStartup.Interview;

/// <summary>What comes of a phrase.</summary>
/// <param name="Next">Where the question stands now.</param>
/// <param name="Says">What is said to it; empty for nothing.</param>
/// <param name="Line">The answer, once there is one.</param>
sealed record Taken(SpokenTurn Next, Message Says, string? Line = null);

/// <summary>
/// One question that is answered by voice. Pure. Yes and no are taken when they are heard clearly; everything else is read back and becomes an answer only by "confirm" or "keep".
/// </summary>
/// <param name="Asked">The question.</param>
/// <param name="Language">In which it is read back; what can be said is English.</param>
sealed record SpokenTurn(Asked Asked, Language Language)
{
    const string Back = "#back", Why = "#why", Skip = "#skip", Same = "#same", Again = "#again", Keep = "#keep";
    const string SayAgain = "Say it again, or type it.";
    const string Needed = "This one is needed.";

    ImmutableArray<(Field Field, decimal Value)> Said { get; init; } = [];

    /// <summary>The line that waits for its confirmation; null before one.</summary>
    string? Held { get; init; }

    /// <summary>The line that waits, as it is read back.</summary>
    Message ReadBack { get; init; } = new();

    bool IsYesOrNo => Asked.Form is AnswerForm.YesOrNo;

    bool LeavesRest => Asked is { Skips: not null, IsInList: true };

    /// <summary>Free speech and names of things are heard by the ear that knows everyday words, and matched.</summary>
    bool IsDictated => Held is null && !IsYesOrNo && Asked.Form is not AnswerForm.Numbers;

    /// <summary>What may be said now.</summary>
    public Expectation Expectation => IsDictated ? new Expectation([], [], [], Dictation: true) : Words with
    {
        Readings = Asked.Form is AnswerForm.Numbers named ? [.. named.Fields.Where(reading => !reading.Names.IsEmpty)] : [],
        Numbers = Asked.Form is AnswerForm.Numbers nameless ? [.. nameless.Fields.Where(reading => reading.Names.IsEmpty).Select(reading => reading.Field)] : [],
        Ranges = Asked.Form is AnswerForm.Numbers { Range: { } range } ? [range] : [],
    };

    /// <summary>Words that stand for themselves where free speech may be said: the ears of the start-up know them better than the one for free speech; null elsewhere.</summary>
    public Expectation? Known => IsDictated ? Words : null;

    /// <summary>What can be said, as it is shown.</summary>
    public IEnumerable<string> Forms =>
    [
        .. Held is null ? Asked.Form.Forms : ["confirm", "again"],
        .. Held is null && Asked.HasLast ? ["yes"] : Array.Empty<string>(),
        .. Held is null && Asked.Skips is not null ? ["skip step"] : Array.Empty<string>(),
        .. Held is null && LeavesRest ? [Asked.Rest] : Array.Empty<string>(),
        .. Asked.IsInList ? ["go back", "tell me more"] : Array.Empty<string>(),
        "say again",
    ];

    /// <summary>Everything but numbers and free speech.</summary>
    Expectation Words => new(
        [],
        [CommandWord.SayAgain, .. Only(Asked.IsInList, CommandWord.GoBack, CommandWord.TellMore), .. Only(Asked.Skips is not null, CommandWord.SkipStep)],
        Held is not null ? [AnswerWord.Confirm, AnswerWord.Yes, AnswerWord.No] : IsYesOrNo || Asked.HasLast ? [AnswerWord.Yes, AnswerWord.No] : [])
    {
        Choices =
        [
            .. Only(Held is not null, new SpokenChoice(Again, "again"), new SpokenChoice(Keep, "keep")),
            .. Only(Asked.IsInList, new SpokenChoice(Back, "back"), new SpokenChoice(Why, "why")),
            .. Only(Asked.Skips is not null, new SpokenChoice(Skip, "skip"), new SpokenChoice(Skip, "unknown")),
            .. Only(LeavesRest, new SpokenChoice(Asked.Rest, Asked.Rest)),
            .. Only(Asked.HasLast, new SpokenChoice(Same, "the same")),
            .. Asked.Form is AnswerForm.OneOf { Choices: var offered } && Held is null ? offered : [],
        ],
    };

    /// <summary>Takes a phrase.</summary>
    public Taken Take(Phrase phrase) => phrase switch
    {
        Phrase.Dictation dictated => TakeWords(dictated.Evidence.Words),
        Phrase.Reading reading when Asked.Form is AnswerForm.Numbers => Hold([(reading.Field, reading.Value)]),
        Phrase.Range range => Hold([(EndOf(range.Field, FieldId.LimitLower), range.Lower), (EndOf(range.Field, FieldId.LimitUpper), range.Upper)]),
        Phrase.Choice choice => TakeChoice(choice.Value),
        Phrase.Answer answer => TakeAnswer(answer.Word),
        Phrase.Command command => TakeCommand(command.Word),
        _ => new Taken(this, SayAgain),
    };

    Taken TakeCommand(CommandWord word) => word switch
    {
        CommandWord.GoBack => TakeChoice(Back),
        CommandWord.TellMore => TakeChoice(Why),
        CommandWord.SkipStep => TakeChoice(Skip),
        CommandWord.SayAgain => new Taken(this, Held is null ? Asked.Question : ReadBack),
        _ => new Taken(this, SayAgain),
    };

    Taken TakeAnswer(AnswerWord word) => word switch
    {
        AnswerWord.No when Held is not null => TakeChoice(Again),
        _ when Held is not null => TakeChoice(Keep),
        AnswerWord.Yes when IsYesOrNo => new Taken(this, "", "yes"),
        AnswerWord.No when IsYesOrNo => new Taken(this, "", "no"),
        AnswerWord.Yes when Asked.HasLast => TakeChoice(Same),
        AnswerWord.No when Asked.HasLast => new Taken(this, Asked.Says),
        _ => new Taken(this, SayAgain),
    };

    Taken TakeChoice(string value) => value switch
    {
        Keep => new Taken(this, "", Held),
        Again => new Taken(new SpokenTurn(Asked, Language), Asked.Says),
        Back => new Taken(this, "", "back"),
        Why => new Taken(this, "", "why"),
        Skip => new Taken(this, "", Asked.Skips),
        Same => new Taken(this, "", ""),
        Asked.Rest => Hold(Asked.Rest, Asked.Rest),
        _ => Hold(value, Language.Recorded(((AnswerForm.OneOf)Asked.Form).Choices.First(choice => choice.Value == value).Says)),
    };

    /// <summary>Free speech that is nothing but a word of the tool is that word, whatever commas the ear puts into it, and never an answer.</summary>
    Taken TakeWords(string heard)
    {
        string words = Once(heard).TrimEnd('.', '!', '?', ',').Trim();
        return PhraseText.Read(words, Words).Meanings switch
        {
            [Meaning.Choice choice] => TakeChoice(choice.Value),
            [Meaning.Answer answer] when Words.Answers.Contains(answer.Word) => TakeAnswer(answer.Word),
            [Meaning.Command command] when Words.Commands.Contains(command.Word) => TakeCommand(command.Word),
            _ when Asked.IsToTheTool(words) => new Taken(this, Asked.Skips is null && words.StartsWith("skip", StringComparison.OrdinalIgnoreCase) ? Needed : SayAgain),
            _ => Asked.Form switch
            {
                AnswerForm.Words { IsList: true } when words.Length > 0 => Hold(Listed(words), Listed(words)),
                AnswerForm.Words when words.Length > 0 => Hold(words, words),
                AnswerForm.Day when SpokenDay.Read(words) is { } day => Hold(FormattableString.Invariant($"{day:yyyy-MM-dd}"), DayOf(day)),
                AnswerForm.TypedAlone => new Taken(this, "This one is typed, or skipped."),
                _ => new Taken(this, SayAgain),
            },
        };
    }

    /// <summary>The ear for free speech may write a short phrase over and over; who says a name says it once.</summary>
    static string Once(string heard)
    {
        string[] words = heard.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        string Plain(int at) => words[at].TrimEnd('.', ',');
        int length = Enumerable.Range(2, Math.Max(0, words.Length / 2 - 1))
            .FirstOrDefault(part => words.Length % part == 0 && Enumerable.Range(part, words.Length - part).All(at => Plain(at) == Plain(at - part)), words.Length);
        return string.Join(' ', words[..length]);
    }

    Taken Hold(string line, string says) => Wait(this with { Held = line, ReadBack = Message.Written($"{says}?") });

    string DayOf(DateOnly day) => Language.Text("{month} {day}, {year}")
        .Replace("{month}", Language.Text(day.ToString("MMMM", CultureInfo.InvariantCulture)), StringComparison.Ordinal)
        .Replace("{day}", day.ToString("%d", CultureInfo.InvariantCulture), StringComparison.Ordinal)
        .Replace("{year}", day.ToString("yyyy", CultureInfo.InvariantCulture), StringComparison.Ordinal);

    /// <summary>A second number stands beside the first; one that was said before is said anew.</summary>
    Taken Hold(ImmutableArray<(Field Field, decimal Value)> numbers)
    {
        AnswerForm.Numbers form = (AnswerForm.Numbers)Asked.Form;
        ImmutableArray<(Field Field, decimal Value)> said = [.. Said.Where(one => numbers.All(number => number.Field.Id != one.Field.Id)).Concat(numbers).OrderBy(one => one.Field.Id, StringComparer.Ordinal)];
        string line = form.Line(said.ToDictionary(one => one.Field.Id, one => one.Value.ToString(CultureInfo.InvariantCulture)));
        return Wait(this with { Said = said, Held = line, ReadBack = Message.Written($"{Spoken(said)}?") });
    }

    static Taken Wait(SpokenTurn turn) => new(turn, turn.ReadBack);

    string Spoken(ImmutableArray<(Field Field, decimal Value)> said) =>
        said is [{ Field.Id: FieldId.LimitLower } lower, { Field.Id: FieldId.LimitUpper } upper]
            ? Language.Text("{0} to {1}", SpokenNumber.DigitByDigit(lower.Value, Language), ValueOf(upper))
            : string.Join($" {Language.Text("and")} ", said.Select(one => $"{NameOf(one.Field)}{ValueOf(one)}"));

    string ValueOf((Field Field, decimal Value) one) => SpokenMessage.Value(one.Value, one.Field.Unit, digitByDigit: true, Language);

    string NameOf(Field field) => string.Concat(((AnswerForm.Numbers)Asked.Form).Fields.Where(reading => reading.Field.Id == field.Id).SelectMany(reading => reading.Names.Take(1)).Select(name => $"{Language.Text(name)} "));

    static Field EndOf(Field field, string id) => field with { Id = id };

    static string Listed(string words) =>
        string.Join(", ", words.Replace(" and ", ",", StringComparison.OrdinalIgnoreCase).Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));

    static ImmutableArray<T> Only<T>(bool isSo, params ImmutableArray<T> these) => isSo ? these : [];
}
