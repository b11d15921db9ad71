using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Checklists;

/// <summary>What kind of work a step is; it decides what ends it.</summary>
public enum StepKind
{
    /// <summary>Something to do; "done" ends it.</summary>
    Do,
    /// <summary>Readings to say; complete readings and "next" end it.</summary>
    Read,
    /// <summary>A timer to wait for; its end and "next" end it.</summary>
    Wait,
    /// <summary>A question; the proper answer ends it.</summary>
    Ask,
    /// <summary>A reading in each room of the site; becomes one <see cref="Read"/> step a room.</summary>
    Walk,
    /// <summary>Bring a reading into its range; entered only while it is outside, ended when it is within.</summary>
    Adjust,
    /// <summary>Something is opened, removed, unplugged or drilled; "done" ends it.</summary>
    Open,
    /// <summary>Something opened is restored; "done" ends it.</summary>
    Close,
    /// <summary>The record is signed; "finish" and a confirmation end it.</summary>
    Sign,
}

/// <summary>A reading that a step asks for.</summary>
/// <param name="FieldId">Which field.</param>
/// <param name="LimitName">Name of the limit on the appliance sheet or the checklist that judges it, or null.</param>
/// <param name="Settles">When the value, said again and again, counts as settled; null where it is said once.</param>
public sealed record ReadingDemand(string FieldId, string? LimitName, Settles? Settles = null);

/// <summary>When a value that is said repeatedly counts as settled; see <see cref="Calculations.Settling.SettlingRule"/>.</summary>
/// <param name="Window">How far back the values are looked at.</param>
/// <param name="Drift">Largest drift over the window, in the field's unit.</param>
/// <param name="Scatter">Largest scatter (standard deviation), in the field's unit.</param>
/// <param name="Source">Who says so.</param>
/// <param name="Twice">Whether two values, the window or more apart, must agree within the drift before the step is left.</param>
public sealed record Settles(TimeSpan Window, decimal Drift, decimal Scatter, string Source, bool Twice = false);

/// <summary>The question of an <see cref="StepKind.Ask"/> step.</summary>
/// <param name="Text">As shown and spoken; answered by yes or no.</param>
/// <param name="Proper">The answer with which the start-up may go on.</param>
/// <param name="Otherwise">What must be done after the other answer, in plain words.</param>
/// <param name="StopsForGas">Whether the other answer stops the start-up as "gas smell" does.</param>
/// <param name="UnsafeAfter">After so many other answers the furnace is unsafe and the start-up ends, not put into service; null if it never does.</param>
public sealed record Question(Message Text, bool Proper, Message Otherwise, bool StopsForGas, int? UnsafeAfter = null)
{
    /// <summary>The value of <see cref="Decides"/> for what moves the exhaust.</summary>
    public const string DecidesDraft = "draft_by";

    /// <summary>Natural draft, as chosen.</summary>
    public const string Natural = "natural";

    /// <summary>Fan-assisted, as chosen.</summary>
    public const string Fan = "fan";

    /// <summary>What can be answered instead of yes or no; empty for yes and no.</summary>
    public ImmutableArray<SpokenChoice> Choices { get; init; } = [];

    /// <summary>Which branch the choice decides: <c>draft_by</c>; null where it decides none.</summary>
    public string? Decides { get; init; }

    /// <summary>What moves the exhaust by that choice; null where the question does not decide it.</summary>
    public DraftBy? DraftOf(string choice) => Decides != DecidesDraft ? null : choice == Natural ? DraftBy.Natural : DraftBy.Fan;

    /// <summary>Steps that are done again after an improper answer, before the question is asked again; empty for none.</summary>
    public ImmutableArray<string> Repeats { get; init; } = [];
}

/// <summary>What makes work that was done before doubtful.</summary>
public enum Again
{
    /// <summary>Gas was smelled.</summary>
    Smell,
    /// <summary>The burner was stopped for safety.</summary>
    Stop,
    /// <summary>Gas or air was adjusted.</summary>
    Change,
}


/// <summary>The timer of a <see cref="StepKind.Wait"/> step.</summary>
/// <param name="Duration">How long to wait.</param>
/// <param name="Source">Who says so.</param>
public sealed record Timer(TimeSpan Duration, string Source);

