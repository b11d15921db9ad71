using System.Collections.Immutable;
using System.CommandLine;
using System.Text.Json;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Running;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Recognising;

namespace HandsFreeStartup.Hear;

/// <summary>The command <c>hear</c>: measures recognizer and certainty policy on labeled recordings.</summary>
public static class HearCommand
{
    static readonly Argument<string?> Manifest = new("MANIFEST")
    {
        Arity = ArgumentArity.ZeroOrOne,
        Description = "Tab-separated: WAV path, expected (field=value, command=words, nothing), context (open, or field ids; 'answer').",
    };
    static readonly Option<bool> Json = new("--json") { Description = "Print JSON instead of text." };
    static readonly Option<string?> Model = new("--model") { Description = "Another recognizer model.", HelpName = "FILE" };
    static readonly Option<int> Ears = new("--ears") { Description = "1: the small recognizer alone; 2: the larger one is asked as well.", HelpName = "N", DefaultValueFactory = _ => 2 };
    static readonly Option<string?> Noise = new("--noise") { Description = "Mix this noise under every recording; needs --snr.", HelpName = "FILE" };
    static readonly Option<double?> Snr = NumberOption.Of("--snr", -60, 100);
    static readonly Option<int?> Seed = NumberOption.Whole("--seed", 0, 1_000_000_000);
    static readonly Option<string?> Evidence = new("--evidence")
    {
        Description = "Write all evidence of each recording to a file, one line of JSON each; every recognizer is asked every time, so the latency is that of all together.",
        HelpName = "FILE",
    };

    static readonly Option<bool> Stream = new("--stream")
    {
        Description = "Hear each recording as a job hears its microphone: cut into utterances, calls for help looked for while speech goes on. Counts every phrase that comes of hours of talk.",
    };

    static readonly Option<int?> Live = NumberOption.Whole("--live", 1, 12);

    static readonly Option<string?> Microphone = new("--microphone") { Description = "With --live: another microphone, its name or a whole command that writes 16 kHz raw sound.", HelpName = "NAME" };

    static readonly JsonSerializerOptions Format = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower, WriteIndented = false };

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Command command = new("hear", "Measure the recognizer on labeled recordings.") { Manifest, Json, Model, Ears, Noise, Snr, Seed, Stream, Evidence, Live, Microphone };
        Ears.AcceptOnlyFromAmong("1", "2");
        (Snr.HelpName, Snr.Description) = ("DB", "Signal-to-noise ratio in dB: power of the frames in which the detector finds speech, beside the power of the noise mixed in.");
        (Seed.HelpName, Seed.Description) = ("N", "Takes other stretches of the noise; 1 if it is left out.");
        (Live.HelpName, Live.Description) = ("N", "Instead of recordings: say so many phrases (1 to 12) that are asked for; the verdict is kept in the data folder for this microphone.");
        command.SetAction(Run);
        return command;
    }

    static async Task<int> Run(ParseResult parsed, CancellationToken cancellation)
    {
        if (parsed.GetValue(Live) is { } phrases)
        {
            return await LiveCommand.Run(phrases, parsed.GetValue(Microphone), parsed.GetValue(Model), parsed.GetValue(Ears), DataFolder.Of(parsed), parsed.InvocationConfiguration, cancellation);
        }

        string manifest = parsed.GetValue(Manifest) ?? throw new WrongUseException("Name a manifest of recordings, or say phrases yourself with --live 12.");
        if (parsed.GetValue(Noise) is null != parsed.GetValue(Snr) is null)
        {
            throw new WrongUseException("--noise and --snr belong together: name a recording of noise and how far it lies below the speech, in dB.");
        }

        if (parsed.GetValue(Stream) && parsed.GetValue(Evidence) is not null)
        {
            throw new WrongUseException("--stream and --evidence do not go together: evidence is that of whole recordings.");
        }

        TextWriter output = parsed.InvocationConfiguration.Output;
        ImmutableArray<HearCase> cases = HearManifest.Read(manifest);
        CheckNoise(parsed.GetValue(Noise));
        CheckWritten(parsed, [manifest, .. cases.Select(measured => measured.Path), .. parsed.GetValue(Noise) is { } file ? (string[])[file] : []]);
        using HearBench bench = HearBench.Load(parsed.GetValue(Model), parsed.GetValue(Ears), TimeProvider.System);
        List<HearRow> rows = await Measure(parsed, bench, cases);
        HearFigures figures = HearFigures.Of(rows, bench.Needs());
        if (parsed.GetValue(Json))
        {
            output.WriteLine(JsonSerializer.Serialize(figures, Format));
        }
        else
        {
            HearText.Print(figures, output);
        }

        return figures.WrongAccepted + figures.FalseAccepts > 0 ? ExitCode.FoundSomething : ExitCode.Done;
    }

    /// <summary>What cannot be mixed in is told before the recognizers are loaded.</summary>
    static void CheckNoise(string? noise)
    {
        if (noise is not null)
        {
            WavFile.Read(noise);
        }
    }

    /// <summary>What is written never takes the place of what is read, or of a record.</summary>
    static void CheckWritten(ParseResult parsed, IReadOnlyList<string> read)
    {
        if (parsed.GetValue(Evidence) is { } written)
        {
            if (read.FirstOrDefault(file => FileStatus.AreSame(file, written)) is { } same)
            {
                throw new WrongUseException($"{written} is not written over {same}, which is read here: name another file.");
            }

            WholeFile.RefuseOverRecord(written, "The measurement");
        }
    }

    static async Task<List<HearRow>> Measure(ParseResult parsed, HearBench bench, ImmutableArray<HearCase> cases)
    {
        NoiseMix? noise = parsed.GetValue(Noise) is { } file ? NoiseMix.Of(file, parsed.GetValue(Snr)!.Value, parsed.GetValue(Seed) ?? 1, cases, bench.Detector) : null;
        using StreamWriter? evidence = parsed.GetValue(Evidence) is { } kept ? File.CreateText(Writable(kept)) : null;
        List<HearRow> rows = [];
        foreach ((int number, HearCase measured) in cases.Index())
        {
            float[] clean = WavFile.Read(measured.Path), sound = noise?.Under(clean, number) ?? clean;
            if (parsed.GetValue(Stream))
            {
                rows.AddRange(await bench.Stream(measured, sound));
                continue;
            }

            (HearRow row, Utterance utterance) = bench.Measure(measured, sound, everyEar: evidence is not null);
            rows.Add(row);
            if (evidence is not null)
            {
                EvidenceFile.Write(evidence, measured, utterance, row);
            }
        }

        return rows;
    }

    static string Writable(string path)
    {
        try
        {
            File.Create(path).Dispose();
            return path;
        }
        catch (Exception e) when (FileTrouble.Is(e))
        {
            throw new WrongUseException(FileTrouble.Sentence(e, $"{path} cannot be written", "name another file"));
        }
    }
}
