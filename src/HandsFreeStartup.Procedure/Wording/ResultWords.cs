using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Wording;

/// <summary>Results as people see and hear them.</summary>
public static class ResultWords
{
    /// <summary>Value, doubt and unit with what must be known beside it, or why it cannot be told.</summary>
    public static string Of(CalculatedResult result) => Told(result).Shown;

    /// <summary>A value that went in, with "over" where more was read than the field holds.</summary>
    /// <param name="result">The result.</param>
    /// <param name="fieldId">One of its inputs.</param>
    public static string Input(CalculatedResult result, string fieldId) => ShownValue.Alone(result.Inputs[fieldId], "", result.Over.Contains(fieldId)).Number;

    /// <summary>The same, part by part.</summary>
    public static Message Told(CalculatedResult result)
    {
        Message remark = result.Remark.WithoutStop();
        Message also = remark.IsEmpty ? (Message)"" : $"{(result.Value is null ? ": " : ", ")}{remark}";
        return result.Value is null
            ? $"cannot be told{also}"
            : (Message)$"{new MessagePart.Quantity(ShownValue.Of(result), TellsDoubt: true)}{also}";
    }
}
