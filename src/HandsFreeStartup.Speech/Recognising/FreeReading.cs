using System.Collections.Immutable;
using HandsFreeStartup.Speech.Phrases;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>The likeliest words if nothing is known about what may be said.</summary>
/// <param name="Text">As the model writes it.</param>
/// <param name="LogProbability">Of all its tokens, and of the end if it was reached.</param>
/// <param name="Mean">The same per token.</param>
sealed record FreeReading(string Text, double LogProbability, double Mean)
{
    /// <summary>How likely each of its plain words is: mean log-probability of the tokens that made it; empty for dictation, where nobody asks.</summary>
    public ImmutableArray<double> Words { get; private init; } = [];

    /// <summary>Takes the likeliest token again and again; stops at the end, at a repetition, or after <paramref name="mostTokens"/>.</summary>
    /// <param name="model">Whose tokens.</param>
    /// <param name="start">Before the first word of a sound.</param>
    /// <param name="mostTokens">The longest reading.</param>
    /// <param name="isDictation">People may say the same words twice in a note; in a command the model is only going round in circles.</param>
    public static FreeReading Of(WhisperModel model, WhisperModel.Prefix start, int mostTokens, bool isDictation)
    {
        List<int> tokens = [];
        List<double> likely = [];
        double sum = 0;
        for (WhisperModel.Prefix at = start; tokens.Count < mostTokens && !Repeats(tokens, isDictation ? 3 : 2);)
        {
            ReadOnlySpan<float> next = at.Next();
            int best = Likeliest(next);
            sum += next[best];
            if (best == model.End)
            {
                break;
            }

            tokens.Add(best);
            likely.Add(next[best]);
            at = at.After(best);
        }

        return new FreeReading(model.Text(tokens).Trim(), sum, sum / (tokens.Count + 1)) { Words = isDictation ? [] : [.. WordsOf(model, tokens, likely)] };
    }

    static IEnumerable<double> WordsOf(WhisperModel model, List<int> tokens, List<double> likely)
    {
        List<List<double>> words = [];
        for (int i = 0; i < tokens.Count; i++)
        {
            int before = words.Count, count = PlainWords.Of(model.Text(tokens[..(i + 1)])).Length;
            words.AddRange(Enumerable.Range(0, Math.Max(0, count - before)).Select(_ => new List<double>()));
            foreach (List<double> word in words.Skip(Math.Min(before, count - 1)))
            {
                word.Add(likely[i]);
            }
        }

        return words.Select(word => word.Average());
    }

    static int Likeliest(ReadOnlySpan<float> next)
    {
        int best = 0;
        for (int i = 1; i < next.Length; i++)
        {
            best = next[i] > next[best] ? i : best;
        }

        return best;
    }

    /// <summary>Whether the end has said the same thing over: one or two tokens three times ("six six six"), longer pieces as often as <paramref name="times"/>.</summary>
    static bool Repeats(List<int> tokens, int times) =>
        Enumerable.Range(1, tokens.Count / 2).Any(n => Same(tokens, n, n) && (n > 2 && times == 2 || Same(tokens, n, 2 * n)));

    /// <summary>Whether the last <paramref name="n"/> tokens are those that stand <paramref name="back"/> tokens earlier.</summary>
    static bool Same(List<int> tokens, int n, int back) =>
        tokens.Count >= n + back && tokens[^n..].SequenceEqual(tokens[^(n + back)..^back]);

    /// <summary>Whether the model wrote a mark for noise or music, or nothing.</summary>
    public bool IsNoise => Text.Length == 0 || Text[0] is '[' or '(' or '*' or '♪' or '♫' || !Text.Any(char.IsLetterOrDigit);
}
