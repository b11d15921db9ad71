using BenchmarkDotNet.Running;
using HandsFreeStartup.Benchmarks;

// dotnet run -c Release --project tests/HandsFreeStartup.Benchmarks -- --filter '*'
// dotnet run -c Release --project tests/HandsFreeStartup.Benchmarks -- thresholds MANIFEST.tsv --plot FILE.png --fit FILE.json
if (args is ["thresholds", .. var rest])
{
    return Thresholds.Run(rest, Console.Out);
}

BenchmarkSwitcher.FromAssembly(typeof(CombustionBenchmarks).Assembly).Run(args);
return 0;
