using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Speech.Speaking;

namespace HandsFreeStartup.Session;

/// <summary>The languages of a session: a machine may lack a voice for the one that is shown.</summary>
/// <param name="Shown">Of the screen.</param>
/// <param name="Said">Of the voice.</param>
public sealed record LanguagesInUse(Language Shown, Language Said)
{
    /// <summary>English on the screen and by voice.</summary>
    public static LanguagesInUse English { get; } = new(Language.English, Language.English);

    /// <summary>What is shown is said too; English where this machine has no voice for it.</summary>
    /// <param name="shown">Of the screen.</param>
    /// <param name="isMute">Whether nothing is said at all.</param>
    /// <param name="clock">Bounds the wait for the voice.</param>
    /// <param name="tell">Told where there is no such voice.</param>
    public static async Task<LanguagesInUse> Of(Language shown, bool isMute, TimeProvider clock, Action<string> tell)
    {
        if (isMute || await SynthesizedVoice.Speaks(shown, clock))
        {
            return new LanguagesInUse(shown, shown);
        }

        tell(shown.Text("This machine has no voice for the language that is shown: it is spoken in English. Install the voice {0} of espeak-ng.", shown.Voice));
        return new LanguagesInUse(shown, Language.English);
    }
}
