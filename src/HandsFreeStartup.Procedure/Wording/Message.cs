using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Wording;

/// <summary>A part of what the tool tells. The screen and the voice each make of it what they need; neither ever looks for a number in a sentence.</summary>
public abstract record MessagePart
{
    /// <summary>As shown.</summary>
    public abstract string Shown { get; }

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
    }

    /// <summary>A number with its unit, and its doubt where that is told.</summary>
    /// <param name="Value">The number.</param>
    /// <param name="TellsDoubt">Whether its uncertainty is told too.</param>
    public sealed record Quantity(ShownValue Value, bool TellsDoubt = false) : MessagePart
    {
        /// <inheritdoc/>
        public override string Shown => TellsDoubt ? Value.Text : Value.Plain;
    }

    /// <summary>What a value is compared with.</summary>
    public sealed record Limit(DeclaredLimit Declared) : MessagePart
    {
        /// <inheritdoc/>
        public override string Shown => Declared.Text.TrimEnd();
    }

    /// <summary>A span of time.</summary>
    public sealed record Duration(TimeSpan Span) : MessagePart
    {
        /// <inheritdoc/>
        public override string Shown => Durations.Text(Span);
    }
}

/// <summary>What the tool tells, part by part. An interpolated string is one: each hole becomes a part of its own kind.</summary>
/// <remarks>In a conditional or switch expression an interpolated string is a plain one unless an arm is a message: cast the first.</remarks>
[InterpolatedStringHandler]
public sealed class Message
{
    readonly ImmutableArray<MessagePart>.Builder _parts = ImmutableArray.CreateBuilder<MessagePart>();

    /// <summary>An empty message.</summary>
    public Message()
    {
    }

    /// <summary>Made by the compiler for an interpolated string.</summary>
    public Message(int literalLength, int formattedCount) => _parts.Capacity = Math.Max(literalLength > 0 ? formattedCount * 2 + 1 : formattedCount, 1);

    /// <summary>All parts, in order.</summary>
    public ImmutableArray<MessagePart> Parts => _parts.ToImmutable();

    /// <summary>As shown. A full stop after one that ends a unit ("in. w.c.") would be a second one.</summary>
    public string Shown => _parts.Aggregate("", (before, part) => before.EndsWith('.') && part.Shown.StartsWith('.') && !part.Shown.StartsWith("..", StringComparison.Ordinal) ? before + part.Shown[1..] : before + part.Shown);

    /// <summary>Whether there is nothing to tell.</summary>
    public bool IsEmpty => _parts.All(part => part.Shown.Length == 0);

    /// <summary>Plain words as a message.</summary>
    public static implicit operator Message(string words) => FromString(words);

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

    /// <summary>Adds plain words.</summary>
    public void AppendLiteral(string words)
    {
        if (words.Length > 0)
        {
            _parts.Add(new MessagePart.Text(words));
        }
    }

    /// <summary>Adds plain words.</summary>
    public void AppendFormatted(string? words) => AppendLiteral(words ?? "");

    /// <summary>Adds a letter; without this it would be taken for a number.</summary>
    public void AppendFormatted(char letter) => AppendLiteral(letter.ToString());

    /// <summary>Adds a part.</summary>
    public void AppendFormatted(MessagePart part) => _parts.Add(part);

    /// <summary>Adds all parts of another message.</summary>
    public void AppendFormatted(Message message) => _parts.AddRange(message._parts);

    /// <summary>Adds a value without its doubt.</summary>
    public void AppendFormatted(ShownValue value) => _parts.Add(new MessagePart.Quantity(value));

    /// <summary>Adds a limit.</summary>
    public void AppendFormatted(DeclaredLimit limit) => _parts.Add(new MessagePart.Limit(limit));

    /// <summary>Adds a span of time.</summary>
    public void AppendFormatted(TimeSpan span) => _parts.Add(new MessagePart.Duration(span));

    /// <summary>Adds the name of a field.</summary>
    public void AppendFormatted(Field field) => _parts.Add(new MessagePart.Name(field.Label));

    /// <summary>Adds a count.</summary>
    public void AppendFormatted(int count) => AppendFormatted((decimal)count);

    /// <summary>Adds a number without a unit, its decimals as they are.</summary>
    public void AppendFormatted(decimal number) => _parts.Add(new MessagePart.Quantity(ShownValue.Alone(number, "")));

    /// <summary>As shown.</summary>
    public override string ToString() => Shown;
}
