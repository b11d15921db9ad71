using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Tests.Support;

/// <summary>A log in memory that notes the order of things and can fail.</summary>
public sealed class NotedLog(List<string> notes) : IEventLog
{
    readonly List<StartupEvent> _events = [];

    public int FailsAfter { get; set; } = int.MaxValue;
    public IReadOnlyList<StartupEvent> Events => _events;

    public void Append(IReadOnlyList<StartupEvent> decided)
    {
        if (_events.Count + decided.Count > FailsAfter)
        {
            throw new IOException("no space left");
        }

        _events.AddRange(decided);
        notes.AddRange(decided.Select(happened => $"log {happened.GetType().Name}"));
    }

    public IReadOnlyList<StartupEvent> ReadAll() => [.. _events];

    public string? KeepClip(SpeechClip clip)
    {
        notes.Add("clip");
        return "clip.wav";
    }
}

/// <summary>A display that notes what it is shown.</summary>
public sealed class NotedDisplay(List<string> notes) : IDisplay
{
    public Moment? Last { get; private set; }

    /// <summary>Everything that was said so far.</summary>
    public List<Announcement> Said { get; } = [];

    /// <summary>Everything that was heard so far.</summary>
    public List<Evidence> Heard { get; } = [];

    public void Show(Moment moment)
    {
        Last = moment;
        Said.AddRange(moment.Said);
        if (moment.Heard is { } heard)
        {
            Heard.Add(heard);
        }

        lock (notes)
        {
            notes.Add($"show {moment.View.StepTitle}");
        }
    }

    public void Warn(string text)
    {
        lock (notes)
        {
            notes.Add($"warn {text}");
        }
    }
}

/// <summary>An ear that understands what it was told to: each clip has its phrase, however often it is heard.</summary>
public sealed class ScriptedEar(params Phrase[] phrases) : IEar
{
    readonly Queue<Phrase> _phrases = new(phrases);

    readonly Dictionary<SpeechClip, Phrase> _heard = [];

    public Phrase Hear(SpeechClip clip, Expectation expectation, CancellationToken cancellation = default)
    {
        lock (_phrases)
        {
            return _heard.TryGetValue(clip, out Phrase? phrase) ? phrase : _heard[clip] = _phrases.Dequeue();
        }
    }
}
