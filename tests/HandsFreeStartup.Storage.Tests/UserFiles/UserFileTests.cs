using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Storage.Tests.UserFiles;

public sealed class UserFileTests
{
    [Fact]
    public void A_checklist_is_read_with_all_its_keys()
    {
        Checklist checklist = UserFile.ReadChecklist(Fixture.Checklist);

        Assert.Equal(("short-two-stage", "1.0", "Short start-up, two stages"), (checklist.Id, checklist.Version, checklist.Title));
        Assert.Equal(
            ["smell", "open-port", "drill", "warm-up", "combustion-low", "combustion-high", "adjust-high", "room-walk", "close-port", "prove-port", "seal-hole", "sign"],
            checklist.Steps.Select(step => step.Id));
        Step smell = checklist.Steps[0];
        Assert.Equal(("Before you start", StepKind.Ask, true), (smell.Section, smell.Kind, smell.IsSafetyStop));
        Assert.Equal(new Question("Do you smell gas?", false, "Leave the building and call from outside.", true), smell.Question);
        Assert.Equal("If you smell gas, touch nothing and leave.", smell.Caution);
        Assert.Equal(new Thing("manifold pressure port", true), Assert.Single(checklist.Steps[1].Opens));
        Assert.Equal(TimeSpan.FromMinutes(8), checklist.Steps[3].Timer!.Duration);
        Assert.Equal("common practice, no source", checklist.Steps[3].Timer!.Source);
        Assert.Equal("Cold metal cools the flame.", checklist.Steps[3].Why);
        Assert.Equal("stages 2", checklist.Steps[4].OnlyFor.Text);
        Assert.Equal("low", checklist.Steps[4].Scope);
        Assert.Equal<ReadingDemand>([new ReadingDemand("oxygen", "oxygen"), new ReadingDemand("flue_co", null)], checklist.Steps[4].Readings);
        Assert.Equal<string>(["combustion-high"], checklist.Steps[6].Voids);
        Assert.Equal<string>(["monoxide"], checklist.Steps[7].Also["room_co"]);
        Assert.Equal<string>(["manifold pressure port"], checklist.Steps[8].Closes);
        Assert.Equal<string>(["manifold pressure port"], checklist.Steps[9].Proves);
        Assert.Equal(new DeclaredLimit("room_co", null, 9m, "ppm", "common practice, no source", true), checklist.Limits[0]);
    }

    [Fact]
    public void An_appliance_sheet_is_read_with_the_decimals_as_written()
    {
        ApplianceSheet sheet = UserFile.ReadApplianceSheet(Fixture.Appliance);

        Assert.Equal(("natural-gas", 2, "clockwise", "high-temperature plug"), (sheet.FuelId, sheet.Stages, sheet.TurnToRaise, sheet.SealFor));
        Assert.Equal("5.0 to 9.5 %", sheet.Limits[2].Text);
    }

    [Fact]
    public void A_site_is_read_with_rooms_and_instruments()
    {
        Site site = UserFile.ReadSite(Fixture.Site);

        Assert.Equal(650m, site.AltitudeFeet);
        Assert.Equal<string>(["basement", "upper bedroom"], site.Rooms);
        Assert.Equal(new InstrumentUncertainty("flue_co", 20m, 5m, "invented"), site.Instruments[1]);
    }

    [Fact]
    public void The_three_files_of_a_job_make_a_plan()
    {
        PlanFiles files = UserFile.ReadTogether(Fixture.Checklist, Fixture.Appliance, Fixture.Site);

        StartupPlan plan = StartupPlan.From(files.Checklist, files.Appliance, files.Site);

        Assert.Contains(plan.Steps, step => step.Id == "room-walk/upper-bedroom");
        Assert.Equal(6.0m, plan.Limit("oxygen", "low")!.Lower);
    }

    [Fact]
    public void A_copy_has_the_hash_of_its_text()
    {
        FileCopy copy = UserFile.Copy("a.yaml", "abc");

        // FIPS 180-4 example: SHA-256 of "abc".
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", copy.Sha256);
    }

    [Fact]
    public void A_byte_order_mark_is_no_part_of_the_text()
    {
        using TemporaryFolder folder = new();
        File.WriteAllBytes(folder.File("bom.yaml"), [0xEF, 0xBB, 0xBF, .. "abc"u8]);

        Assert.Equal(UserFile.Copy("bom.yaml", "abc"), UserFile.Copy(folder.File("bom.yaml")));
    }

    [Fact]
    public void A_missing_file_is_told_in_one_sentence()
    {
        ChecklistFileException error = Assert.Throws<ChecklistFileException>(() => UserFile.Copy("no/such.yaml"));

        Assert.Equal("no/such.yaml: There is no such file. Look at the name and the folder.", error.Message);
    }

    [Fact]
    public void A_file_that_is_no_text_is_refused()
    {
        using TemporaryFolder folder = new();
        File.WriteAllBytes(folder.File("picture.yaml"), [0xFF, 0xD8, 0xFF, 0xE0]);

        ChecklistFileException error = Assert.Throws<ChecklistFileException>(() => UserFile.Copy(folder.File("picture.yaml")));

        Assert.EndsWith("The file is no UTF-8 text. Save it as UTF-8 and try again.", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_text_is_read_the_same_from_a_stored_copy()
    {
        FileCopy stored = new("renamed", "", Fixture.Checklist.Text);

        Assert.Equal(
            UserFile.ReadChecklist(Fixture.Checklist).Steps.Select(step => (step.Id, step.Do)),
            UserFile.ReadChecklist(stored).Steps.Select(step => (step.Id, step.Do)));
    }

    [Fact]
    public void Settings_are_read_and_may_be_left_out()
    {
        Settings settings = UserFile.ReadSettings(UserFile.Copy("settings.yaml", "stage_order: high-first\nemergency_number: \"911\"\n"));

        Assert.Equal(new Settings(StageOrder.HighFirst, "911", null), settings);
        Assert.Equal(UserFileKind.Settings, UserFile.KindOf(UserFile.Copy("settings.yaml", "gas_supplier: \"555-0100\"\n")));
    }

    [Fact]
    public void Branches_timers_and_settling_are_read_from_their_keys()
    {
        FileCopy file = UserFile.Copy("checklist.yaml", Fixture.Checklist.Text
            .Replace("only_for: { stages: 2 }", "only_for: { stages: [2, modulating], venting: I, condensing: false }\n        after: warm-up", StringComparison.Ordinal)
            .Replace("- { field: flue_co }", "- { field: flue_co, settles: { seconds: 30, drift: 5, scatter: 4, source: \"common practice, no source\" } }", StringComparison.Ordinal));

        Step step = UserFile.ReadChecklist(file).Steps[4];

        Assert.Equal("stages 2 or modulating, category I, not condensing", step.OnlyFor.Text);
        Assert.Equal("warm-up", step.After);
        Assert.Equal(new Settles(TimeSpan.FromSeconds(30), 5m, 4m, "common practice, no source"), step.Readings[1].Settles);
    }

    [Fact]
    public void A_limit_that_no_file_states_is_no_mistake_because_it_is_asked_for_at_its_step()
    {
        FileCopy sheet = UserFile.Copy("appliance.yaml", string.Join('\n', Fixture.Appliance.Text.Split('\n').Where(line => !line.Contains("manifold_pressure/high", StringComparison.Ordinal))));

        Assert.DoesNotContain(UserFile.ReadTogether(Fixture.Checklist, sheet, Fixture.Site).Appliance.Limits, limit => limit.Name == "manifold_pressure/high");
    }
}
