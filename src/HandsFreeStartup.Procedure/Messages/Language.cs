using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace HandsFreeStartup.Procedure.Messages;

/// <summary>A language in which texts are shown and said. A text is found by its English words, with a numbered hole for each of its parts: "{0}: the time is over.".</summary>
/// <remarks>
/// What a language lacks is shown in English: a whole sentence, never half of one. Numbers keep the decimal point in every language: the record, the displays of the instruments and
/// what is typed must agree, and "3.500" must never become three thousand five hundred. What can be said is English too, because that is what the ear hears.
/// </remarks>
public sealed partial class Language
{
    const string Room = "{room}";

    readonly FrozenDictionary<string, string> _texts;
    readonly ImmutableArray<(string Before, string After, string Text)> _roomTexts;
    readonly Lazy<TextTemplates> _templates;

    /// <summary>A language.</summary>
    /// <param name="code">As it is chosen: "es".</param>
    /// <param name="texts">Each English text with its translation; one whose holes are not those of the English text is left out.</param>
    public Language(string code, IEnumerable<KeyValuePair<string, string>> texts)
    {
        Code = code;
        _texts = texts.Where(text => HasSameHoles(text.Key, text.Value)).ToFrozenDictionary(StringComparer.Ordinal);
        _templates = new(() => new TextTemplates(_texts), LazyThreadSafetyMode.PublicationOnly);
        _roomTexts = [.. _texts.Select(text => (Parts: text.Key.Split(Room), text.Value)).Where(text => text.Parts.Length == 2).Select(text => (text.Parts[0], text.Parts[1], text.Value))];
    }

    /// <summary>The language that everything is written in.</summary>
    public static Language English { get; } = new("en", []);

    /// <summary>As it is chosen: "es".</summary>
    public string Code { get; }

    /// <summary>Whether it is the one that everything is written in.</summary>
    public bool IsEnglish => Code == English.Code;

    /// <summary>The name of the voice that speaks it, as espeak-ng knows it.</summary>
    public string Voice { get; init; } = "en-us";

    /// <summary>How many texts it has.</summary>
    public int Count => _texts.Count;

    /// <summary>Told each text that was wanted and is not there; null where nobody asks.</summary>
    public Action<string>? Missing { get; init; }

    /// <summary>Whether a translation has each hole of its key, and no other.</summary>
    public static bool HasSameHoles(string key, string translation) => Holes(key).SetEquals(Holes(translation));

    /// <summary>The same message in this language, each part still of its kind; the message itself where the language lacks it.</summary>
    public Message In(Message message) => IsEnglish || message.IsEmpty ? message
        : message.Origin is { } origin ? origin.Change(In(origin.Of), this)
        : message is { WrittenText: { } recorded, IsOwn: true } ? Message.Written(Recorded(recorded))
        : message.WrittenText is { } written ? Find(written) is { } found ? Message.Written(found) : message
        : Filled(message);

    /// <summary>A message as shown in this language.</summary>
    public string Shown(Message message) => In(message).Shown;

    /// <summary>A finished sentence of the program in this language, what stands in its holes too as far as it is known.</summary>
    public string Recorded(string sentence) => Name(sentence) is var name && (IsEnglish || name != sentence) ? name
        : Around(sentence, words => _templates.Value.Translated(words, Recorded) ?? Named(words)) ?? sentence;

    /// <summary>"Flue temperature 300 °F", "Oxygen, %", "What is the elevation? [650]": what is called so, and what stands behind it.</summary>
    string? Named(string words) => BehindName.Match(words) is { Success: true } match && match.Groups["name"].Value is var name && Recorded(name) is var told && told != name
        ? $"{told}{match.Groups["between"].Value}{Recorded(match.Groups["value"].Value)}{match.Groups["last"].Value}" : null;

    /// <summary>A text that stands alone, in this language; blanks at its ends stay.</summary>
    public string Text(string english) => Around(english, Find) ?? english;

    /// <summary>A name or title: "Oxygen (low)" and "CO in the room: Kitchen" are found by their parts, and what somebody has named himself stays.</summary>
    public string Name(string english)
    {
        if (IsEnglish || Lookup(english.Trim()) is not null)
        {
            return Text(english);
        }

        Match composed = Composed.Match(english);
        return composed.Success && (composed.Groups[1].Length == 0 ? "" : Lookup(composed.Groups[1].Value)) is { } first
            ? $"{first}{composed.Groups[2].Value}{Lookup(composed.Groups[3].Value) ?? composed.Groups[3].Value}{composed.Groups[4].Value}"
            : Text(english);
    }

    /// <summary>A text with something in its holes: <c>Text("at most {0}", "400 ppm")</c>.</summary>
    public string Text(string template, params ReadOnlySpan<string> holes)
    {
        string[] filled = holes.ToArray();
        return Hole.Replace(Text(template), match => filled[int.Parse(match.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture)]);
    }

    /// <summary>A value with its unit.</summary>
    /// <param name="value">The value.</param>
    /// <param name="tellsDoubt">Whether its uncertainty is shown too.</param>
    public string Value(ShownValue value, bool tellsDoubt = false)
    {
        if (IsEnglish || value.Number.Length == 0)
        {
            return Text(tellsDoubt ? value.Text : value.Plain);
        }

        string number = Number(value.Number);
        string plain = $"{number} {value.UnitSymbol}".TrimEnd();
        return !tellsDoubt || value.Doubt.Length == 0 ? plain
            : value.Uncertainty.Length == 0 ? $"{plain}, {Text(ShownValue.NoneStated)}"
            : value.Highest.Length > 0 ? $"{plain} ({Text("{0} to {1}", "0", value.Highest)})"
            : $"{number} ± {value.Uncertainty} {value.UnitSymbol}".TrimEnd();
    }

