using HandsFreeStartup.Procedure.Deciding;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure;

/// <summary>What is asked at a moment. Where two are equal an answer, a value or "done" means the same; what was said before it was asked is no answer to it.</summary>
public sealed record Asked
{
    /// <summary>What kind of phrase is waited for.</summary>
    public required Phase Phase { get; init; }

    /// <summary>In which step.</summary>
    public required string StepId { get; init; }

    /// <summary>The reading that waits for its confirmation; null where none does.</summary>
    public required EnteredReading? Doubtful { get; init; }

    /// <summary>The limit whose bounds are asked; null where none are.</summary>
    public required string? Limit { get; init; }

    /// <summary>What free speech, or one of several words, is asked for.</summary>
    public required (DictationPurpose Purpose, ChoiceTopic? Choosing) Topic { get; init; }

    /// <summary>Where the start-up is stopped: why, and what was found since.</summary>
    public required (bool IsStopped, StopCause Cause, bool AsksFreshSmell, bool IsSmellGone, bool IsAirClear) Stop { get; init; }

    /// <summary>What is asked now.</summary>
    internal static Asked Of(StartupState state) => new()
    {
        Phase = state.Phase,
        StepId = state.Step.Id,
        Doubtful = state.Doubtful,
        Limit = state.Phase == Phase.Asking ? PlateQuestion.Of(state)?.Name : null,
        Topic = (state.Purpose, state.Choosing),
        Stop = (state.IsStopped, state.Cause, state.AsksFreshSmell, state.IsSmellGone, state.IsAirClear),
    };

    /// <summary>Whether the phrase is meant for what is asked: calls for help, questions to the tool and "disregard" mean the same at any time.</summary>
    public static bool IsMeantFor(Phrase phrase) =>
        phrase is not Phrase.Command { Word: not (CommandWord.Done or CommandWord.Next or CommandWord.GoBack or CommandWord.SkipStep or CommandWord.StartTimer or CommandWord.Finish) };
}
