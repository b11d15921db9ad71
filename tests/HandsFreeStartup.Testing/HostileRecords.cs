using System.Diagnostics;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Storage.Log;

namespace HandsFreeStartup.Storage.Tests.Support;

/// <summary>Records, and what lies beside them, made to break whoever reads them.</summary>
public static class HostileRecords
{
    const string Unlock = "drop trigger event_is_never_changed; drop trigger personal_is_never_changed; drop trigger event_is_never_removed; ";

    const string Endless = "as with recursive more(n) as (select 1 union all select n + 1 from more";
    const string OtherColumns = "'x' as recorded_at, 'x' as kind, '{}' as body, zeroblob(32) as previous_hash, zeroblob(32) as hash from more";

    /// <summary>What a sound record is changed to hold, by SQL.</summary>
    public static IReadOnlyDictionary<string, string> Contents { get; } = new Dictionary<string, string>
    {
        ["half a letter"] = "update personal set content='\"\\ud800\"' where path='text'",
        ["half a letter in a name"] = "update personal set content='{\"\\udfff\":1}' where path='text'",
        ["endless brackets"] = "update personal set content=replace(hex(zeroblob(50000)), '00', '[') where path='text'",
        ["no text"] = "update personal set content='{' where path='job/site'",
        ["another kind of text"] = "update personal set content='7' where path='job/site'",
        ["a factor beyond all"] = "update event set body=replace(body, '\"timer_factor\":1', '\"timer_factor\":1e400') where sequence=1",
        ["a factor of nothing"] = "update event set body=replace(body, '\"timer_factor\":1', '\"timer_factor\":0') where sequence=1",
        ["a factor that is no number"] = "update event set body=replace(body, '\"timer_factor\":1', '\"timer_factor\":\"NaN\"') where sequence=1",
        ["a year that is none"] = "update event set body=replace(body, '\"at\":\"20', '\"at\":\"99999') where sequence=3",
        ["empty objects"] = "update event set body='{}'",
        ["empty lists"] = "update event set body='[]'",
        ["null"] = "update event set body='null'",
        ["no JSON"] = "update event set body=x'FFFE00'||body",
        ["an unknown kind"] = "update event set kind='startup-blessed' where sequence=4",
        ["numbers beyond all"] = "update event set body=replace(body, '\"value\":', '\"value\":9e99999, \"x\":')",
        ["a kind with an escape"] = "update event set kind=char(27)||']0;owned'||char(7) where sequence=4",
        ["no site"] = "drop trigger personal_is_removed_only_when_told; delete from personal",
        ["a checklist of brackets"] = "update event set body=replace(body, 'sections:', 'sections: '||replace(hex(zeroblob(100000)), '00', '[')) where sequence=1",
        ["events in another order"] = "update event set sequence=-sequence; update event set sequence=sequence+1000",
        ["a sequence beyond all"] = "update event set sequence=9223372036854775807 where sequence=5",
    }.ToDictionary(entry => entry.Key, entry => Unlock + entry.Value);

    /// <summary>A schema that works without end, or is none.</summary>
    public static IReadOnlyDictionary<string, string> Schemas { get; } = new Dictionary<string, string>
    {
        ["an endless view"] = $"alter table event rename to kept; create view event {Endless}) select n as sequence, {OtherColumns}",
        ["a view that never begins"] = $"alter table event rename to kept; create view event {Endless}) select max(n) as sequence, {OtherColumns}",
        ["large rows out of nothing"] = $"alter table event rename to kept; create view event {Endless} limit 100000) select n as sequence, {OtherColumns.Replace("'{}'", "hex(zeroblob(1000000))", StringComparison.Ordinal)}",
        ["computed columns"] = "drop table event; create table event (sequence integer primary key, recorded_at text as (hex(zeroblob(100000000))), kind text, body text, previous_hash blob, hash blob); insert into event (sequence) values (1)",
        ["no table"] = "drop table event",
        ["other columns"] = "drop table event; create table event (sequence text)",
        ["numbers as texts"] = "drop table personal; create table personal (sequence, path, salt, content); insert into personal values ('x', null, null, null)",
        ["another program's mark"] = "pragma application_id=7",
        ["a newer format"] = "pragma user_version=99",
        ["a format beyond all"] = "pragma user_version=-1",
    }.ToDictionary(entry => entry.Key, entry => Unlock + entry.Value);

