using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Deciding;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Showing;

/// <summary>The one thing to do now, for the largest letters of the screen.</summary>
static class Imperatives
{
    /// <summary>That of the step, unless something else is waited for.</summary>
    public static string Of(StartupState state, Now now, Language language) => state.Step.Imperative is null && Ordered(state, now) is null
        ? language.Name(state.Step.Title).ToUpperInvariant()
        : language.Text(Ordered(state, now) ?? state.Step.Imperative!);

    /// <summary>What is waited for in the place of the step; null where it is the step.</summary>
    static string? Ordered(StartupState state, Now now) => state.Phase switch
    {
        Phase.Confirming => "CONFIRM OR NO",
        Phase.Dictating => state.Purpose == DictationPurpose.Note ? "SAY THE NOTE" : "SAY WHY",
        Phase.ReadingBack => "CONFIRM THE WORDS",
        Phase.Jumping => "CONFIRM TO GO THERE",
        Phase.Choosing => "SAY ONE OF THESE",
        Phase.Signing => state.Signs ? "CONFIRM TO SIGN" : "CONFIRM THE END",
        Phase.Finished => state.IsSigned ? "SIGNED" : "ENDED, NOT IN SERVICE",
        _ when state.IsPaused => "PAUSED: SAY GO AHEAD",
        Phase.Asking when RoomAir.WhyStay(state, now) is not null => state.AirAwaited is not null ? "VENTILATE AND WAIT" : "SAY ROOM MONOXIDE",
        Phase.Asking when PlateQuestion.Of(state) is not null => "READ THE PLATE",
        Phase.Asking when IsComplete(state, now) => "SAY NEXT",
        _ => null,
    };

    /// <summary>Whether nothing is left of a step but to go on.</summary>
    static bool IsComplete(StartupState state, Now now) =>
        state.Step.Kind is StepKind.Read or StepKind.Adjust or StepKind.Wait && Offers.Of(state, now).FirstOrDefault() == Commands.Of(CommandWord.Next).Id;
}
