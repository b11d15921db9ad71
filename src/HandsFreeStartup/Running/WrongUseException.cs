namespace HandsFreeStartup.Running;

/// <summary>The user must give something else; the message is one sentence that says what.</summary>
/// <param name="message">The sentence, with place and remedy.</param>
public sealed class WrongUseException(string message) : Exception(message);
