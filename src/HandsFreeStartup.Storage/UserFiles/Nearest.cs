namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>Finds what was probably meant by a word that is not known.</summary>
static class Nearest
{
    /// <summary>Nobody mistypes a longer one.</summary>
    const int LongestWord = 60;

    /// <summary>" Did you mean 'x'?" where a candidate is close, then the list of all.</summary>
    public static string Hint(string word, IReadOnlyCollection<string> candidates)
    {
        string? nearest = word.Length > LongestWord ? null : candidates.MinBy(candidate => Distance(word, candidate));
        string meant = word.Length > 2 && nearest is not null && Distance(word, nearest) <= Math.Max(1, word.Length / 3) ? $" Did you mean '{nearest}'?" : "";
        return $"{meant} Expected {(candidates.Count == 1 ? "" : "one of ")}{string.Join(", ", candidates)}.";
    }

    /// <summary>Number of letters to insert, remove or replace.</summary>
    static int Distance(string one, string other)
    {
        int[] row = [.. Enumerable.Range(0, other.Length + 1)];
        for (int i = 1; i <= one.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= other.Length; j++)
            {
                int replaced = diagonal + (one[i - 1] == other[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(replaced, Math.Min(row[j], row[j - 1]) + 1);
            }
        }
        return row[other.Length];
    }
}
