namespace HandsFreeStartup.Speech.Understanding;

/// <summary>About how many syllables a phrase has.</summary>
static class Syllables
{
    /// <summary>Groups of vowels, without a silent final e; joined letters ("ppm") count one each.</summary>
    public static int Of(string text) => PlainWords.Of(text).Sum(OfWord);

    static int OfWord(string word)
    {
        int groups = 0;
        for (int i = 0; i < word.Length; i++)
        {
            groups += IsVowel(word[i]) && (i == 0 || !IsVowel(word[i - 1])) ? 1 : 0;
        }

        bool silent = groups > 1 && word[^1] == 'e' && !IsVowel(word[^2]);
        return groups == 0 || word is "co" ? word.Length : silent ? groups - 1 : groups;
    }

    static bool IsVowel(char letter) => letter is 'a' or 'e' or 'i' or 'o' or 'u' or 'y';
}
