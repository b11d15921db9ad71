using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Showing;

/// <summary>Plain words, with a sign before them, for what other programs would show by color alone.</summary>
public static class Words
{
    /// <summary>How well a phrase was understood.</summary>
    public static string Of(Certainty certainty, Language? language = null) => certainty switch
    {
        Certainty.Green => $"✓ {(language ?? Language.English).Text("understood")}",
        Certainty.Amber => $"? {(language ?? Language.English).Text("doubtful")}",
        _ => $"✗ {(language ?? Language.English).Text("not understood")}",
    };

    /// <summary>A phrase with its class and what kept it from being understood.</summary>
    public static string Of(Evidence heard, Language? language = null)
    {
        language ??= Language.English;
        string source = language.Text(heard.Channel == Procedure.Hearing.Channel.Voice ? "Heard" : "Typed");
        string words = heard.Words.Length > 0 ? $" \"{heard.Words}\"" : "";
        string why = heard.Why.Length > 0 ? $" ({Sentences(heard.Why, language).TrimEnd('.')})" : "";
        return $"{source}{words}: {Of(heard.Certainty, language)}{why}";
    }

    /// <summary>Several reasons stand one after the other; each is found by itself.</summary>
    static string Sentences(string text, Language language) => string.Join(". ", text.TrimEnd('.').Split(". ").Select(sentence => language.Text($"{sentence}.") is var found && found != $"{sentence}." ? found.TrimEnd('.') : language.Text(sentence)));

    /// <summary>The sign of a verdict; a dot where nothing was judged.</summary>
    public static char Sign(Verdict? verdict) => verdict switch
    {
        Verdict.Pass => '✓',
        Verdict.ConditionalPass => '~',
        Verdict.ConditionalFail => '!',
        Verdict.Fail => '✗',
        Verdict.CannotTell => '?',
        _ => '·',
    };

    /// <summary>The state of a reading in words; empty when it is in the record.</summary>
    public static string Of(ReadingState state, Language? language = null) => (language ?? Language.English).Text(state switch
    {
        ReadingState.Missing => "not yet",
        ReadingState.Doubtful => "confirm?",
        ReadingState.Provisional => "just entered",
        ReadingState.Void => "void",
        ReadingState.Early => "early, not judged",
        _ => "",
    });

    /// <summary>What the ear does.</summary>
    public static string Of(EarView ear, bool isPaused, Language? language = null)
    {
        language ??= Language.English;
        return ear switch
        {
            { State: EarState.Off } => language.Text("No voice: keys only."),
            { State: EarState.Over } => language.Text("The recordings are over: keys only."),
            { Sound: not SoundState.Good } => $"{language.Text(ear.Message)} ({Durations.Text(ear.SoundFor)})",
            { IsSpeaking: true, IsDeaf: true } => language.Text("Speaking, cannot hear. F12 stops everything, F10 the talking."),
            { State: EarState.Understanding } => language.Text("Understanding..."),
            _ when isPaused => language.Text("Paused: hears only \"go ahead\" and the safety phrases."),
            { State: EarState.HearingSpeech } => language.Text("Hearing you."),
            { IsSpeaking: true } => language.Text("Speaking, and listening."),
            _ => language.Text("Listening."),
        };
    }
}
