using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>Turns the sound of one utterance into evidence. Called from one thread; it never decides whether the evidence is good enough.</summary>
public interface IRecogniser : IDisposable
{
    /// <summary>For the screen and the log: which recognizer with which models.</summary>
    string Name { get; }

    /// <summary>What was said.</summary>
    /// <param name="samples16k">16 kHz mono samples between -1 and 1, one utterance with a little silence around it.</param>
    /// <param name="expectation">What may be said now.</param>
    /// <param name="cancellation">Asks for the end where the utterance is no longer wanted.</param>
    /// <exception cref="OperationCanceledException">It was asked for.</exception>
    Utterance Hear(ReadOnlySpan<float> samples16k, Expectation expectation, CancellationToken cancellation = default);
}
