using System.Diagnostics;
using System.Globalization;
using HandsFreeStartup.Simulation;
using HandsFreeStartup.Simulation.Critiques;
using HandsFreeStartup.Simulation.Tests.Support;

// "run SHEET [FAULT ...]": the ideal technician at that furnace, everything done, and its critique. Without words: simulated time over time, for each furnace.
if (args is ["run", var named, .. var names])
{
    IdealRun run = new(Made.Furnace(named, 7, [.. names.Select(name => NamedFault.Find(name)!.Fault)]));
    try
    {
        run.Run();
    }
    catch (InvalidOperationException error)
    {
        Console.WriteLine(error.Message);
    }

    Console.WriteLine(string.Join('\n', run.Done));
    Critique critique = Critique.Of(run.Bench);
    Console.WriteLine($"signed {critique.IsSigned}, score {critique.Score}, {string.Join("; ", critique.Mistakes.Select(mistake => $"{mistake.Name} {mistake.StepId}: {mistake.What}"))}, {string.Join("; ", critique.Faults.Select(fate => $"{fate.Fault.Name} found at {fate.FoundAt}"))}");
    return;
}

if (args is ["shows"])
{
    Console.WriteLine(HandsFreeStartup.Simulation.Tests.LawTests.Pinned);
    return;
}

foreach (string sheet in Made.Sheets)
{
    Furnace furnace = Made.Furnace(sheet);
    Made.After(furnace, 5);
    Stopwatch watch = Stopwatch.StartNew();
    const double Minutes = 120;
    Made.After(furnace, Minutes);
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{sheet}: {Minutes * 60 / watch.Elapsed.TotalSeconds:0} times as fast as time"));
}
