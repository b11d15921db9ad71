using System.Collections.Immutable;
using System.Text;

namespace HandsFreeStartup.Storage.Log;

/// <summary>Compares a record with the checkpoint that was printed on its copies.</summary>
sealed class PrintedCheck
{
    /// <summary>What may follow a printed checkpoint without the copies becoming wrong.</summary>
    static readonly ImmutableDictionary<string, string> Afterwards =
        ImmutableDictionary<string, string>.Empty.Add("record-reviewed", "reviewed").Add("personal-data-forgotten", "freed of names");

    public PrintedCheck(StoredLog log, Checkpoint printed)
    {
        IReadOnlyList<StoredEvent> events = log.Events;
        if (events.Count < printed.Count)
        {
            Findings = [new LogFinding(null, FormattableString.Invariant(
                $"The checkpoint tells of {printed.Count} events, the record holds {events.Count}: its end was cut off."))];
        }
        else if (printed.Count < 1 || !new Checkpoint(printed.Count, Convert.ToHexString(events[printed.Count - 1].Hash)).Fits(printed))
        {
            Findings = [new LogFinding(null, FormattableString.Invariant(
                $"The hash of event {printed.Count} is not that of the checkpoint: the record was rewritten, or the checkpoint belongs to another one."))];
        }
        else if (events.Skip(printed.Count).FirstOrDefault(stored => !Afterwards.ContainsKey(Encoding.UTF8.GetString(stored.Kind))) is not null)
        {
            Findings = [new LogFinding(printed.Count + 1, FormattableString.Invariant(
                $"Event {printed.Count + 1} and what follows was added after the checkpoint was printed."))];
        }
        else if (events.Count > printed.Count)
        {
            Remarks = [$"Since the checkpoint was printed the record was {string.Join(" and ", events.Skip(printed.Count)
                .Select(stored => Afterwards[Encoding.UTF8.GetString(stored.Kind)]).Distinct())}; nothing else was added."];
        }
    }

    public ImmutableArray<LogFinding> Findings { get; } = [];

    public ImmutableArray<string> Remarks { get; } = [];
}
