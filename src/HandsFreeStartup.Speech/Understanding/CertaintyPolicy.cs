using System.Text.Json;
using HandsFreeStartup.Speech.Recognising;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>The evidence for a phrase. All are natural log-probabilities over the unmasked vocabulary; where one ear listened, better and worse are the same.</summary>
/// <param name="Mean">Mean per token, of the ear that heard it better.</param>
/// <param name="WorseMean">The same of the ear that heard it worse; negative infinity where one did not hear it.</param>
/// <param name="WorseLowest">Lowest log-probability of a token, of the ear that heard it worse.</param>
/// <param name="WorseRatio">Log-probability beside that of the free reading of the same sound, of the ear where it is lower.</param>
/// <param name="Margin">Distance to the second best meaning, of all ears together.</param>
/// <param name="Ratio">The ratio of the ear where it is higher.</param>
/// <param name="HasTwinWithZero">Whether an ear came across the same words with a zero more, which may have been lost.</param>
public sealed record Measured(double Mean, double WorseMean, double WorseLowest, double WorseRatio, double Margin, double Ratio, bool HasTwinWithZero)
{
    /// <summary>Whether it is a number of which noise may have covered a syllable: of "sixty" it leaves "six two", of "eighty" "eight", of "seventeen" "seventy".</summary>
    public bool MayBeAnotherTen { get; init; }
}

/// <summary>What a phrase must reach, each by itself.</summary>
/// <param name="Mean">See <see cref="Measured.Mean"/>.</param>
/// <param name="WorseMean">See <see cref="Measured.WorseMean"/>.</param>
/// <param name="WorseLowest">See <see cref="Measured.WorseLowest"/>.</param>
/// <param name="WorseRatio">See <see cref="Measured.WorseRatio"/>.</param>
/// <param name="Margin">See <see cref="Measured.Margin"/>.</param>
public sealed record Threshold(double Mean, double WorseMean, double WorseLowest, double WorseRatio, double Margin);

/// <summary>What kinds of phrase must reach to be entered without asking.</summary>
/// <param name="Reading">A field with its value.</param>
/// <param name="Phrase">A command, an answer or a choice of two words or more.</param>
/// <param name="Word">One of one word: what noise and talk turn into first.</param>
public sealed record KindThresholds(Threshold Reading, Threshold Phrase, Threshold Word);

/// <summary>What the safety phrases must reach: little, because a false stop costs a word, a missed one a life.</summary>
/// <param name="Mean">Mean log-probability per token where one ear heard it.</param>
/// <param name="Ratio">Least ratio to the free reading where one ear heard it: below it something else was said that sounds like it.</param>
/// <param name="BothMean">Mean of the better ear where both came across the same one.</param>
/// <param name="BothRatio">Ratio of the better ear where both came across the same one.</param>
/// <param name="WorseRatio">Ratio of the ear where it is lower, where both came across the same one.</param>
/// <param name="Among">Where one is found among other words of a free reading.</param>
/// <param name="OverVoice">Below it a call over the tool's own voice is asked for again.</param>
public sealed record SafetyThreshold(double Mean, double Ratio, double BothMean, double BothRatio, double WorseRatio, AmongThreshold Among, OverVoiceThreshold OverVoice)
{
    /// <summary>Where one ear alone read one among other words.</summary>
    public required AskedThreshold Asked { get; init; }

    /// <summary>Where one that was not understood is said again.</summary>
    public required AgainThreshold Again { get; init; }
}

/// <summary>What one ear alone read as a call among other words, while the other heard something else, must reach to be asked for; mean log-probability per word of the call.</summary>
/// <param name="Words">Where nothing else was understood.</param>
/// <param name="Surely">In speech that goes on, and where a doubtful reading was understood.</param>
public sealed record AskedThreshold(double Words, double Surely);

/// <summary>What is not understood, and may yet be a call for help where it is said twice and sounds alike.</summary>
/// <param name="Mean">Mean log-probability per token of the call by one ear.</param>
/// <param name="Ratio">Its ratio to the free reading of that ear.</param>
/// <param name="Margin">By how much it must be likelier to that ear than anything else that can be said.</param>
/// <param name="Alike">Share of the words that both free readings of one ear have in common, 0..1.</param>
public sealed record AgainThreshold(double Mean, double Ratio, double Margin, double Alike);

/// <summary>What a call among other words must reach; while the tool is silent one of the last two as well.</summary>
/// <param name="FreeMean">Mean log-probability per token of the whole reading, by the surer ear.</param>
/// <param name="Words">Mean log-probability per word of the call itself, by the surer ear.</param>
/// <param name="OtherWords">The same by another ear that heard the same call.</param>
public sealed record AmongThreshold(double FreeMean, double Words, double OtherWords);

