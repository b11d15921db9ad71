namespace HandsFreeStartup.Storage.Log;

/// <summary>The log cannot be used or an event could not be recorded: the procedure stops. The message is one plain sentence or two for the technician.</summary>
public sealed class LogException : Exception
{
    /// <summary>A failure without a cause below.</summary>
    public LogException(string message)
        : base(message)
    {
    }

    /// <summary>A failure with the cause below.</summary>
    public LogException(string message, Exception cause)
        : base(message, cause)
    {
    }
}
