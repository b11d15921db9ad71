using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using HandsFreeStartup.Languages;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Storage.UserFiles;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Start;

/// <summary>The full procedure as a process, typed step by step as the program asks, for each shipped sheet.</summary>
public sealed partial class WholeStartupTests
{
    /// <summary>A program and a test that wait for each other would wait for ever.</summary>
    static readonly TimeSpan Patience = TimeSpan.FromMinutes(20);

    [Theory]
    [InlineData("furnace-two-stage-altitude", "site-mountain", "new", "en")]
    [InlineData("furnace-one-stage-propane", "site-farm", "repair", "es")]
    [InlineData("furnace-modulating", "site-row-house", "seasonal", "en")]
    public async Task Typed_from_the_plate_to_the_signature(string appliance, string site, string occasion, string language)
    {
        using TemporaryFolder data = new();
        string[] files = [Shipped("gas-furnace"), Shipped(appliance), Shipped(site)];
        PlanFiles read = UserFile.ReadTogether(UserFile.Copy(files[0]), UserFile.Copy(files[1]), UserFile.Copy(files[2]));
        StartupPlan plan = StartupPlan.From(read.Checklist, read.Appliance, read.Site, occasion: occasion);
        using Process process = ProgramProcess.Start(
            "start", "--keys", "--plain", "--quick", "--mute", "--data", data.Path, "--technician", "T. Echnician",
            "--checklist", files[0], "--appliance", files[1], "--site", files[2], "--service-type", occasion, "--language", language);
        Task<string> error = process.StandardError.ReadToEndAsync();

        List<string> shown = await Answer(process, plan, LanguageFiles.Find(language));

        ProgramResult result = await ProgramProcess.Ended(process, Task.FromResult(string.Join('\n', shown)), error);
        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        StoredJob stored = StoredJob.Read(data.Job);
        Assert.Equal(occasion, Assert.IsType<StartupBegan>(stored.Events[0]).Job.Occasion);
        Assert.Contains(stored.Events, happened => happened is StartupSigned);
        Assert.Equal(plan.Steps.Select(step => step.Id).Order(), stored.Events.OfType<StepDone>().Select(done => done.StepId).Distinct().Order());
        Assert.DoesNotContain(stored.Events, happened => SpanishLetter().IsMatch(System.Text.Json.JsonSerializer.Serialize(happened)));
        Assert.Contains(plan.Title, await File.ReadAllTextAsync(Path.ChangeExtension(data.Job, ".txt")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("gas-furnace", "summer", "does not know the service type 'summer'. Give --service-type with one of new, repair, seasonal.")]
    [InlineData("two-stage-natural-gas", "new", "knows no service types: leave out --service-type.")]
    public async Task An_occasion_that_is_not_known_is_one_sentence(string checklist, string occasion, string message)
    {
        using TemporaryFolder data = new();

        ProgramResult result = await ProgramProcess.Run(
            "start", "--keys", "--plain", "--data", data.Path, "--checklist", Shipped(checklist),
            "--appliance", Shipped("demo-furnace"), "--site", Shipped("demo-site"), "--occasion", occasion);

        Assert.Equal(2, result.ExitCode);
        Assert.Contains(message, Assert.Single(result.Error.Trim().Split('\n')), StringComparison.Ordinal);
    }

    /// <summary>Types what each step asks for as soon as the program shows the step; a wait ends when the program says so.</summary>
    static async Task<List<string>> Answer(Process process, StartupPlan plan, Language language)
    {
        List<string> shown = [];
        Step? waiting = null;
        using CancellationTokenSource late = new(Patience);
        await using CancellationTokenRegistration end = late.Token.Register(process.Kill);
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            shown.Add(line);
            if (StepLine().Match(line) is { Success: true } match)
            {
                Step step = plan.Steps[int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture) - 1];
                waiting = step.Kind == StepKind.Wait || step.Readings.Any(IsSaidTwice) ? step : null;
                foreach (string answer in Answers(step, plan))
                {
                    await process.StandardInput.WriteLineAsync(answer);
                }
            }
            else if (waiting is not null && line.Contains(language.Shown($"{new MessagePart.Name(waiting.Title)}: the time is over.{""}"), StringComparison.Ordinal))
            {
                foreach (string answer in (string[])[.. waiting.Readings.Where(IsSaidTwice).Select(demand => Said(demand, waiting, plan)), "next"])
                {
                    await process.StandardInput.WriteLineAsync(answer);
                }
            }
        }

        return shown;
    }

    static IEnumerable<string> Answers(Step step, StartupPlan plan) => step.Kind switch
    {
        StepKind.Ask => [step.Question!.Proper ? "yes" : "no"],
        StepKind.Wait => [],
        StepKind.Sign => ["finish", "confirm"],
        StepKind.Read or StepKind.Adjust =>
        [
            .. step.Readings.Select(demand => Said(demand, step, plan)),
            "next",
        ],
        _ => ["done"],
    };

    static bool IsSaidTwice(ReadingDemand demand) => demand.Settles is { Twice: true };

    static string Said(ReadingDemand demand, Step step, StartupPlan plan) => string.Create(
        CultureInfo.InvariantCulture, $"{Fields.Find(demand.FieldId)!.SpokenNames[0]} {GoodValues.Of(plan, demand, step.Scope)}");

    /// <summary>Of the record nothing is in another language than English.</summary>
    [GeneratedRegex("[áéíóúñ¿¡]|\\\\u00(E1|E9|ED|F3|FA|F1|BF|A1)", RegexOptions.IgnoreCase)]
    private static partial Regex SpanishLetter();

    [GeneratedRegex(@"^\[(\d+)/\d+\] ")]
    private static partial Regex StepLine();

    static string Shipped(string name)
    {
        DirectoryInfo? above = new(AppContext.BaseDirectory);
        while (above is not null && !File.Exists(Path.Combine(above.FullName, "HandsFreeStartup.sln")))
        {
            above = above.Parent;
        }

        return Path.Combine(above!.FullName, "checklists", $"{name}.yaml");
    }
}
