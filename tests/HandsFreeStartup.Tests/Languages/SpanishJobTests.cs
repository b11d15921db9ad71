using System.Text.RegularExpressions;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Simulation;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Tests.Support;
using UglyToad.PdfPig;

namespace HandsFreeStartup.Tests.Languages;

/// <summary>The program as its user runs it, in Spanish: what is shown changes, what is recorded does not.</summary>
public sealed partial class SpanishJobTests
{
    static readonly string[] Danger = ["done", "no", "done", "room monoxide 500", "yes", "how long", "what is open", "finish", "confirm", "the alarm of the house went off", "not in order", "done", "yes"];

    [Fact]
    public async Task A_dangerous_room_is_told_in_Spanish_and_the_record_is_the_same()
    {
        (string english, string[] recorded) = await Typed("--language", "en");
        (string spanish, string[] same) = await Typed("--language", "es");

        Assert.Contains("  !! PELIGRO: 500 ppm de CO en el cuarto. Salgan todos, pidan ayuda desde afuera.", spanish, StringComparison.Ordinal);
        Assert.Contains("MONÓXIDO DE CARBONO. Salgan todos del edificio ahora", spanish, StringComparison.Ordinal);
        Assert.Contains("Responda en inglés", spanish, StringComparison.Ordinal);
        Assert.Contains("  say: yes | no", spanish, StringComparison.Ordinal);
        Assert.Contains("  !! DANGER: 500 ppm CO in the room. Everybody leaves, call for help from outside.", english, StringComparison.Ordinal);
        Assert.Equal(recorded, same);
    }

