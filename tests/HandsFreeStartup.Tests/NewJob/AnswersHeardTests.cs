using HandsFreeStartup.Interview;
using HandsFreeStartup.NewAppliance;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Start;
using HandsFreeStartup.Tests.Rehearse;
using Xunit.Abstractions;

namespace HandsFreeStartup.Tests.NewJob;

/// <summary>
/// Answers to the questions of <c>new job</c> as the ears hear them from synthetic voices, clean and at 10 dB of blower noise. In CI each phrase once, by a voice in turn; with
/// HANDSFREE_ANSWERS=all by all voices both ways, two of which (flite) are strangers to the recognizer.
/// </summary>
public sealed class AnswersHeardTests(ITestOutputHelper output)
{
    static readonly Speaker[] Voices = [new("en-us"), new("flite:slt"), new("en-gb+m3", 175), new("flite:awb"), new("en-us+f3", 150)];

    static readonly LimitQuestion[] Limits = [.. LimitQuestion.For(Firing.SingleStage, null)];

    static readonly (AnswerForm Form, string Says, string Line)[] Answers =
    [
        (Limit("manifold_pressure/high"), "three point two to three point eight inches", "3.2 to 3.8"),
        (Limit("manifold_pressure/high"), "three point three five to three point six five", "3.35 to 3.65"),
        (Limit("inlet_pressure"), "five to seven inches", "5 to 7"),
        (Limit("inlet_pressure"), "lowest five inches", "min 5"),
        (Limit("temperature_rise/high"), "thirty five to sixty five degrees", "35 to 65"),
        (Limit("flue_temperature/high"), "three twenty to four fifty degrees", "320 to 450"),
        (Limit("input_rate/high"), "fifty four thousand to sixty thousand", "54000 to 60000"),
        (Limit("oxygen/high"), "seven to nine percent", "7 to 9"),
        (Limit("draft"), "minus zero point zero four to minus zero point zero two", "-0.04 to -0.02"),
        (Limit("co_air_free"), "one hundred P P M", "100"),
        (Limit("supply_temperature"), "one seventy degrees", "170"),
        (Limit("external_static"), "zero point five inches", "0.5"),
        (Limit("flame_current"), "highest six point zero microamps", "max 6.0"),
        (new AnswerForm.OneOf(Choices("fuel")), "natural gas", "natural-gas"),
        (new AnswerForm.OneOf(Choices("fuel")), "propane", "propane"),
        (new AnswerForm.OneOf(Choices("stages")), "one stage", "1"),
        (new AnswerForm.OneOf(Choices("turn_to_raise")), "clockwise", "clockwise"),
        (new AnswerForm.OneOf(Choices("turn_to_raise")), "counter clockwise", "counter-clockwise"),
        (new AnswerForm.OneOf(Choices("venting")), "category four", "IV"),
        (new AnswerForm.Day(), "March third twenty twenty six", "2026-03-03"),
        (new AnswerForm.Day(), "October twenty first, twenty twenty five", "2025-10-21"),
    ];

    [SoundRoomFact]
    public void An_answer_is_heard_as_it_was_said_or_asked_for_again()
    {
        bool isAll = Environment.GetEnvironmentVariable("HANDSFREE_ANSWERS") == "all";
        using ListeningEar ear = ListeningEar.Load(null, 2, message => Assert.Fail(message));
        using SoundRoom room = new();
        int right = 0, again = 0;
        List<string> other = [], unheard = [];
        for (int i = 0; i < Answers.Length; i++)
        {
            foreach (Speaker voice in isAll ? Voices : [Voices[i % Voices.Length]])
            {
                foreach (bool isNoisy in isAll ? (bool[])[false, true] : [i % 2 == 1])
                {
                    (AnswerForm form, string says, string line) = Answers[i];
                    string? held = Held(form, HandWordsHeardTests.Clip(room.Speech(says, voice), isNoisy), ear, out string words);
                    right += held == line ? 1 : 0;
                    again += held is null ? 1 : 0;
                    (held is null ? unheard : held == line ? [] : other).Add($"{voice.Voice} {(isNoisy ? "10 dB" : "clean")} \"{says}\" as {held}, heard \"{words}\"");
                }
            }
        }

        output.WriteLine(FormattableString.Invariant($"read back right {right}, asked again {again}, read back wrong {other.Count}\n{string.Join('\n', other.Select(one => $"wrong: {one}").Concat(unheard.Select(one => $"again: {one}")))}"));
        Assert.Empty(other);
        Assert.True(right > 2 * (again + other.Count));
    }

    /// <summary>What is read back; it becomes an answer by its confirmation alone.</summary>
    static string? Held(AnswerForm form, SpeechClip clip, ListeningEar ear, out string words)
    {
        SpokenTurn turn = new(new Asked("", form) { Says = "", Skips = "", IsInList = true }, Language.English);
        Phrase phrase = MicrophoneListener.Understood(ear, clip, turn.Expectation, turn.Known);
        words = phrase.Evidence.Words;
        Taken taken = turn.Take(phrase);
        return taken.Line is { } line ? $"(answered {line})" : taken.Next.Take(new Phrase.Answer(AnswerWord.Confirm, phrase.Evidence)).Line;
    }

    static AnswerForm Limit(string name) => Limits.Single(limit => limit.Name == name).Form;

    static System.Collections.Immutable.ImmutableArray<SpokenChoice> Choices(string key) => PlainQuestion.All.Single(question => question.Key == key).SpokenChoices;
}
