using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Sound;

/// <summary>The command as a process; a file that is copied to standard output stands in for the recording program.</summary>
public sealed class SoundCommandTests : IDisposable
{
    const int Rate = 16_000;

    readonly string _folder = Directory.CreateTempSubdirectory("handsfree-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>Noise throughout; from 4.5 s on, for two seconds, a voice: a buzz of 150 Hz.</summary>
    Task<ProgramResult> Check(double noise, double voice)
    {
        Random random = new(5);
        string file = Path.Combine(_folder, "room.raw");
        File.WriteAllBytes(file, [.. Enumerable.Range(0, 9 * Rate).SelectMany(i =>
        {
            double buzz = i is >= 9 * Rate / 2 and < 13 * Rate / 2 && i / (Rate / 4) % 2 == 0 ? voice * Math.Sign(Math.Sin(2 * Math.PI * 150 * i / Rate)) : 0;
            double hiss = noise * Math.Sqrt(3) * (2 * random.NextDouble() - 1);
            return BitConverter.GetBytes((short)Math.Clamp(Math.Round((hiss + buzz) * 32767), short.MinValue, short.MaxValue));
        })]);
        return ProgramProcess.Run("sound", "--mute", "--microphone", $"cat '{file}'");
    }

    [Fact]
    public async Task A_quiet_room_and_a_clear_voice_are_ready()
    {
        ProgramResult result = await Check(noise: 0.001, voice: 0.1);

        Assert.Equal(
            $"""
            Microphone: cat, cat '{Path.Combine(_folder, "room.raw")}'
            Keep quiet for 3 seconds ...
            Noise: -60 dBFS.
            Now say, as you will at work: oxygen seven point six
            Speech: -20 dBFS, 40 dB above the noise: good.
            Speaker: no voice is installed (espeak-ng) or it was switched off; messages are only shown.
            The sound is ready.

            """,
            result.Output);
        Assert.Empty(result.Error);
        Assert.Equal(0, result.ExitCode);
    }

    [Theory]
    [InlineData(0.03, 0.0, "! Speech: nothing stood out of the noise")]
    [InlineData(0.03, 0.07, "! Speech: -22 dBFS, 8 dB above the noise: too little")]
    [InlineData(0.0001, 0.001, "! Speech: -60 dBFS, 20 dB above the noise, but faint")]
    [InlineData(0.001, 1.5, "! The microphone is too loud")]
    [InlineData(0.0, 0.0, "! The microphone gives dead silence")]
    public async Task What_must_be_put_right_is_said_and_gives_exit_code_1(double noise, double voice, string sentence)
    {
        ProgramResult result = await Check(noise, voice);

        Assert.Contains(sentence, result.Output);
        Assert.Contains("to put right.", result.Output);
        Assert.Equal(1, result.ExitCode);
    }

    [Fact]
    public async Task In_noise_the_technician_is_told_to_expect_questions()
    {
        ProgramResult result = await Check(noise: 0.03, voice: 0.12);

        Assert.Contains("expect to be asked again", result.Output);
        Assert.Equal(0, result.ExitCode);
    }

    [Fact]
    public async Task A_microphone_that_gives_nothing_is_named_and_the_check_ends()
    {
        ProgramResult result = await ProgramProcess.Run("sound", "--mute", "--microphone", "false --never");

        Assert.Contains("! No sound from the microphone (false): check that it is plugged in", result.Output);
        Assert.Equal(1, result.ExitCode);
    }

    [Fact]
    public async Task A_program_that_is_not_there_is_wrong_use()
    {
        ProgramResult result = await ProgramProcess.Run("sound", "--microphone", "no-such-recorder --raw");

        Assert.Equal("The program of --microphone \"no-such-recorder --raw\" is not installed; name a device or another program.\n", result.Error);
        Assert.Equal(2, result.ExitCode);
    }
}
