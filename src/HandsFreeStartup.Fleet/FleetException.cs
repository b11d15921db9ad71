namespace HandsFreeStartup.Fleet;

/// <summary>The firm's database cannot be used, or refuses something; the message is one plain sentence or two with the remedy, and never holds a password.</summary>
public sealed class FleetException : Exception
{
    /// <summary>A refusal.</summary>
    /// <param name="message">The sentence.</param>
    /// <param name="mayPass">Whether trying again later can help by itself.</param>
    /// <param name="cause">What was thrown below, or null.</param>
    public FleetException(string message, bool mayPass = false, Exception? cause = null)
        : base(message, cause) => MayPass = mayPass;

    /// <summary>Whether trying again later can help by itself: no network, a server that starts, a full disk.</summary>
    public bool MayPass { get; }
}