    /// <summary>A number, which may be more than the field holds: "over 2000".</summary>
    public string Number(string number) => number.StartsWith(OverWord, StringComparison.Ordinal) ? Text("over {0}", number[OverWord.Length..]) : number;

    /// <summary>A limit.</summary>
    public string Limit(MessagePart.Limit limit) => (limit.Lower.Length, limit.Upper.Length) switch
    {
        (0, 0) => Text("no limit"),
        (0, _) => Text("at most {0}", $"{limit.Upper} {limit.UnitSymbol}".TrimEnd()),
        (_, 0) => Text("at least {0}", $"{limit.Lower} {limit.UnitSymbol}".TrimEnd()),
        _ => Text("{0} to {1}", limit.Lower, $"{limit.Upper} {limit.UnitSymbol}".TrimEnd()),
    };

    const string OverWord = "over ";

    Message Filled(Message message)
    {
        string? text = message.HasOwnWords ? Around(message.Template, Find) : message.Template;
        if (text is null)
        {
            return message;
        }

        ImmutableArray<object> holes = message.Holes;
        Message filled = new();
        int from = 0;
        foreach (Match hole in Hole.Matches(text))
        {
            filled.AppendLiteral(text[from..hole.Index]);
            Fill(filled, holes[int.Parse(hole.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture)]);
            from = hole.Index + hole.Length;
        }

        filled.AppendLiteral(text[from..]);
        return filled;
    }

    void Fill(Message message, object hole)
    {
        switch (hole)
        {
            case Message nested:
                message.AppendFormatted(In(nested));
                break;
            case string words:
                message.AppendFormatted(Name(words));
                break;
            case MessagePart part:
                message.AppendFormatted(In(part));
                break;
        }
    }

    MessagePart In(MessagePart part)
    {
        string shown = part switch
        {
            MessagePart.Text text => Text(text.Words),
            MessagePart.Name name => Name(name.Words),
            MessagePart.Quantity quantity => Value(quantity.Value, quantity.TellsDoubt),
            MessagePart.Limit limit => Limit(limit),
            _ => part.Shown,
        };
        return shown == part.Shown ? part : part switch
        {
            MessagePart.Text => new MessagePart.Text(shown),
            MessagePart.Name => new MessagePart.Name(shown),
            _ => new MessagePart.InLanguage(part, shown),
        };
    }

    /// <summary>The translation, or null where there is none; told to whoever asks for what is missing.</summary>
    string? Find(string english)
    {
        string? found = english.Any(char.IsLetter) ? Lookup(english) : english;
        if (found is null)
        {
            Missing?.Invoke(english);
        }

        return found;
    }

    string? Lookup(string english) => _texts.GetValueOrDefault(english) ?? OtherCase(english) ?? OfRoom(english);

    /// <summary>The same words at the beginning or in the middle of a sentence.</summary>
    string? OtherCase(string english) => english.Length == 0 ? null
        : char.IsLower(english[0]) && _texts.GetValueOrDefault($"{char.ToUpperInvariant(english[0])}{english[1..]}") is { } capital ? $"{char.ToLowerInvariant(capital[0])}{capital[1..]}"
        : char.IsUpper(english[0]) && _texts.GetValueOrDefault($"{char.ToLowerInvariant(english[0])}{english[1..]}") is { } small ? $"{char.ToUpperInvariant(small[0])}{small[1..]}"
        : null;

    /// <summary>A text of the room walk, in which a room that somebody has named already stands.</summary>
    string? OfRoom(string english)
    {
        foreach ((string before, string after, string text) in _roomTexts)
        {
            if (english.Length > before.Length + after.Length && english.StartsWith(before, StringComparison.Ordinal) && english.EndsWith(after, StringComparison.Ordinal))
            {
                return text.Replace(Room, english[before.Length..^after.Length], StringComparison.Ordinal);
            }
        }

        return null;
    }

    string? Around(string english, Func<string, string?> find)
    {
        string words = english.Trim();
        return IsEnglish || words.Length == 0 ? english
            : find(words) is not { } found ? null
            : $"{english[..english.IndexOf(words, StringComparison.Ordinal)]}{found}{english[(english.IndexOf(words, StringComparison.Ordinal) + words.Length)..]}";
    }

    static HashSet<string> Holes(string text) => [.. AnyHole.Matches(text).Select(match => match.Value)];

    [GeneratedRegex(@"\{([0-9]+)\}", RegexOptions.CultureInvariant)]
    private static partial Regex Hole { get; }

    [GeneratedRegex(@"^(?<name>.+)(?<last> \[[^\[\]]*\])$|^(?<name>\p{L}.*?)(?<between> )(?<value>(over )?[-−]?[0-9].*)$|^(?<name>\p{L}.*)(?<between>, )(?<value>[^,]+)$", RegexOptions.CultureInvariant)]
    private static partial Regex BehindName { get; }

    [GeneratedRegex(@"\{([0-9]+|room)\}", RegexOptions.CultureInvariant)]
    private static partial Regex AnyHole { get; }

    [GeneratedRegex(@"^(.*?)( \(|: )([^()]+)(\)?)$", RegexOptions.CultureInvariant)]
    private static partial Regex Composed { get; }
}
