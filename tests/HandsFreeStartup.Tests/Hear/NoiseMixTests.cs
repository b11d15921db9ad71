using System.Collections.Immutable;
using HandsFreeStartup.Hear;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Running;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Hear;

/// <summary>Noise is mixed at the ratio that was asked for, by its definition.</summary>
public sealed class NoiseMixTests : IDisposable
{
    readonly SileroDetector _detector = SileroDetector.Load(Path.Combine(ShippedFiles.Models, ModelFiles.Detector));
    readonly TemporaryFolder _folder = new();

    // The second recording holds no speech.
    readonly ImmutableArray<HearCase> _cases;
    readonly string _noise;

    public NoiseMixTests()
    {
        string silence = Path.Combine(_folder.Path, "silence.wav");
        WavFile.Write(silence, new float[32_000]);
        _cases = [.. ((string[])[Path.Combine(AppContext.BaseDirectory, "Demo", "Recordings", "04.wav"), silence]).Select(path => new HearCase(path, path, "nothing", Expectation.Open))];
        _noise = Path.Combine(_folder.Path, "noise.wav");
        Random random = new(5);
        WavFile.Write(_noise, [.. Enumerable.Range(0, 16_000).Select(_ => 0.2f * (2 * random.NextSingle() - 1))]);
    }

    public void Dispose()
    {
        _detector.Dispose();
        _folder.Dispose();
    }

    static double Power(IEnumerable<float> sound) => sound.Average(sample => (double)sample * sample);

    [Theory]
    [InlineData(20)]
    [InlineData(10)]
    public void The_noise_lies_below_the_speech_by_the_decibels_asked_for(double decibels)
    {
        float[] sound = WavFile.Read(_cases[0].Path);
        float[] mixed = NoiseMix.Of(_noise, decibels, 1, _cases, _detector).Under(sound, 0);

        double noise = Power(mixed.Zip(sound, (sum, speech) => sum - speech));
        Assert.Equal(decibels, 10 * Math.Log10(NoiseMix.SpeechPower(sound, _detector)!.Value / noise), 0.01);
    }

    [Fact]
    public void A_recording_without_speech_gets_the_noise_of_the_others()
    {
        double power = NoiseMix.SpeechPower(WavFile.Read(_cases[0].Path), _detector)!.Value;
        float[] mixed = NoiseMix.Of(_noise, 10, 1, _cases, _detector).Under(new float[32_000], 1);

        Assert.Equal(10, 10 * Math.Log10(power / Power(mixed)), 0.01);
    }

    [Fact]
    public void The_same_seed_takes_the_same_stretch_and_another_seed_another_one()
    {
        float[] sound = WavFile.Read(_cases[0].Path);
        float[] Mixed(int seed) => NoiseMix.Of(_noise, 10, seed, _cases, _detector).Under(sound, 0);

        Assert.Equal(Mixed(1), Mixed(1));
        Assert.NotEqual(Mixed(1), Mixed(2));
    }

    [Fact]
    public void A_sum_beyond_full_scale_is_made_quieter_as_a_whole()
    {
        float[] mixed = NoiseMix.Of(_noise, -40, 1, _cases, _detector).Under(WavFile.Read(_cases[0].Path), 0);

        Assert.Equal(1, mixed.Max(Math.Abs), 1e-6);
    }

    [Fact]
    public void A_silent_noise_is_refused()
    {
        WavFile.Write(_noise, new float[16_000]);
        Assert.Contains("is silent", Assert.Throws<WrongUseException>(() => NoiseMix.Of(_noise, 10, 1, _cases, _detector)).Message);
    }
}
