using HandsFreeStartup.Tests.Rehearse;
using HandsFreeStartup.Tests.Support;
using Xunit.Abstractions;

namespace HandsFreeStartup.Tests.Tour;

/// <summary>The tour by voice alone, to its end, through real sound devices.</summary>
[Trait("Sound", "Live")]
public sealed class TourByVoiceTests(ITestOutputHelper output)
{
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(8);

    [SoundRoomFact]
    public async Task Everything_is_tried_by_voice_and_the_stop_ends_it()
    {
        (string Says, string Comes)[] talk =
        [
            ("say again", "Heard \"say again\""), ("done", "[2/6]"), ("done", "[3/6]"), ("oxygen seven point six", "7.6"), ("next", "[4/6]"),
            ("flue temperature three hundred", "300"), ("disregard", "isregarded"), ("flue temperature three ten", "310"), ("next", "[5/6]"), ("emergency stop", "The tour is over"),
        ];
        using TemporaryFolder data = new();
        using SoundRoom room = new();
        await room.Open();
        room.Blow(ClosedLoopTests.BlowerBelowSpeech);
        using VoicedProgram program = new(room, new Speaker("en-us", 160));
        program.Start("tour", "--plain", "--hearing", "half-duplex", "--data", data.Path);
        await program.Told(lines => lines.Any(line => line.StartsWith("  say: ", StringComparison.Ordinal)));
        foreach ((string says, string comes) in talk)
        {
            int before = program.Lines.Length;
            bool hasCome = false;
            for (int tries = 0; tries < 3 && !hasCome; tries++)
            {
                await program.Say(says);
                hasCome = await program.Told(lines => lines.Skip(before).Any(line => line.Contains(comes, StringComparison.Ordinal)), says == "emergency stop" ? null : Patience);
            }

            Assert.True(hasCome, $"'{comes}' did not come of '{says}': {string.Join('\n', program.Lines)}");
        }

        await program.Told(_ => false);
        string told = string.Join('\n', program.Lines);
        output.WriteLine(FormattableString.Invariant($"{program.Utterances} utterances for {talk.Length}\n{told}"));
        Assert.Equal(0, program.ExitCode);
        Assert.Contains("All of it was tried. Next: new job.", told, StringComparison.Ordinal);
        Assert.Contains("heard \"oxygen seven point six\": clear", told, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("typed \"", told, StringComparison.Ordinal);
    }
}
