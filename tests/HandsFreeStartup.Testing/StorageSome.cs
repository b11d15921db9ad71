using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Storage.Tests.Support;

/// <summary>Plain examples.</summary>
public static class Some
{
    public static DateTimeOffset Moment { get; } = new(2026, 3, 14, 9, 26, 53, 589, TimeSpan.Zero);

    public static StartupBegan Began() => new(Moment, new JobDescription("job-1", UserFile.Copy("checklist.yaml", "id: a"), UserFile.Copy("appliance.yaml", "id: b"), UserFile.Copy("site.yaml", "id: c"))
    {
        Technician = "T. Tester",
        ProgramVersion = "0.1.0",
        Recogniser = "keys",
        IsDemonstration = false,
        TimerFactor = 1,
    });

    public static NoteTaken Note(string text, Evidence evidence) => new(Moment, "drill", text, evidence);

    public static ReadingEntered Reading(string fieldId, decimal value, string scope) => new(Moment, "combustion-low", new EnteredReading(new ReadingKey(fieldId, scope), value, "%", new Evidence("oxygen seven point six", Channel.Voice, Certainty.Green)
    {
        Score = -0.11,
        Margin = 3.2,
        Ratio = -0.4,
    })
    {
        Limit = new DeclaredLimit("oxygen/low", 6.0m, 11.0m, "%", "maker's instructions (invented)", false),
        Verdict = Verdict.Pass,
        ExpandedUncertainty = 0.3m,
    });

    public static ImmutableArray<StartupEvent> SmallJob =>
    [
        Began(),
        new StepEntered(Moment.AddSeconds(1), "smell", Arrival.Forward),
        new AnswerGiven(Moment.AddSeconds(4), "smell", false, Evidence.Typed("no")),
        new StepDone(Moment.AddSeconds(4), "smell", null),
        Reading("oxygen", 7.60m, "low"),
        new ReadingStood(Moment.AddSeconds(9), new ReadingKey("oxygen", "low")),
        new StartupSigned(Moment.AddSeconds(20), "T. Tester"),
    ];
}
