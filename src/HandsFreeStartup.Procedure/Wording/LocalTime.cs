using System.Globalization;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Procedure.Wording;

/// <summary>Moments as people see them: by the clock on the wall where the job was done, with its offset. Only the log is in UTC.</summary>
public sealed class LocalTime
{
    static readonly TimeSpan Farthest = TimeSpan.FromHours(14);

    readonly TimeSpan _offset;

    /// <summary>A wall clock.</summary>
    /// <param name="offset">Ahead of UTC; one that no clock on earth has is taken for none.</param>
    public LocalTime(TimeSpan offset) => _offset = offset.Duration() <= Farthest && offset.Ticks % TimeSpan.TicksPerMinute == 0 ? offset : TimeSpan.Zero;

    /// <summary>The wall clock of a job; UTC where the record has none.</summary>
    public static LocalTime Of(JobDescription? job) => new(job?.UtcOffset ?? TimeSpan.Zero);

    /// <summary>The wall clock of a record; UTC where it has none.</summary>
    public static LocalTime Of(IReadOnlyList<StartupEvent> events) => Of((events.FirstOrDefault() as StartupBegan)?.Job);

    /// <summary>The same moment on this clock.</summary>
    public DateTimeOffset At(DateTimeOffset at) => at.ToOffset(_offset);

    /// <summary>Date, time of day and offset: "2026-11-28 17:45:05 -05:00".</summary>
    public string Stamp(DateTimeOffset at) => At(at).ToString("yyyy-MM-dd HH:mm:ss zzz", CultureInfo.InvariantCulture);

    /// <summary>Time of day: "17:45:05". The offset stands once on the same page, see <see cref="Zone"/>.</summary>
    public string Time(DateTimeOffset at) => At(at).ToString("HH:mm:ss", CultureInfo.InvariantCulture);

    /// <summary>Date: "2026-11-28".</summary>
    public string Date(DateTimeOffset at) => At(at).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>What the times of a page are: "local time, UTC-05:00", or "UTC" where the record has no other.</summary>
    public string Zone => _offset == TimeSpan.Zero ? "UTC (+00:00)" : $"local time (UTC{new DateTimeOffset(DateTime.UnixEpoch.AddDays(1).Ticks, _offset).ToString("zzz", CultureInfo.InvariantCulture)})";
}
