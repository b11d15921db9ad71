using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>What is usual follows vent category, fuel and stage. All values: common practice, no source.</summary>
public sealed class UsualReadingsTests
{
    [Theory]
    [InlineData("draft", 0.12, VentCategory.IV, "high", true)]      // under pressure, as it should be
    [InlineData("draft", 0.12, VentCategory.III, "high", true)]
    [InlineData("draft", 0.03, VentCategory.I, "high", false)]      // a lost minus sign
    [InlineData("draft", -0.03, VentCategory.I, "high", true)]
    [InlineData("draft", 0.00, VentCategory.II, "high", true)]
    [InlineData("draft", -0.15, VentCategory.IV, "high", false)]
    [InlineData("draft", 0.09, null, "high", true)]
    [InlineData("flue_temperature", 105, VentCategory.IV, "high", true)]
    [InlineData("flue_temperature", 230, VentCategory.IV, "high", true)]
    [InlineData("flue_temperature", 230, VentCategory.IV, "low", false)]
    [InlineData("flue_temperature", 360, VentCategory.IV, "high", false)]
    [InlineData("flue_temperature", 105, VentCategory.I, "high", false)]
    [InlineData("flue_temperature", 200, VentCategory.I, "low", true)]
    [InlineData("flue_temperature", 200, VentCategory.I, "high", false)]
    [InlineData("flue_temperature", 105, null, "high", true)]
    [InlineData("manifold_pressure", 3.5, VentCategory.I, "high", true)]
    [InlineData("manifold_pressure", 3.5, VentCategory.I, "low", false)]
    [InlineData("manifold_pressure", 0.9, VentCategory.I, "low", true)]
    [InlineData("manifold_pressure", 0.9, VentCategory.I, "high", false)]
    [InlineData("inlet_pressure", 7.0, VentCategory.I, null, true)]
    public void A_reading_is_usual_for_its_vent_category_and_stage(string fieldId, double value, VentCategory? category, string? scope, bool isUsual) =>
        Assert.Equal(isUsual, Plan("natural-gas", category).FieldOf(fieldId, scope).IsUsual((decimal)value));

    [Theory]
    [InlineData("propane", "manifold_pressure", 10.0, true)]
    [InlineData("propane", "manifold_pressure", 3.5, false)]        // not converted
    [InlineData("propane", "inlet_pressure", 7.0, false)]
    [InlineData("propane", "inlet_pressure", 11.0, true)]
    [InlineData("n-butane", "inlet_pressure", 11.0, true)]
    [InlineData("lpg-ethane", "manifold_pressure", 3.5, false)]
    [InlineData("natural-gas", "manifold_pressure", 10.0, false)]
    public void Liquefied_gas_comes_at_a_higher_pressure(string fuel, string fieldId, double value, bool isUsual) =>
        Assert.Equal(isUsual, Plan(fuel, VentCategory.I).FieldOf(fieldId, "high").IsUsual((decimal)value));

    [Fact]
    public void What_condenses_runs_cold_whatever_its_category() =>
        Assert.Equal((true, false), (Plan("natural-gas", null, true).FieldOf("flue_temperature", "high").IsUsual(105), Plan("natural-gas", null, false).FieldOf("flue_temperature", "high").IsUsual(105)));

    [Fact]
    public void Under_other_units_the_usual_range_is_the_same()
    {
        StartupPlan plan = Plan("natural-gas", VentCategory.IV);
        Field draft = StartupPlan.From(plan.Checklist, plan.Appliance, plan.Site, settings: Settings.Default with { Pressure = Unit.Pascals }).FieldOf("draft", "high");

        // 0.12 in. w.c. x 249.09 Pa = 30 Pa; 0.45 in. w.c. = 112 Pa.
        Assert.Equal((Unit.Pascals, true, false), (draft.Unit, draft.IsUsual(30), draft.IsUsual(115)));
    }

    [Fact]
    public void What_the_plan_asks_for_is_heard_with_the_range_of_its_stage()
    {
        LiveJob job = new LiveJob(Plan("natural-gas", VentCategory.I)).GoTo("manifold");

        Assert.Equal(4.5m, job.Procedure.Expectation.Readings[0].Field.UsualHighest);
    }

    [Fact]
    public void Stages_with_other_usual_ranges_are_heard_apart()
    {
        StartupPlan plan = Plan("natural-gas", VentCategory.I);
        Expectation low = Hears(plan.FieldOf("manifold_pressure", "low")), high = Hears(plan.FieldOf("manifold_pressure", "high"));

        Assert.NotEqual(low, high);
        Assert.Equal(high, Hears(plan.FieldOf("manifold_pressure", "high")));
    }

    static Expectation Hears(Field field) => new([ExpectedReading.Of(field)], [], []);

    static StartupPlan Plan(string fuel, VentCategory? category, bool? condensing = null)
    {
        StartupPlan plan = Some.Plan();
        return StartupPlan.From(plan.Checklist, plan.Appliance with { FuelId = fuel, Venting = category, IsCondensing = condensing }, plan.Site);
    }
}
