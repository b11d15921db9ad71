using System.Globalization;
using System.Runtime.CompilerServices;
using HandsFreeStartup.Hear;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Start;
using Xunit.Abstractions;

namespace HandsFreeStartup.Tests.Session;

/// <summary>
/// Noise and other talk for a long time, twenty times as fast as life, through detector, cutter and recognizer: nothing may be entered, no frame may be lost, memory stays flat.
/// Minutes of sound: 3, or what HANDSFREE_SOAK_MINUTES says (120 for the whole soak). The memory is that of the whole process, so nothing else is tried meanwhile.
/// </summary>
[Collection(nameof(SoakTests)), CollectionDefinition(nameof(SoakTests), DisableParallelization = true)]
public sealed class SoakTests(ITestOutputHelper output)
{
    const double Speed = 20;

    [Fact]
    public async Task Noise_and_talk_for_a_long_time_enter_nothing_lose_nothing_and_keep_the_memory_flat()
    {
        double minutes = double.Parse(Environment.GetEnvironmentVariable("HANDSFREE_SOAK_MINUTES") ?? "3", CultureInfo.InvariantCulture);
        using ListeningEar ear = ListeningEar.Load(null, 2, message => Assert.Fail(message));
        CountingDetector detector = new(ear.Detector);
        Expectation expectation = Expectation.Open with { Answers = [AnswerWord.Confirm, AnswerWord.Yes, AnswerWord.No] };
        List<string> entries = [];
        int utterances = 0;
        void Take(Input input)
        {
            if (input is Input.Spoken spoken)
            {
                utterances++;
                Phrase phrase = spoken.Ahead?.Under(expectation) ?? ear.Hear(spoken.Clip, expectation);
                if (phrase is not Phrase.NotUnderstood && phrase.Evidence.Certainty == Certainty.Green)
                {
                    entries.Add($"{spoken.Clip.SpeechStart / WavFile.Rate} s: {phrase}");
                }
            }
        }

        NoisyShop shop = new(minutes, Speed, TimeProvider.System);
        await new SoundPump(new SpeechCutter(detector, SoundPump.Settings), ear, () => expectation, Take).Run(shop, CancellationToken.None);

        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{minutes} minutes, {shop.Frames} frames, {shop.Talks} talks, {utterances} utterances, {entries.Count} entries; memory after each tenth, MiB: {string.Join(' ', shop.Memory.Select(bytes => bytes >> 20))}"));
        Assert.Empty(entries);
        Assert.Equal(shop.Frames, detector.Frames);
        Assert.True(utterances >= minutes / 2, $"only {utterances} utterances in {minutes} minutes: nothing was tried");
        Assert.True(shop.Memory[^1] <= shop.Memory[1] + (24L << 20), $"memory grew: {string.Join(' ', shop.Memory)}");
    }

    sealed class CountingDetector(ISpeechDetector inner) : ISpeechDetector
    {
        public long Frames { get; private set; }

        public float Probability(ReadOnlySpan<float> frame)
        {
            Frames++;
            return inner.Probability(frame);
        }
    }

    /// <summary>A live source: blower, burner and hammer by turns, and every half minute somebody talks to somebody else.</summary>
    sealed class NoisyShop(double minutes, double speed, TimeProvider clock) : IAudioSource
    {
        static readonly string Corpus = Path.Combine(AppContext.BaseDirectory, "Hear", "Corpus", "corpus.tsv");

        public bool IsLive => true;

        public long Frames { get; private set; }

        public int Talks { get; private set; }

        /// <summary>Bytes of the managed heap after each tenth of the time, rubbish collected.</summary>
        public List<long> Memory { get; } = [];

        async IAsyncEnumerable<AudioFrame> IAudioSource.Frames([EnumeratorCancellation] CancellationToken cancellation)
        {
            float[][] talks = [.. HearManifest.Read(Corpus).Where(measured => measured.Expected == "nothing").Select(measured => WavFile.Read(measured.Path))];
            Random random = new(20);
            long started = clock.GetTimestamp();
            long all = (long)(minutes * 60 * WavFile.Rate / AudioFrame.Length);
            float[] talk = [];
            int at = 0;
            double low = 0;
            for (long i = 0; i < all; i++)
            {
                double time = i * AudioFrame.Duration.TotalSeconds;
                if (i % 940 == 300)
                {
                    (talk, at) = (talks[random.Next(talks.Length)], 0);
                    Talks++;
                }

                float[] frame = new float[AudioFrame.Length];
                int kind = (int)(time / 60) % 4;
                for (int k = 0; k < frame.Length; k++)
                {
                    double moment = time + (double)k / WavFile.Rate;
                    double white = 2 * random.NextDouble() - 1;
                    low = 0.98 * low + 0.1 * white;
                    double noise = kind switch
                    {
                        0 => low + 0.1 * Math.Sin(2 * Math.PI * 120 * moment),
                        1 => low * (1 + 0.5 * Math.Sin(2 * Math.PI * 3 * moment)),
                        2 => moment % 0.7 < 0.05 ? white : 0.02 * white,
                        _ => 0.01 * white,
                    };
                    frame[k] = (float)(0.05 * noise) + (at < talk.Length ? 0.5f * talk[at++] : 0);
                }

                TimeSpan early = AudioFrame.Duration * i / speed - clock.GetElapsedTime(started);
                if (early > TimeSpan.FromMilliseconds(20))
                {
                    await Task.Delay(early, clock, cancellation);
                }

                if (i % Math.Max(1, all / 10) == 0)
                {
                    Memory.Add(GC.GetTotalMemory(forceFullCollection: true));
                }

                Frames++;
                yield return new AudioFrame(i * AudioFrame.Length, frame);
            }
        }
    }
}
