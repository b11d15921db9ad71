using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Derivations;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Deciding;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Showing;

namespace HandsFreeStartup.Procedure;

/// <summary>Leads through one start-up: decides what a phrase means here, and is changed only by events.</summary>
/// <remarks>Live: decide, append each event to the log, apply it, show. Replay: apply the stored events; the state is the same. Not thread-safe.</remarks>
/// <param name="plan">The checklist made ready for the appliance and the site.</param>
public sealed class StartupProcedure(StartupPlan plan)
{
    readonly StartupState _state = new(plan);

    /// <summary>What it leads through.</summary>
    public StartupPlan Plan => _state.Plan;

    /// <summary>What it waits for.</summary>
    public Phase Phase => _state.Phase;

    /// <summary>Whether the record is signed.</summary>
    public bool IsSigned => _state.IsSigned;

    /// <summary>What must be looked at before a signature, the gravest first.</summary>
    public ImmutableArray<JobException> Exceptions => _state.Exceptions;

    /// <summary>What may be said now.</summary>
    public Expectation Expectation => Expectations.Of(_state);

    /// <summary>How often something was asked anew so far: as long as it stays, the same answer means the same.</summary>
    public int Questions => _state.Questions;

    /// <summary>The first events of a job; nothing changes.</summary>
    /// <param name="job">What the job runs with.</param>
    /// <param name="now">The present.</param>
    /// <param name="returned">All events of the returned record that it follows; null where it follows none.</param>
    public IReadOnlyList<StartupEvent> Begin(JobDescription job, Now now, IReadOnlyList<StartupEvent>? returned = null)
    {
        IReadOnlyList<StartupEvent> carried = returned is null ? [] : CarryingOver.Of(Plan, returned, now);
        Step first = Plan.Steps.First(step => !carried.OfType<StepCarried>().Any(one => one.StepId == step.Id));
        StartupEvent[] timer = first.Timer is null ? [] : [new TimerStarted(now, first.Id, first.Timer.Duration, now.Steady)];
        return [new StartupBegan(now, job), .. Run(now), .. carried, new StepEntered(now, first.Id, Arrival.Forward), .. timer];
    }

    /// <summary>The event of a run of the program: its clocks are the measure of the waits from now on. Empty without a steady clock.</summary>
    /// <param name="now">The present.</param>
    public IReadOnlyList<StartupEvent> Run(Now now) => now.Steady is null ? [] : [new RunBegan(now, now.Steady)];

    /// <summary>What <paramref name="phrase"/> leads to; nothing changes. Empty when it leads to nothing, as speech that was not understood does.</summary>
    /// <param name="phrase">What was said or typed, or the passing of time.</param>
    /// <param name="now">The present.</param>
    public IReadOnlyList<StartupEvent> Decide(Phrase phrase, Now now) => HeardClips.Tied(phrase, new Decider(_state, now).Decide(phrase), now);

    /// <summary>What to record where something may mean danger and is asked for again; nothing changes.</summary>
    /// <param name="phrase">What it may have been.</param>
    /// <param name="now">The present.</param>
    public IReadOnlyList<StartupEvent> AskAgain(Phrase phrase, Now now) => [new DangerAsked(now, phrase.Evidence)];

    /// <summary>What the lead's word on the record leads to; nothing changes. Empty while the start-up is not finished, for then there is nothing to review.</summary>
    /// <param name="lead">Name of the lead technician.</param>
    /// <param name="outcome">Accepted or returned.</param>
    /// <param name="remark">What is to be said about it; empty for none.</param>
    /// <param name="now">The present.</param>
    /// <param name="steps">The steps that are returned; empty where none is named.</param>
    public IReadOnlyList<StartupEvent> Review(string lead, ReviewOutcome outcome, string remark, Now now, params ImmutableArray<string> steps) =>
        Phase == Phase.Finished ? [new RecordReviewed(now, lead, outcome, remark) { Steps = steps }] : [];

    /// <summary>Whether a phrase is no answer to what is asked now, because its speaker began before that was asked.</summary>
    /// <param name="phrase">What was said.</param>
    /// <param name="met"><see cref="Questions"/> when its speaker began.</param>
    /// <param name="now">The present.</param>
    public bool IsLate(Phrase phrase, int met, Now now) => met != Questions && !LateSpeech.Counts(_state, phrase, now);

    /// <summary>Whether a phrase tells of air in the room that asks for something; it counts whenever it is said.</summary>
    /// <param name="phrase">What was said.</param>
    /// <param name="now">The present.</param>
    public bool IsBadAir(Phrase phrase, Now now) => RoomAir.IsBad(_state, phrase, now);

    /// <summary>Takes in one event, live or replayed.</summary>
    public void Apply(StartupEvent happened) => _state.Apply(happened);

    /// <summary>Everything a screen or a voice needs to know.</summary>
    /// <param name="now">The present; only timers depend on it.</param>
    /// <param name="language">In which its texts are; null for English.</param>
    public StartupView View(Now now, Language? language = null) => new Views(_state, now, language ?? Language.English).View();

    /// <summary>What to say where a job is gone on with.</summary>
    public Announcement Resuming(Now now) => new Announcer(_state, now).Resuming();

    /// <summary>What to say about events that were just applied.</summary>
    /// <param name="happened">The events, in their order.</param>
    /// <param name="now">The present.</param>
    public IReadOnlyList<Announcement> Announce(IReadOnlyList<StartupEvent> happened, Now now) => new Announcer(_state, now).Announce(happened);

    /// <summary>How each standing result came about, by its stage, for whoever doubts it; without those that nothing explains, such as an expected oxygen.</summary>
    public IEnumerable<(string Scope, Derivation Derivation)> Derivations() => Explaining.All(_state);

    /// <summary>The phases and their moves as a Mermaid state diagram.</summary>
    public string DrawPhases() => _state.Drawing();
}
