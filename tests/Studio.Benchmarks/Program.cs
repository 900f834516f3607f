using BenchmarkDotNet.Running;
using Studio.Benchmarks;

BenchmarkSwitcher.FromAssembly(typeof(RosterBenchmarks).Assembly).Run(args);
