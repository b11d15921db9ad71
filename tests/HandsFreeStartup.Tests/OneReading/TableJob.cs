using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Tests.OneReading;

/// <summary>A job of the table: led by the real procedure, in the units of its settings.</summary>
sealed class TableJob
{
    const int MostSteps = 60;

    public TableJob(Settings settings)
    {
        StartupPlan usual = Some.Plan();
        Plan = StartupPlan.From(usual.Checklist, usual.Appliance, usual.Site, settings: settings);
        Live = new LiveJob(Plan);
    }

    public StartupPlan Plan { get; }

    public LiveJob Live { get; }

    public Step Step => Plan.All[Plan.IndexOf(Live.Step)];

    /// <summary>A value given in the unit of the tables, said in the unit of the settings.</summary>
    public TableJob Say(string fieldId, decimal usual, Certainty certainty = Certainty.Green)
    {
        Field field = Live.Procedure.Expectation.Readings.Select(reading => reading.Field).FirstOrDefault(field => field.Id == fieldId) ?? Plan.FieldOf(fieldId);
        Live.Say(field, Math.Round(Fields.Find(fieldId)!.Unit.Convert(usual, field.Unit), field.FewestDecimals), certainty);
        return this;
    }

    public TableJob Say(params IEnumerable<CommandWord> words) => With(job => words.ToList().ForEach(word => job.Say(word)));

    public TableJob Say(AnswerWord word) => With(job => job.Say(word));

    public TableJob With(Action<LiveJob> does)
    {
        does(Live);
        return this;
    }

    /// <summary>Everything as it should go, up to the step of that id.</summary>
    public TableJob GoTo(string stepId)
    {
        for (int moves = 0; Live.Step != stepId && moves < MostSteps; moves++)
        {
            DoStep();
        }

        Assert.Equal(stepId, Live.Step);
        return this;
    }

    /// <summary>Everything as it should go, up to the signature.</summary>
    public TableJob Finish()
    {
        GoTo("sign").Say(CommandWord.Finish).Say(AnswerWord.Confirm);
        Assert.True(Live.Procedure.IsSigned);
        return this;
    }

    public TableJob DoStep()
    {
        switch (Step.Kind)
        {
            case StepKind.Ask:
                Say(Step.Question!.Proper ? AnswerWord.Yes : AnswerWord.No);
                break;
            case StepKind.Wait:
                Live.Wait(Step.Timer!.Duration).Say(CommandWord.Next);
                break;
            case StepKind.Read or StepKind.Adjust:
                SayReadings().Say(CommandWord.Next);
                break;
            default:
                Say(CommandWord.Done);
                break;
        }

        if (Live.Procedure.Phase == Phase.Dictating)
        {
            Live.Dictate("found, put right and looked at again");
        }

        return this;
    }

    public TableJob SayReadings()
    {
        foreach (ReadingDemand demand in Step.Readings)
        {
            Say(demand.FieldId, Good(demand.FieldId));
        }

        return this;
    }

    static decimal Good(string fieldId) => fieldId switch
    {
        "oxygen" => 7.6m,
        "flue_co" => 12m,
        "flue_temperature" => 328m,
        "air_temperature" => 68m,
        "manifold_pressure" => 3.5m,
        "supply_temperature" => 122m,
        "return_temperature" => 68m,
        "room_co" => 2m,
        _ => throw new ArgumentOutOfRangeException(nameof(fieldId), fieldId, "no good value known"),
    };

    /// <summary>What the lead technician says of the ended record.</summary>
    public TableJob Review(ReviewOutcome outcome, string remark) => With(job => Reviewed.AddRange(job.Procedure.Review("L. Ead", outcome, remark, job.Present)));

    List<StartupEvent> Reviewed { get; } = [];

    /// <summary>The events; the job was done west of Greenwich.</summary>
    public IReadOnlyList<StartupEvent> Events(TimeSpan offset) =>
        [.. Live.Log.Concat(Reviewed).Select(happened => happened is StartupBegan began ? began with { Job = began.Job with { UtcOffset = offset } } : happened)];
}
