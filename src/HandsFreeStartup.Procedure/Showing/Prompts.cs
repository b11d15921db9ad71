using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Deciding;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Procedure.Showing;

/// <summary>The prompt of the current step. All of it stands on the screen; said is the one thing to do and what to say, unless the technician wants everything.</summary>
static class Prompts
{
    /// <summary>So many letters take four seconds at the usual rate of the voice.</summary>
    const int MostLetters = 54;

    /// <summary>The prompt, and the caution, which is said when the step is come to.</summary>
    /// <param name="state">With the step.</param>
    /// <param name="arrival">How it was come to; null where it is only said again.</param>
    public static IEnumerable<Announcement> Of(StartupState state, Arrival? arrival)
    {
        Step step = state.Step;
        string back = arrival == Arrival.Return ? "Back to this step. " : "";
        string full = $"{back}{step.Title}. {Views.Do(state)}{Question(step)}";
        yield return new Announcement(full) { Said = state.SaysFull ? full : Short(state) };
        if (step.Caution is { } caution)
        {
            string text = $"Caution: {caution}";
            yield return new Announcement(text) { Said = state.SaysFull || arrival == Arrival.Forward ? text : "" };
        }
    }

    /// <summary>Everything that the screen shows of the step: what to do, caution, reason, and the limits of what was measured.</summary>
    public static Announcement More(StartupState state)
    {
        Step step = state.Step;
        string caution = step.Caution is null ? "" : $" Caution: {step.Caution}";
        string why = step.Why is null ? "The checklist gives no reason for this step." : $"Why: {step.Why}";
        Message limits = Message.Join("", step.Readings
            .Select(demand => state.Reading(demand.FieldId, step.Scope)?.Reading.Limit)
            .OfType<DeclaredLimit>()
            .Select(limit => (Message)$" Limit: {limit}, {limit.Source}."));
        return new Announcement($"{why}{limits}") { Said = $"{step.Title}. {Views.Do(state)}{Question(step)}{caution} {why}{limits}" };
    }

    static string Question(Step step) => step.Question is null ? "" : $" {step.Question.Text}";

    static string Short(StartupState state) =>
        PlateQuestion.Of(state) is not null ? "From the plate: say lowest, highest, then next." : state.Step.Prompt ?? Made(state.Step, state.Plan);

    static string Made(Step step, StartupPlan plan)
    {
        string say = step.Question?.Text ?? step.Kind switch
        {
            StepKind.Read or StepKind.Adjust => $"Say {string.Join(", ", step.Readings.Select(demand => step.Also.GetValueOrDefault(demand.FieldId, plan.FieldOf(demand.FieldId).SpokenNames)[0]))}.",
            StepKind.Wait => "",
            StepKind.Sign => "Say finish.",
            _ => "Say done.",
        };
        string prompt = $"{step.Title}. {say}".TrimEnd();
        return prompt.Length <= MostLetters ? prompt : step.Question is null ? $"{step.Title}. The screen says what." : $"{step.Title}. The screen asks.";
    }
}
