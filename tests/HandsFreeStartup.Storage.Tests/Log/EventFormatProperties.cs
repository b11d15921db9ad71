using FsCheck.Xunit;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;

namespace HandsFreeStartup.Storage.Tests.Log;

public sealed class EventFormatProperties
{
    [Property(MaxTest = 2000)]
    public bool Every_event_comes_back_as_it_was_written(int seed)
    {
        StartupEvent happened = new ArbitraryEvent(seed).Next();

        StartupEvent read = EventFormat.Read(EventFormat.KindOf(happened), EventFormat.BodyOf(happened));

        Assert.Equivalent(happened, read, strict: true);
        return EventFormat.BodyOf(read) == EventFormat.BodyOf(happened) && read.GetType() == happened.GetType();
    }

    [Property(MaxTest = 20)]
    public bool Any_sequence_of_events_comes_back_from_the_disk_in_its_order(int seed)
    {
        using TemporaryFolder folder = new();
        ArbitraryEvent events = new(seed);
        StartupEvent[] written = [Some.Began(), .. Enumerable.Range(0, 12).Select(_ => events.Next())];

        using (StartupLog log = StartupLog.Create(folder.File("job.db")))
        {
            foreach (StartupEvent happened in written)
            {
                log.Append(happened);
            }
        }

        using StartupLog reopened = StartupLog.Open(folder.File("job.db"));
        return written.Select(EventFormat.BodyOf).SequenceEqual(reopened.ReadAll().Select(EventFormat.BodyOf));
    }
}
