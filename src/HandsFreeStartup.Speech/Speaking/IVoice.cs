namespace HandsFreeStartup.Speech.Speaking;

/// <summary>The tool's voice.</summary>
public interface IVoice : IAsyncDisposable
{
    /// <summary>Says a text after what was asked for before; completes when it is said, or when a warning has taken its place.</summary>
    /// <param name="text">In words, as <see cref="SpokenMessage"/> puts a message.</param>
    /// <param name="cancellation">Silences this text, and no other.</param>
    ValueTask Say(string text, CancellationToken cancellation);

    /// <summary>Says a safety message at once: what is being said breaks off and what waits is dropped.</summary>
    /// <param name="text">In words.</param>
    /// <param name="cancellation">Silences this text.</param>
    ValueTask Warn(string text, CancellationToken cancellation);
}

/// <summary>A voice that says nothing, for machines without one.</summary>
public sealed class SilentVoice : IVoice
{
    /// <inheritdoc/>
    public ValueTask Say(string text, CancellationToken cancellation) => ValueTask.CompletedTask;

    /// <inheritdoc/>
    public ValueTask Warn(string text, CancellationToken cancellation) => ValueTask.CompletedTask;

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
