using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Storage.Log;

/// <summary>Leads a procedure through stored events as it was led when they were written.</summary>
public static class Replay
{
    /// <summary>The procedure after all of <paramref name="events"/>.</summary>
    /// <param name="path">The job's file, for the message.</param>
    /// <param name="plan">What the job is led by.</param>
    /// <param name="events">All its events, first to last.</param>
    /// <exception cref="LogException">An event cannot follow those before it: no start-up wrote this record.</exception>
    public static StartupProcedure Of(string path, StartupPlan plan, IReadOnlyList<StartupEvent> events)
    {
        (StartupProcedure procedure, int impossible) = Lead(plan, events);
        return impossible == 0 ? procedure : throw new LogException(
            $"The record {path} is not sound: {Sentence(impossible, events[impossible - 1])} Keep the file as it is, run verify on it, and begin a new job.");
    }

    /// <summary>The first event that cannot follow those before it; null where all can.</summary>
    internal static LogFinding? FirstImpossible(StartupPlan plan, IReadOnlyList<StartupEvent> events) =>
        Lead(plan, events).Impossible is > 0 and var number ? new LogFinding(number, Sentence(number, events[number - 1])) : null;

    static (StartupProcedure Procedure, int Impossible) Lead(StartupPlan plan, IReadOnlyList<StartupEvent> events)
    {
        StartupProcedure procedure = new(plan);
        for (int i = 0; i < events.Count; i++)
        {
            try
            {
                procedure.Apply(events[i]);
            }
            catch (Exception error) when (Damage.Explains(error))
            {
                return (procedure, i + 1);
            }
        }

        return (procedure, 0);
    }

    static string Sentence(int number, StartupEvent happened) =>
        FormattableString.Invariant($"Event {number} ({EventFormat.KindOf(happened)}) cannot follow the events before it.");
}
