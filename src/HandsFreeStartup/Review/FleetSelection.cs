using System.CommandLine;
using System.Globalization;
using HandsFreeStartup.Fleet.Reading;
using HandsFreeStartup.Reports.Review;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Review;

/// <summary>Which jobs of the firm's database are meant.</summary>
static class FleetSelection
{
    /// <summary>One day.</summary>
    public static Option<string?> Day { get; } = new("--day") { Description = "With --from: jobs that began on that day, local to each job.", HelpName = "YYYY-MM-DD" };

    static readonly Option<string?> Since = new("--since") { Description = "With --from: jobs that began on that day or later, local to each job.", HelpName = "YYYY-MM-DD" };
    static readonly Option<string?> Until = new("--until") { Description = "With --from: jobs that began on that day or earlier, local to each job.", HelpName = "YYYY-MM-DD" };
    static readonly Option<string?> Van = new("--van") { Description = "With --from: jobs of that crew, named by the login of its van.", HelpName = "LOGIN" };
    static readonly Option<string?> Technician = new("--technician") { Description = "With --from: jobs of that technician.", HelpName = "NAME" };
    static readonly Option<string?> Model = new("--model") { Description = "With --from: jobs at that model of furnace, named by the id of its sheet.", HelpName = "ID" };

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Option> Options { get; } = [Day, Since, Until, Van, Technician, Model];

    /// <summary>What was chosen.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="job">Name of one job, VAN/JOB or JOB, or null.</param>
    /// <exception cref="WrongUseException">A day is none.</exception>
    public static FleetFilter Of(ParseResult parsed, string? job)
    {
        DateOnly? day = DayOf(parsed, Day);
        (string? van, string? jobId) = job?.Split('/', 2) is [var named, var rest] ? (named, rest) : (parsed.GetValue(Van), job);
        return new FleetFilter(day ?? DayOf(parsed, Since), day ?? DayOf(parsed, Until), van, parsed.GetValue(Technician), parsed.GetValue(Model), jobId);
    }

    /// <summary>A status as the database keeps it.</summary>
    public static string Word(JobStatus status) => status switch
    {
        JobStatus.OutOfService => "out-of-service",
        _ => status.ToString().ToLowerInvariant(),
    };

    /// <summary>A day that was given, or null.</summary>
    /// <exception cref="WrongUseException">It is none.</exception>
    public static DateOnly? DayOf(ParseResult parsed, Option<string?> option) => parsed.GetValue(option) is not { } text ? null
        : DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day
        : throw new WrongUseException($"'{text}' is no day. Write {option.Name} like 2026-11-28.");
}
