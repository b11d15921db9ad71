using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Session;

/// <summary>Shows the start-up. It gives no answers; what a person does at it comes back as an <see cref="Input"/>.</summary>
public interface IDisplay
{
    /// <summary>Shows a moment; never waits for anybody.</summary>
    void Show(Moment moment);

    /// <summary>Shows one urgent sentence at once, before anything else; may be called from any thread.</summary>
    void Warn(string text);
}

/// <summary>The durable record of a job.</summary>
public interface IEventLog
{
    /// <summary>Writes the events of one decision, all or none; they are on the disk when this returns.</summary>
    /// <exception cref="Exception">They could not be written; the start-up stops.</exception>
    void Append(IReadOnlyList<StartupEvent> decided);

    /// <summary>Everything written so far, in order.</summary>
    IReadOnlyList<StartupEvent> ReadAll();

    /// <summary>Keeps the sound of an utterance beside the record.</summary>
    /// <returns>The name under which it is kept; null where no recordings are kept.</returns>
    string? KeepClip(SpeechClip clip);
}

/// <summary>Understands utterances.</summary>
public interface IEar
{
    /// <summary>What was said, as far as it may be said now. May be called from any thread; utterances are understood one after the other.</summary>
    /// <param name="clip">The utterance.</param>
    /// <param name="expectation">What may be said now.</param>
    /// <param name="cancellation">Asks for the end where the utterance is no longer wanted.</param>
    /// <exception cref="OperationCanceledException">It was asked for.</exception>
    Phrase Hear(SpeechClip clip, Expectation expectation, CancellationToken cancellation = default);
}

/// <summary>Keeps photos beside the record.</summary>
public interface IPhotoShelf
{
    /// <summary>Keeps a copy of the photo.</summary>
    KeptPhoto Keep(string path);
}

/// <summary>A photo that is kept, or why it is not.</summary>
/// <param name="Name">Name of the copy.</param>
/// <param name="Sha256">Hash of its bytes.</param>
/// <param name="Why">One sentence where it could not be kept; null where it was.</param>
public sealed record KeptPhoto(string Name, string Sha256, string? Why = null);