    /// <summary>Events that no start-up writes after its first two.</summary>
    public static IReadOnlyDictionary<string, StartupEvent> Impossible { get; } = new Dictionary<string, StartupEvent>
    {
        ["a note that nobody asked for"] = Some.Note("out of nothing", Evidence.Typed("x")),
        ["a value that stands and was never entered"] = new ReadingStood(Some.Moment, new ReadingKey("oxygen", "low")),
        ["a step that the checklist has not"] = new StepEntered(Some.Moment, "no-such-step", Arrival.Forward),
        ["a second beginning"] = FixtureJob.Events()[0],
        ["a signature out of nothing"] = new StartupSigned(Some.Moment, "T. Tester"),
    };

    /// <summary>What is no record at all.</summary>
    public static IReadOnlyList<string> Things { get; } = ["pipe", "link", "folder", "large", "zeros", "empty", "words"];

    /// <summary>What may lie beside a record, and where.</summary>
    public static IReadOnlyList<(string Ending, string What)> Beside { get; } =
    [
        (".lock", "pipe"), (".lock", "folder"), ("-wal", "pipe"), ("-wal", "link"), ("-wal", "large"), ("-wal", "words"), (".clips", "pipe"), (".clips", "link"), (".photos", "link"),
    ];

    /// <summary>Every one of them, made at a path, by a name that tells what it is.</summary>
    public static IReadOnlyDictionary<string, Action<string>> All { get; } = new Dictionary<string, Action<string>>(
    [
        .. Contents.Concat(Schemas).Select(entry => new KeyValuePair<string, Action<string>>(entry.Key, path => Changed(path, entry.Value))),
        .. Impossible.Select(entry => new KeyValuePair<string, Action<string>>(entry.Key, path => Write(path, [.. FixtureJob.Events().Take(2), entry.Value]))),
        .. Things.Select(what => new KeyValuePair<string, Action<string>>($"no record: {what}", path => Put(what, path))),
        .. Beside.Select(beside => new KeyValuePair<string, Action<string>>($"beside it, at {beside.Ending}: {beside.What}", path =>
        {
            FixtureJob.Write(path);
            Put(beside.What, path + beside.Ending);
        })),
    ]);

    /// <summary>A sound record, changed by SQL.</summary>
    public static void Changed(string path, string sql)
    {
        FixtureJob.Write(path);
        RawDatabase.Query(path, sql);
    }

    /// <summary>A record of these events, whatever they are; its hashes fit.</summary>
    public static void Write(string path, params IEnumerable<StartupEvent> events)
    {
        using StartupLog log = StartupLog.Create(path);
        foreach (StartupEvent happened in events)
        {
            log.Append(happened);
        }
    }

    /// <summary>Puts something in a place.</summary>
    public static void Put(string what, string path)
    {
        File.Delete(path);
        switch (what)
        {
            case "pipe":
                using (Process make = Process.Start("mkfifo", [path]))
                {
                    make.WaitForExit();
                }

                break;
            case "link":
                File.CreateSymbolicLink(path, "/dev/zero");
                break;
            case "folder":
                Directory.CreateDirectory(path);
                break;
            case "large":
                using (FileStream sparse = File.Create(path))
                {
                    sparse.SetLength(3L << 30);
                }

                break;
            case "zeros":
                File.WriteAllBytes(path, new byte[8192]);
                break;
            case "empty":
                File.WriteAllBytes(path, []);
                break;
            default:
                File.WriteAllText(path, "These are only words.");
                break;
        }
    }
}
