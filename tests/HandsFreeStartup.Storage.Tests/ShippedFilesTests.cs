using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Storage.Tests;

/// <summary>The checklist, sheet and site that are shipped.</summary>
public sealed class ShippedFilesTests
{
    public static TheoryData<string, CommandWord> EveryStepAndSafetyPhrase()
    {
        TheoryData<string, CommandWord> rows = [];
        foreach (Step step in Plan().Steps.Where(step => step.Kind != StepKind.Adjust))
        {
            rows.Add(step.Id, CommandWord.EmergencyStop);
            rows.Add(step.Id, CommandWord.GasSmell);
        }

        return rows;
    }

    /// <summary>Every limit, time and uncertainty of every shipped file: file, what, source.</summary>
    public static TheoryData<string, string, string> EverySource()
    {
        TheoryData<string, string, string> rows = [];
        foreach (FileCopy file in ShippedPlans.All)
        {
            foreach ((string what, string source) in Sources(file))
            {
                rows.Add(file.Name, what, source);
            }
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(EverySource))]
    public void Every_limit_names_its_source(string file, string what, string source)
    {
        Assert.False(string.IsNullOrWhiteSpace(source), $"{file}: {what} has no source");
        Assert.True(source.Length >= "invented".Length, $"{file}: '{source}' is no source of {what}");
    }

    [Fact]
    public void Every_shipped_file_is_listed_with_its_sources() =>
        Assert.Equal(
            ShippedPlans.All.Select(file => file.Name).Order(StringComparer.Ordinal),
            ShippedPlans.All.Where(file => Sources(file).Any()).Select(file => file.Name).Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("furnace-two-stage-altitude", "site-mountain", "new", 60, 85)]
    [InlineData("furnace-one-stage-propane", "site-farm", "new", 60, 85)]
    [InlineData("furnace-modulating", "site-row-house", "new", 60, 85)]
    public void A_full_start_up_has_as_many_steps_as_a_day_allows(string appliance, string site, string occasion, int fewest, int most) =>
        Assert.InRange(ShippedPlans.Plan("gas-furnace", appliance, site, occasion).Steps.Length, fewest, most);

    [Fact]
    public void Every_gas_that_is_heavier_than_air_is_looked_for_at_the_floor()
    {
        // Relative density of the calculation core, air = 1: propane 1.52, n-butane 2.01 (molar masses 44.1 and 58.1 over 28.97 g/mol).
        StartupPlan known = ShippedPlans.Plan("gas-furnace", "furnace-one-stage-propane", "site-farm", "seasonal");

        Assert.All(Fuel.Presets, fuel => Assert.Equal(
            fuel.RelativeDensity > 1,
            StartupPlan.From(known.Checklist, known.Appliance with { FuelId = fuel.Id }, known.Site, occasion: "seasonal").Steps.Any(step => step.Id == "floor-check")));
    }

    [Fact]
    public void Every_step_of_the_full_procedure_tells_a_trainee_why() =>
        Assert.All(
            UserFile.ReadChecklist(ShippedPlans.Copy("gas-furnace")).Steps.Where(step => step.Kind is not StepKind.Sign),
            step => Assert.False(step.Why is null, step.Id));

    [Fact]
    public void The_shipped_start_up_can_be_walked_to_its_signature_with_nothing_open()
    {
        LiveJob job = new LiveJob(Plan()).GoTo("sign").Say(CommandWord.Finish).Say(AnswerWord.Confirm);

        Assert.IsType<StartupSigned>(job.Last[^1]);
        Assert.Empty(job.View.Open);
        Assert.True(job.Procedure.IsSigned);
    }

    [Theory]
    [MemberData(nameof(EveryStepAndSafetyPhrase))]
    public void Every_safety_phrase_stops_at_every_step_of_the_shipped_checklist(string stepId, CommandWord phrase)
    {
        LiveJob job = new LiveJob(Plan()).GoTo(stepId).Say(phrase);

        Assert.Equal(Phase.Stopped, job.Procedure.Phase);
    }

    static IEnumerable<(string What, string Source)> Sources(FileCopy file) => UserFile.KindOf(file) switch
    {
        UserFileKind.ApplianceSheet => UserFile.ReadApplianceSheet(file).Limits.Select(limit => (limit.Name, limit.Source)),
        UserFileKind.Site => UserFile.ReadSite(file).Instruments.Select(instrument => (instrument.FieldId, instrument.Source)),
        _ => UserFile.ReadChecklist(file).Limits.Select(limit => (limit.Name, limit.Source))
            .Concat(UserFile.ReadChecklist(file).Steps.Where(step => step.Timer is not null).Select(step => (step.Id, step.Timer!.Source)))
            .Concat(UserFile.ReadChecklist(file).Steps.SelectMany(step => step.Readings.Where(demand => demand.Settles is not null).Select(demand => ($"{step.Id}, {demand.FieldId}", demand.Settles!.Source)))),
    };

    static StartupPlan Plan()
    {
        PlanFiles files = UserFile.ReadTogether(Shipped("two-stage-natural-gas.yaml"), Shipped("demo-furnace.yaml"), Shipped("demo-site.yaml"));
        return StartupPlan.From(files.Checklist, files.Appliance, files.Site);
    }

    static FileCopy Shipped(string name) => UserFile.Copy(Path.Combine(AppContext.BaseDirectory, "checklists", name));
}
