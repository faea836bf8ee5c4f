using BenchmarkDotNet.Running;
using Spindlewright.Benchmarks;

// "compare FOLDER" serves tests/batch_times.py, "sizing" prints a table of docs/performance.md; anything else is BenchmarkDotNet's.
if (args is ["compare", var folder]) Comparison.Write(folder);
else if (args is ["sizing"]) SizingTimes.Print();
else BenchmarkSwitcher.FromAssembly(typeof(Comparison).Assembly).Run(args);
