using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;
using Timer = HandsFreeStartup.Procedure.Checklists.Timer;

namespace HandsFreeStartup.Reports.Tests.Support;

/// <summary>Whole start-ups of furnaces with one to three stages, with names and notes as long as wanted, led by the real procedure.</summary>
public static class LargeJob
{
    static readonly string[] Stages = ["low", "middle", "high"];

    static readonly (string Field, decimal Value)[] Values =
    [
        ("oxygen", 7.6m), ("carbon_dioxide", 7.4m), ("flue_co", 12m), ("flue_temperature", 328m), ("air_temperature", 70m), ("draft", -0.042m), ("manifold_pressure", 3.10m),
        ("meter_time", 44.5m),
    ];

    public static (StartupPlan Plan, ScriptedJob Job) Signed(int stages, int notes = 0, int nameLength = 10, int rooms = 3)
    {
        StartupPlan plan = Plan(stages, nameLength, rooms);
        ScriptedJob job = new(plan: plan, technician: Name("Technician", nameLength));
        job.Answer(AnswerWord.No);
        for (int i = 0; i < notes; i++)
        {
            job.Order(CommandWord.Note).Dictate($"note {i + 1}, {string.Join(' ', Enumerable.Repeat("the screw was stiff and the cover is bent", 1 + i % 4))}");
        }

        job.Read("inlet_pressure", 7.25m).Order(CommandWord.Next).Order(CommandWord.Done).Wait(TimeSpan.FromMinutes(9)).Order(CommandWord.Next);
        for (int i = 0; i < stages; i++)
        {
            Stage(job, i);
        }

        for (int i = 0; i < rooms; i++)
        {
            job.Read("room_co", i % 3).Order(CommandWord.Next);
        }
        job.Order(CommandWord.Done).Answer(AnswerWord.Yes).Order(CommandWord.Finish).Answer(AnswerWord.Confirm);
        return (plan, job);
    }

    static void Stage(ScriptedJob job, int stage)
    {
        foreach ((string field, decimal value) in Values.SkipLast(2))
        {
            job.Read(field, Spread(field, value, stage));
        }

        job.Order(CommandWord.Next).Read("manifold_pressure", 3.10m).Read("meter_time", 44.5m + stage).Order(CommandWord.Next);
        job.Read("manifold_pressure", 3.28m).Read("manifold_pressure", 3.50m).Order(CommandWord.Next);
        foreach ((string field, decimal value) in Values.SkipLast(2))
        {
            job.Read(field, Spread(field, value, stage + 1));
        }
        job.Order(CommandWord.Next);
    }

    static decimal Spread(string field, decimal value, int step) => value + step * (field is "oxygen" or "carbon_dioxide" ? 0.1m : field == "draft" ? -0.001m : 1m);

    static StartupPlan Plan(int stages, int nameLength, int rooms) => StartupPlan.From(
        new Checklist("large", "1", "Large start-up",
        [
            Step("smell", StepKind.Ask) with { Question = new Question("Do you smell gas?", false, "Leave the building.", true), IsSafetyStop = true },
            Step("inlet", StepKind.Read) with { Scope = "running", Readings = [new("inlet_pressure", "inlet_pressure")] },
            Step("open-port", StepKind.Open) with { Opens = [new Thing(Name("manifold port", nameLength), true), new Thing("flue test hole", false)] },
            Step("warm-up", StepKind.Wait) with { Timer = new Timer(TimeSpan.FromMinutes(8), "common practice, no source") },
            .. Stages.TakeLast(stages).SelectMany(StepsOf),
            Step("room-walk", StepKind.Walk) with { Readings = [new("room_co", "room_co")] },
            Step("close-port", StepKind.Close) with { Closes = [Name("manifold port", nameLength), "flue test hole"] },
            Step("prove-port", StepKind.Ask) with { Proves = [Name("manifold port", nameLength)], Question = new Question("Is it free of bubbles?", true, "Tighten it.", false) },
            Step("sign", StepKind.Sign),
        ],
        [
            new DeclaredLimit("co_air_free", null, 400, "ppm", Name("a standard (invented)", nameLength), true),
            new DeclaredLimit("room_co", null, 9, "ppm", "a rule (invented)", true),
        ]),
        new ApplianceSheet("sheet", Name("Furnace (invented)", nameLength), "natural-gas", stages, "clockwise", "plug",
        [
            new DeclaredLimit("oxygen", 5.0m, 9.5m, "%", "maker's instructions (invented)", false),
            new DeclaredLimit("draft", -0.10m, -0.01m, "in. w.c.", "maker's instructions (invented)", true),
            new DeclaredLimit("manifold_pressure", 3.35m, 3.65m, "in. w.c.", "rating plate (invented)", false),
            new DeclaredLimit("inlet_pressure", 4.5m, 10.5m, "in. w.c.", "rating plate (invented)", false),
        ]),
        new Site("site", Name("House at the mill (invented)", nameLength), Name("Owner (invented)", nameLength), Name("1 Mill Lane (invented)", nameLength), 650m,
            [.. Enumerable.Range(1, rooms).Select(room => Name(FormattableString.Invariant($"room {room}"), Math.Min(nameLength, 60)))],
            [new InstrumentUncertainty("oxygen", 0.3m, 0m, "invented"), new InstrumentUncertainty("flue_co", 20m, 5m, "invented"), new InstrumentUncertainty("draft", 0.005m, 0m, "invented"), new InstrumentUncertainty("room_co", 3m, 10m, "invented")]));

    static IEnumerable<Step> StepsOf(string stage) =>
    [
        Step($"combustion-{stage}", StepKind.Read) with { Scope = stage, Readings = [.. Values.SkipLast(2).Select(value => new ReadingDemand(value.Field, value.Field is "oxygen" or "draft" ? value.Field : null))] },
        Step($"manifold-{stage}", StepKind.Read) with { Scope = stage, Readings = [new("manifold_pressure", "manifold_pressure"), new("meter_time", null)] },
        Step($"adjust-{stage}", StepKind.Adjust) with { Scope = stage, Readings = [new("manifold_pressure", "manifold_pressure")], Voids = [$"combustion-{stage}"] },
    ];

    static string Name(string name, int length) => name.Length >= length ? name : $"{name} {string.Join(' ', Enumerable.Repeat("of the very long name", length / 20 + 1))}"[..length].TrimEnd();

    static Step Step(string id, StepKind kind) => new() { Id = id, Section = "All", Title = id, Kind = kind, Do = "Do it." };
}
