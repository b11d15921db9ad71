using HandsFreeStartup.Hear;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Recognising;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Benchmarks;

/// <summary>Draws what the thresholds of the certainty policy let through, or fits them: thresholds MANIFEST [--plot FILE.png] [--fit FILE.json].</summary>
/// <remarks>A tool for those who train models; the program itself neither draws nor fits.</remarks>
static class Thresholds
{
    /// <summary>Runs it.</summary>
    /// <param name="arguments">What stands after the word thresholds.</param>
    /// <param name="output">For figures.</param>
    public static int Run(string[] arguments, TextWriter output)
    {
        (string? manifest, string? picture, string? policy) = (arguments.FirstOrDefault(), After("--plot"), After("--fit"));
        if (manifest is null || (picture ?? policy) is null)
        {
            output.WriteLine("thresholds MANIFEST.tsv [--plot FILE.png] [--fit FILE.json]");
            return 2;
        }

        using HearBench bench = HearBench.Load(null, 2, TimeProvider.System);
        List<HearRow> rows = [];
        List<FitCase> evidence = [];
        foreach (HearCase measured in HearManifest.Read(manifest))
        {
            (HearRow row, Utterance utterance) = bench.Measure(measured, WavFile.Read(measured.Path), everyEar: true);
            rows.Add(row);
            evidence.Add(new FitCase(measured, utterance));
        }

        if (picture is not null)
        {
            HearPlot.Save(rows, picture);
            HearText.PrintConfusions(HearFigures.Of(rows, bench.Needs()), output);
        }

        if (policy is not null)
        {
            File.WriteAllText(policy, Fit(evidence, output));
        }

        return 0;

        string? After(string option) => Array.IndexOf(arguments, option) is >= 0 and var at && at + 1 < arguments.Length ? arguments[at + 1] : null;
    }

    static string Fit(IReadOnlyList<FitCase> evidence, TextWriter output)
    {
        (List<FitCase> learning, List<FitCase> reporting) = ThresholdFit.Halves(evidence);
        CertaintyPolicy fitted = ThresholdFit.Fit(learning, CertaintyPolicy.Shipped);
        output.WriteLine($"half for learning,  as shipped: {ThresholdFit.Score(learning, CertaintyPolicy.Shipped)}");
        output.WriteLine($"half for learning,  fitted:     {ThresholdFit.Score(learning, fitted)}");
        output.WriteLine($"half for reporting, as shipped: {ThresholdFit.Score(reporting, CertaintyPolicy.Shipped)}");
        output.WriteLine($"half for reporting, fitted:     {ThresholdFit.Score(reporting, fitted)}");
        return ThresholdFit.Text(fitted);
    }
}
