using System.Globalization;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>Numbers as shown.</summary>
static class Numbers
{
    /// <summary>With the decimals as spoken.</summary>
    public static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>At most two decimals, none from a hundred on, no zeros at the end: a distance, not a reading.</summary>
    public static string Short(decimal value) => value.ToString(Math.Abs(value) >= 100 ? "0" : "0.##", CultureInfo.InvariantCulture);

    /// <summary>Rounded to <paramref name="decimals"/> for showing.</summary>
    public static string Text(double value, int decimals) => value.ToString($"F{decimals}", CultureInfo.InvariantCulture);

    /// <summary>A span of time as minutes and seconds, begun seconds counted whole: nothing that still runs is shown as over.</summary>
    public static string Text(TimeSpan span)
    {
        long seconds = (long)Math.Ceiling(span.TotalSeconds);
        return FormattableString.Invariant($"{seconds / 60}:{seconds % 60:00}");
    }
}
