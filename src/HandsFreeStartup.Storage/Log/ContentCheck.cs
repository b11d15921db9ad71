using System.Text.Json;
using HandsFreeStartup.Doors;
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
        IEnumerable<string> problems = happened is StartupBegan began ? FilesThatDoNotMatch(began.Job)
            : [.. ClipsThatDoNotMatch(stored), .. happened is PhotoAttached photo && WhatIsWrong(photo, stored.Sequence < (Redaction?.Sequence ?? 0)) is { } wrong ? [wrong] : Array.Empty<string>()];
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

    IEnumerable<string> ClipsThatDoNotMatch(StoredEvent stored)
    {
        using JsonDocument body = JsonDocument.Parse(stored.Body);
        bool isForgotten = stored.Sequence < (Redaction?.Sequence ?? 0);
        return [.. ClipNames(body.RootElement).Select(clip => WhatIsWrong(clip, isForgotten)).OfType<string>()];
    }

    string? WhatIsWrong(string clip, bool isForgotten)
    {
        ClipStore clips = new(_path);
        FileStatus status = clips.StatusOf(clip);
        return (status.Kind, isForgotten) switch
        {
            (FileKind.None, true) => null,
            (FileKind.None, false) => $"the recording {clip} is missing.",
            _ when !Attachment.IsUsable(status) => $"the recording {clip} was exchanged: what lies in its place is a link, a device, or larger than any recording.",
            _ when $"{Attachment.HashOf(clips.PathOf(clip))}.wav" != clip => $"the recording {clip} was changed or damaged.",
            (_, true) => $"the recording {clip} is still there although it was to be removed: run forget again.",
            _ => null,
        };
    }

    string? WhatIsWrong(PhotoAttached photo, bool isForgotten)
    {
        string folder = PhotoStore.FolderOf(_path);
        FileStatus status = Attachment.StatusOf(folder, photo.Name);
        return (status.Kind, isForgotten) switch
        {
            (FileKind.None, true) => null,
            (FileKind.None, false) => $"the photo {photo.Name} is missing.",
            _ when !Attachment.IsUsable(status) => $"the photo {photo.Name} was exchanged: what lies in its place is a link, a device, or larger than any photo.",
            _ when Attachment.HashOf(Path.Combine(folder, photo.Name)) != photo.Sha256 => $"the photo {photo.Name} was changed or damaged.",
            (_, true) => $"the photo {photo.Name} is still there although it was to be removed: run forget again.",
            _ => null,
        };
    }

    static IEnumerable<string> ClipNames(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().SelectMany(property =>
            property.NameEquals("clip") && property.Value.ValueKind == JsonValueKind.String ? [property.Value.GetString()!] : ClipNames(property.Value)),
        JsonValueKind.Array => element.EnumerateArray().SelectMany(ClipNames),
        _ => [],
    };
}
