namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>Finds what was probably meant by a word that is not known.</summary>
public static class Nearest
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

    /// <summary>The candidate that was probably meant by a word of a command; null where none is near.</summary>
    public static string? To(string word, IEnumerable<string> candidates) => word.Length is < 3 or > LongestWord
        ? null
        : candidates.Select(candidate => (candidate, Distance: Distance(word, candidate))).Where(one => one.Distance <= Math.Max(2, word.Length / 3))
            .OrderBy(one => one.Distance).ThenBy(one => one.candidate, StringComparer.Ordinal).Select(one => one.candidate).FirstOrDefault();

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
