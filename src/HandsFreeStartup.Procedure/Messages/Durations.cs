namespace HandsFreeStartup.Procedure.Messages;

/// <summary>Durations as people see them.</summary>
public static class Durations
{
    /// <summary>"4:05", and "1:04:05" from an hour on. A begun second counts whole, so that nothing that still runs is shown as over.</summary>
    public static string Text(TimeSpan span)
    {
        long seconds = (long)Math.Ceiling(span.Duration().TotalSeconds);
        return seconds < 3600
            ? FormattableString.Invariant($"{seconds / 60}:{seconds % 60:00}")
            : FormattableString.Invariant($"{seconds / 3600}:{seconds / 60 % 60:00}:{seconds % 60:00}");
    }
}
