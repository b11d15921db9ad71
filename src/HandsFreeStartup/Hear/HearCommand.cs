using System.Collections.Immutable;
using System.CommandLine;
using System.Text.Json;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Running;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Native;
using HandsFreeStartup.Speech.Recognising;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Hear;

/// <summary>The command <c>hear</c>: measures recogniser and certainty policy on labelled recordings.</summary>
public static class HearCommand
{
    static readonly Argument<string> Manifest = new("MANIFEST") { Description = "Tab-separated: WAV path, expected (field=value, command=words, nothing), context (open, or field ids; 'answer')." };
    static readonly Option<bool> Json = new("--json") { Description = "Print JSON instead of text." };
    static readonly Option<string?> Model = new("--model") { Description = "Another recogniser model.", HelpName = "FILE" };
    static readonly Option<int> Ears = new("--ears") { Description = "1: the small recogniser alone; 2: the larger one is asked as well.", HelpName = "N", DefaultValueFactory = _ => 2 };
    static readonly Option<string?> Evidence = new("--evidence")
    {
        Description = "Write all evidence of each recording to a file, one line of JSON each; every recogniser is asked every time, so the latency is that of all together.",
        HelpName = "FILE",
    };

    static readonly JsonSerializerOptions Format = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower, WriteIndented = false };

    /// <summary>The command with its options.</summary>
    public static System.CommandLine.Command Build()
    {
        System.CommandLine.Command command = new("hear", "Measure the recogniser on labelled recordings.") { Manifest, Json, Model, Ears, Evidence };
        Ears.AcceptOnlyFromAmong("1", "2");
        command.SetAction(Run);
        return command;
    }

    static int Run(ParseResult parsed)
    {
        TextWriter output = parsed.InvocationConfiguration.Output;
        ImmutableArray<HearCase> cases = HearManifest.Read(parsed.GetRequiredValue(Manifest));
        using WhisperRecogniser recogniser = Load(parsed);
        using StreamWriter? evidence = parsed.GetValue(Evidence) is { } file ? Create(file) : null;
        HearFigures figures = HearFigures.Of([.. cases.Select(measured => Measure(recogniser, measured, evidence))]);
        if (parsed.GetValue(Json))
        {
            output.WriteLine(JsonSerializer.Serialize(figures, Format));
        }
        else
        {
            Print(figures, output);
        }

        return figures.WrongAccepted + figures.FalseAccepts > 0 ? ExitCode.FoundSomething : ExitCode.Done;
    }

    static WhisperRecogniser Load(ParseResult parsed)
    {
        try
        {
            ModelFiles shipped = new(ShippedFiles.Models);
            return WhisperRecogniser.Load(parsed.GetValue(Model) is { } own ? [ModelFiles.Unlisted(own).Path]
                : parsed.GetValue(Ears) == 2 ? [shipped.Checked(ModelFiles.Small).Path, shipped.Checked(ModelFiles.Large).Path]
                : [shipped.Checked(ModelFiles.Small).Path]);
        }
        catch (Exception e) when (e is ModelFileException or RecogniserUnavailableException)
        {
            throw new WrongUseException(e.Message);
        }
    }

    static StreamWriter Create(string path)
    {
        try
        {
            return File.CreateText(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new WrongUseException($"{path} cannot be written: {e.Message}");
        }
    }

    static HearRow Measure(WhisperRecogniser recogniser, HearCase measured, TextWriter? evidence)
    {
        float[] sound = WavFile.Read(measured.Path);
        recogniser.Prepare(measured.Expectation);
        long started = TimeProvider.System.GetTimestamp();
        Utterance utterance = evidence is null ? recogniser.Hear(sound, measured.Expectation) : recogniser.HearWithEveryEar(sound, measured.Expectation);
        Phrase phrase = PhraseReader.Read(utterance, measured.Expectation);
        HearRow row = HearRow.Of(measured, phrase, TimeProvider.System.GetElapsedTime(started));
        if (evidence is not null)
        {
            EvidenceFile.Write(evidence, measured, utterance, row);
        }

        return row;
    }

    static void Print(HearFigures figures, TextWriter output)
    {
        foreach (HearRow row in figures.Rows.Where(row => row.IsAccepted && !row.IsRight))
        {
            output.WriteLine(FormattableString.Invariant($"WRONG {row.File}: expected {row.Expected}, accepted {row.Heard} (score {row.Score:F2}, margin {row.Margin:F1}, ratio {row.Ratio:F1})"));
        }

        int nothing = figures.Cases - figures.Said;
        output.WriteLine(FormattableString.Invariant($"{figures.Cases} recordings: {figures.Said} with something said to the tool, {nothing} with nothing for it"));
        Line("right, accepted without asking", figures.Exact, figures.Said);
        Line("right, with the confirmed ones", figures.ConfirmedExact, figures.Said);
        Line("asked again or to be confirmed", figures.AskedAgain, figures.Said);
        Line("WRONG accepted", figures.WrongAccepted, figures.Said);
        Line("nothing said, yet accepted", figures.FalseAccepts, nothing);
        output.WriteLine(FormattableString.Invariant($"latency of the decoder: p50 {figures.LatencyMs.P50:F0} ms, p95 {figures.LatencyMs.P95:F0} ms"));

        void Line(string what, int count, int total)
        {
            (double low, double high) = HearFigures.Wilson(count, total);
            output.WriteLine(FormattableString.Invariant($"{what,-32} {count,5}  {100.0 * count / Math.Max(1, total),6:F1} %  (95 %: {100 * low:F1} to {100 * high:F1})"));
        }
    }
}