    [Fact]
    public async Task The_settings_choose_the_language_and_the_command_line_comes_first()
    {
        using TemporaryFolder folder = new();
        string settings = Path.Combine(folder.Path, "my-settings.yaml");
        await File.WriteAllTextAsync(settings, "language: es\n");

        (string chosen, _) = await Typed("--settings", settings);
        (string overruled, _) = await Typed("--settings", settings, "--language", "en");

        Assert.Contains("Antes de empezar: Lea la placa", chosen, StringComparison.Ordinal);
        Assert.DoesNotContain("Lea la placa", overruled, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--language", "xx")]
    [InlineData("--settings", "language: xx\n")]
    public async Task A_language_that_is_not_there_is_told_before_a_record_is_begun(string option, string value)
    {
        using TemporaryFolder data = new();
        string settings = Path.Combine(data.Path, "my-settings.yaml");
        await File.WriteAllTextAsync(settings, value);

        ProgramResult result = await InProcess.Run(
            "start", "--keys", "--plain", "--mute", "--data", data.Path, "--technician", "T", "--appliance", Sheet("demo-furnace"), "--site", Sheet("demo-site"), option, option == "--settings" ? settings : value);

        Assert.Equal(2, result.ExitCode);
        Assert.StartsWith("There is no language \"xx\". Choose one of: en, es.", Assert.Single(result.Error.Trim().Split('\n')), StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(data.Path, "jobs")));
    }

    [Fact]
    public async Task All_copies_are_Spanish_where_it_is_chosen_and_what_was_said_stays_as_it_was_recorded()
    {
        using TemporaryFolder data = new();
        await ProgramProcess.RunTyping(Danger, "start", "--keys", "--plain", "--quick", "--mute", "--data", data.Path, "--technician", "T", "--appliance", Sheet("demo-furnace"), "--site", Sheet("demo-site"));
        string job = Path.ChangeExtension(data.Job, null);

        ProgramResult result = await ProgramProcess.Run("copies", data.Job, "--data", data.Path, "--language", "es");

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        string customer = Printed($"{job}-customer.pdf");
        Assert.Contains("Huele a gas", customer, StringComparison.Ordinal);
        Assert.Contains("SIN FIRMA", customer, StringComparison.Ordinal);
        Assert.Contains("LA PUESTA EN MARCHA NO ESTÁ COMPLETA", customer, StringComparison.Ordinal);
        Assert.Contains("500 ppm", customer, StringComparison.Ordinal);
        foreach (string kind in (string[])["customer", "appliance", "office"])
        {
            string printed = Printed($"{job}-{kind}.pdf");
            Assert.Contains("SIN FIRMA", printed, StringComparison.Ordinal);
            Assert.DoesNotContain("NOT SIGNED", printed, StringComparison.Ordinal);
            Assert.Contains("queda como se registró, en inglés.", printed, StringComparison.Ordinal);
        }

        string office = Printed($"{job}-office.pdf");
        Assert.Contains("escrito \"room monoxide 500\"", office, StringComparison.Ordinal);
        Assert.Contains("PARADO: monóxido de carbono en un cuarto", office, StringComparison.Ordinal);
        string narrow = await File.ReadAllTextAsync($"{job}-narrow.txt");
        Assert.Contains("SIN FIRMA", narrow, StringComparison.Ordinal);
        Assert.DoesNotContain("NOT SIGNED", narrow, StringComparison.Ordinal);
    }

    /// <summary>A whole job that is signed, with how each result came about: what is English in it are the names of the sheets.</summary>
    [Fact]
    public async Task The_office_copy_of_a_whole_job_explains_its_results_in_Spanish()
    {
        using TemporaryFolder data = new();
        string script = Path.Combine(data.Path, "script.txt");
        await File.WriteAllLinesAsync(script, new IdealRun(Furnace.From(ShippedPlans.Plan("gas-furnace", "furnace-one-stage-propane", "site-farm", "new"), [], 3)).Run().Done.Select(done => done[(done.IndexOf(": ", StringComparison.Ordinal) + 2)..]));
        await InProcess.Run("rehearse", "--appliance", Sheet("furnace-one-stage-propane"), "--seed", "3", "--script", script, "--technician", "T", "--data", data.Path);
        string record = Assert.Single(Directory.GetFiles(Path.Combine(data.Path, "rehearsals"), "*.db"));

        ProgramResult result = await InProcess.Run("copies", record, "--data", data.Path, "--language", "es", "--derivations", "--chart");

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        string office = Printed($"{Path.ChangeExtension(record, null)}-office.pdf");
        string explained = office[office.IndexOf("Cómo se obtuvo cada resultado", StringComparison.Ordinal)..];
        Assert.Contains("pasa por más que la banda de guarda: se permite", explained, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\b(the|is|was|not|with|from|by)\b", explained);
    }

    /// <summary>Each reading of a whole job, and what is worked out of it, is explained in Spanish as soon as it is said.</summary>
    [Fact]
    public async Task What_is_explained_on_the_job_is_Spanish_but_for_what_was_said_and_the_names_of_the_sheets()
    {
        using TemporaryFolder data = new();
        string script = Path.Combine(data.Path, "script.txt");
        IEnumerable<string> done = new IdealRun(Furnace.From(ShippedPlans.Plan("gas-furnace", "furnace-one-stage-propane", "site-farm", "new"), [], 3)).Run().Done.Select(line => line[(line.IndexOf(": ", StringComparison.Ordinal) + 2)..]);
        await File.WriteAllLinesAsync(script, done.SelectMany(line => Reading().IsMatch(line) ? (string[])[line, "explain that"] : [line]));

        ProgramResult result = await InProcess.Run("rehearse", "--appliance", Sheet("furnace-one-stage-propane"), "--seed", "3", "--script", script, "--technician", "T", "--data", data.Path, "--language", "es");

        Assert.Equal("", result.Error);
        Assert.Contains("compuesta de", result.Output, StringComparison.Ordinal);
        string[] told = result.Output.Split('\n');
        string[] explained = [.. told.Index().Where(line => line.Item.Contains("explain that", StringComparison.Ordinal)).SelectMany(line => told.Skip(line.Index + 1).TakeWhile(next => next.StartsWith("  > ", StringComparison.Ordinal)))];
        Assert.True(explained.Length > 60, $"{explained.Length} lines");
        Assert.DoesNotContain(explained, line => English().IsMatch(Said().Replace(line, "")));
    }

    [Fact]
    public async Task The_summary_is_written_in_the_language_of_the_job()
    {
        using TemporaryFolder data = new();

        await ProgramProcess.RunTyping(Danger, "start", "--keys", "--plain", "--quick", "--mute", "--data", data.Path, "--technician", "T", "--appliance", Sheet("demo-furnace"), "--site", Sheet("demo-site"), "--language", "es");

        string summary = await File.ReadAllTextAsync(Path.ChangeExtension(data.Job, ".txt"));
        Assert.Contains("REGISTRO DE UNA PUESTA EN MARCHA", summary, StringComparison.Ordinal);
        Assert.Contains("LECTURAS Y RESULTADOS", summary, StringComparison.Ordinal);
        Assert.Contains("escrito \"room monoxide 500\"", summary, StringComparison.Ordinal);
        Assert.DoesNotContain("To be looked at", summary, StringComparison.OrdinalIgnoreCase);
    }

    static string Printed(string pdf)
    {
        using PdfDocument document = PdfDocument.Open(pdf);
        return string.Join('\n', document.GetPages().Select(page => string.Join(' ', page.GetWords().Select(word => word.Text))));
    }

    /// <summary>What was shown, and the events without times and the names of the job.</summary>
    static async Task<(string Shown, string[] Recorded)> Typed(params string[] more)
    {
        using TemporaryFolder data = new();
        ProgramResult result = await ProgramProcess.RunTyping(
            Danger, ["start", "--keys", "--plain", "--quick", "--mute", "--data", data.Path, "--technician", "T", "--appliance", Sheet("demo-furnace"), "--site", Sheet("demo-site"), .. more]);
        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        IEnumerable<StartupEvent> events = StoredJob.Read(data.Job).Events.Where(happened => happened is not (StartupBegan or RunBegan or TimerHalfway or TimerEnded));
        return (result.Output, [.. events.Select(happened => (happened with { At = default }) switch
        {
            TimerStarted started => $"{started with { Steady = null }}",
            var other => Left().Replace($"{other}", "0:00"),
        })]);
    }

    static string Sheet(string name) => Path.Combine(AppContext.BaseDirectory, "checklists", $"{name}.yaml");

    /// <summary>What is left of a wait is not the same in two runs.</summary>
    [GeneratedRegex(@"\b[0-9]+:[0-9]{2}\b", RegexOptions.CultureInvariant)]
    private static partial Regex Left();

    [GeneratedRegex("[0-9]$", RegexOptions.CultureInvariant)]
    private static partial Regex Reading();

    [GeneratedRegex("\"[^\"]*\"", RegexOptions.CultureInvariant)]
    private static partial Regex Said();

    [GeneratedRegex(@"\b(the|is|was|not|with|from|by|at|of|typed|said|source|limit|instrument)\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex English();
}
