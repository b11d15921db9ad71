using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Checklists;

/// <summary>
/// The safety stop before the rooms are walked where other appliances were started up at the same address: all of them burn while CO is measured. The rooms are never taken over from an earlier job: what
/// was measured there was measured before this furnace ran. No checklist can leave the step out. Common practice, no source.
/// </summary>
public static class OthersRunning
{
    /// <summary>So long each of them burns before the first room.</summary>
    const int Minutes = 5;

    /// <summary>The id of the step before that walk.</summary>
    public static string IdOf(Step walk) => $"others/{walk.Id}";

    /// <summary>Whether a step is this one.</summary>
    public static bool Is(Step step) => step.Id.StartsWith("others/", StringComparison.Ordinal);

    /// <summary>The steps with the safety stop before the first walk; unchanged where nothing else was started up, or no room is walked.</summary>
    /// <param name="steps">The steps in order.</param>
    /// <param name="others">Titles of the other appliances.</param>
    internal static IEnumerable<Step> Before(IEnumerable<Step> steps, ImmutableArray<string> others)
    {
        bool isAsked = others.IsDefaultOrEmpty;
        foreach (Step step in steps)
        {
            if (!isAsked && step.Kind == StepKind.Walk)
            {
                yield return StepBefore(step, others);
                isAsked = true;
            }

            yield return step;
        }
    }

    static Step StepBefore(Step walk, ImmutableArray<string> others)
    {
        MessagePart names = new MessagePart.Name(others.Length == 1 ? others[0] : $"{string.Join(", ", others[..^1])} and {others[^1]}");
        return new Step
        {
            Id = IdOf(walk),
            Section = walk.Section,
            Title = "Others running",
            Imperative = "RUN ALL APPLIANCES",
            Kind = StepKind.Ask,
            Do = $"Call for heat at {names} as well, with doors and windows closed. Let all of them burn for {Minutes} minutes.",
            Why = "The rooms were walked before this furnace ran. Appliances that are clean alone can starve one another of air, and their CO adds up.",
            Caution = $"Look at the room analyzer before you go. At {ShownValue.Alone(70, Unit.PartsPerMillion.Symbol)} or more everybody leaves and help is called from outside.",
            IsSafetyStop = true,
            AgainAfter = [Again.Stop, Again.Change],
            Question = new Question(
                $"Is everything burning, {names} too, for {Minutes} minutes now?", true, "Call for heat there and wait. What cannot run here is not in service: find out why before the rooms are walked. Then answer again.", false),
        };
    }
}
