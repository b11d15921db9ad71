using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Derivations;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>Two sets of oxygen and flue temperature, a minute apart, must agree before combustion counts as settled.</summary>
public sealed class SecondSetTests
{
    static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    static readonly ImmutableArray<Step> Steps =
    [
        .. Some.Steps.Select(step => step.Id == "combustion"
            ? step with
            {
                AgainAfter = [Again.Stop],
                Readings =
                [
                    new("oxygen", "oxygen", Twice(0.3m)), new("flue_co", null), new("flue_temperature", null, Twice(9m)), new("air_temperature", null),
                ],
            }
            : step),
    ];

    static Settles Twice(decimal drift) => new(Minute, drift, drift, "common practice, no source", Twice: true);

    static LiveJob First(StartupPlan? plan = null) => new LiveJob(plan ?? Some.PlanOf(Steps)).GoTo("combustion").Say("flue_co", 12m).Say("air_temperature", 68m).Say("oxygen", 7.6m);

    static LiveJob Complete() => First().Say("flue_temperature", 328m);

    static string Refusal(LiveJob job) => Assert.IsType<CommandRefused>(job.Say(CommandWord.Next).Last[^1]).Reason.Shown;

    [Fact]
    public void The_time_between_the_sets_begins_when_the_first_is_complete()
    {
        LiveJob job = First();
        Assert.Empty(job.Last.OfType<TimerStarted>());

        TimerStarted timer = Assert.Single(job.Say("flue_temperature", 328m).Last.OfType<TimerStarted>());
        Assert.Equal(Minute, timer.Duration);
        Assert.Equal("Not proven to stand still: wait 1:00, then say oxygen and flue temperature once more.", Refusal(job));
    }

