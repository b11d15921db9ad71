using System.Buffers.Binary;
using System.Text;

namespace HandsFreeStartup.Tests.Fuzzing;

/// <summary>Small changes of an input: what a slip of a finger, a broken disk, another program or an attacker would do to it.</summary>
/// <param name="random">Where all chance comes from.</param>
/// <param name="words">Words that mean something to the door.</param>
public sealed class FuzzChanges(Random random, IReadOnlyList<string> words)
{
    const int Longest = 1 << 17;

    /// <summary>Numbers at the edges of what numbers can be, and what only looks like one.</summary>
    static readonly byte[][] Numbers = InUtf8(
        "0", "-0", "1", "-1", "00", "7.6", "7,6", "0.00", "-0.02", ".5", "5.", "1e26", "1e400", "-1e-400", "9999", "10000", "2147483648", "-2147483649", "9223372036854775808",
        "79228162514264337593543950335", "79228162514264337593543950336", "0.0000000000000000000000000001", "NaN", "Infinity", "∞", "½", "²", "٣", "７", "1 000", "1'000", "1_000",
        "0x10", "3-5", "3/5", "<8", "±2", "−3", "‐3", "—3", "－3", "+4", "--5", "1.2.3", "1\u200B2", "1\u00A02", "Ⅻ", "三");

    /// <summary>What terminals, tables, paths, JSON and YAML take for an order.</summary>
    static readonly byte[][] Orders =
    [
        .. InUtf8(
            "\u001b]0;owned\u0007", "\u001b[2J", "\u009b2J", "\u202e", "\u2066", "\ufeff", "\0", "\r", "\n", "\t", "\u0085", "\u2028", "=HYPERLINK(\"x\")", "@SUM(1)", "../../x", "/dev/zero",
            "'", "\"", "\\", "{", "}", "[", "]", ":", ": ", " #", "- ", "---\n", "...\n", "&a ", "*a", "!!int ", "|\n", ">\n", "? ", "%YAML 9.9\n", "{}", "[]", "null", "true", "~", ",", "\\ud800", "\\u0000", "%", "😀", "e\u0301", "\u200d"),
        [0xED, 0xA0, 0x80], [0xC0, 0x80], [0xFF, 0xFE], [0xF4, 0x90, 0x80, 0x80], [0xE2, 0x82],
    ];

    static readonly long[] Edges = [0, 1, -1, 2, 0x7F, 0x80, 0xFF, 0x7FFF, 0x8000, 0xFFFF, 0x7FFF_FFFF, 0x8000_0000, 0xFFFF_FFFF, 0x7FFF_FFF0, long.MaxValue, long.MinValue];

    readonly byte[][] _words = InUtf8([.. words]);

    /// <summary>A changed copy of <paramref name="input"/>; parts of <paramref name="others"/> may come into it.</summary>
    public byte[] Of(byte[] input, IReadOnlyList<byte[]> others)
    {
        byte[] changed = input;
        for (int left = 1 + random.Next(random.Next(4) switch { 0 => 10, 1 => 3, _ => 1 }); left > 0; left--)
        {
            changed = Once(changed, others);
        }

        return changed.Length > Longest ? changed[..Longest] : changed;
    }

    byte[] Once(byte[] input, IReadOnlyList<byte[]> others) => random.Next(16) switch
    {
        0 => Replaced(input, At(input), 1, [(byte)random.Next(256)]),
        1 => input.Length == 0 ? input : Replaced(input, At(input), 1, [(byte)(input[At(input)] ^ 1 << random.Next(8))]),
        2 => Replaced(input, At(input), random.Next(1, 9), []),
        3 => input[..At(input)],
        4 => Replaced(input, At(input), 0, Piece(input)),
        5 => Replaced(input, At(input), random.Next(64), Piece(others[random.Next(others.Count)])),
        6 => WithEdge(input),
        7 or 8 => WithToken(input, Numbers[random.Next(Numbers.Length)]),
        9 => Replaced(input, At(input), 0, Orders[random.Next(Orders.Length)]),
        10 => WithToken(input, Orders[random.Next(Orders.Length)]),
        11 or 12 => _words.Length == 0 ? input : WithToken(input, _words[random.Next(_words.Length)]),
        13 => WithLine(input, others[random.Next(others.Count)]),
        14 => random.Next(40) == 0 ? Many(input) : WithLine(input, input),
        _ => Replaced(input, At(input), 0, _words.Length > 0 && random.Next(2) == 0 ? _words[random.Next(_words.Length)] : Numbers[random.Next(Numbers.Length)]),
    };

    int At(byte[] input) => random.Next(input.Length + (input.Length == 0 ? 1 : 0));

    byte[] Piece(byte[] input)
    {
        int from = At(input);
        return input[from..Math.Min(input.Length, from + random.Next(1, 200))];
    }

    static byte[] Replaced(byte[] input, int at, int length, byte[] with) => [.. input.AsSpan(0, at), .. with, .. input.AsSpan(Math.Min(input.Length, at + length))];

    /// <summary>A number of two, four or eight bytes at the edge of what it can be.</summary>
    byte[] WithEdge(byte[] input)
    {
        byte[] number = new byte[8];
        BinaryPrimitives.WriteInt64LittleEndian(number, Edges[random.Next(Edges.Length)] + random.Next(-1, 2));
        number = number[..(1 << random.Next(1, 4))];
        if (random.Next(2) == 0)
        {
            Array.Reverse(number);
        }

        return Replaced(input, At(input), number.Length, number);
    }

    /// <summary>A whole word or number replaced.</summary>
    byte[] WithToken(byte[] input, byte[] with)
    {
        int from = At(input), to = from;
        while (from > 0 && IsOfToken(input[from - 1]))
        {
            from--;
        }

        while (to < input.Length && IsOfToken(input[to]))
        {
            to++;
        }

        return Replaced(input, from, to - from, with);
    }

    static bool IsOfToken(byte letter) => char.IsAsciiLetterOrDigit((char)letter) || letter is (byte)'.' or (byte)'-' or (byte)'_' or >= 0x80;

    /// <summary>A line removed, doubled, moved or taken from elsewhere.</summary>
    byte[] WithLine(byte[] input, byte[] other)
    {
        Range line = LineOf(input), from = LineOf(other);
        (int at, int length) = line.GetOffsetAndLength(input.Length);
        return random.Next(3) switch { 0 => Replaced(input, at, length, []), 1 => Replaced(input, at, length, other[from]), _ => Replaced(input, at, 0, other[from]) };
    }

    Range LineOf(byte[] input)
    {
        int at = At(input);
        int from = input.AsSpan(0, at).LastIndexOf((byte)'\n') + 1, end = input.AsSpan(at).IndexOf((byte)'\n');
        return from..(end < 0 ? input.Length : at + end + 1);
    }

    /// <summary>One piece many times over: what takes time or depth with its length shows it.</summary>
    byte[] Many(byte[] input)
    {
        byte[] piece = Piece(input);
        int times = piece.Length == 0 ? 0 : random.Next(Longest / piece.Length);
        return Replaced(input, At(input), 0, [.. Enumerable.Repeat(piece, times).SelectMany(one => one)]);
    }

    static byte[][] InUtf8(params string[] texts) => [.. texts.Select(Encoding.UTF8.GetBytes)];
}
