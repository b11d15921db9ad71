using System.Text.RegularExpressions;

namespace HandsFreeStartup.Storage.Log;

/// <summary>How many events a log holds and how its last hash begins. Kept outside of the log, it shows a tail that was cut off or a log that was rewritten.</summary>
/// <param name="Count">Number of events.</param>
/// <param name="Hash">Hash of the last one in upper-case hexadecimal, or its beginning: 16 to 64 digits.</param>
public sealed partial record Checkpoint(int Count, string Hash)
{
    const int ShownDigits = 16;

    /// <summary>As printed on copies: <c>41 events, ends 7F3A 19C2 88E0 12AB</c>.</summary>
    public override string ToString() =>
        FormattableString.Invariant($"{Count} events, ends {string.Join(' ', Hash[..ShownDigits].Chunk(4).Select(group => new string(group)))}");

    /// <summary>Whether the two may stand for the same log: the shorter hash must begin the longer one.</summary>
    public bool Fits(Checkpoint other) =>
        Count == other.Count && (Hash.StartsWith(other.Hash, StringComparison.Ordinal) || other.Hash.StartsWith(Hash, StringComparison.Ordinal));

    /// <summary>Reads what was printed: a number of events and 16 to 64 hexadecimal digits; null if it is no checkpoint.</summary>
    public static Checkpoint? Parse(string text)
    {
        Match match = Shape().Match(text);
        string digits = match.Groups["hash"].Value.Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant();
        return match.Success && digits.Length is >= ShownDigits and <= 64 && int.TryParse(match.Groups["count"].ValueSpan, out int count)
            ? new Checkpoint(count, digits)
            : null;
    }

    [GeneratedRegex(@"^\s*(?<count>[0-9]{1,9})\s+(events?,?\s+)?(ends\s+)?(?<hash>[0-9A-Fa-f]{4}[0-9A-Fa-f ]*?)\s*\.?\s*$")]
    private static partial Regex Shape();
}
