using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>Which steps a furnace gets, and in which order.</summary>
public sealed class BranchTests
{
    static readonly StartupPlan Plan = Some.Plan();

    [Theory]
    [InlineData(1, false, "high")]
    [InlineData(2, false, "low high two")]
    [InlineData(2, true, "low high")]
    public void Steps_are_kept_for_the_ways_of_firing_that_they_are_for(int stages, bool modulates, string expected)
    {
        Step[] steps =
        [
            Step("low") with { OnlyFor = new() { Firings = [Firing.TwoStage, Firing.Modulating] } },
            Step("high"),
            Step("two") with { OnlyFor = new() { Firings = [Firing.TwoStage] } },
        ];

        Assert.Equal(expected, Ids(steps, Plan.Appliance with { Stages = stages, IsModulating = modulates }));
    }

    [Fact]
    public void Venting_and_condensing_leave_out_only_what_the_sheet_excludes()
    {
        Step[] steps =
        [
            Step("spill") with { OnlyFor = new() { Venting = [VentCategory.I, VentCategory.II] } },
            Step("trap") with { OnlyFor = new() { Condensing = true } },
        ];

        Assert.Equal("spill trap", Ids(steps, Plan.Appliance));
        Assert.Equal("spill", Ids(steps, Plan.Appliance with { Venting = VentCategory.I, IsCondensing = false }));
        Assert.Equal("trap", Ids(steps, Plan.Appliance with { Venting = VentCategory.IV, IsCondensing = true }));
    }

    [Theory]
    [InlineData(StageOrder.AsWritten, "a low1 low2 high1 b high2 low3")]
    [InlineData(StageOrder.LowFirst, "a low1 low2 high1 b low3 high2")]
    [InlineData(StageOrder.HighFirst, "a high1 low1 low2 b high2 low3")]
    public void The_settings_exchange_neighbouring_blocks_of_the_firing_stages_and_nothing_else(StageOrder order, string expected)
    {
        Step[] steps = [.. "a low1 low2 high1 b high2 low3".Split(' ')
            .Select(id => Step(id) with { FireBlock = id.StartsWith("low", StringComparison.Ordinal) ? "low" : id.StartsWith("high", StringComparison.Ordinal) ? "high" : null })];

        Assert.Equal(expected, Ids(steps, Plan.Appliance, new Settings(order)));
    }

    [Fact]
    public void What_an_adjustment_voids_may_be_a_whole_walk_and_drops_what_the_furnace_leaves_out()
    {
        Step[] steps =
        [
            Step("walk") with { Kind = StepKind.Walk },
            Step("draft") with { OnlyFor = new() { Venting = [VentCategory.I] } },
            Step("adjust") with { Voids = ["walk", "draft"] },
        ];
        StartupPlan plan = StartupPlan.From(
            Plan.Checklist with { Steps = [.. steps] }, Plan.Appliance with { Venting = VentCategory.IV }, Plan.Site);

        Assert.Equal(["walk/kitchen", "walk/bedroom"], plan.Steps[^1].Voids.AsEnumerable());
    }

    [Fact]
    public void The_seal_of_the_test_hole_is_the_one_of_the_sheet() =>
        Assert.Equal("Seal it: plug.", StartupPlan.From(
            Plan.Checklist with { Steps = [Step("seal") with { Do = "Seal it: {seal}." }] }, Plan.Appliance, Plan.Site).Steps[0].Do);

    static string Ids(Step[] steps, ApplianceSheet appliance, Settings? settings = null) => string.Join(' ',
        StartupPlan.From(Plan.Checklist with { Steps = [.. steps] }, appliance, Plan.Site, settings: settings).Steps.Select(step => step.Id));

    static Step Step(string id) => new() { Id = id, Section = "Section", Title = id, Kind = StepKind.Do, Do = "Do {room}." };
}
