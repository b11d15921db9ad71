using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Recognising;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Hear;

/// <summary>
/// Hears whole recordings as a job hears its microphone: cut into utterances, searched for calls for help while speech goes on, and what may be a call asked for again. Where the manifest says what
/// the tool is saying meanwhile, it is heard as beside a loudspeaker whose echo is canceled; bad air, which only a procedure can judge, does not count over it here.
/// </summary>
/// <param name="recognizer">Hears.</param>
/// <param name="detector">Finds speech.</param>
/// <param name="clock">Measures.</param>
sealed class StreamedHearing(WhisperRecogniser recognizer, SileroDetector detector, TimeProvider clock)
{
    /// <summary>One row for each phrase that came of a recording; where something was said to the tool, only the row of that. A row is named by the recording and the second in which the phrase began.</summary>
    /// <param name="measured">Which recording.</param>
    /// <param name="sound">Its sound.</param>
    public async Task<ImmutableArray<HearRow>> Measure(HearCase measured, float[] sound)
    {
        detector.Forget();
        One one = new(measured, new TimedEar(recognizer, clock));
        string? over = measured.Over.Length > 0 ? measured.Over : null;
        await new SoundPump(new SpeechCutter(detector, SoundPump.Settings), one.Ear, () => measured.Expectation, one.Take, () => over).Run(WavFiles.Of(sound), CancellationToken.None);
        HearRow refused = HearRow.Of(measured.Expected, new Phrase.NotUnderstood(new Evidence("", Channel.Voice, Certainty.Red) { Why = "No phrase came of it." })) with { File = measured.File };
        ImmutableArray<HearRow> rows = measured.Expected == HearRow.Nothing
            ? [.. one.Rows.DefaultIfEmpty(refused)]
            : [one.Rows.OrderByDescending(row => (row.IsAccepted && row.IsRight, row.IsAccepted, row.IsRight)).FirstOrDefault() ?? refused];
        return [rows[0] with { Seconds = (double)sound.Length / WavFile.Rate, DecodingMs = one.Ear.TookInAll.TotalMilliseconds }, .. rows[1..]];
    }

    /// <summary>What came of one recording so far.</summary>
    sealed class One(HearCase measured, TimedEar ear)
    {
        readonly UnclearCall _unclear = new();
        (long End, bool Counted) _lastCall;

        public TimedEar Ear => ear;

        public List<HearRow> Rows { get; } = [];

        public void Take(Input input)
        {
            if (input is not Input.Spoken { Clip: var clip } spoken)
            {
                return;
            }

            Phrase phrase = _unclear.Recognized(Understood(spoken), clip, spoken.Over);
            OverVoice over = new(HearingProfile.EchoCancelled, spoken.Over, measured.Spoken);
            bool isCall = phrase is Phrase.Command { IsSafetyPhrase: true }, mayBeDanger = over.MayBeDanger(phrase, isBadAir: false);
            bool counts = over.Counts(phrase, isBadAir: false) || (isCall && mayBeDanger && _unclear.IsSaidAgain(phrase, clip, spoken.Over));
            bool isSameCall = isCall && clip.SpeechStart < _lastCall.End && (_lastCall.Counted || !counts);
            if (phrase is Phrase.NotUnderstood || (!counts && !mayBeDanger) || isSameCall)
            {
                return;
            }

            _lastCall = isCall ? (clip.SpeechEnd, counts) : _lastCall;
            Certainty certainty = !counts ? Certainty.Amber : isCall ? Certainty.Green : phrase.Evidence.Certainty;
            Rows.Add(HearRow.Of(measured.Expected, phrase with { Evidence = phrase.Evidence with { Certainty = certainty } }) with
            {
                File = FormattableString.Invariant($"{measured.File}@{(double)(clip.SpeechStart - WavFiles.SamplesBefore) / WavFile.Rate:F1}"),
                LatencyMs = ear.Took.TotalMilliseconds,
                LatencyWithSilenceMs = HearRow.WithSilence(phrase, measured, ear.Took),
            });
        }

        Phrase Understood(Input.Spoken spoken)
        {
            try
            {
                return spoken.Ahead?.Under(measured.Expectation) ?? ear.Hear(spoken.Clip, measured.Expectation);
            }
            catch (OperationCanceledException)
            {
                return ear.Hear(spoken.Clip, measured.Expectation);
            }
        }
    }

    /// <summary>An ear that knows how long it took last.</summary>
    sealed class TimedEar(WhisperRecogniser recognizer, TimeProvider clock) : IEar
    {
        public TimeSpan Took { get; private set; }

        public TimeSpan TookInAll { get; private set; }

        public Phrase Hear(SpeechClip clip, Expectation expectation, CancellationToken cancellation = default)
        {
            long started = clock.GetTimestamp();
            Phrase phrase = PhraseReader.Read(recognizer.Hear(clip.Samples, expectation, cancellation), expectation);
            Took = clock.GetElapsedTime(started);
            TookInAll += Took;
            return phrase;
        }
    }
}
