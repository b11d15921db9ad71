using System.Collections.Immutable;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Speech.Speaking;

namespace HandsFreeStartup.Session;

/// <summary>Keeps the voice up to date: what is new takes the place of what is old, except for safety messages.</summary>
sealed class Mouth(IVoice voice)
{
    CancellationTokenSource _current = new();
    Task _speaking = Task.CompletedTask;

    /// <summary>Whether something is still being said.</summary>
    public bool IsSpeaking => !_speaking.IsCompleted;

    /// <summary>Says these.</summary>
    /// <param name="announcements">None leave alone what is being said.</param>
    /// <param name="answers">They answer somebody, so what was being said before is out of date and breaks off; else they wait for it.</param>
    public void Say(ImmutableArray<Announcement> announcements, bool answers)
    {
        if (announcements.IsEmpty)
        {
            return;
        }

        if (answers)
        {
            _current.Cancel();
            _current = new CancellationTokenSource();
        }

        _speaking = Task.WhenAll([_speaking, .. announcements.Select(announcement => Say(announcement).AsTask())]);
    }

    /// <summary>Waits until everything is said.</summary>
    public Task Finish(CancellationToken stop) => _speaking.WaitAsync(stop);

    ValueTask Say(Announcement announcement)
    {
        string text = Verbalise.Text(announcement.Text, announcement.DigitByDigit);
        return announcement.IsUrgent ? voice.Warn(text, CancellationToken.None) : voice.Say(text, _current.Token);
    }
}
