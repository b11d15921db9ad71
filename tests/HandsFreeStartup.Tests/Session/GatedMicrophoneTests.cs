using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Tests.Support;
using Microsoft.Extensions.Time.Testing;

namespace HandsFreeStartup.Tests.Session;

/// <summary>A microphone that gives nothing but the tool's own voice: what is said about its silence would go on for ever.</summary>
public sealed class GatedMicrophoneTests
{
    [Fact]
    public async Task News_of_the_sound_are_always_shown_and_not_said_again_and_again()
    {
        FakeTimeProvider clock = new();
        NotedDisplay display = new([]);
        StartupSession session = new(new StartupProcedure(Some.Plan()), new NotedLog([]), display, new SilentVoice(), null, clock);
        for (int i = 0; i < 10; i++)
        {
            session.Post(new Input.Sound(-20, SoundState.Dead, "The microphone gives dead silence: unmute it or plug it in."));
            session.Post(new Input.Sound(-20, SoundState.Good, ""));
        }

        session.Close();
        await session.Run(CancellationToken.None);

        Assert.Equal(20, display.Said.Count(said => said.Text.Length > 0));
        Assert.Equal(4, display.Said.Count(said => said.Aloud.Length > 0));
    }
}