/// <summary>A thing that is opened or restored.</summary>
/// <param name="Name">As shown and spoken, for instance "manifold pressure port".</param>
/// <param name="IsGasSide">Whether gas can escape; then a leak check must follow its closing.</param>
public sealed record Thing(string Name, bool IsGasSide);

/// <summary>One step of a checklist; data only.</summary>
public sealed record Step
{
    /// <summary>Unique in the checklist, for instance <c>combustion-low</c>; after the expansion of a walk <c>room-walk/kitchen</c>.</summary>
    public required string Id { get; init; }

    /// <summary>Chapter of the procedure, for instance "Gas leak check".</summary>
    public required string Section { get; init; }

    /// <summary>Few words, shown large.</summary>
    public required string Title { get; init; }

    /// <summary>The one thing to do, as an imperative of at most <see cref="LongestImperative"/> characters, shown in letters three rows high; null where the title stands for it.</summary>
    public string? Imperative { get; init; }

    /// <summary>So many characters fit in large letters on the narrowest screen.</summary>
    public const int LongestImperative = 24;

    /// <summary>The whole prompt as it is said in short: the one thing to do, and what to say; null where title, question and words are enough.</summary>
    public Message? Prompt { get; init; }

    /// <summary>What kind of work it is.</summary>
    public required StepKind Kind { get; init; }

    /// <summary>What to do, in plain words.</summary>
    public required Message Do { get; init; }

    /// <summary>Why it is done, for the trainee; or null.</summary>
    public Message? Why { get; init; }

    /// <summary>The safety note; or null.</summary>
    public Message? Caution { get; init; }

    /// <summary>Firing stage to which readings belong (<c>low</c>, <c>high</c>), room of a walk, or null.</summary>
    public string? Scope { get; init; }

    /// <summary>Readings the step asks for.</summary>
    public ImmutableArray<ReadingDemand> Readings { get; init; } = [];

    /// <summary>Extra spoken names of a field that are plain in this step ("monoxide" on the room walk), by field id.</summary>
    public ImmutableDictionary<string, ImmutableArray<string>> Also { get; init; } = ImmutableDictionary<string, ImmutableArray<string>>.Empty;

    /// <summary>The question of an ask step.</summary>
    public Question? Question { get; init; }

    /// <summary>The timer of a wait step.</summary>
    public Timer? Timer { get; init; }

    /// <summary>Things that the step opens.</summary>
    public ImmutableArray<Thing> Opens { get; init; } = [];

    /// <summary>Names of things that the step restores.</summary>
    public ImmutableArray<string> Closes { get; init; } = [];

    /// <summary>Names of gas-side things whose leak check this step is; they count as open until then.</summary>
    public ImmutableArray<string> Proves { get; init; } = [];

    /// <summary>Steps whose readings an adjustment made here, or a correction of a reading taken here, voids; the procedure returns to the first of them.</summary>
    public ImmutableArray<string> Voids { get; init; } = [];

    /// <summary>Wait steps whose timers begin to run when this step is done; several may run at once.</summary>
    public ImmutableArray<string> Starts { get; init; } = [];

    /// <summary>Wait step whose time must be over before readings of this step are judged; earlier ones are kept, marked early. Null for none.</summary>
    public string? After { get; init; }

    /// <summary>Firing stage whose block of steps this step belongs to (<c>low</c>, <c>high</c>); the settings may exchange neighboring blocks. Null for none.</summary>
    public string? FireBlock { get; init; }

    /// <summary>Whether it can never be skipped.</summary>
    public bool IsSafetyStop { get; init; }

    /// <summary>After what the step, done before, must be done again.</summary>
    public ImmutableArray<Again> AgainAfter { get; init; } = [];

    /// <summary>Results that the readings of this step lead to and that a limit judges; one that no file states is asked for like that of a reading.</summary>
    public ImmutableArray<string> Limited { get; init; } = [];

    /// <summary>Whether it guards: an answer other than the proper one is unsafe, and taking it back needs a reason.</summary>
    public bool Guards => Question is { } question && (IsSafetyStop || question.StopsForGas || question.UnsafeAfter is not null);

    /// <summary>For which furnaces the step is part of the procedure.</summary>
    public Condition OnlyFor { get; init; } = Condition.Always;
}
