using System.Collections.Frozen;
using System.Globalization;
using System.Text.RegularExpressions;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;
using SpokenNumber = HandsFreeStartup.Speech.Speaking.SpokenNumber;

namespace HandsFreeStartup.Interview;

/// <summary>A day as people say it: "March 3rd, 2026", "the third of March twenty twenty six".</summary>
static partial class SpokenDay
{
    const string FirstToTwentieth = "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth";

    static readonly FrozenDictionary<string, string> Ordinals = FirstToTwentieth.Split(' ').Index().Append((29, "thirtieth")).ToFrozenDictionary(one => one.Item2, one => SpokenNumber.Usual(one.Item1 + 1));

    static readonly Field DayOfMonth = Whole(1, 31), Year = Whole(2000, 2099);

    /// <summary>The day; null where the words are none, or could be two.</summary>
    public static DateOnly? Read(string words)
    {
        string[] plain = [.. Separator().Split(Suffix().Replace(words.ToLowerInvariant(), "$1")).Where(word => word is not ("" or "the" or "of"))];
        int[] months = [.. plain.Select(MonthOf).Where(month => month > 0)];
        string[] numbers = [.. plain.Where(word => MonthOf(word) == 0).Select(word => Ordinals.GetValueOrDefault(word, word))];
        (int Day, int Year)[] found =
        [
            .. from split in Enumerable.Range(1, Math.Max(0, numbers.Length - 1))
               from day in SpokenNumbers.Parse(string.Join(' ', numbers[..split]), DayOfMonth)
               from year in SpokenNumbers.Parse(string.Join(' ', numbers[split..]), Year)
               select ((int)day.Value, (int)year.Value),
        ];
        return months is [var only] && found is [var one] && one.Day <= DateTime.DaysInMonth(one.Year, only) ? new DateOnly(one.Year, only, one.Day) : null;
    }

    static int MonthOf(string word) => 1 + Array.FindIndex(CultureInfo.InvariantCulture.DateTimeFormat.MonthNames, month => month.Length > 0 && string.Equals(month, word, StringComparison.OrdinalIgnoreCase));

    static Field Whole(decimal lowest, decimal highest) => new("day", "Day", [], Unit.Seconds) { Lowest = lowest, Highest = highest, UsualLowest = lowest, UsualHighest = highest, FewestDecimals = 0, MostDecimals = 0 };

    [GeneratedRegex(@"\b([0-9]+)(st|nd|rd|th)\b", RegexOptions.CultureInvariant)]
    private static partial Regex Suffix();

    [GeneratedRegex(@"[\s,.\-]+", RegexOptions.CultureInvariant)]
    private static partial Regex Separator();
}
