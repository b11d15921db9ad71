using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using Timer = HandsFreeStartup.Procedure.Checklists.Timer;

namespace HandsFreeStartup.Reports.Tests.Support;

/// <summary>A small start-up led by the real procedure, phrase by phrase, one second apart.</summary>
public sealed class ScriptedJob
{
    static readonly DateTimeOffset Begin = new(2026, 3, 14, 9, 0, 0, TimeSpan.Zero);

    readonly StartupProcedure _procedure;
    readonly List<StartupEvent> _events = [];
    DateTimeOffset _now = Begin;

    public ScriptedJob(bool isDemonstration = false, StartupPlan? plan = null, string technician = "T. Tester", string jobId = "job-7", params ApplianceBeside[] beside)
    {
        _procedure = new StartupProcedure(plan ?? Plan);
        FileCopy file = new("invented.yaml", new string('a', 64), "");
        Take(_procedure.Begin(new JobDescription(jobId, file, file, file)
        {
            Technician = technician,
            ProgramVersion = "0.1.0",
            Recogniser = "keys",
            IsDemonstration = isDemonstration,
            TimerFactor = 1,
            Beside = beside.Length == 0 ? null : [.. beside],
        }, _now));
    }

    public IReadOnlyList<StartupEvent> Events => _events;

    public static StartupPlan Plan { get; } = StartupPlan.From(
        new Checklist("short", "1", "Short start-up",
        [
            Step("smell", StepKind.Ask) with { Question = new Question("Do you smell gas?", false, "Leave the building.", true), IsSafetyStop = true },
            Step("look", StepKind.Do),
            Step("open-port", StepKind.Open) with { Opens = [new Thing("manifold port", true)] },
            Step("warm-up", StepKind.Wait) with { Timer = new Timer(TimeSpan.FromMinutes(8), "common practice, no source") },
            Step("combustion-high", StepKind.Read) with { Scope = "high", Readings = [new("oxygen", "oxygen"), new("flue_co", null)] },
            Step("manifold-high", StepKind.Read) with { Scope = "high", Readings = [new("manifold_pressure", "manifold_pressure")] },
            Step("adjust-high", StepKind.Adjust) with { Scope = "high", Readings = [new("manifold_pressure", "manifold_pressure")], Voids = ["combustion-high"] },
            Step("close-port", StepKind.Close) with { Closes = ["manifold port"] },
            Step("prove-port", StepKind.Ask) with { Proves = ["manifold port"], Question = new Question("Is it free of bubbles?", true, "Tighten it.", false) },
            Step("sign", StepKind.Sign),
        ],
        [new DeclaredLimit("co_air_free", null, 400, "ppm", "ANSI Z21.47, as quoted in trade literature", true)]),
        new ApplianceSheet("sheet", "Two-stage furnace (invented)", "natural-gas", 2, "clockwise", "plug",
        [
            new DeclaredLimit("oxygen/high", 5.0m, 9.5m, "%", "maker's instructions (invented)", false),
            new DeclaredLimit("manifold_pressure/high", 3.35m, 3.65m, "in. w.c.", "rating plate (invented)", false),
        ]),
        new Site("site", "House at the mill (invented)", "Owner (invented)", "1 Mill Lane (invented)", 650m, ["kitchen"],
            [new InstrumentUncertainty("oxygen", 0.3m, 0m, "invented"), new InstrumentUncertainty("flue_co", 20m, 5m, "invented"), new InstrumentUncertainty("manifold_pressure", 0.03m, 0m, "invented")]));

    /// <summary>A whole start-up with a correction, an adjustment, a skip, a note and a refusal.</summary>
    public static ScriptedJob Whole() => new ScriptedJob()
        .Answer(AnswerWord.No)
        .Order(CommandWord.SkipStep).Dictate("panel is painted shut")
        .Order(CommandWord.Next).Order(CommandWord.Done)
        .Wait(TimeSpan.FromMinutes(9)).Order(CommandWord.Next)
        .Read("oxygen", 6.70m).Order(CommandWord.Disregard).Read("oxygen", 7.60m)
        .Read("flue_co", 17m, Certainty.Amber).Answer(AnswerWord.Confirm).Order(CommandWord.Next)
        .Read("manifold_pressure", 3.10m).Order(CommandWord.Next)
        .Read("manifold_pressure", 3.50m).Order(CommandWord.Note).Dictate("screw was stiff").Order(CommandWord.Next)
        .Read("oxygen", 7.1m).Read("flue_co", 20m).Order(CommandWord.Next)
        .Order(CommandWord.Done)
        .Answer(AnswerWord.Yes)
        .Order(CommandWord.Finish).Answer(AnswerWord.Confirm);

    public ScriptedJob Answer(AnswerWord word) => Say(new Phrase.Answer(word, Evidence.Typed(word.ToString().ToLowerInvariant())));

    public ScriptedJob Order(CommandWord word) => Say(new Phrase.Command(word, Evidence.Typed(Commands.Of(word).Id)));

    /// <summary>Free speech, confirmed where it is read back.</summary>
    public ScriptedJob Dictate(string words)
    {
        Say(new Phrase.Dictation(new Evidence(words, Channel.Voice, Certainty.Green)));
        if (_procedure.Phase == Phase.ReadingBack)
        {
            Take(_procedure.Decide(new Phrase.Answer(AnswerWord.Confirm, Evidence.Typed("confirm")), _now));
        }

        return this;
    }

    public ScriptedJob Read(string fieldId, decimal value, Certainty certainty = Certainty.Green) => Say(new Phrase.Reading(
        Fields.Find(fieldId)!, value, new Evidence($"{fieldId} spoken", Channel.Voice, certainty)
        {
            Why = certainty == Certainty.Green ? "" : "seventeen and seventy sound alike",
        }));

    public ScriptedJob Wait(TimeSpan time)
    {
        _now += time;
        return Say(new Phrase.TimePassed());
    }

    ScriptedJob Say(Phrase phrase)
    {
        _now += TimeSpan.FromSeconds(1);
        Take(_procedure.Decide(phrase, _now));
        return this;
    }

    void Take(IReadOnlyList<StartupEvent> events)
    {
        foreach (StartupEvent happened in events)
        {
            _procedure.Apply(happened);
            _events.Add(happened);
        }
    }

    static Step Step(string id, StepKind kind) => new() { Id = id, Section = "All", Title = id, Kind = kind, Do = "Do it." };
}
