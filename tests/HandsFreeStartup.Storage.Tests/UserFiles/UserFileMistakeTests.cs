using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Storage.Tests.UserFiles;

/// <summary>Each row makes one mistake in a sound file; the error must stand at the given words and say what to do.</summary>
public sealed class UserFileMistakeTests
{
    [Theory]
    [InlineData("why: Cold metal", "whi: Cold metal", "whi:", "Unknown key 'whi' in a step. Did you mean 'why'?")]
    [InlineData("kind: wait", "kind: waite", "waite", "'waite' is not known as kind. Did you mean 'wait'?")]
    [InlineData("kind: wait", "kind: [wait]", "[wait]", "Expected a plain text for 'kind'.")]
    [InlineData("id: drill", "id: open-port", "open-port\n        title: Drill", "The id 'open-port' is taken by the step in line 28.")]
    [InlineData("id: drill", "id: Drill hole", "Drill hole", "Expected lower-case letters, digits and hyphens")]
    [InlineData("title: Drill the test hole\n        kind: open", "kind: open", "id: drill", "The key 'title' is missing in a step.")]
    [InlineData("title: Warm up\n", "title: Warm up\n        title: Warm\n", "title: Warm\n", "The key 'title' stands twice in a step.")]
    [InlineData("title: Warm up\n", "title:\n", "\n        kind: wait", "'title' has no value.")]
    [InlineData("    source: \"common practice, no source\"\n", "", "name: room_co", "The key 'source' is missing in a limit. Name who sets the limit")]
    [InlineData("lower: 1.600, upper: 1.836", "lower: 1.836, upper: 1.600", "1.836, upper", "lower 1.836 is above upper 1.600.")]
    [InlineData("upper: 9\n", "upper: nine\n", "nine", "'nine' is not a number: type its digits, such as 3.5. Numbers stand here without a unit.")]
    [InlineData("upper: 9\n", "upper: 9 ppm\n", "9 ppm", "'9 ppm' is not a number")]
    [InlineData("upper: 9\n", "upper: 1e1\n", "1e1", "'1e1' has an exponent: type all its digits")]
    [InlineData("upper: 9\n", "upper: ９\n", "９", "has digits of another script")]
    [InlineData("upper: 9\n", "upper: 09\n", "09", "begins with zeros that mean nothing")]
    [InlineData("upper: 9\n", "upper: 9,5\n", "9,5", "'9,5' has a comma, which can mean two things")]
    [InlineData("upper: 9\n", "upper: 90000\n", "90000", "90000 ppm is no possible co in room. Expected 0 to 9999")]
    [InlineData("    upper: 9\n", "", "room_co\n    unit", "The limit bounds nothing.")]
    [InlineData("unit: ppm", "unit: \"%\"", "\"%\"\n", "The unit '%' does not fit room_co. Write upper: 90000, unit: ppm.")]
    [InlineData("name: fuel_factor", "name: fuel_facto", "fuel_facto,", "'fuel_facto' is neither a field nor a result that can be limited. Did you mean 'fuel_factor'?")]
    [InlineData("name: fuel_factor", "name: room_co", "room_co, lower", "The limit 'room_co' stands here a second time.")]
    [InlineData("field: manifold_pressure,", "field: manifold_presure,", "manifold_presure", "Did you mean 'manifold_pressure'?")]
    [InlineData("- { field: manifold_pressure, limit: manifold_pressure }", "- { field: manifold_pressure }", "{ field: manifold_pressure }", "Add 'limit' to the reading.")]
    [InlineData("limit: manifold_pressure }", "limit: manifold_pressure/high }", "{ field: manifold_pressure,", "Write the limit without its stage: manifold_pressure.")]
    [InlineData("- { field: flue_co }\n      - id: combustion-high", "- { field: oxygen }\n      - id: combustion-high", "{ field: oxygen }", "The field 'oxygen' is asked for twice in this step.")]
    [InlineData("closes: [flue test hole]", "closes: [flu test hole]", "flu test hole]", "'flu test hole' is closed here, but no earlier step opens it. Did you mean 'flue test hole'?")]
    [InlineData("closes: [flue test hole]", "closes: [flu test hole]", "{ name: flue test hole", "'flue test hole' is opened here and never closed.")]
    [InlineData("        proves: [manifold pressure port]\n", "", "manifold pressure port]", "'manifold pressure port' is on the gas side and closed here, but no later step checks it for leaks.")]
    [InlineData("gas_side: true", "gas_side: false", "manifold pressure port]\n        question", "needs no leak check here")]
    [InlineData("closes: [manifold pressure port]", "closes: [manifold pressure port, manifold pressure port]", "manifold pressure port]\n      - id: prove", "is closed already.")]
    [InlineData("name: flue test hole", "name: manifold pressure port", "{ name: manifold pressure port, gas_side: false", "is open already.")]
    [InlineData("{ name: flue test hole, gas_side: false }", "{ name: flue test hole }", "{ name: flue test hole }", "The key 'gas_side' is missing in an opened thing.")]
    [InlineData("voids: [combustion-high]", "voids: [combustion-hi]", "combustion-hi]", "There is no step 'combustion-hi'.")]
    [InlineData("voids: [combustion-high]", "voids: [drill]", "drill]", "The step 'drill' is not of kind read or walk")]
    [InlineData("voids: [combustion-high]", "voids: [combustion-low]", "[combustion-low]", "the only_for of 'combustion-low' can leave that out, and nothing would be measured again")]
    [InlineData("voids: [combustion-high]", "after: warm-up", "warm-up\n      - id: room-walk", "Only a step with readings is judged after a time.")]
    [InlineData("voids: [combustion-high]", "voids: [combustion-high]\n        starts: [warm-op]", "warm-op]", "'warm-op' is no step of kind wait. Did you mean 'warm-up'?")]
    [InlineData("only_for: { stages: 2 }", "only_for: { venting: [I, V] }", "V]", "'V' is not known as venting. Expected one of I, II, III, IV.")]
    [InlineData("minutes: 8", "minutes: 8, seconds: 30", "{ minutes", "Expected either 'minutes' or 'seconds' in a timer, and not both.")]
    [InlineData("minutes: 8", "minutes: 0", "0, source", "minutes 0 is out of range. Expected 0.1 to 240.")]
    [InlineData("timer: { minutes: 8, source: \"common practice, no source\" }", "timer: { minutes: 8 }", "{ minutes", "The key 'source' is missing in a timer.")]
    [InlineData("        timer: { minutes: 8, source: \"common practice, no source\" }\n", "", "wait\n", "A step of kind wait needs the key 'timer'.")]
    [InlineData("kind: sign\n", "kind: sign\n        timer: { minutes: 8, source: none }\n", "{ minutes: 8, source: none", "A step of kind sign cannot have 'timer'.")]
    [InlineData("proper: no", "proper: false", "false", "'false' is not known as proper.")]
    [InlineData("safety_stop: true", "safety_stop: yes", "yes\n        question", "'yes' is not known as safety_stop. Expected one of true, false.")]
    [InlineData("Walk to the {room}", "Walk to the kitchen", "Walk to the kitchen", "Write {room} where the room's name belongs")]
    [InlineData("Put the plug back.", "Put the plug of the {room} back.", "Put the plug of", "{room} stands for a room only in a step of kind walk.")]
    [InlineData("also: { room_co: [monoxide] }", "also: { flue_co: [monoxide] }", "{ flue_co: [", "'also' names the field 'flue_co', which this step does not ask for.")]
    [InlineData("only_for: { stages: 2 }", "only_for: { stages: 3 }", "3 }", "'3' is not known as stages.")]
    [InlineData("kind: sign", "kind: do", "sign\n        title", "The checklist does not end with a step of kind sign.")]
    [InlineData("kind: wait", "kind: sign", "sign\n        do: Let", "A step of kind sign must be the last one.")]
    [InlineData("closes: [flue test hole]", "closes: flue test hole", "flue test hole\n      - id: sign", "Expected a list for 'closes'")]
    [InlineData("voids: [combustion-high]", "voids: []", "[]", "The list 'voids' is empty.")]
    [InlineData("sections:\n", "sections: # none\nold:\n", "old:", "Unknown key 'old' in a checklist.")]
    [InlineData("do: Say finish.", "do: Say: finish.", ": finish", "Check the indentation, and put a text that holds ': '")]
    [InlineData("do: Say finish.", "do: &word Say finish.", "&word", "Anchors (&) and tags (!) are not used here.")]
    [InlineData("do: Say finish.", "do: *word", "*word", "References (*) are not used here.")]
    [InlineData("- id: sign\n", "- sign\n      - id: sign\n", "sign\n      - id", "Expected a step with keys among")]
    [InlineData("only_for: { stages: 2 }", "only_for: { venting: I, condensing: true }", "{ venting", "No furnace fits 'category I, condensing', so this step is never reached.")]
    [InlineData("voids: [combustion-high]", "voids: [adjust-high]", "adjust-high]", "The step 'adjust-high' stands in its own 'voids': what was just measured would be void at once. Remove it.")]
    [InlineData("why: Cold metal cools the flame.", "starts: [warm-up]", "warm-up]", "The step 'warm-up' stands in its own 'starts': its time would never be over.")]
    [InlineData("          - { field: flue_co }\n      - id: adjust-high", "          - { field: manifold_pressure }\n      - id: adjust-high", "combustion-high]",
        "The adjustment 'adjust-high' voids the reading that it has just brought into its range, and would begin again without end.")]
    [InlineData("only_for: { stages: 2 }", "only_for: { occasion: new }", "new }", "The checklist knows no service types.")]
    [InlineData("version: \"1.0\"", "version: \"1.0\"\noccasions:\n  - { id: new, title: New }\n  - { id: new, title: Again }", "new, title: Again", "The service type 'new' stands here a second time.")]
    public void A_mistake_in_a_checklist_is_found(string sound, string wrong, string at, string message) =>
        AssertFound(Fixture.Checklist, sound, wrong, at, message, file => UserFile.ReadChecklist(file));

