using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Spindlewright.Motors.Batches;
using Spindlewright.Studies.Batches;
using static System.FormattableString;

namespace Spindlewright.Benchmarks;

/// <summary>Times and results for the comparison script: its own side of one run.</summary>
/// <remarks>
/// The shortest of many repetitions counts, since everything that disturbs a run makes it longer. The results are written so that the
/// script sets them against its own.
/// </remarks>
internal static class Comparison
{
    private const int SlipsARow = 1000;
    private const int Samples = 1_000_000;
    private const int ComparedSamples = 100_000;

    internal static void Write(string folder)
    {
        Directory.CreateDirectory(folder);
        using var times = new StreamWriter(Path.Combine(folder, "times.txt")) { NewLine = "\n" };
        void Tell(string name, double value)
        {
            times.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name} {value:R}"));
            Console.Error.WriteLine(Invariant($"{name} {value:G4}"));
        }
        Tell("vector_bits", Vector512.IsHardwareAccelerated ? 512 : Vector256.IsHardwareAccelerated ? 256 : 128);
        Sweeps(Tell);
        Tell("limit_arithmetic_ns", Limits.RootAndQuotientNs());
        Tell("limit_read_ns_a_number", Limits.ReadNs());
        Tell("limit_write_ns_a_number", Limits.WriteNs());
        Layered(Tell, folder);
        Overpowering(Tell, folder);
    }

    private static void Sweeps(Action<string, double> tell)
    {
        var sum = new Sum();
        var slips = Specimens.Slips(SlipsARow);
        for (var points = 1_000; points <= 10_000_000; points *= 10)
        {
            var circuits = Specimens.Circuits(points / SlipsARow);
            void Run() => BatchSolver.Sweep(circuits, Specimens.RatedFeed, slips, sum, CircuitForm.ConstantParameters, BatchRun.OneCore);
            Run();
            var before = GC.GetAllocatedBytesForCurrentThread();
            Run();
            var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
            tell($"sweep_{points}_bytes", allocated);
            tell($"sweep_{points}_ns", Shortest.Ns(Run, points));
        }
    }

    private static void Layered(Action<string, double> tell, string folder)
    {
        const int Count = ComparedSamples;
        var circuits = Specimens.Circuits(Count);
        double[] hz = [.. Enumerable.Range(0, Count).Select(i => 5 + 45.0 * i / Count)];
        double[] volts = [.. hz.Select(f => Specimens.RatedPhaseV * f / 50)];
        var slips = Specimens.Slips(Count);
        var (torque, current, factor) = (new double[Count], new double[Count], new double[Count]);
        var feeds = new FeedColumns(hz, volts);
        void Run() => BatchSolver.OperatingPoints(
            circuits, feeds, slips, new(torque, current, factor), CircuitForm.ConstantParameters, BatchRun.OneCore);
        tell("layered_ns", Shortest.Ns(Run, Count));
        Store(folder, "torque", torque);
        Store(folder, "current", current);
        Store(folder, "power-factor", factor);
        var pullOut = new double[Count];
        tell("pull_out_ns", Shortest.Ns(
            () => BatchSolver.PullOut(circuits, feeds, new(pullOut), CircuitForm.ConstantParameters, BatchRun.OneCore), Count));
        Store(folder, "pull-out", pullOut);
    }

    private static void Overpowering(Action<string, double> tell, string folder)
    {
        foreach (var (name, saturation) in new[] { ("constant", 0.0), ("saturated", 0.3) })
        {
            var (drives, hands) = Specimens.Overpowering(Samples, saturation);
            OverpoweringColumns speeds = null!;
            tell($"overpowering_{name}_s", Shortest.Ns(
                () => speeds = OverpoweringBatch.Of(drives, hands, Specimens.Someone, BatchRun.AllCores), 1, 3) / 1e9);
            if (saturation == 0) Store(folder, "rpm", speeds.Rpm[..ComparedSamples].ToArray());
        }
    }

    private static void Store(string folder, string name, double[] numbers) =>
        File.WriteAllBytes(Path.Combine(folder, $"{name}.f8"), MemoryMarshal.AsBytes<double>(numbers).ToArray());
}

/// <summary>The shortest of many repetitions.</summary>
internal static class Shortest
{
    private const double EnoughSeconds = 0.6;

    internal static double Ns(Action run, int points, int least = 20)
    {
        var (shortest, spent) = (double.PositiveInfinity, 0.0);
        for (var repetition = 0; repetition < least || spent < EnoughSeconds; repetition++)
        {
            var from = Stopwatch.GetTimestamp();
            run();
            var took = Stopwatch.GetElapsedTime(from).TotalSeconds;
            (shortest, spent) = (Math.Min(shortest, took), spent + took);
            // What is long already is not repeated twenty times.
            if (spent > 5 * EnoughSeconds && repetition >= 2) break;
        }
        return shortest * 1e9 / points;
    }
}
