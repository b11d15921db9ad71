using System.Collections.Immutable;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Speech.Speaking;

namespace HandsFreeStartup.Session;

/// <summary>Keeps the voice up to date: what is new takes the place of what is old, except for safety messages.</summary>
/// <param name="voice">Speaks.</param>
/// <param name="clock">Measures how long ago the last word was said.</param>
/// <param name="language">Of the voice.</param>
sealed class Mouth(IVoice voice, TimeProvider clock, Language language)
{
    /// <summary>So long after the last word its echo may still arrive: loudspeaker, room and buffers lag behind.</summary>
    static readonly TimeSpan Lag = TimeSpan.FromMilliseconds(400);

    CancellationTokenSource _current = new();
    CancellationTokenSource _urgent = new();
    Task _speaking = Task.CompletedTask;
    volatile string _texts = "";
    long _ended;

    /// <summary>Whether something is still being said.</summary>
    public bool IsSpeaking => !_speaking.IsCompleted;

    /// <summary>The words of which an echo may arrive now, or null; may be asked from any thread.</summary>
    public string? Saying => IsSpeaking || (_texts.Length > 0 && clock.GetElapsedTime(Interlocked.Read(ref _ended)) < Lag) ? _texts : null;

    /// <summary>Says these.</summary>
    /// <param name="announcements">None leave alone what is being said.</param>
    /// <param name="answers">They answer somebody, so what was being said before is out of date and breaks off; else they wait for it.</param>
    public void Say(ImmutableArray<Announcement> announcements, bool answers)
    {
        announcements = announcements.RemoveAll(announcement => announcement.Said.IsEmpty);
        if (announcements.IsEmpty)
        {
            return;
        }

        if (answers)
        {
            Hush(alsoUrgent: false);
        }

        string news = string.Join(' ', announcements.Select(Words));
        _texts = IsSpeaking ? $"{_texts} {news}" : news;
        _speaking = Task.WhenAll([_speaking, .. announcements.Select(announcement => Say(announcement).AsTask())]);
        _speaking.ContinueWith(_ => Interlocked.Exchange(ref _ended, clock.GetTimestamp()), CancellationToken.None, TaskContinuationOptions.ExecuteSynchronously, TaskScheduler.Default);
    }

    /// <summary>Breaks off what is being said.</summary>
    /// <param name="alsoUrgent">Whether a safety message breaks off too: it stays on the screen.</param>
    public void Hush(bool alsoUrgent)
    {
        _current.Cancel();
        _current = new CancellationTokenSource();
        if (alsoUrgent)
        {
            _urgent.Cancel();
            _urgent = new CancellationTokenSource();
        }
    }

    /// <summary>Waits until everything is said.</summary>
    public Task Finish(CancellationToken stop) => _speaking.WaitAsync(stop);

    ValueTask Say(Announcement announcement)
    {
        string text = Words(announcement);
        return announcement.IsUrgent ? voice.Warn(text, _urgent.Token) : voice.Say(text, _current.Token);
    }

    string Words(Announcement announcement) => SpokenMessage.Of(announcement.Said, announcement.DigitByDigit, language);
}
