using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Simulation;

/// <summary>A start-up in which a technician meets the procedure at a simulated furnace, faster than time and without sound: decide, apply, witness.</summary>
public sealed class IdealRun
{
    const int MostDeeds = 4000;

    static readonly DateTimeOffset Beginning = new(2026, 1, 5, 8, 0, 0, TimeSpan.Zero);

    readonly List<StartupEvent> _log = [];
    readonly Func<IdealRun, Deed, IEnumerable<Deed>> _slip;
    TimeSpan _at;

    /// <param name="furnace">The furnace with its plan.</param>
    /// <param name="slip">What becomes of each deed that the ideal technician means; null where it is done.</param>
    public IdealRun(Furnace furnace, Func<IdealRun, Deed, IEnumerable<Deed>>? slip = null)
    {
        _slip = slip ?? ((_, deed) => [deed]);
        Bench = new Bench(furnace);
        Procedure = new StartupProcedure(furnace.Plan);
        FileCopy none = new("", "", "");
        Keep(Procedure.Begin(new JobDescription("ideal", none, none, none)
        {
            Technician = "",
            ProgramVersion = "",
            Recogniser = "",
            IsDemonstration = true,
            TimerFactor = furnace.Plan.TimerFactor,
        }, Now));
    }

    /// <summary>Furnace, hands and journal.</summary>
    public Bench Bench { get; }

    /// <summary>The procedure.</summary>
    public StartupProcedure Procedure { get; }

    /// <summary>What was recorded.</summary>
    public IReadOnlyList<StartupEvent> Log => _log;

    /// <summary>What was done, with the step before it.</summary>
    public List<string> Done { get; } = [];

    /// <summary>The present of the run.</summary>
    public Now Now => new(Beginning + _at, _at);

    /// <summary>Goes on to the end.</summary>
    /// <exception cref="InvalidOperationException">It comes to no end: procedure and technician do not fit.</exception>
    public IdealRun Run()
    {
        IdealTechnician technician = new(Bench);
        for (int deeds = 0; Procedure.Phase != Phase.Finished; deeds++)
        {
            if (deeds >= MostDeeds)
            {
                throw new InvalidOperationException($"The rehearsal does not end; it stays at {Bench.Step.Id}: {string.Join(" | ", Done.TakeLast(12))}.");
            }

            foreach (Deed deed in _slip(this, technician.Next(Procedure.View(Now))))
            {
                Carry(deed);
            }
        }

        return this;
    }

    /// <summary>Does one thing, with the time that it takes.</summary>
    void Carry(Deed deed)
    {
        Done.Add($"{Bench.Step.Id}: {deed.Words}");
        switch (deed)
        {
            case Deed.ByHand hand when HandWords.Read(hand.Words, Bench.Furnace.Plan) is Act.Move move:
                Bench.Do(move);
                Pass(3);
                break;
            case Deed.BySpeech speech:
                Pass(4);
                Keep(Procedure.Decide(speech.Phrase, Now));
                break;
            case Deed.Patience patience:
                Pass(patience.Seconds);
                break;
        }

        Keep(Procedure.Decide(new Phrase.TimePassed(), Now));
    }

    void Pass(double seconds)
    {
        _at += TimeSpan.FromSeconds(seconds);
        Bench.Advance(_at);
    }

    void Keep(IReadOnlyList<StartupEvent> events)
    {
        foreach (StartupEvent happened in events)
        {
            Procedure.Apply(happened);
            _log.Add(happened);
        }

        Bench.Witness(events);
    }
}
