using System.Collections.Immutable;

namespace HandsFreeStartup.Procedure.Hearing;

/// <summary>What in an utterance may have been a call for help, however faint. How faint it is tells little; that the same is said again tells much.</summary>
/// <param name="Calls">The calls that an ear came across, the likeliest first; not empty.</param>
/// <param name="Readings">What each ear read of the sound, freely; the one that listened first at the front.</param>
/// <param name="IsByItself">Whether it stood by itself, and not in speech that goes on.</param>
public sealed record FaintCall(ImmutableArray<Phrase.Command> Calls, ImmutableArray<string> Readings, bool IsByItself)
{
    /// <inheritdoc/>
    public bool Equals(FaintCall? other) =>
        other is not null && IsByItself == other.IsByItself && Calls.SequenceEqual(other.Calls) && Readings.SequenceEqual(other.Readings);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(IsByItself, Calls.Length, Readings.Length);
}
