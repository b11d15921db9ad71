using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Wording;

/// <summary>How something was heard, in words.</summary>
public static class EvidenceWords
{
    /// <summary>"heard "oxygen seven point six", sure, read back and confirmed".</summary>
    /// <param name="evidence">How it was heard.</param>
    /// <param name="wasConfirmed">Whether it was read back and confirmed.</param>
    public static string Of(Evidence evidence, bool wasConfirmed)
    {
        string confirmed = wasConfirmed ? ", read back and confirmed" : "";
        return evidence.Channel == Channel.Keys ? $"typed \"{evidence.Words}\"{confirmed}"
            : $"heard \"{evidence.Words}\", {(evidence.Certainty == Certainty.Green ? "sure" : $"doubtful{Why(evidence)}")}{confirmed}";
    }

    static string Why(Evidence evidence) => evidence.Why.Length == 0 ? "" : $" ({evidence.Why})";
}
