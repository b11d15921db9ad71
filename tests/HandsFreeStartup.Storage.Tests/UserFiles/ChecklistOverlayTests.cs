using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Storage.Tests.UserFiles;

/// <summary>A firm's small file over a shipped checklist.</summary>
public sealed class ChecklistOverlayTests : IDisposable
{
    static readonly string Shipped = Path.Combine(AppContext.BaseDirectory, "checklists");
    readonly string _folder = Directory.CreateTempSubdirectory("overlay").FullName;

    [Fact]
    public void A_step_is_changed_and_another_one_put_in_and_all_the_rest_stays()
    {
        Checklist below = UserFile.ReadChecklist(UserFile.Copy(Path.Combine(Shipped, "gas-furnace.yaml")));

        Checklist firm = Read("""
            extends: gas-furnace.yaml
            id: our-firm
            title: Gas furnace, our firm
            steps:
              - id: clean
                do: Clean the burners with the firm's brush.
              - id: photo-plate
                after_step: papers
                title: Photograph the plate
                now: PHOTOGRAPH THE PLATE
                kind: do
                do: Take a photo of the rating plate and attach it.
            """);

        Assert.Equal(("our-firm", "Gas furnace, our firm", below.Version), (firm.Id, firm.Title, firm.Version));
        Assert.Equal(below.Steps.Length + 1, firm.Steps.Length);
        Assert.Equal(["papers", "photo-plate"], firm.Steps.Take(2).Select(step => step.Id));
        Assert.Equal("Clean the burners with the firm's brush.", firm.Steps.Single(step => step.Id == "clean").Do);
        Assert.Equal(
            below.Steps.Where(step => step.Id != "clean").Select(step => (step.Id, step.Do, step.Prompt, step.Imperative, step.IsSafetyStop)),
            firm.Steps.Where(step => step.Id is not ("clean" or "photo-plate")).Select(step => (step.Id, step.Do, step.Prompt, step.Imperative, step.IsSafetyStop)));
        Assert.Equal(below.Limits.AsEnumerable(), firm.Limits);
    }

    [Theory]
    [InlineData("steps: [{ id: smell, safety_stop: false }]", "2:22: 'safety_stop' guards in the checklist below")]
    [InlineData("steps: [{ id: smel, do: Smell. }]", "2:9: The checklist below has no step 'smel'")]
    [InlineData("steps: [{ id: more, after_step: nowhere, title: More, kind: do, do: More. }]", "no step 'nowhere'")]
    [InlineData("limits: [{ name: room_co, upper: 90, unit: ppm, source: us }]", "The limit 'room_co' stands in the checklist below.")]
    [InlineData("sections: []", "2:1: Unknown key 'sections'")]
    [InlineData("steps: [{ id: more, after_step: papers, title: More, kind: do }]", "The key 'do' is missing in a step.")]
    [InlineData("steps: [{ id: papers, now: READ THE WHOLE RATING PLATE NOW }]", "the large letters hold 24")]
    public void What_would_take_a_guard_away_or_is_wrong_is_told_at_its_place(string line, string message)
    {
        ChecklistFileException mistakes = Assert.Throws<ChecklistFileException>(() => Read($"extends: gas-furnace.yaml\n{line}\n"));

        Assert.Contains(message, mistakes.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("extends: ../gas-furnace.yaml\n")]
    [InlineData("extends: firm.yaml\n")]
    [InlineData("extends: [a]\n")]
    public void What_it_extends_is_named_by_its_file(string text) =>
        Assert.Contains("'extends' names the checklist below", Assert.Throws<ChecklistFileException>(() => Read(text)).Message, StringComparison.Ordinal);

    Checklist Read(string text)
    {
        string path = Path.Combine(_folder, "firm.yaml");
        File.WriteAllText(path, text);
        return UserFile.ReadChecklist(UserFile.CopyChecklist(path, Shipped));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
