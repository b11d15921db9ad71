using System.Globalization;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Storage.Tests.Adversary;

/// <summary>
/// The program is ended, somebody edits what lies on the disk, and it is started again: the record with the copies of sheet, checklist, site and settings in it, as a resume reads it.
/// The files beside it are read no more. That the end of a record was cut off, only a checkpoint on paper tells.
/// </summary>
static class EditedRecord
{
    const string RemoveGuards = "drop trigger event_is_never_changed; drop trigger event_is_never_removed; drop trigger event_has_no_gap; drop trigger personal_is_never_changed;";

    /// <summary>A job with copies of shipped files.</summary>
    public static JobDescription JobOf(string checklist, string appliance, string site, string occasion, StageOrder order) => Procedure.Tests.Support.Some.Job with
    {
        Checklist = ShippedPlans.Copy(checklist),
        Appliance = ShippedPlans.Copy(appliance),
        Site = ShippedPlans.Copy(site),
        Settings = UserFile.Copy("settings.yaml", order == StageOrder.LowFirst ? "stage_order: low-first\n" : "stage_order: as-written\n"),
        Occasion = occasion.Length == 0 ? null : occasion,
    };

    /// <summary>Writes the log, edits it, and goes on with it.</summary>
    /// <returns>What was edited and gone on with all the same; null where it was refused.</returns>
    public static string? GoneOnWith(IReadOnlyList<StartupEvent> log, Random random)
    {
        using TemporaryFolder folder = new();
        string path = folder.File("job.db");
        using (StartupLog written = StartupLog.Create(path))
        {
            written.Append(log);
        }

        if (!Reads(path, log))
        {
            return "nothing was edited, and it does not go on";
        }

        string edit = Edit(path, log.Count, random);
        RawDatabase.Query(path, RemoveGuards + edit);
        return GoesOn(path) ? edit : null;
    }

    static bool Reads(string path, IReadOnlyList<StartupEvent> log)
    {
        using StartupLog opened = StartupLog.Open(path);
        return opened.ReadAll().Count == log.Count;
    }

    /// <summary>As a resume does it.</summary>
    static bool GoesOn(string path)
    {
        try
        {
            using StartupLog opened = StartupLog.Open(path);
            IReadOnlyList<StartupEvent> events = opened.ReadAll();
            Replay.Of(path, UserFile.PlanOf(((StartupBegan)events[0]).Job), events);
            return true;
        }
        catch (Exception refused) when (refused is LogException or ChecklistFileException)
        {
            return false;
        }
    }

    static string Edit(string path, int count, Random random)
    {
        int one = random.Next(1, count);
        switch (random.Next(8))
        {
            case 0:
                return FormattableString.Invariant($"delete from event where sequence={one}");
            case 1:
                return FormattableString.Invariant($"delete from event where sequence={one}; update event set sequence=sequence-1 where sequence>{one}");
            case 2:
                return FormattableString.Invariant($"update event set kind='note-taken' where sequence={one} and kind<>'note-taken'; update event set body=body||' ' where sequence={one}");
            case 3:
                return FormattableString.Invariant($"update event set recorded_at='2031-03-04T07:00:00.0000000+00:00' where sequence={one}");
            case 4:
                return "update event set body=replace(body, 'upper: ', 'upper: 9') where sequence=1";
            case 5:
                return "update event set body=replace(body, 'safety_stop: true', 'safety_stop: false')||' ' where sequence=1";
            case 6:
                return "update event set body=replace(replace(body, 'as-written', 'low-first'), 'minutes: ', 'minutes: 0.')||' ' where sequence=1";
            default:
                return Digit(path, one, random);
        }
    }

    /// <summary>One digit of what was recorded is another one.</summary>
    static string Digit(string path, int sequence, Random random)
    {
        string body = RawDatabase.Query(path, FormattableString.Invariant($"select body from event where sequence={sequence}"));
        int[] digits = [.. Enumerable.Range(0, body.Length).Where(at => char.IsAsciiDigit(body[at]))];
        int at = digits[random.Next(digits.Length)];
        string changed = string.Create(CultureInfo.InvariantCulture, $"{body[..at]}{(body[at] - '0' + 1 + random.Next(9)) % 10}{body[(at + 1)..]}");
        return FormattableString.Invariant($"update event set body='{changed.Replace("'", "''", StringComparison.Ordinal)}' where sequence={sequence}");
    }
}