    [Fact]
    public void Adjustments_that_lead_back_to_each_other_are_told()
    {
        FileCopy checklist = UserFile.Copy("loop.yaml", """
            id: loop
            version: "1"
            title: Loop
            limits:
              - { name: manifold_pressure, lower: 3.3, upper: 3.7, unit: in. w.c., source: invented }
            sections:
              - title: Both
                steps:
                  - { id: read-low, title: Low, kind: read, do: Say it., stage: low, readings: [{ field: manifold_pressure, limit: manifold_pressure }] }
                  - { id: read-high, title: High, kind: read, do: Say it., stage: high, readings: [{ field: manifold_pressure, limit: manifold_pressure }] }
                  - { id: turn-low, title: Low, kind: adjust, do: Turn., stage: low, readings: [{ field: manifold_pressure, limit: manifold_pressure }], voids: [read-high] }
                  - { id: turn-high, title: High, kind: adjust, do: Turn., stage: high, readings: [{ field: manifold_pressure, limit: manifold_pressure }], voids: [read-low] }
                  - { id: sign, title: Sign, kind: sign, do: Sign. }
            """);

        ChecklistFileException error = Assert.Throws<ChecklistFileException>(() => UserFile.ReadChecklist(checklist));

        Assert.Contains(error.Errors, one => one.Line == 11
            && one.Message.Contains("The adjustments 'turn-low', 'turn-high' void one another's readings, and would lead back to each other without end.", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("fuel: natural-gas", "fuel: wood", "wood", "'wood' is not known as fuel. Expected one of natural-gas, propane")]
    [InlineData("stages: 2", "stages: 4", "4", "'4' is not known as stages. Expected one of 1, 2, modulating.")]
    [InlineData("turn_to_raise: clockwise", "turn_to_raise: left", "left", "Expected one of clockwise, counter-clockwise.")]
    [InlineData("seal: high-temperature plug\n", "", "id:", "The key 'seal' is missing in an equipment data sheet.")]
    [InlineData("lower: 3.35, upper: 3.65", "lower: 3.35, upper: 36.5", "36.5", "36.5 in. w.c. is no possible manifold pressure. Expected 0 to 15; look at the decimal point.")]
    [InlineData("unit: in. w.c.", "unit: mbar", "mbar", "The unit 'mbar' does not fit manifold_pressure. Write lower: 1.345, upper: 1.465, unit: in. w.c.")]
    [InlineData("lower: 3.35, upper: 3.65, unit: in. w.c.", "lower: 834, upper: 909, unit: Pa", "Pa,", "Write lower: 3.348, upper: 3.649, unit: in. w.c.")]
    [InlineData("unit: in. w.c.", "unit: inWC", "inWC", "The unit 'inWC' does not fit manifold_pressure. Write in. w.c.")]
    [InlineData("lower: 40, upper: 70, unit: °F", "lower: 22, upper: 39, unit: °C", "°C", "Write lower: 39.6, upper: 70.2, unit: °F.")]
    [InlineData("upper: 170, unit: °F", "upper: 77, unit: °C", "°C", "Write upper: 170.6, unit: °F.")]
    [InlineData("lower: 40, upper: 70", "lower: 70, upper: 40", "70, upper", "lower 70 is above upper 40. Exchange them.")]
    [InlineData("lower: 1.50, upper: 1.90", "lower: 3.40, upper: 3.90", "3.90", "manifold_pressure at low fire reaches up to 3.90, above the 3.65 of high fire (line 8).")]
    [InlineData("lower: 1.50, upper: 1.90", "lower: 3.40, upper: 3.60", "3.40", "manifold_pressure at low fire begins at 3.40, above the 3.35 of high fire (line 8).")]
    [InlineData("lower: 4.5, upper: 10.5", "lower: 3.5, upper: 10.5", "3.65", "The manifold pressure reaches 3.65 in. w.c., but the inlet may be as low as 3.5 (line 12)")]
    [InlineData("upper: 170", "upper: 70", "70, unit: °F, source: \"rating plate (invented)\" }\n  - { name: supply", "A rise of 70 °F cannot stay below the highest outlet temperature, 70 °F (line 14).")]
    [InlineData("stages: 2", "stages: 1", "manifold_pressure/low", "A furnace with one stage has no low fire")]
    [InlineData(", source: \"rating plate (invented)\"", "", "{ name: manifold", "The key 'source' is missing in a limit.")]
    [InlineData("name: oxygen/low", "name: oxygen/low/high", "oxygen/low/high", "is no name of a limit")]
    [InlineData("stages: 2", "stages: 2\nventing: I\ncondensing: true", "true\nturn", "Category I is one without condensate in the vent (I and III without, II and IV with). Correct 'venting' or 'condensing'.")]
    [InlineData("lower: 40, upper: 70", "lower: 4.0, upper: 70", "4.0,", "4.0 °F is no possible temperature rise. Expected 5 to 150; look at the decimal point.")]
    [InlineData("name: manifold_pressure/low, lower: 1.50, upper: 1.90", "name: replace_valve, upper: 42.0", "42.0", "42.0 in. w.c. is no possible manifold pressure.")]
    public void A_mistake_in_an_appliance_sheet_is_found(string sound, string wrong, string at, string message) =>
        AssertFound(Fixture.Appliance, sound, wrong, at, message, file => UserFile.ReadApplianceSheet(file));

    [Theory]
    [InlineData("rooms: [basement, upper bedroom]\n", "", "id:", "The key 'rooms' is missing in a site.")]
    [InlineData("rooms: [basement, upper bedroom]", "rooms: []", "[]", "The list 'rooms' is empty. Write at least one item.")]
    [InlineData("rooms: [basement, upper bedroom]", "rooms: [upper-bedroom, upper bedroom]", "upper bedroom]", "The room 'upper bedroom' stands here a second time.")]
    [InlineData("rooms: [basement,", "rooms: [basement/cellar,", "basement/", "'basement/cellar' cannot be a room.")]
    [InlineData("altitude_feet: 650", "altitude_feet: 65000", "65000", "altitude_feet 65000 is out of range. Expected -1400 to 15000.")]
    [InlineData("altitude_feet: 650\n", "", "id:", "The key 'altitude_feet' is missing in a site.")]
    [InlineData("expanded: 0.3, ", "", "oxygen", "No uncertainty is given.")]
    [InlineData("expanded: 0.3", "expanded: 0", "0, source", "expanded 0 is not above zero.")]
    [InlineData("expanded: 0.3", "expanded: 100000000000000000000000000", "100000000000000000000000000", "is not possible: at most 20.9 are taken.")]
    [InlineData("expanded: 0.3", "expanded_percent: 101", "101, source", "is not possible: at most 100 are taken.")]
    [InlineData("expanded: 0.3", "expanded: -0.3", "-0.3, source", "is not above zero.")]
    [InlineData("expanded: 0.3", "expanded: 1e26", "1e26", "has an exponent")]
    [InlineData("field: flue_co", "field: oxygen", "oxygen, expanded: 20", "The field 'oxygen' has an instrument already.")]
    public void A_mistake_in_a_site_is_found(string sound, string wrong, string at, string message) =>
        AssertFound(Fixture.Site, sound, wrong, at, message, file => UserFile.ReadSite(file));

    [Theory]
    [InlineData("name: oxygen/low", "name: oxygen/lo", "oxygen/lo,", "No step has the stage 'lo', so this limit would never judge anything. Expected one of low, high, basement, upper bedroom.")]
    [InlineData("  - { name: manifold_pressure/low", "  - { name: room_co, upper: 30, unit: ppm, safety: true, source: invented }\n  - { name: manifold_pressure/low", "30, unit",
        "The checklist's safety limit is at most 9 ppm (common practice, no source); a sheet may only be stricter. Write 9 or less as 'upper'")]
    [InlineData("  - { name: manifold_pressure/low", "  - { name: room_co/basement, lower: 1, unit: ppm, safety: true, source: invented }\n  - { name: manifold_pressure/low", "room_co/basement",
        "Write 9 or less as 'upper', or remove this limit.")]
    public void Files_that_do_not_fit_together_are_refused(string sound, string wrong, string? at, string message) =>
        AssertFound(Fixture.Appliance, sound, wrong, at, message, file => UserFile.ReadTogether(Fixture.Checklist, file, Fixture.Site));

    [Theory]
    [InlineData("{ field: room_co, limit: room_co }", "{ field: room_co }", "{ field: room_co }", "No limit judges the CO in room that is read here: any value would pass. Name 'room_co' as its limit")]
    [InlineData("upper: 9\n", "lower: 0\n", "{ field: room_co,", "No limit judges the CO in room")]
    [InlineData("- { field: oxygen, limit: oxygen }\n          - { field: flue_co }\n      - id: combustion-high", "- { field: flue_co }\n      - id: combustion-high", "{ field: flue_co }",
        "No limit judges the CO in flue that is read here: any value would pass. State an upper 'co_air_free'")]
    public void Carbon_monoxide_that_is_read_is_judged_by_a_limit_of_the_files(string sound, string wrong, string at, string message) =>
        AssertFound(Fixture.Checklist, sound, wrong, at, message, file => UserFile.ReadTogether(file, Fixture.Appliance, Fixture.Site));

    [Fact]
    public void Flue_gas_is_not_read_without_a_limit_of_its_carbon_monoxide() =>
        AssertFound(Fixture.Appliance, "name: co_air_free, upper", "name: co_air_free, lower", null, "No limit judges the CO in flue", file => UserFile.ReadTogether(Fixture.Checklist, file, Fixture.Site));

    [Fact]
    public void What_is_a_safety_limit_in_the_checklist_stays_one_in_the_sheet()
    {
        FileCopy checklist = Changed(Fixture.Checklist, "unit: \"\", source", "unit: \"\", safety: true, source");

        AssertFound(Fixture.Appliance, "  - { name: manifold_pressure/low", "  - { name: fuel_factor, lower: 1.7, upper: 1.8, unit: \"\", source: invented }\n  - { name: manifold_pressure/low", "fuel_factor, lower",
            "'fuel_factor' is a safety limit in the checklist and stays one. Add 'safety: true'.", file => UserFile.ReadTogether(checklist, file, Fixture.Site));
    }

    [Fact]
    public void Every_mistake_of_every_file_is_told_at_once()
    {
        FileCopy checklist = Changed(Changed(Fixture.Checklist, "kind: wait", "kind: weight"), "proper: no", "proper: never");
        FileCopy appliance = Changed(Fixture.Appliance, "fuel: natural-gas", "fuel: wood");
        FileCopy site = Changed(Fixture.Site, "altitude_feet: 650", "altitude_feet: high");

        ChecklistFileException error = Assert.Throws<ChecklistFileException>(() => UserFile.ReadTogether(checklist, appliance, site));

        Assert.Equal(
            ["checklist.yaml:25", "checklist.yaml:42", "appliance.yaml:3", "site.yaml:5"],
            error.Errors.Select(one => FormattableString.Invariant($"{one.File}:{one.Line}")));
    }

    [Theory]
    [InlineData("", "f:1:1: The file is empty.")]
    [InlineData("just words", "f:1:1: Expected keys with their values")]
    [InlineData("id: a\n---\nid: b", "f:2:1: A second document begins here.")]
    [InlineData("id: a\n\tb: c", "f:1:5: This is no readable YAML")]
    [InlineData("id: \"open", "f:1:5: This is no readable YAML")]
    public void A_text_that_is_no_checklist_is_refused_at_its_place(string text, string message)
    {
        ChecklistFileException error = Assert.Throws<ChecklistFileException>(() => UserFile.ReadChecklist(UserFile.Copy("f", text)));

        Assert.Contains(message, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Endless_nesting_is_refused_and_does_not_exhaust_the_stack()
    {
        ChecklistFileException error = Assert.Throws<ChecklistFileException>(() =>
            UserFile.ReadChecklist(UserFile.Copy("f", "id: " + new string('[', 100_000))));

        Assert.Contains("nested too deeply", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{ name: flue test hole, gas_side: false }", "{ name: flue test hole, gas_side: false")]
    [InlineData("{ minutes: 8, source: \"common practice, no source\" }", "{ minutes: 8, source: \"common practice, no source\"")]
    [InlineData("closes: [flue test hole]", "closes: [flue test hole")]
    [InlineData("voids: [combustion-high]", "voids: [combustion-high, ")]
    [InlineData("only_for: { stages: 2 }", "only_for: { stages: 2, ")]
    [InlineData("only_for: { stages: 2 }", "only_for: { stages: [2 }")]
    public void A_bracket_that_is_not_closed_is_told_with_its_line_and_column_and_nothing_of_the_library(string sound, string wrong)
    {
        FileCopy changed = Changed(Fixture.Checklist, sound, wrong);
        (int line, int column) = PlaceOf(wrong, changed.Text);

        ChecklistFileError error = Assert.Single(Assert.Throws<ChecklistFileException>(() => UserFile.ReadChecklist(changed)).Errors);

        Assert.True(error.Line >= line && error.Line <= line + 3 && error.Column > 0, error.ToString());
        Assert.Contains("closed", error.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("current state of the object", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Sixty_thousand_rooms_are_refused_as_quickly_as_six()
    {
        string rooms = string.Join(", ", Enumerable.Range(0, 60_000).Select(room => FormattableString.Invariant($"room {room}")));

        AssertFound(Fixture.Site, "rooms: [basement, upper bedroom]", $"rooms: [{rooms}]", null, "The list 'rooms' has 60000 items; 200 are taken.", file => UserFile.ReadSite(file));
    }

    [Fact]
    public void A_checklist_with_more_steps_than_a_start_up_can_have_is_refused_before_its_ways_are_walked()
    {
        string[] sections = [.. Enumerable.Range(0, 5).Select(section =>
            $"  - title: S\n    steps:\n{string.Concat(Enumerable.Range(0, 150).Select(step => $"      - {{ id: s{section}-{step}, title: T, kind: do, do: D }}\n"))}")];

        ChecklistFileException error = Assert.Throws<ChecklistFileException>(() => UserFile.ReadChecklist(UserFile.Copy("f", $"id: a\nversion: 1\ntitle: T\nsections:\n{string.Concat(sections)}")));

        Assert.Contains("750 steps", Assert.Single(error.Errors).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Many_adjustments_that_void_one_another_are_looked_through_once()
    {
        const int count = 24;
        string all = string.Join(", ", Enumerable.Range(1, count - 1).Select(read => FormattableString.Invariant($"read-{read}")));
        string steps = string.Concat(Enumerable.Range(0, count).Select(i => FormattableString.Invariant(
            $"      - {{ id: adjust-{i}, title: T, kind: adjust, stage: s{i}, do: D, readings: [{{ field: draft, limit: draft }}], voids: [{all}] }}\n      - {{ id: read-{i}, title: T, kind: read, stage: s{i}, do: D, readings: [{{ field: draft }}] }}\n")));

        ChecklistFileException error = Assert.Throws<ChecklistFileException>(() => UserFile.ReadChecklist(UserFile.Copy("f", $"id: a\nversion: 1\ntitle: T\nsections:\n  - title: S\n    steps:\n{steps}")));

        Assert.Contains(error.Errors, one => one.Message.Contains("without end", StringComparison.Ordinal));
    }

    [Fact]
    public void A_text_longer_than_a_screen_can_show_is_refused_at_its_place() =>
        AssertFound(Fixture.Checklist, "why: Cold metal", $"why: {new string('x', 300_000)} Cold metal", null, "The text of 'why' is longer than 4000 letters", file => UserFile.ReadChecklist(file));

    [Fact]
    public void What_a_file_holds_reaches_the_screen_without_orders_for_the_terminal()
    {
        FileCopy changed = Changed(Fixture.Checklist, "why: Cold metal", "\"w\\e[2Jhi\\n\": Cold metal");

        string message = Assert.Throws<ChecklistFileException>(() => UserFile.ReadChecklist(changed)).Message;

        Assert.Contains("w␛[2Jhi␊", message, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', message);
    }

    static void AssertFound(FileCopy file, string sound, string wrong, string? at, string message, Action<FileCopy> read)
    {
        FileCopy changed = Changed(file, sound, wrong);

        ChecklistFileException error = Assert.Throws<ChecklistFileException>(() => read(changed));

        Assert.Contains(error.Errors, one => one.ToString().Contains(message, StringComparison.Ordinal)
            && (at is null || (one.Line, one.Column) == PlaceOf(at, changed.Text)));
    }

    static FileCopy Changed(FileCopy file, string sound, string wrong)
    {
        int at = file.Text.IndexOf(sound, StringComparison.Ordinal);
        Assert.True(at >= 0, $"'{sound}' is not in {file.Name}");
        return UserFile.Copy(file.Name, file.Text[..at] + wrong + file.Text[(at + sound.Length)..]);
    }

    static (int Line, int Column) PlaceOf(string words, string text)
    {
        int at = text.IndexOf(words, StringComparison.Ordinal);
        Assert.True(at >= 0, $"'{words}' is not in the changed text");
        string before = text[..at];
        return (before.Count(letter => letter == '\n') + 1, at - before.LastIndexOf('\n'));
    }
}
