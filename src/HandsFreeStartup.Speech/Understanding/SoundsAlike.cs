using System.Globalization;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>Readings that are easily taken for each other.</summary>
static class SoundsAlike
{
    /// <summary>Whether one may have been said where the other was heard: other field, teen for ty (15, 50; 215, 250), or a number without its last digits (26, 26.8).</summary>
    public static bool Are(Meaning.Reading one, Meaning.Reading other)
    {
        if (one.Field.Id != other.Field.Id)
        {
            return true;
        }

        (string a, string b) = (Digits(one.Value), Digits(other.Value));
        return a.StartsWith(b, StringComparison.Ordinal) || b.StartsWith(a, StringComparison.Ordinal) || IsTeenForTy(a, b) || IsTeenForTy(b, a);
    }

    static string Digits(decimal value) => Math.Abs(value).ToString(CultureInfo.InvariantCulture).Replace(".", "", StringComparison.Ordinal);

    /// <summary>"13" against "30" anywhere in two numbers that are equal otherwise.</summary>
    static bool IsTeenForTy(string teen, string ty) => teen.Length == ty.Length
        && Enumerable.Range(0, teen.Length - 1).Any(i => teen[i] == '1' && ty[i + 1] == '0' && teen[i + 1] == ty[i] && teen[..i] == ty[..i] && teen[(i + 2)..] == ty[(i + 2)..]);
}
