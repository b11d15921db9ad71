using System.Text;

namespace HandsFreeStartup.Storage.Log;

/// <summary>Whether the personal parts of a record are those that its hashed content promises, or were removed as it tells.</summary>
static class PersonalCheck
{
    public static IEnumerable<LogFinding> Of(StoredLog log, Redaction? redaction)
    {
        HashSet<(long, string)> promised = [];
        foreach (StoredEvent stored in log.Format.IsSealed ? log.Events : [])
        {
            foreach ((string path, string commitment) in PersonalParts.Commitments(Encoding.UTF8.GetString(stored.Kind), Encoding.UTF8.GetString(stored.Body)))
            {
                promised.Add((stored.Sequence, path));
                StoredPersonal? part = log.Personal.GetValueOrDefault((stored.Sequence, path));
                if (WhatIsWrong(part, commitment, stored.Sequence < (redaction?.Sequence ?? 0)) is { } wrong)
                {
                    yield return new LogFinding(stored.Sequence, FormattableString.Invariant($"Event {stored.Sequence}: its personal part '{path}' {wrong}"));
                }
            }
        }

        foreach ((long sequence, string path) in log.Personal.Keys.Where(key => !promised.Contains(key)).Order())
        {
            yield return new LogFinding(sequence, FormattableString.Invariant($"Event {sequence}: a personal part '{path}' does not belong to it: it was added or damaged."));
        }
    }

    static string? WhatIsWrong(StoredPersonal? part, string commitment, bool isForgotten) => (part, isForgotten) switch
    {
        (null, true) => null,
        (null, false) => "is missing: it was removed, and no event tells of it.",
        ({ } kept, _) when kept.Commitment != commitment => "does not match its hash: it was changed or damaged.",
        (_, true) => "is still there although it was to be removed: run forget again.",
        _ => null,
    };
}
