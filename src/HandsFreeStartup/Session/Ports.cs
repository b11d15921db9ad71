using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Session;

/// <summary>Shows the start-up. It gives no answers; what a person does at it comes back as an <see cref="Input"/>.</summary>
public interface IDisplay
{
    /// <summary>Shows a moment; never waits for anybody.</summary>
    void Show(Moment moment);
}

/// <summary>The durable record of a job.</summary>
public interface IEventLog
{
    /// <summary>Writes one event; it is on the disk when this returns.</summary>
    /// <exception cref="Exception">It could not be written; the start-up stops.</exception>
    void Append(StartupEvent happened);

    /// <summary>Everything written so far, in order.</summary>
    IReadOnlyList<StartupEvent> ReadAll();

    /// <summary>Keeps the sound of an utterance beside the record.</summary>
    /// <returns>The name under which it is kept; null where no recordings are kept.</returns>
    string? KeepClip(SpeechClip clip);
}

/// <summary>Understands utterances.</summary>
public interface IEar
{
    /// <summary>What was said, as far as it may be said now.</summary>
    Phrase Hear(SpeechClip clip, Expectation expectation);
}
