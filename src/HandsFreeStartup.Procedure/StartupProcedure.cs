using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure;

/// <summary>Leads through one start-up: decides what a phrase means here, and is changed only by events.</summary>
/// <param name="plan">The checklist made ready for the appliance and the site.</param>
public sealed class StartupProcedure(StartupPlan plan)
{
    /// <summary>What it leads through.</summary>
    public StartupPlan Plan { get; } = plan;

    /// <summary>What it waits for.</summary>
    public Phase Phase => Phase.Preparing;

    /// <summary>What may be said now.</summary>
    public Expectation Expectation => Expectation.Open;

    /// <summary>The first events of a job; nothing changes.</summary>
    public IReadOnlyList<StartupEvent> Begin(JobDescription job, DateTimeOffset now) => throw new NotImplementedException();

    /// <summary>What <paramref name="phrase"/> leads to; nothing changes. Empty when it leads to nothing (not understood).</summary>
    public IReadOnlyList<StartupEvent> Decide(Phrase phrase, DateTimeOffset now) => throw new NotImplementedException();

    /// <summary>Takes in one event, live or replayed.</summary>
    public void Apply(StartupEvent happened) => throw new NotImplementedException();

    /// <summary>Everything a screen or a voice needs to know.</summary>
    public StartupView View(DateTimeOffset now) => throw new NotImplementedException();

    /// <summary>What to say about events that were just applied.</summary>
    public IReadOnlyList<Announcement> Announce(IReadOnlyList<StartupEvent> happened, DateTimeOffset now) => throw new NotImplementedException();
}
