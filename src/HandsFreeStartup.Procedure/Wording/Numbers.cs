using System.Globalization;

namespace HandsFreeStartup.Procedure.Wording;

/// <summary>Numbers as people see them. What has an uncertainty is a <see cref="Messages.ShownValue"/>.</summary>
public static class Numbers
{
    /// <summary>With the decimals as spoken.</summary>
    public static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>Rounded to <paramref name="decimals"/>.</summary>
    public static string Text(double value, int decimals) => value.ToString($"F{decimals}", CultureInfo.InvariantCulture);

    /// <summary>At most two decimals, none from a hundred on, no zeros at the end: a distance, not a reading.</summary>
    public static string Short(decimal value) => value.ToString(Math.Abs(value) >= 100 ? "0" : "0.##", CultureInfo.InvariantCulture);

    /// <summary>"1 exception", "2 exceptions".</summary>
    public static string Count(int count, string one, string? several = null) => FormattableString.Invariant($"{count} {(count == 1 ? one : several ?? $"{one}s")}");
}
