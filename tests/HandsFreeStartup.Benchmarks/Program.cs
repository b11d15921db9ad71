using BenchmarkDotNet.Running;

// Run with: dotnet run -c Release --project tests/HandsFreeStartup.Benchmarks -- --filter '*'
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
