using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Tests.Support;

/// <summary>Small invented plans and jobs.</summary>
static class Some
{
    public static DateTimeOffset Morning { get; } = new(2031, 3, 4, 8, 0, 0, TimeSpan.Zero);

    public static JobDescription Job { get; } = new("job-1", File("checklist.yaml"), File("furnace.yaml"), File("site.yaml"))
    {
        Technician = "T. Echnician",
        ProgramVersion = "0.0.0",
        Recogniser = "keys",
        IsDemonstration = false,
        TimerFactor = 1,
    };

    /// <summary>One step of each kind, with a gas port to plug and prove.</summary>
    public static ImmutableArray<Step> Steps { get; } =
    [
        Step("smell", StepKind.Ask) with { Question = new("Do you smell gas?", false, "Leave.", true), IsSafetyStop = true },
        Step("papers", StepKind.Do),
        Step("open-port", StepKind.Open) with { Opens = [new("manifold port", true)] },
        Step("drill", StepKind.Open) with { Opens = [new("test hole", false)] },
        Step("warm-up", StepKind.Wait) with { Timer = new(TimeSpan.FromMinutes(8), "common practice, no source") },
        Step("combustion", StepKind.Read) with
        {
            Scope = "high",
            Readings = [new("oxygen", "oxygen"), new("flue_co", null), new("flue_temperature", null), new("air_temperature", null)],
        },
        Step("manifold", StepKind.Read) with { Scope = "high", Readings = [new("manifold_pressure", "manifold_pressure")] },
        Step("adjust", StepKind.Adjust) with { Scope = "high", Readings = [new("manifold_pressure", "manifold_pressure")], Voids = ["combustion"] },
        Step("rise", StepKind.Read) with { Scope = "high", Readings = [new("supply_temperature", null), new("return_temperature", null)] },
        Step("rooms", StepKind.Walk) with
        {
            Readings = [new("room_co", "room_co")],
            Also = ImmutableDictionary<string, ImmutableArray<string>>.Empty.Add("room_co", ["monoxide"]),
        },
        Step("close-port", StepKind.Close) with { Closes = ["manifold port"] },
        Step("prove-port", StepKind.Ask) with { Proves = ["manifold port"], IsSafetyStop = true, Question = new("Free of bubbles?", true, "Tighten.", false) },
        Step("seal", StepKind.Close) with { Closes = ["test hole"] },
        Step("sign", StepKind.Sign),
    ];

    public static StartupPlan Plan(double timerFactor = 1) => PlanOf(Steps, timerFactor);

    public static StartupPlan PlanOf(ImmutableArray<Step> steps, double timerFactor = 1) => StartupPlan.From(
        new Checklist("some", "1", "Some start-up", steps,
        [
            new("room_co", null, 9, "ppm", "invented", true),
            new("co_air_free", null, 400, "ppm", "invented", true),
        ]),
        new ApplianceSheet("some-furnace", "Some furnace", "natural-gas", 2, "clockwise", "plug",
        [
            new("manifold_pressure/high", 3.35m, 3.65m, "in. w.c.", "invented", false),
            new("oxygen", 5m, 9.5m, "%", "invented", false),
            new("temperature_rise", 40m, 70m, "°F", "invented", false),
        ]),
        new Site("some-site", "Some site", "Owner", "Street", 0, ["kitchen", "bedroom"],
        [
            new("oxygen", 0.3m, 0, "invented"), new("flue_co", 20m, 5m, "invented"), new("room_co", 3m, 0, "invented"),
            new("flue_temperature", 4m, 1.5m, "invented"), new("air_temperature", 2m, 0, "invented"), new("manifold_pressure", 0.03m, 0, "invented"),
        ]),
        timerFactor);

    public static Evidence Heard(Certainty certainty = Certainty.Green) => new("words", Channel.Voice, certainty)
    {
        Score = -0.2,
        Margin = 6,
        Ratio = -1,
        Why = certainty == Certainty.Green ? "" : "unusual",
    };

    static Step Step(string id, StepKind kind) => new() { Id = id, Section = "Section", Title = $"Title of {id}", Kind = kind, Do = $"Do {id} {{room}}." };

    static FileCopy File(string name) => new(name, "00", "text");
}
