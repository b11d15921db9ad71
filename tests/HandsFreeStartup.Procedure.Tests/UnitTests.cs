using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>The same start-up in other units: what is said, shown and kept changes, what it means does not.</summary>
public sealed class UnitTests
{
    static readonly Settings Metric = new() { Pressure = Unit.Pascals, Temperature = Unit.Celsius, Heat = Unit.Kilowatts };

    [Fact]
    public void Readings_and_limits_are_said_shown_and_kept_in_the_unit_of_the_settings()
    {
        LiveJob job = Job(Metric).GoToMetric("manifold");
        Assert.Equal(("--", "Pa"), (job.View.Readings[0].Value, job.View.Readings[0].UnitSymbol));
        Assert.Equal((0, 0), (Manifold(job).FewestDecimals, Manifold(job).MostDecimals));

        job.Say(Manifold(job), 872m);

        EnteredReading kept = job.Log.OfType<ReadingEntered>().Last().Reading;
        Assert.Equal((872m, "Pa", Verdict.Pass), (kept.Value, kept.UnitSymbol, kept.Verdict));
        Assert.Equal("834 to 909 Pa", kept.Limit!.Text); // 3.35 and 3.65 in. w.c. of 249.08891 Pa
        Assert.Equal(Math.Max(0.03m * 249.08891m, 0), kept.ExpandedUncertainty!.Value, 6);
    }

    [Theory]
    [InlineData("Pa", 800, "turn clockwise, about 71.81 Pa to go")] // 3.5 in. w.c. are 871.81 Pa
    [InlineData("mbar", 8.00, "turn clockwise, about 0.72 mbar to go")]
    public void The_advice_of_an_adjustment_is_in_the_unit_of_the_settings(string unit, double pressure, string advice)
    {
        LiveJob job = Job(new() { Pressure = Unit.Find(unit)! }).GoToMetric("manifold");
        job.Say(Manifold(job), (decimal)pressure).Say(CommandWord.Next);

        Assert.Contains(advice, job.View.Do, StringComparison.Ordinal);
    }

    [Fact]
    public void Results_are_those_of_the_same_readings_in_the_other_unit()
    {
        // The reference row of the calculation tests (Cantera 3.2.0, IAPWS-IF97): 87.577 % of the higher heating value and a dew point of 47.19 °C.
        LiveJob job = Job(Metric).GoToMetric("combustion");
        job.Say("oxygen", 10.7m).Say("flue_co", 0m);
        job.Say(Field(job, "flue_temperature"), 49.4m).Say(Field(job, "air_temperature"), 8.9m);

        Assert.Equal(87.58, Result(job, "efficiency").Value!.Value, 0.01);
        Assert.Equal((47.2, "°C"), (Math.Round(Result(job, "dew_point").Value!.Value, 1), Result(job, "dew_point").UnitSymbol));
    }

    [Fact]
    public void A_temperature_rise_is_a_difference_and_moves_no_zero()
    {
        LiveJob job = Job(Metric).GoToMetric("rise");
        job.Say(Field(job, "supply_temperature"), 50m).Say(Field(job, "return_temperature"), 20m);

        CalculatedResult rise = Result(job, "temperature_rise");
        Assert.Equal((30.0, "°C", Verdict.Pass), (rise.Value, rise.UnitSymbol, rise.Verdict));
        Assert.Equal("22.22 to 38.89 °C", rise.Limit!.Text); // 40 and 70 °F of difference
    }

    [Fact]
    public void A_verdict_does_not_depend_on_the_unit()
    {
        for (int pascals = 780; pascals <= 960; pascals++)
        {
            LiveJob metric = Job(new() { Pressure = Unit.Pascals }).GoToMetric("manifold");
            LiveJob usual = Job(Settings.Default).GoToMetric("manifold");
            metric.Say(Manifold(metric), pascals);
            usual.Say(Manifold(usual), Unit.Pascals.Convert((decimal)pascals, Unit.InchesOfWater));

            Assert.Equal(usual.Log.OfType<ReadingEntered>().Last().Reading.Verdict, metric.Log.OfType<ReadingEntered>().Last().Reading.Verdict);
        }
    }

    [Fact]
    public void Every_field_keeps_a_range_and_decimals_that_can_be_said_in_every_unit()
    {
        Unit[][] alike = [[Unit.InchesOfWater, Unit.Pascals, Unit.Millibars], [Unit.Fahrenheit, Unit.Celsius]];
        foreach (Field field in Fields.All)
        {
            foreach (Unit unit in alike.FirstOrDefault(units => units[0] == field.Unit) ?? [field.Unit])
            {
                Field other = FieldUnits.In(field, unit);
                Assert.True(other.Lowest < other.Highest && other.UsualLowest < other.UsualHighest);
                Assert.InRange(other.Highest, 0, 9999);
                Assert.InRange(unit.Convert(other.Highest, field.Unit), field.Highest, field.Highest + 2);
            }
        }
    }

    static LiveJob Job(Settings settings)
    {
        StartupPlan plan = Some.Plan();
        return new LiveJob(StartupPlan.From(plan.Checklist, plan.Appliance, plan.Site, settings: settings));
    }

    static Field Manifold(LiveJob job) => Field(job, "manifold_pressure");

    static Field Field(LiveJob job, string id) => job.Procedure.Expectation.Readings.Single(reading => reading.Field.Id == id).Field;

    static CalculatedResult Result(LiveJob job, string id) => job.Log.OfType<ResultsComputed>().SelectMany(computed => computed.Results).Last(result => result.Id == id);
}

/// <summary>Steps of a job in other units.</summary>
static class MetricSteps
{
    /// <summary>To the step of that id; its step is entered by hand, because the good values are those of the usual units.</summary>
    public static LiveJob GoToMetric(this LiveJob job, string stepId)
    {
        job.Procedure.Apply(new StepEntered(job.Now, stepId, Arrival.Forward));
        return job;
    }
}
