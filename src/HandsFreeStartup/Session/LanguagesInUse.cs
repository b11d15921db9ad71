using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Session;

/// <summary>The languages of a session: a machine may lack a voice for the one that is shown.</summary>
/// <param name="Shown">Of the screen.</param>
/// <param name="Said">Of the voice.</param>
public sealed record LanguagesInUse(Language Shown, Language Said)
{
    /// <summary>English on the screen and by voice.</summary>
    public static LanguagesInUse English { get; } = new(Language.English, Language.English);
}
