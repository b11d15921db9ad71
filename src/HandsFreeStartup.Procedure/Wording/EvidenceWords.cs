using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Wording;

/// <summary>How something was heard, in words.</summary>
public static class EvidenceWords
{
    /// <summary>"heard "oxygen seven point six", sure, read back and confirmed".</summary>
    /// <param name="evidence">How it was heard.</param>
    /// <param name="wasConfirmed">Whether it was read back and confirmed.</param>
    public static Message Of(Evidence evidence, bool wasConfirmed)
    {
        MessagePart words = new MessagePart.Form(evidence.Words);
        string confirmed = wasConfirmed ? ", read back and confirmed" : "";
        return evidence.Channel == Channel.Keys ? (Message)$"typed \"{words}\"{confirmed}" : $"heard \"{words}\", {Certain(evidence)}{confirmed}";
    }

    /// <summary>The question that reads a doubtful reading back.</summary>
    /// <param name="doubtful">As it was heard.</param>
    public static Message ReadBack(EnteredReading doubtful) =>
        $"{Fields.Find(doubtful.Key.FieldId)!} {ShownValue.Of(doubtful)}? Say confirm, or no.";

    static Message Certain(Evidence evidence) =>
        evidence.Certainty == Certainty.Green ? (Message)"sure" : evidence.Why.Length == 0 ? "doubtful" : $"doubtful ({evidence.Why})";
}