/// <summary>What a safety phrase heard over the tool's own voice must reach, mean log-probability per token.</summary>
/// <param name="Foreign">Where that voice speaks no English: its sounds make English calls.</param>
/// <param name="ForeignGas">The same for gas, where that voice says "gas", which is the same word in its language.</param>
/// <param name="OwnWords">Where the call stands in the place of other words of the tool.</param>
public sealed record OverVoiceThreshold(double Foreign, double ForeignGas, double OwnWords);

/// <summary>By how much a reading must lie ahead of the others in noise, which covers a word and leaves both ears sure of another one.</summary>
/// <param name="Below">Noisy where speech stands less than this above its surroundings, decibels.</param>
/// <param name="LoudBelow">Loud where speech stands less than this above its surroundings, decibels.</param>
/// <param name="SteadySpread">The noise is steady, as that of a blower, where it spreads less, see <see cref="NoiseSpread"/>, decibels.</param>
/// <param name="Steady">In steady noise.</param>
/// <param name="Unsteady">In other noise: dishes, tools, splashing water, people.</param>
/// <param name="Loud">In loud noise of any kind.</param>
public sealed record NoiseThreshold(double Below, double LoudBelow, double SteadySpread, NoiseMargin Steady, NoiseMargin Unsteady, NoiseMargin Loud);

/// <summary>By how much a reading must lie ahead, see <see cref="Measured.Margin"/>.</summary>
/// <param name="Usual">Where both ears listened.</param>
/// <param name="Ten">For a number that may be another ten; more than one ear reaches alone.</param>
public sealed record NoiseMargin(double Usual, double Ten);

/// <summary>The numbers that decide; they stand in one data file, <c>certainty.json</c>, and nowhere else.</summary>
/// <param name="Origin">How they were found.</param>
public sealed record CertaintyPolicy(string Origin)
{
    /// <summary>For green when the first ear alone listened.</summary>
    public required KindThresholds OneEar { get; init; }

    /// <summary>For green when both ears listened and agree.</summary>
    public required KindThresholds TwoEars { get; init; }

    /// <summary>For a reading that is read back and must be confirmed, with or without agreement; only the better ear counts.</summary>
    public required Threshold Amber { get; init; }

    /// <summary>For the title of a step after "go to", when both ears listened and agree; it is asked before it is done.</summary>
    public required Threshold Step { get; init; }

    /// <summary>For readings in noise.</summary>
    public required NoiseThreshold Noise { get; init; }

    /// <summary>Above it nobody spoke, 0..1.</summary>
    public required double NoSpeechProbability { get; init; }

    /// <summary>For the safety phrases.</summary>
    public required SafetyThreshold Safety { get; init; }

    /// <summary>How far is searched.</summary>
    public required SearchLimits Search { get; init; }

    /// <summary>What a phrase must reach by the number of ears that listened.</summary>
    public KindThresholds For(int ears) => ears > 1 ? TwoEars : OneEar;

    /// <summary>What a reading must reach to be entered without asking.</summary>
    public Threshold ForReading(Utterance utterance, Measured measured)
    {
        Threshold usual = For(utterance.Ears.Length).Reading;
        NoiseMargin margin = IsLoud(utterance) ? Noise.Loud : IsSteady(utterance) ? Noise.Steady : Noise.Unsteady;
        return utterance.SignalToNoise >= Noise.Below ? usual
            : measured.MayBeAnotherTen ? usual with { Margin = margin.Ten }
            : utterance.Ears.Length > 1 ? usual with { Margin = margin.Usual }
            : usual;
    }

    /// <summary>What one word must reach to be taken. In noise that comes and goes it must lie as far ahead as a reading: a clatter made "note" of "no", 4.2 ahead by both ears.</summary>
    public Threshold ForWord(Utterance utterance)
    {
        Threshold usual = For(utterance.Ears.Length).Word;
        return utterance.Ears.Length > 1 && IsUnsteady(utterance) ? usual with { Margin = Noise.Unsteady.Usual } : usual;
    }

    /// <summary>Whether noise of any kind nearly covers the speech.</summary>
    public bool IsLoud(Utterance utterance) => utterance.SignalToNoise < Noise.LoudBelow;

    /// <summary>Whether it is noisy by a sound that comes and goes, and may cover a word.</summary>
    public bool IsUnsteady(Utterance utterance) => utterance.SignalToNoise < Noise.Below && !IsSteady(utterance);

    /// <summary>Whether no sound that comes and goes, and may cover a word, was there beside the speech.</summary>
    public bool IsSteady(Utterance utterance) => utterance.NoiseSpread < Noise.SteadySpread;

    static readonly JsonSerializerOptions Format = new(JsonSerializerDefaults.Web);

    /// <summary>The policy that ships with the program.</summary>
    public static CertaintyPolicy Shipped { get; } = Load();

    static CertaintyPolicy Load()
    {
        using Stream file = typeof(CertaintyPolicy).Assembly.GetManifestResourceStream("certainty.json")!;
        return JsonSerializer.Deserialize<CertaintyPolicy>(file, Format)!;
    }
}
