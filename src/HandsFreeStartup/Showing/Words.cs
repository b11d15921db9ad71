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
    public static string Of(Certainty certainty) => certainty switch
    {
        Certainty.Green => "✓ understood",
        Certainty.Amber => "? doubtful",
        _ => "✗ not understood",
    };

    /// <summary>A phrase with its class and what kept it from being understood.</summary>
    public static string Of(Evidence heard)
    {
        string source = heard.Channel == Procedure.Hearing.Channel.Voice ? "Heard" : "Typed";
        string words = heard.Words.Length > 0 ? $" \"{heard.Words}\"" : "";
        string why = heard.Why.Length > 0 ? $" ({heard.Why.TrimEnd('.')})" : "";
        return $"{source}{words}: {Of(heard.Certainty)}{why}";
    }

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
    public static string Of(ReadingState state) => state switch
    {
        ReadingState.Missing => "not yet",
        ReadingState.Doubtful => "confirm?",
        ReadingState.Provisional => "just entered",
        ReadingState.Void => "void",
        ReadingState.Early => "early, not judged",
        _ => "",
    };

    /// <summary>What the ear does.</summary>
    public static string Of(EarView ear, bool isPaused) => ear switch
    {
        { State: EarState.Off } => "No voice: keys only.",
        { State: EarState.Over } => "The recordings are over: keys only.",
        { Sound: not SoundState.Good } => $"{ear.Message} ({Durations.Text(ear.SoundFor)})",
        { IsSpeaking: true, IsDeaf: true } => "Speaking, cannot hear. F12 stops everything, F10 the talking.",
        { State: EarState.Understanding } => "Understanding...",
        _ when isPaused => "Paused: hears only \"go ahead\" and the safety phrases.",
        { State: EarState.HearingSpeech } => "Hearing you.",
        { IsSpeaking: true } => "Speaking, and listening.",
        _ => "Listening.",
    };
}
