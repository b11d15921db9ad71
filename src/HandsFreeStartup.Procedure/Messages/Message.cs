using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using System.Text.Json.Serialization;
using System.Text.RegularExpressions;
using HandsFreeStartup.Calculations.Derivations;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Messages;

/// <summary>A part of what the tool tells. The screen and the voice each make of it what they need; neither ever looks for a number in a sentence.</summary>
public abstract record MessagePart
{
    /// <summary>As shown.</summary>
    public abstract string Shown { get; }

    /// <summary>As shown.</summary>
    public sealed override string ToString() => Shown;

    /// <summary>Plain words.</summary>
    public sealed record Text(string Words) : MessagePart
    {
        /// <inheritdoc/>
        public override string Shown => Words;
    }

    /// <summary>A name that somebody has given, or that stands in a table: a field, a stage, a step.</summary>
    public sealed record Name(string Words) : MessagePart
    {
        /// <inheritdoc/>
        public override string Shown => Words;

        /// <summary>The words, and the numbers among them ("Bedroom 2").</summary>
        public ImmutableArray<MessagePart> Parts => WrittenParts.Of(Words);
    }

    /// <summary>What can be said or typed, as it is heard: English in every language.</summary>
    public sealed record Form(string Words) : MessagePart
    {
        /// <inheritdoc/>
        public override string Shown => Words;

        /// <summary>The words, and the numbers among them ("number with 2 decimals").</summary>
        public ImmutableArray<MessagePart> Parts => WrittenParts.Of(Words);
    }

    /// <summary>A number with its unit, and its doubt where that is told.</summary>
    /// <param name="Value">The number.</param>
    /// <param name="TellsDoubt">Whether its uncertainty is told too.</param>
    public sealed record Quantity(ShownValue Value, bool TellsDoubt = false) : MessagePart
    {
        /// <inheritdoc/>
        public override string Shown => TellsDoubt ? Value.Text : Value.Plain;
    }

    /// <summary>A number with its unit in a text that somebody wrote, shown as it was written.</summary>
    /// <param name="Written">As written: "80,000 Btu/h", "–3.8 in. w.c.".</param>
    /// <param name="Number">Sign and digits, with a point before the decimals.</param>
    /// <param name="UnitSymbol">Its unit; empty where none stands beside it.</param>
    /// <param name="EndsRange">Whether it is the end of a range that the number before it begins.</param>
    public sealed record Figure(string Written, string Number, string UnitSymbol, bool EndsRange) : MessagePart
    {
        /// <inheritdoc/>
        public override string Shown => Written;
    }

    /// <summary>A telephone number; it is said digit by digit.</summary>
    public sealed record Telephone(string Number) : MessagePart
    {
        /// <inheritdoc/>
        public override string Shown => Number;
    }

    /// <summary>What a value is compared with.</summary>
    /// <param name="Lower">Lowest permitted value; empty for none.</param>
    /// <param name="Upper">Highest permitted value; empty for none.</param>
    /// <param name="UnitSymbol">Unit of both.</param>
    public sealed record Limit(string Lower, string Upper, string UnitSymbol) : MessagePart
    {
        /// <inheritdoc/>
        public override string Shown => (Lower.Length, Upper.Length) switch
        {
            (0, 0) => "no limit",
            (0, _) => $"at most {Upper} {UnitSymbol}".TrimEnd(),
            (_, 0) => $"at least {Lower} {UnitSymbol}".TrimEnd(),
            _ => $"{Lower} to {Upper} {UnitSymbol}".TrimEnd(),
        };
    }

    /// <summary>A span of time.</summary>
    public sealed record Duration(TimeSpan Span) : MessagePart
    {
        /// <inheritdoc/>
        public override string Shown => Durations.Text(Span);
    }

    /// <summary>A part that is shown in words of another language; the voice still says it by what it is.</summary>
    /// <param name="Part">What it is.</param>
    /// <param name="Words">As shown.</param>
    public sealed record InLanguage(MessagePart Part, string Words) : MessagePart
    {
        /// <inheritdoc/>
        public override string Shown => Words;
    }
}

/// <summary>What is told as one part of a message.</summary>
public interface ITold
{
    /// <summary>The part.</summary>
    MessagePart Told { get; }
}

