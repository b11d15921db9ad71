using System.Collections;
using System.Text.RegularExpressions;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Storage.UserFiles;
using HandsFreeStartup.Tests.Support;
using HandsFreeStartup.Tests.Surroundings;

namespace HandsFreeStartup.Tests.Fuzzing;

/// <summary>A YAML file of the user. Every number in a file that is taken stands in its text; every mistake has a place in the file.</summary>
public sealed partial class UserFileDoor(UserFileKind kind) : FuzzedDoor($"yaml-{kind.ToString().ToLowerInvariant()}")
{
    public override IReadOnlyList<string> Words { get; } =
    [
        .. KeyOrWord().Matches(string.Concat(Files().Select(file => file.Text))).Select(match => match.Value).Distinct(),
        "modulating", "low-first", "high-first", "rooms", "altitude_feet", "seal", "room_co", "safety: true",
    ];

    protected override IEnumerable<byte[]> Seeds() => Files().Where(file => UserFile.KindOf(file) == kind).Select(file => file.Text)
        .Append("stage_order: low-first\nemergency_number: 911\npressure: Pa\ntemperature: °C\n").Select(BytesOf);

    public override Outcome Try(byte[] input, Random random)
    {
        string path = In("file.yaml");
        File.WriteAllBytes(path, input);
        FileCopy? file = null;
        try
        {
            file = UserFile.Copy(path);
            CheckNumbers(file.Text, Read(file));
            return new Outcome(true, "taken");
        }
        catch (ChecklistFileException mistakes)
        {
            Assert.All(mistakes.Message.Split('\n'), SurroundingsTests.AssertSentence);
            int lines = file?.Text.Count(letter => letter is '\n' or '\r' or '\u0085' or '\u2028' or '\u2029') ?? 0;
            Assert.All(mistakes.Errors.Where(mistake => mistake.File == "file.yaml"), mistake => Assert.InRange(mistake.Line, 0, lines + 2));
            return new Outcome(false, mistakes.Errors[0].Message);
        }
        finally
        {
            if (random.Next(50) == 0)
            {
                AsCommand(path);
            }
        }
    }

    object Read(FileCopy file)
    {
        _ = UserFile.KindOf(file);
        FileCopy checklist = kind == UserFileKind.Checklist ? file : Fixture.Checklist, sheet = kind == UserFileKind.ApplianceSheet ? file : Fixture.Appliance, site = kind == UserFileKind.Site ? file : Fixture.Site;
        object alone = kind switch
        {
            UserFileKind.Checklist => UserFile.ReadChecklist(file),
            UserFileKind.ApplianceSheet => UserFile.ReadApplianceSheet(file),
            UserFileKind.Site => UserFile.ReadSite(file),
            _ => UserFile.ReadSettings(file),
        };
        JobDescription job = new("job", checklist, sheet, site)
        {
            Technician = "T",
            ProgramVersion = "0",
            Recogniser = "keys",
            IsDemonstration = false,
            TimerFactor = 1,
            Settings = kind == UserFileKind.Settings ? file : null,
        };
        StartupProcedure procedure = new(UserFile.PlanOf(job));
        Assert.NotEmpty(procedure.View(DateTimeOffset.UnixEpoch).ToString());
        return alone;
    }

    static void CheckNumbers(string text, object taken)
    {
        IReadOnlySet<decimal> standing = StrictNumber.AllIn(text);
        if (!text.Contains('\\', StringComparison.Ordinal) && taken is Site or ApplianceSheet)
        {
            Assert.All(NumbersOf(taken), number => Assert.True(number is 0 or 2 || standing.Contains(number), $"{number} does not stand in the file"));
        }
    }

    static IEnumerable<decimal> NumbersOf(object? value) => value switch
    {
        decimal number => [number],
        null or string or ValueType and not IEnumerable => [],
        IEnumerable items => items.Cast<object>().SelectMany(NumbersOf),
        _ => value.GetType().GetProperties().Where(property => property.GetIndexParameters().Length == 0 && property.Name != "EqualityContract").SelectMany(property => NumbersOf(property.GetValue(value))),
    };

    void AsCommand(string path)
    {
        foreach (string[] how in (string[][])[[], ["--mermaid"]])
        {
            ProgramResult result = InProcess.Run(["checklist", path, .. how, "--data", Folder]).GetAwaiter().GetResult();
            Assert.True(result.ExitCode is 0 or 2, $"{result.ExitCode} {result.Error}");
            if (result.ExitCode == 2)
            {
                SurroundingsTests.AssertSentence(result.Error);
            }
        }
    }

    static IEnumerable<FileCopy> Files() => Directory.GetFiles(ShippedFiles.Checklists, "*.yaml").Order(StringComparer.Ordinal).Select(UserFile.Copy).Concat([Fixture.Checklist, Fixture.Appliance, Fixture.Site]);

    [GeneratedRegex(@"[a-z_]+:|(?<=: )[a-z0-9/_-]+(?=\n)")]
    private static partial Regex KeyOrWord();
}
