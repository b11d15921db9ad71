using System.Text;
using System.Text.RegularExpressions;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>Splits text into the tokens that the model itself would write.</summary>
/// <remarks>
/// Byte-pair encoding (R. Sennrich et al. 2016) with the word split of GPT-2: from single bytes, the adjacent pair whose joined text has the smallest token id is
/// merged until none is left. The engine's own tokeniser takes the longest match instead, which gives pieces that the model never writes ("monoxide").
/// </remarks>
/// <param name="idOf">Token id by the token's bytes, each byte as one char.</param>
sealed partial class BytePairs(IReadOnlyDictionary<string, int> idOf)
{
    readonly Dictionary<string, int[]> _known = [];

    /// <summary>The token ids of <paramref name="text"/>.</summary>
    public int[] Encode(string text)
    {
        if (!_known.TryGetValue(text, out int[]? pieces))
        {
            pieces = [.. Words().Matches(text).SelectMany(word => Merge(word.Value))];
            _known[text] = pieces;
        }

        return pieces;
    }

    int[] Merge(string word)
    {
        List<string> parts = [.. Encoding.UTF8.GetBytes(word).Select(value => ((char)value).ToString())];
        while (true)
        {
            int best = int.MaxValue;
            int at = -1;
            for (int i = 0; i + 1 < parts.Count; i++)
            {
                if (idOf.TryGetValue(parts[i] + parts[i + 1], out int id) && id < best)
                {
                    (best, at) = (id, i);
                }
            }

            if (at < 0)
            {
                return [.. parts.Select(part => idOf[part])];
            }

            parts[at] += parts[at + 1];
            parts.RemoveAt(at + 1);
        }
    }

    [GeneratedRegex(@"'s|'t|'re|'ve|'m|'ll|'d| ?\p{L}+| ?\p{N}+| ?[^\s\p{L}\p{N}]+|\s+(?!\S)|\s+")]
    private static partial Regex Words();
}
