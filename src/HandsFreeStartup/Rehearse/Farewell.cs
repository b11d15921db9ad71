using System.Globalization;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Running;
using HandsFreeStartup.Simulation;
using HandsFreeStartup.Simulation.Critiques;
using HandsFreeStartup.Start;

namespace HandsFreeStartup.Rehearse;

/// <summary>The end of a rehearsal: what was right and wrong, and the line that is kept of it.</summary>
static class Farewell
{
    /// <summary>Tells the critique, and keeps how it went.</summary>
    public static void Tell(Bench bench, StartOptions options, TextWriter output, TimeProvider clock)
    {
        Critique critique = Critique.Of(bench);
        output.WriteLine("");
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"CRITIQUE   score {critique.Score} of 100   {critique.StepsRight} of {critique.StepsIdeal} steps right   {End(critique)}"));
        output.WriteLine($"Time: {Durations.Text(critique.Time)}; the ideal path takes {Durations.Text(critique.IdealTime)}. Hints: {critique.Hints}.");
        foreach (Mistake mistake in critique.Mistakes)
        {
            output.WriteLine($"{Sign(mistake.Gravity)} {mistake.At:hh\\:mm\\:ss} {mistake.Name} at {mistake.StepId}: {mistake.What}");
            output.WriteLine($"    Instead: {mistake.Instead}");
        }

        foreach (FaultFate fate in critique.Faults)
        {
            output.WriteLine($"fault {fate.Fault.Name}: {fate.Fault.What} {(fate.FoundAt is { } step ? $"Found at {step}{(fate.IsSettled ? "." : ", and left.")}" : "It stayed hidden.")}");
        }

        if (critique.Mistakes.IsEmpty && critique.HasEnded)
        {
            output.WriteLine("Nothing was wrong.");
        }

        Progress.Keep(options, critique, bench, clock.GetUtcNow());
    }

    static string End(Critique critique) => critique.IsSigned ? "signed" : critique.HasEnded ? "not put into service" : "interrupted";

    static string Sign(Gravity gravity) => gravity switch { Gravity.Danger => "!!", Gravity.Grave => " !", _ => " -" };
}

/// <summary>How trainees get on: one line a rehearsal, in a file beside the records of rehearsals.</summary>
static class Progress
{
    /// <summary>The first line.</summary>
    public const string Heading = "when\ttrainee\tfurnace\tfaults\tseed\tend\tscore\tmistakes\thints";

    public static string FileOf(DataFolder data) => Path.Combine(data.Rehearsals, "progress.tsv");

    public static void Keep(StartOptions options, Critique critique, Bench bench, DateTimeOffset at)
    {
        string trainee = options.Technician ?? Environment.UserName;
        string end = critique.IsSigned ? "signed" : critique.HasEnded ? "out of service" : "interrupted";
        string line = string.Create(CultureInfo.InvariantCulture,
            $"{at:yyyy-MM-dd HH:mm}\t{TableCell.Of(trainee)}\t{bench.Furnace.Plan.Appliance.Id}\t{options.Rehearsal!.Faults}\t{options.Rehearsal.Seed}\t{end}\t{critique.Score}\t{string.Join(',', critique.Mistakes.Select(mistake => mistake.Name).Distinct())}\t{critique.Hints}");
        string file = FileOf(options.Data);
        string before = File.Exists(file) ? File.ReadAllText(file) : $"{Heading}\n";
        options.Data.Make(options.Data.Rehearsals);
        WholeFile.WriteText(file, $"{before}{line}\n", "The progress of the trainees");
    }

    /// <summary>Removes the lines of a trainee, and what a killed program has left unfinished of them.</summary>
    /// <returns>How many lines there were.</returns>
    public static int Remove(DataFolder data, string trainee)
    {
        string file = FileOf(data);
        IReadOnlyList<string> lines = Read(data);
        string[] kept = [.. lines.Where(line => TraineeTable.TraineeOf(line) != trainee)];
        if (kept.Length < lines.Count)
        {
            WholeFile.WriteText(file, string.Concat(kept.Select(line => $"{line}\n")), "The progress of the trainees");
        }

        File.Delete($"{file}.part");
        return lines.Count - kept.Length;
    }

    /// <summary>The lines of every trainee, the latest last.</summary>
    public static IReadOnlyList<string> Read(DataFolder data) => File.Exists(FileOf(data)) ? [.. File.ReadLines(FileOf(data))] : [];
}
