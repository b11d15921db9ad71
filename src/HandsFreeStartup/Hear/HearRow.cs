using System.Globalization;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Recognising;

namespace HandsFreeStartup.Hear;

/// <summary>What became of one labeled recording.</summary>
/// <param name="File">As written in the manifest.</param>
/// <param name="Expected">The label.</param>
/// <param name="Heard">What was made of it, in the words of a label; <c>nothing</c> when it was refused.</param>
sealed record HearRow(string File, string Expected, string Heard)
{
    /// <summary>green, amber or red.</summary>
    public required string Class { get; init; }

    /// <summary>Mean log-probability per token.</summary>
    public required double Score { get; init; }

    /// <summary>Best against second best meaning.</summary>
    public required double Margin { get; init; }

    /// <summary>Against free decoding.</summary>
    public required double Ratio { get; init; }

    /// <summary>From the sound to the phrase, milliseconds; 0 where that was not measured.</summary>
    public required double LatencyMs { get; init; }

    /// <summary>The likeliest legal phrase, whether it was accepted or not, in the words of a label; <c>nothing</c> if none was found.</summary>
    public required string Likeliest { get; init; }

    /// <summary>What the first recognizer's free decoding says if its words are exactly a legal phrase, in the words of a label; else <c>nothing</c>; null where it was not looked at.</summary>
    public required string? Free { get; init; }

    /// <summary>What kept it from being accepted without asking, in plain words; empty where nothing did.</summary>
    public required string Why { get; init; }

    /// <summary>Length of the recording.</summary>
    public required double Seconds { get; init; }

    /// <summary>From the last sample of speech to the phrase, milliseconds: the silence that ends such words, or the pause after which decoding begins and the decoding itself, whichever takes longer.</summary>
    public double LatencyWithSilenceMs { get; init; }

    /// <summary>All decoding that was done for the recording, milliseconds.</summary>
    public double DecodingMs { get; init; }

    /// <summary>The label of a recording in which nothing is said to the tool.</summary>
    public const string Nothing = "nothing";

    /// <summary>Accepted without asking.</summary>
    public bool IsAccepted => Class == "green" && Heard != Nothing;

    /// <summary>Whether nothing was said to the tool, and it asked as if something had been.</summary>
    public bool IsAskedForNothing => Expected == Nothing && Class == "amber";

    /// <summary>Whether what was heard is what was said, compared as numbers.</summary>
    public bool IsRight => Same(Heard, Expected);

    /// <summary>Whether the likeliest phrase is what was said.</summary>
    public bool IsLikeliestRight => Same(Likeliest, Expected);

    /// <summary>Whether free decoding would have got it right.</summary>
    public bool IsFreeRight => Free is not null && Same(Free, Expected);

    /// <summary>The row of an utterance.</summary>
    /// <param name="measured">The recording.</param>
    /// <param name="utterance">All evidence.</param>
    /// <param name="phrase">What the policy made of it.</param>
    /// <param name="took">From the sound to the phrase.</param>
    /// <param name="seconds">Length of the recording.</param>
    public static HearRow Of(HearCase measured, Utterance utterance, Phrase phrase, TimeSpan took, double seconds)
    {
        EarEvidence? surest = utterance.Ears.Where(ear => ear.Best is not null).MaxBy(ear => ear.Best!.Mean);
        TextMeaning free = PhraseText.Read(utterance.FreeText, measured.Expectation);
        return new HearRow(measured.File, measured.Expected, Label(phrase))
        {
            Class = ClassOf(phrase),
            Score = phrase.Evidence.Score,
            Margin = phrase.Evidence.Margin,
            Ratio = phrase.Evidence.Ratio,
            LatencyMs = took.TotalMilliseconds,
            Likeliest = surest?.Best!.Meaning.ToString() ?? Nothing,
            Free = free.Meanings is [var only] ? only.ToString() : Nothing,
            Why = phrase.Evidence.Why,
            Seconds = seconds,
            LatencyWithSilenceMs = WithSilence(phrase, measured, took),
            DecodingMs = took.TotalMilliseconds,
        };
    }

    /// <summary>From the last sample of speech to the phrase, milliseconds.</summary>
    /// <param name="phrase">What was heard.</param>
    /// <param name="measured">The recording.</param>
    /// <param name="took">From the sound to the phrase.</param>
    public static double WithSilence(Phrase phrase, HearCase measured, TimeSpan took) =>
        Math.Max(SoundPump.SilenceAfter(phrase.Evidence.Words, measured.Expectation).TotalMilliseconds, (SoundPump.Settings.Pause + took).TotalMilliseconds);

    /// <summary>The row of a phrase that somebody has just said.</summary>
    public static HearRow Of(string expected, Phrase phrase) => new("", expected, Label(phrase))
    {
        Class = ClassOf(phrase),
        Score = phrase.Evidence.Score,
        Margin = phrase.Evidence.Margin,
        Ratio = phrase.Evidence.Ratio,
        LatencyMs = 0,
        Likeliest = Label(phrase),
        Free = null,
        Why = phrase.Evidence.Why,
        Seconds = 0,
    };

    static string ClassOf(Phrase phrase) => phrase is Phrase.NotUnderstood ? "red" : phrase.Evidence.Certainty.ToString().ToLowerInvariant();

    static string Label(Phrase phrase) => phrase switch
    {
        Phrase.Reading { IsOver: true } over => $"{over.Field.Id}=over",
        Phrase.Reading reading => FormattableString.Invariant($"{reading.Field.Id}={reading.Value}"),
        Phrase.Command command => $"command={Commands.Of(command.Word).Id}",
        Phrase.Choice choice => $"choice={choice.Value}",
        Phrase.Jump jump => $"step={jump.Step.Id}",
        Phrase.Answer answer => $"command={Answers.Of(answer.Word).Ways[0]}",
        _ => Nothing,
    };

    static bool Same(string one, string other)
    {
        string[] left = one.Split('=', 2), right = other.Split('=', 2);
        return one == other || (left.Length == 2 && right.Length == 2 && left[0] == right[0]
            && decimal.TryParse(left[1], CultureInfo.InvariantCulture, out decimal value)
            && decimal.TryParse(right[1], CultureInfo.InvariantCulture, out decimal wanted)
            && value == wanted);
    }
}
