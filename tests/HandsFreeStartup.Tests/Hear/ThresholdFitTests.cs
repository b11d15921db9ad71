using HandsFreeStartup.Hear;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Recognising;
using HandsFreeStartup.Speech.Understanding;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Hear;

/// <summary>Fitting of whatever numbers the certainty policy holds, on evidence written by hand.</summary>
public sealed class ThresholdFitTests
{
    static readonly Field Oxygen = Fields.Find("oxygen")!;

    /// <summary>"Oxygen seven point six", heard by two models alike; how well is given.</summary>
    static FitCase Said(string speaker, double mean, string expected = "oxygen=7.6")
    {
        Candidate candidate = new(new Ending(new Meaning.Reading(Oxygen, 7.6m)), "Oxygen 7.6")
        {
            LogProbability = 4 * mean,
            BestLogProbability = 4 * mean,
            Tokens = 4,
            Mean = mean,
            Lowest = mean,
            End = -0.01,
        };
        EarEvidence Ear(string name) => new(name, [candidate], "Oxygen 7.6", 4 * mean, 0.01, false);
        Utterance utterance = new([Ear("one"), Ear("two")], "Oxygen 7.6", SignalToNoise: 30);
        return new FitCase(new HearCase($"{speaker}{mean}{expected}.wav", "", expected, Expectation.Open, "open", speaker), utterance);
    }

    [Fact]
    public void A_speaker_is_in_one_half_only_and_always_in_the_same()
    {
        FitCase[] cases = [.. Enumerable.Range(0, 40).Select(i => Said($"speaker {i % 4}", -0.1 - 0.01 * i))];

        (List<FitCase> learning, List<FitCase> reporting) = ThresholdFit.Halves(cases);

        Assert.Equal(cases.Length, learning.Count + reporting.Count);
        Assert.Equal((20, 20), (learning.Count, reporting.Count));
        Assert.Empty(learning.Select(one => one.Measured.Speaker).Intersect(reporting.Select(one => one.Measured.Speaker)));
        Assert.Equal(learning, ThresholdFit.Halves([.. cases.Reverse()]).Learning.AsEnumerable().Reverse());
    }

    [Fact]
    public void Without_speakers_the_files_are_halved()
    {
        FitCase[] cases = [.. Enumerable.Range(0, 40).Select(i => Said("", -0.1 - 0.01 * i))];

        (List<FitCase> learning, List<FitCase> reporting) = ThresholdFit.Halves(cases);

        Assert.InRange(learning.Count, 10, 30);
        Assert.Equal(cases.Length, learning.Count + reporting.Count);
    }

    [Fact]
    public void Thresholds_that_refuse_what_is_always_right_are_loosened()
    {
        FitCase[] cases = [.. Enumerable.Range(0, 20).Select(i => Said("a", -0.45 - 0.001 * i))];
        FitScore before = ThresholdFit.Score(cases, CertaintyPolicy.Shipped);

        FitScore after = ThresholdFit.Score(cases, ThresholdFit.Fit(cases, CertaintyPolicy.Shipped));

        Assert.True(before.Exact < 20, $"nothing to be gained: {before}");
        Assert.Equal((20, 0), (after.Exact, after.Wrong));
    }

    [Fact]
    public void Thresholds_that_let_something_wrong_through_are_tightened_whatever_it_costs()
    {
        FitCase[] cases = [.. Enumerable.Range(0, 20).Select(i => Said("a", -0.2)), Said("a", -0.35, "oxygen=7.0")];
        FitScore before = ThresholdFit.Score(cases, CertaintyPolicy.Shipped);

        FitScore after = ThresholdFit.Score(cases, ThresholdFit.Fit(cases, CertaintyPolicy.Shipped));

        Assert.Equal(1, before.Wrong);
        Assert.Equal(0, after.Wrong);
    }

    [Fact]
    public void A_policy_survives_its_file() =>
        Assert.Equal(CertaintyPolicy.Shipped, System.Text.Json.JsonSerializer.Deserialize<CertaintyPolicy>(
            ThresholdFit.Text(CertaintyPolicy.Shipped), new System.Text.Json.JsonSerializerOptions(System.Text.Json.JsonSerializerDefaults.Web)));

    [Fact]
    public void What_the_thresholds_let_through_is_drawn()
    {
        using TemporaryFolder folder = new();
        string picture = Path.Combine(folder.Path, "thresholds.png");

        HearPlot.Save([.. Enumerable.Range(0, 20).Select(i => Said("a", -0.01 * i)).Select(one => HearRow.Of(one.Measured.Expected, PhraseReader.Read(one.Utterance, one.Measured.Expectation)))], picture);

        Assert.Equal("PNG"u8.ToArray(), File.ReadAllBytes(picture)[1..4]);
    }
}
