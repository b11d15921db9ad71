using System.Diagnostics;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Storage.UserFiles;
using HandsFreeStartup.Tests.Rehearse;
using HandsFreeStartup.Tests.Start;
using HandsFreeStartup.Tests.Support;
using Xunit.Abstractions;

namespace HandsFreeStartup.Tests.NewJob;

/// <summary>The place of a new job, asked and answered through real sound devices: a number that was misheard is refused by whoever said it, and one answer is typed.</summary>
[Trait("Sound", "Live")]
public sealed class NewJobByVoiceTests(ITestOutputHelper output)
{
    const int MostUtterances = 40;

    /// <summary>Who is not heard by then says it again.</summary>
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(12), LongestTalk = TimeSpan.FromMinutes(20);

    /// <summary>What is asked, what is said to it, how it must be read back, and what is typed where that was heard otherwise.</summary>
    static readonly (string Question, string Answer, string ReadBack, string? Typed)[] Talk =
    [
        ("Who is the customer?", "John Miller", "John Miller", "John Miller"),
        ("What is the street address?", "", "", "14 Pond Lane"),
        ("What is the elevation", "six hundred fifty feet", "six five zero feet", null),
        ("Which rooms are walked", "basement and kitchen", "basement, kitchen?", "Basement, kitchen"),
        ("test dial?", "two cubic feet", "two cubic feet", null),
        ("heating value", "one thousand thirty two", "one zero three two B T U", null),
        ("How many hours", "twelve hundred hours", "one two zero zero hours", null),
        ("Photo of the rating plate", "skip step", "", null),
        ("Start now?", "no", "", null),
    ];

    [SoundRoomFact]
    public async Task A_place_is_answered_by_voice_and_no_number_is_kept_that_was_not_said()
    {
        using TemporaryFolder data = new();
        await File.WriteAllTextAsync(Path.Combine(data.Path, "instruments.yaml"), "");
        using SoundRoom room = new();
        await room.Open();
        room.Blow(ClosedLoopTests.BlowerBelowSpeech);
        using VoicedProgram program = new(room, new Speaker("en-us", 160));
        program.Start("new", "job", "--plain", "--hearing", "half-duplex", "--technician", "T", "--appliance", $"{StartTests.Folder("checklists")}/furnace-one-stage-propane.yaml", "--data", data.Path);
        int refused = await Answer(program);
        output.WriteLine(FormattableString.Invariant($"{program.Utterances} utterances, {refused} read back wrong and refused\n{string.Join('\n', program.Lines)}"));

        Assert.Equal(0, program.ExitCode);
        Site site = UserFile.ReadSite(UserFile.Copy(Assert.Single(Directory.GetFiles(Path.Combine(data.Path, "sites")))));
        Assert.Equal(("John Miller", 650m, 2m, 1032m, 1200m), (site.Customer, site.AltitudeFeet, site.MeterDialCubicFeet, site.HeatingValue, site.BurningHours));
        Assert.Equal("14 Pond Lane", site.Address);
        Assert.Equal("basement, kitchen", string.Join(", ", site.Rooms), ignoreCase: true);
    }

    [SoundRoomFact]
    public async Task A_call_for_help_is_heard_over_the_voice_that_asks_where_its_echo_is_canceled()
    {
        const int SlowEnough = 300;
        using TemporaryFolder data = new();
        await File.WriteAllTextAsync(Path.Combine(data.Path, "instruments.yaml"), "");
        using SoundRoom room = new(SlowEnough);
        await room.Open();
        room.Blow(ClosedLoopTests.BlowerBelowSpeech);
        using VoicedProgram program = new(room, new Speaker("en-us", 165));
        program.Start("new", "job", "--plain", "--hearing", "echo-cancelled", "--data", data.Path);
        await program.Told(lines => lines.Any(IsListening));
        bool isAnswered = false;
        for (int tries = 0; tries < 3 && !isAnswered; tries++)
        {
            await program.Type("why");
            Assert.True(await program.SayOverIt("emergency stop"));
            isAnswered = await program.Told(lines => lines.Any(line => line.Contains("!! Shut the burner and the gas off now, and step back.", StringComparison.Ordinal)), Patience);
        }

        output.WriteLine(string.Join('\n', program.Lines));
        Assert.True(isAnswered);
        Assert.False(program.HasEnded);
        Assert.Empty(Directory.GetDirectories(data.Path));
    }

    /// <summary>Answers as a person would who looks at the lines.</summary>
    static async Task<int> Answer(VoicedProgram program)
    {
        int refused = 0, seen = 0;
        Stopwatch talk = Stopwatch.StartNew();
        await program.Told(lines => lines.Any(IsListening));
        while (!program.HasEnded)
        {
            int from = seen;
            await program.Told(lines => lines.Skip(from).Any(IsListening), Patience);
            Assert.True(program.Utterances < MostUtterances && talk.Elapsed < LongestTalk, string.Join('\n', program.Lines));
            string[] lines = program.Lines;
            seen = lines.Length;
            (_, string answer, string readBack, string? typed) = Talk.Last(one => lines.Any(line => line.Contains(one.Question, StringComparison.Ordinal)));
            string last = lines.Last(line => line.EndsWith(':') || line.StartsWith("  > ", StringComparison.Ordinal));
            bool isReadBack = lines.Last(line => line.StartsWith("  say: ", StringComparison.Ordinal)).StartsWith("  say: confirm", StringComparison.Ordinal);
            bool isRight = last.Contains(readBack, StringComparison.OrdinalIgnoreCase);
            refused += isReadBack && !isRight ? 1 : 0;
            await (isReadBack && isRight ? program.Say("confirm")
                : typed is not null && (isReadBack || answer.Length == 0) ? program.Type(typed)
                : program.Say(isReadBack ? "no" : answer));
        }

        return refused;
    }

    static bool IsListening(string line) => line.StartsWith("  ear: listening", StringComparison.Ordinal);
}
