using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Storage.Log;

/// <summary>Whether the events of a record can be read, stand where they may stand, and have the files, recordings and photos that they name.</summary>
sealed class ContentCheck
{
    readonly string _path;
    readonly List<LogFinding> _findings = [];
    bool _hasEnded;

    public ContentCheck(string path, StoredLog log)
    {
        _path = path;
        IReadOnlyList<(StoredEvent Stored, StartupEvent? Happened)> events = [.. log.Events.Select(stored => (stored, Parsed(log, stored)))];
        (StoredEvent Stored, StartupEvent? Happened) forgotten = events.LastOrDefault(one => one.Happened is PersonalDataForgotten);
        Redaction = forgotten.Happened is PersonalDataForgotten told ? new Redaction(forgotten.Stored.Sequence, LocalTime.Of((events[0].Happened as StartupBegan)?.Job).At(told.At), told.By) : null;
        for (int i = 0; i < events.Count; i++)
        {
            if (events[i].Happened is { } happened)
            {
                Check(events[i].Stored, happened, isFirst: i == 0);
            }
        }

        CheckOrder([.. events.Select(one => one.Happened)]);
    }

    public IReadOnlyList<LogFinding> Findings => _findings;

    public Redaction? Redaction { get; }

    /// <summary>Whether a start-up can have gone that way. Where an event or the files cannot be read, that has been told and nothing more can be.</summary>
    void CheckOrder(IReadOnlyList<StartupEvent?> events)
    {
        if (events is not [StartupBegan began, ..] || events.Contains(null))
        {
            return;
        }

        try
        {
            if (Replay.FirstImpossible(UserFiles.UserFile.PlanOf(began.Job), [.. events.OfType<StartupEvent>()]) is { } impossible)
            {
                _findings.Add(impossible);
            }
        }
        catch (UserFiles.ChecklistFileException)
        {
            // What led the job cannot be read by this program; the review tells of it.
        }
    }

    StartupEvent? Parsed(StoredLog log, StoredEvent stored)
    {
        try
        {
            return log.EventOf(stored);
        }
        catch (LogException error)
        {
            Find(stored.Sequence, FormattableString.Invariant($"Event {stored.Sequence} cannot be read: {error.Message}"));
            return null;
        }
    }

    void Check(StoredEvent stored, StartupEvent happened, bool isFirst)
    {
        if (isFirst != happened is StartupBegan)
        {
            Find(stored.Sequence, FormattableString.Invariant($"Event {stored.Sequence} is out of place: the first event, and only the first, tells with what the job began."));
        }

        if (happened is RecordReviewed && !_hasEnded)
        {
            Find(stored.Sequence, FormattableString.Invariant($"Event {stored.Sequence} is out of place: a record is reviewed only after its end."));
        }

        _hasEnded = happened is StartupSigned or EndedOutOfService || (_hasEnded && happened is not StartupStopped);
        IEnumerable<string> problems = happened is StartupBegan began ? FilesThatDoNotMatch(began.Job) : AttachmentsThatDoNotMatch(stored, happened);
        foreach (string one in problems)
        {
            Find(stored.Sequence, FormattableString.Invariant($"Event {stored.Sequence}: {one}"));
        }
    }

    void Find(long sequence, string message) => _findings.Add(new LogFinding(sequence, message));

    static IEnumerable<string> FilesThatDoNotMatch(JobDescription job) =>
        new[] { job.Checklist, job.Appliance, job.Site, job.Settings }.OfType<FileCopy>()
            .Where(file => file.Sha256 != UserFiles.UserFile.HashOf(file.Text))
            .Select(file => $"the copy of {file.Name} does not match its hash.");

    IEnumerable<string> AttachmentsThatDoNotMatch(StoredEvent stored, StartupEvent happened) => AttachmentStore.NamedBy(stored.Body, happened)
        .Select(named => new AttachmentStore(_path).WhatIsWrong(named, isForgotten: stored.Sequence < (Redaction?.Sequence ?? 0))).OfType<string>();
}
