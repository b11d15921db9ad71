namespace HandsFreeStartup.Speech.Recognising;

/// <summary>The likeliest words if nothing is known about what may be said.</summary>
/// <param name="Text">As the model writes it.</param>
/// <param name="LogProbability">Of all its tokens, and of the end if it was reached.</param>
sealed record FreeReading(string Text, double LogProbability)
{
    /// <summary>Takes the likeliest token again and again; stops at the end, at a repetition, or after <paramref name="mostTokens"/>.</summary>
    public static FreeReading Of(WhisperModel model, WhisperModel.Prefix start, int mostTokens)
    {
        List<int> tokens = [];
        double sum = 0;
        for (WhisperModel.Prefix at = start; tokens.Count < mostTokens && !Repeats(tokens);)
        {
            ReadOnlySpan<float> next = at.Next();
            int best = Likeliest(next);
            sum += next[best];
            if (best == model.End)
            {
                break;
            }

            tokens.Add(best);
            at = at.After(best);
        }

        return new FreeReading(model.Text(tokens).Trim(), sum);
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

    /// <summary>Whether the last one to four tokens only say the ones before them again.</summary>
    static bool Repeats(List<int> tokens) =>
        Enumerable.Range(1, 4).Any(n => tokens.Count >= 3 * n && tokens[^n..].SequenceEqual(tokens[^(2 * n)..^n]) && tokens[^n..].SequenceEqual(tokens[^(3 * n)..^(2 * n)]));

    /// <summary>Whether the model wrote a mark for noise or music, or nothing.</summary>
    public bool IsNoise => Text.Length == 0 || Text[0] is '[' or '(' or '*' or '♪' or '♫' || !Text.Any(char.IsLetterOrDigit);
}