/// <summary>What the tool tells, part by part. An interpolated string is one: each hole becomes a part of its own kind.</summary>
/// <remarks>
/// In a conditional or switch expression an interpolated string is a plain one unless an arm is a message (null is none): cast the first. Two messages are equal that show the same;
/// in the log it is the text that it shows. What its literals and holes are is kept beside the parts: by that a <see cref="Language"/> finds the same sentence in other words.
/// </remarks>
[InterpolatedStringHandler, JsonConverter(typeof(MessageText))]
public sealed partial class Message : IEquatable<Message>
{
    readonly string? _written;
    readonly ImmutableArray<MessagePart>.Builder _parts = ImmutableArray.CreateBuilder<MessagePart>();
    readonly List<(string? Literal, object? Hole)> _pieces = [];

    /// <summary>An empty message.</summary>
    public Message()
    {
    }

    Message(string written, bool isOwn)
    {
        (_written, IsOwn) = (written, isOwn);
        _parts.AddRange(WrittenParts.Of(written));
    }

    /// <summary>What somebody wrote or dictated, or what stands in a file or in the log: taken into parts here, once, and never again.</summary>
    public static Message Written(string text) => new(text, isOwn: false);

    /// <summary>A sentence of the program itself that comes back from the log, finished: a language finds again what it was made of.</summary>
    public static Message Recorded(string text) => new(text, isOwn: true);

    /// <summary>A text of the calculations, which know of no messages: its holes are other such texts, numbers, notation and finished words.</summary>
    public static Message Of(FormattableString text)
    {
        Message message = new();
        int from = 0;
        foreach (Match hole in NumberedHole.Matches(text.Format))
        {
            message.AppendLiteral(text.Format[from..hole.Index]);
            message.Append(text.GetArgument(int.Parse(hole.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture)));
            from = hole.Index + hole.Length;
        }

        message.AppendLiteral(text.Format[from..]);
        return message;
    }

    /// <summary>Made by the compiler for an interpolated string.</summary>
    public Message(int literalLength, int formattedCount) => _parts.Capacity = Math.Max(literalLength > 0 ? formattedCount * 2 + 1 : formattedCount, 1);

    Message(Message of, Func<Message, Language, Message> change) => (Origin, _parts) = ((of, change), of._parts.ToImmutable().ToBuilder());

    /// <summary>The text as somebody wrote it; null for a message that was put together.</summary>
    internal string? WrittenText => _written;

    /// <summary>Whether the program has put that text together, and nobody else.</summary>
    internal bool IsOwn { get; }

    /// <summary>What it was made of, and how; null where it is no changed message.</summary>
    internal (Message Of, Func<Message, Language, Message> Change)? Origin { get; private init; }

    /// <summary>Its literals as they are, and a numbered hole for everything else: "{0}: the time is over.".</summary>
    internal string Template => string.Concat(_pieces.Aggregate((Text: new List<string>(), Number: 0), (so, piece) =>
    {
        so.Text.Add(piece.Literal ?? FormattableString.Invariant($"{{{so.Number}}}"));
        return (so.Text, so.Number + (piece.Literal is null ? 1 : 0));
    }).Text);

    /// <summary>What stands in the holes: a <see cref="Message"/>, a <see cref="MessagePart"/> or a string.</summary>
    internal ImmutableArray<object> Holes => [.. _pieces.Select(piece => piece.Hole).OfType<object>()];

    /// <summary>Whether there are words of its own around the holes.</summary>
    internal bool HasOwnWords => _pieces.Any(piece => piece.Literal?.Any(char.IsLetter) == true);

    /// <summary>All parts, in order.</summary>
    public ImmutableArray<MessagePart> Parts => _parts.ToImmutable();

    /// <summary>As shown. A full stop after one that ends a unit ("in. w.c.") would be a second one.</summary>
    public string Shown => _written ?? _parts.Aggregate("", (before, part) => before.EndsWith('.') && part.Shown.StartsWith('.') && !part.Shown.StartsWith("..", StringComparison.Ordinal) ? before + part.Shown[1..] : before + part.Shown);

    /// <summary>Whether there is nothing to tell.</summary>
    public bool IsEmpty => _parts.All(part => part.Shown.Length == 0);

    /// <summary>Plain words as a message.</summary>
    [return: NotNullIfNotNull(nameof(words))]
    public static implicit operator Message?(string? words) => words is null ? null : FromString(words);

    /// <summary>Plain words as a message.</summary>
    public static Message FromString(string words)
    {
        Message message = new();
        message.AppendLiteral(words);
        return message;
    }

    /// <summary>Several messages, one after the other.</summary>
    public static Message Join(string between, IEnumerable<Message> messages)
    {
        Message joined = new();
        foreach (Message message in messages)
        {
            joined.AppendLiteral(joined._parts.Count == 0 ? "" : between);
            joined.AppendFormatted(message);
        }

        return joined;
    }

