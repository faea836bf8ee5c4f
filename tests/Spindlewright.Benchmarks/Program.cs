using BenchmarkDotNet.Running;
using Spindlewright.Benchmarks;

// "compare FOLDER" serves tests/batch_times.py; anything else is BenchmarkDotNet's.
if (args is ["compare", var folder]) Comparison.Write(folder);
else BenchmarkSwitcher.FromAssembly(typeof(Comparison).Assembly).Run(args);
