using System.Diagnostics;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;
using HandsFreeStartup.Tests.Rehearse;
using HandsFreeStartup.Tests.Support;
using Xunit.Abstractions;

namespace HandsFreeStartup.Tests.NewJob;

/// <summary>
/// From an empty data folder to the first own reading by voice alone, through real sound devices; what is misheard twice is typed. The tool speaks at its own
/// pace, and what is written out is what a person would need who never hesitates.
/// </summary>
[Trait("Sound", "Live")]
public sealed class FirstReadingByVoiceTests(ITestOutputHelper output)
{
    const int OwnPace = 165, MostUtterances = 65;

    /// <summary>In a start-up no line says that it listens: it is waited for its voice to begin, and then to end.</summary>
    static readonly TimeSpan UntilItSpeaks = TimeSpan.FromSeconds(1.5);

    /// <summary>A quiet room, dB below the speech: nothing burns yet.</summary>
    const double Quiet = 30;

    /// <summary>Who is not heard by then says it again.</summary>
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(15);

    static readonly Answered[] Talk =
    [
        new("CO meter for rooms: date", "March third twenty twenty six", "March 3, 2026") { Typed = "2026-03-03" },
        new("  CO in room, ppm", "three P P M", "three P P M"),
        new("Combustion analyzer: date", "March third twenty twenty six", "March 3, 2026") { Typed = "2026-03-03" },
        new("  CO in flue, ppm", "twenty P P M", "two zero P P M"),
        new("  Oxygen, %", "zero point three percent", "zero point three percent"),
        new("  Flue temperature, ", "skip the rest", "skip the rest"),
        new("Who is the customer?", "Mary Miller", "Mary Miller"),
        new("What is the street address?", "Fourteen Pond Lane", "Pond Lane"),
        new("What is the elevation", "six hundred fifty feet", "six five zero feet"),
        new("Which rooms are walked", "kitchen", "kitchen"),
        new("test dial?", "skip the rest", "skip the rest"),
        new("What shall the furnace be called?", "attic furnace", "attic furnace"),
        new("Which fuel", "propane", "propane"),
        new("How many firing stages", "one stage", "one stage"),
        new("Which venting category", "skip the rest", "skip the rest"),
        new("Which way does the regulator", "clockwise", "clockwise"),
        new("What does the maker want the test hole", "threaded cap", "threaded cap"),
        new("Photo of the rating plate", "skip step", ""),
        new("Who does the work and signs?", "yes", ""),
        new("Start now?", "yes", ""),
        new("Read the plate.", "done", ""),
        new("Smell for gas.", "no", ""),
        new("Unpack and zero.", "done", ""),
        new("CO in the room before the start.", "monoxide zero", ""),
    ];

    /// <summary>What is asked, what is said to it, and how it must be read back.</summary>
    sealed record Answered(string Question, string Answer, string ReadBack)
    {
        public string Typed { get; init; } = Answer;

        public int Said { get; set; }
    }

    [TimedFact]
    public async Task A_stranger_comes_from_nothing_to_the_first_own_reading_by_voice()
    {
        using TemporaryFolder data = new();
        using SoundRoom room = new(OwnPace);
        await room.Open();
        room.Blow(Quiet);
        using (VoicedProgram program = new(room, new Speaker("en-us", 160)))
        {
            await ComeToTheReading(program, data);
        }

        ReadingEntered entered = Assert.Single(StoredJob.Read(data.Job).Events.OfType<ReadingEntered>());
        Assert.Equal((0m, Channel.Voice), (entered.Reading.Value, HowHeard.Of(entered)!.Channel));
        Assert.Equal(650m, UserFile.ReadSite(UserFile.Copy(Assert.Single(Directory.GetFiles(Path.Combine(data.Path, "sites"))))).AltitudeFeet);
        Assert.Contains("field: flue_co, expanded: 20, ", await File.ReadAllTextAsync(Path.Combine(data.Path, "instruments.yaml")), StringComparison.Ordinal);
    }

    async Task ComeToTheReading(VoicedProgram program, TemporaryFolder data)
    {
        Stopwatch watch = Stopwatch.StartNew();
        program.Start("new", "job", "--plain", "--hearing", "half-duplex", "--data", data.Path);
        int typed = await Answer(program);
        output.WriteLine(FormattableString.Invariant($"{watch.Elapsed.TotalSeconds:0} s to the first own reading, {Talk.Length} questions and steps, {program.Utterances} utterances, {typed} typed\n{string.Join('\n', program.Lines)}"));
    }

    /// <summary>Answers as a person would who listens to the end and looks at the lines.</summary>
    static async Task<int> Answer(VoicedProgram program)
    {
        int typed = 0, seen = 0;
        while (await program.Told(lines => lines.Skip(seen).Any(IsSaid), Patience) is var _ && !program.Lines.Any(line => line.Contains("(before) 0 ppm", StringComparison.Ordinal)))
        {
            Assert.True(program.Utterances < MostUtterances && !program.HasEnded, string.Join('\n', program.Lines));
            if (!program.Lines.Any(line => line.StartsWith("[1/", StringComparison.Ordinal)))
            {
                await program.Told(lines => lines.Skip(seen).Any(IsListening), Patience);
            }
            else
            {
                await Task.Delay(UntilItSpeaks);
            }

            string[] lines = program.Lines;
            seen = lines.Length;
            Answered asked = Talk[Talk.Max(one => Array.FindLastIndex(lines, line => line.Contains(one.Question, StringComparison.Ordinal)) < 0 ? 0 : Array.IndexOf(Talk, one))];
            bool isReadBack = lines.Last(IsSaid).StartsWith("  say: confirm", StringComparison.Ordinal);
            bool isRight = lines.Last(line => line.StartsWith("  > ", StringComparison.Ordinal) || line.EndsWith(':')).Contains(asked.ReadBack, StringComparison.OrdinalIgnoreCase);
            if (!(isReadBack && isRight) && asked.Said > 1)
            {
                typed++;
                await program.Type(asked.Typed);
                continue;
            }

            asked.Said += isReadBack ? 0 : 1;
            await program.Say(!isReadBack ? asked.Answer : isRight ? "confirm" : "no");
        }

        return typed;
    }

    /// <summary>Five minutes in which others that listen would be disturbed.</summary>
    sealed class TimedFactAttribute : SoundRoomFactAttribute
    {
        public TimedFactAttribute() =>
            Skip ??= Environment.GetEnvironmentVariable("HANDSFREE_ANSWERS") == "all" ? null! : "takes five minutes: set HANDSFREE_ANSWERS=all";
    }

    static bool IsListening(string line) => line.StartsWith("  ear: listening", StringComparison.Ordinal);

    static bool IsSaid(string line) => line.StartsWith("  say: ", StringComparison.Ordinal);
}