    /// <summary>The same text with what is to stand in the place of <paramref name="mark"/>, before anything of it is told.</summary>
    public Message With(string mark, Message replacement) => !Shown.Contains(mark, StringComparison.Ordinal) ? this : new(Shown.Replace(mark, replacement.Shown, StringComparison.Ordinal), isOwn: false)
    {
        Origin = (this, (message, language) => message.With(mark, language.In(replacement))),
    };

    /// <summary>With a capital at its beginning.</summary>
    public Message Capitalised()
    {
        string shown = Shown;
        Message capital = new(this, (message, _) => message.Capitalised());
        if (shown is [>= 'a' and <= 'z', ..] && Parts[0] is MessagePart.Text or MessagePart.Name)
        {
            string words = $"{char.ToUpperInvariant(shown[0])}{Parts[0].Shown[1..]}";
            capital._parts[0] = Parts[0] is MessagePart.Name ? new MessagePart.Name(words) : new MessagePart.Text(words);
        }

        return capital;
    }

    /// <summary>Without a full stop at its end, where it is put into a longer sentence.</summary>
    public Message WithoutStop()
    {
        Message open = new(this, (message, _) => message.WithoutStop());
        if (Parts is [.., MessagePart.Text { Words: var words }])
        {
            open._parts.RemoveAt(_parts.Count - 1);
            open.AddText(words.TrimEnd('.'));
        }

        return open;
    }

    /// <summary>Adds plain words.</summary>
    public void AppendLiteral(string words)
    {
        AddText(words);
        _pieces.Add((words, null));
    }

    /// <summary>Adds plain words.</summary>
    public void AppendFormatted(string? words)
    {
        AddText(words ?? "");
        _pieces.Add((null, words ?? ""));
    }

    /// <summary>Adds a letter; without this it would be taken for a number.</summary>
    public void AppendFormatted(char letter) => AppendFormatted(letter.ToString());

    /// <summary>Adds a part.</summary>
    public void AppendFormatted(MessagePart part)
    {
        _parts.Add(part);
        _pieces.Add((null, part));
    }

    /// <summary>Adds all parts of another message.</summary>
    public void AppendFormatted(Message message)
    {
        _parts.AddRange(message._parts);
        _pieces.Add((null, message));
    }

    /// <summary>Adds a value without its doubt.</summary>
    public void AppendFormatted(ShownValue value) => AppendFormatted(new MessagePart.Quantity(value));

    /// <summary>Adds what is one part of a message.</summary>
    public void AppendFormatted(ITold told) => AppendFormatted(told.Told);

    /// <summary>Adds a span of time.</summary>
    public void AppendFormatted(TimeSpan span) => AppendFormatted(new MessagePart.Duration(span));

    /// <summary>Adds the name of a field.</summary>
    public void AppendFormatted(Field field) => AppendFormatted(new MessagePart.Name(field.Label));

    /// <summary>Adds a count.</summary>
    public void AppendFormatted(int count) => AppendFormatted((decimal)count);

    /// <summary>Adds a number without a unit, its decimals as they are.</summary>
    public void AppendFormatted(decimal number) => AppendFormatted(new MessagePart.Quantity(ShownValue.Alone(number, "")));

    void Append(object? part)
    {
        switch (part)
        {
            case FormattableString text:
                AppendFormatted(Of(text));
                break;
            case DerivedNumber number:
                AppendFormatted(new ShownValue(number.Text, "", "", number.Unit));
                break;
            case Notation notation:
                AppendFormatted(new MessagePart.Form(notation.Text));
                break;
            case string words:
                AppendFormatted(Recorded(words));
                break;
        }
    }

    void AddText(string words)
    {
        if (words.Length > 0)
        {
            _parts.Add(new MessagePart.Text(words));
        }
    }

    /// <summary>As shown.</summary>
    public override string ToString() => Shown;

    /// <inheritdoc/>
    public bool Equals(Message? other) => other is not null && Shown == other.Shown;

    /// <inheritdoc/>
    public override bool Equals(object? other) => Equals(other as Message);

    /// <inheritdoc/>
    public override int GetHashCode() => Shown.GetHashCode(StringComparison.Ordinal);

    [GeneratedRegex(@"\{([0-9]+)\}", RegexOptions.CultureInvariant)]
    private static partial Regex NumberedHole { get; }
}
