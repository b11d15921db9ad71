using System.IO.Pipes;
using HandsFreeStartup.Sound;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Sound;

/// <summary>The recorder and the player that the program is on Windows, as far as they go elsewhere.</summary>
public sealed class DeviceCommandsTests
{
    static readonly TimeSpan Long = TimeSpan.FromSeconds(30);

    [Theory]
    [InlineData("sound", "record")]
    [InlineData("sound", "play", "--device=--help", "a.wav")]
    public async Task Elsewhere_they_are_refused_in_one_sentence(params string[] words)
    {
        ProgramResult result = await InProcess.Run(words);

        Assert.Equal("The program records and plays by itself on Windows only; sound checks microphone and speaker of this machine.\n", result.Error);
        Assert.Equal((2, ""), (result.ExitCode, result.Output));
    }

    [Fact]
    public async Task Nobody_is_told_of_them()
    {
        ProgramResult help = await InProcess.Run("sound", "--help"), words = await InProcess.Run("[suggest:6]", "sound ");

        Assert.DoesNotContain("as the program itself does", help.Output, StringComparison.Ordinal);
        Assert.DoesNotContain(words.Output.Split('\n'), word => word is "record" or "play");
        Assert.Contains("--microphone", help.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_recorder_whose_listener_is_gone_ends_itself()
    {
        using AnonymousPipeServerStream listener = new(PipeDirection.Out);
        using AnonymousPipeClientStream input = new(PipeDirection.In, listener.ClientSafePipeHandle);
        using CancellationTokenSource over = new();
        Task watched = DeviceCommands.AtEndOf(input, over);
        listener.Write("what is typed is ignored\n"u8);
        Assert.False(over.IsCancellationRequested);

        listener.Dispose();
        await watched.WaitAsync(Long);

        Assert.True(over.IsCancellationRequested);
    }
}