    [Fact]
    public void The_same_value_said_meanwhile_changes_nothing_and_another_begins_the_time_anew()
    {
        LiveJob job = Complete().Wait(TimeSpan.FromSeconds(40));
        Assert.Empty(job.Say("oxygen", 7.6m).Last.OfType<TimerStarted>());
        Assert.Single(job.Say("oxygen", 7.7m).Last.OfType<TimerStarted>());

        Assert.Contains("wait 1:00", Refusal(job.Wait(TimeSpan.Zero)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(7.9, 328, true)]     // 0.3 apart is within 0.3
    [InlineData(7.3, 319, true)]     // 9 apart is within 9
    [InlineData(8.0, 328, false)]
    [InlineData(7.2, 328, false)]
    [InlineData(7.6, 338, false)]
    public void The_second_set_agrees_within_the_drift_that_the_checklist_states(double oxygen, int flue, bool agrees)
    {
        LiveJob job = Complete().Wait(Minute).Say("oxygen", (decimal)oxygen).Say("flue_temperature", flue).Say(CommandWord.Next);

        Assert.Equal(agrees, job.Step != "combustion");
    }

    [Fact]
    public void A_second_set_before_its_time_is_none()
    {
        LiveJob job = Complete().Wait(TimeSpan.FromSeconds(59)).Say("oxygen", 7.6m).Say("flue_temperature", 328m);

        Assert.Contains("wait 0:01", Refusal(job), StringComparison.Ordinal);
        Assert.Equal("Not proven to stand still: say oxygen and flue temperature once more.", Refusal(job.Wait(TimeSpan.FromSeconds(1))));
    }

    [Fact]
    public void One_value_that_agrees_is_not_enough_and_one_that_does_not_begins_both_anew()
    {
        LiveJob job = Complete().Wait(Minute).Say("oxygen", 7.6m);
        Assert.Equal("Not proven to stand still: say flue temperature once more.", Refusal(job));

        job.Say("flue_temperature", 350m);
        Assert.Equal("Not proven to stand still: wait 1:00, then say oxygen and flue temperature once more.", Refusal(job));
        job.Wait(Minute).Say("oxygen", 7.6m).Say("flue_temperature", 350m).Say(CommandWord.Next);
        Assert.Equal("manifold", job.Step);
    }

    [Fact]
    public void What_agreed_and_was_disregarded_is_said_again()
    {
        LiveJob job = Complete().Wait(Minute).Say("oxygen", 7.6m).Say("flue_temperature", 328m).Say(CommandWord.Disregard);

        Assert.Contains("flue temperature", Refusal(job), StringComparison.Ordinal);
        Assert.Contains("Not proven to stand still", Refusal(job.Say("flue_temperature", 328m)), StringComparison.Ordinal);
    }

    [Fact]
    public void What_agreed_before_an_alarm_agrees_no_more_after_it()
    {
        LiveJob job = Complete().Wait(Minute).Say("oxygen", 7.6m).Say("flue_temperature", 328m).Say(CommandWord.EmergencyStop).LeadBack("nothing was found");
        job.GoTo("combustion").Say("flue_co", 12m).Say("air_temperature", 68m).Say("oxygen", 7.6m).Say("flue_temperature", 328m);

        Assert.Contains("wait 1:00", Refusal(job), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(165, true)]     // 9 °F is a difference of 5 °C
    [InlineData(166, false)]
    public void Under_degrees_Celsius_the_drift_is_the_same_difference(int second, bool agrees)
    {
        StartupPlan known = Some.PlanOf(Steps);
        StartupPlan plan = StartupPlan.From(known.Checklist, known.Appliance, known.Site, settings: Settings.Default with { Temperature = Unit.Celsius });
        Field flue = plan.FieldOf("flue_temperature", "high");
        LiveJob job = First(plan).Say(flue, 160m).Wait(Minute).Say("oxygen", 7.6m).Say(flue, second).Say(CommandWord.Next);

        Assert.Equal(agrees, job.Step != "combustion");
    }

    [Fact]
    public void A_record_that_is_replayed_knows_the_sets()
    {
        LiveJob job = Complete().Wait(Minute).Say("oxygen", 7.6m).Restart(TimeSpan.FromSeconds(5)).Say("flue_temperature", 328m).Say(CommandWord.Next);

        Assert.Equal("manifold", job.Step);
    }

    /// <summary>By hand: |7.7 − 7.6|/√2 and |330 − 328|/√2 beside the instruments (JCGM 100:2008, 4.2; value from memory).</summary>
    [Fact]
    public void How_far_two_sets_that_agree_lie_apart_stands_in_the_budget()
    {
        LiveJob job = Complete().Wait(Minute).Say("oxygen", 7.7m).Say("flue_temperature", 330m);

        Derivation efficiency = job.Procedure.Derivations().Single(one => one.Derivation.Head.Id == "efficiency").Derivation;
        double Ratio(string part, string whole) => Math.Sqrt(efficiency.Budget.Single(one => one.Name == part).Share / efficiency.Budget.Single(one => one.Name == whole).Share);
        decimal U(string field) => job.Log.OfType<ReadingEntered>().Last(one => one.Reading.Key.FieldId == field).Reading.ExpandedUncertainty!.Value;

        Assert.Equal(0.1 / Math.Sqrt(2) / ((double)U("oxygen") / 2), Ratio("O2 scatter", "O2"), 1e-6);
        Assert.Equal(2 / Math.Sqrt(2) / ((double)U("flue_temperature") / 2), Ratio("Tflue scatter", "Tflue"), 1e-6);
        Assert.Contains("the first set 7.6", string.Join("\n", efficiency.Lines()), StringComparison.Ordinal);
        Assert.Equal(efficiency.Result.ExpandedUncertainty, job.Log.OfType<ResultsComputed>().SelectMany(one => one.Results).Last(result => result.Id == "efficiency").ExpandedUncertainty!.Value, 1e-9);
    }

    [Fact]
    public void A_first_set_alone_scatters_nothing()
    {
        Derivation efficiency = Complete().Procedure.Derivations().Single(one => one.Derivation.Head.Id == "efficiency").Derivation;

        Assert.DoesNotContain(efficiency.Budget, part => part.Name.EndsWith("scatter", StringComparison.Ordinal));
    }
}
