using BenchmarkDotNet.Attributes;
using Spindlewright.Motors.Batches;
using Spindlewright.Studies.Batches;

namespace Spindlewright.Benchmarks;

/// <summary>Operating points handed on in blocks: time a point must not hang on their number, and nothing is allocated.</summary>
[MemoryDiagnoser]
public class SweepBenchmarks
{
    private const int SlipsARow = 1000;

    private readonly Sum sum = new();
    private readonly double[] slips = Specimens.Slips(SlipsARow);
    private CircuitColumns circuits = null!;

    /// <summary>How many points.</summary>
    [Params(1_000, 10_000, 100_000, 1_000_000, 10_000_000)]
    public int Points { get; set; }

    /// <summary>Lays the circuits out.</summary>
    [GlobalSetup]
    public void Setup() => circuits = Specimens.Circuits(Points / SlipsARow);

    /// <summary>Exact circuit with core loss, constant parameters, one core.</summary>
    [Benchmark]
    public void ConstantParameters() => Run(CircuitForm.ConstantParameters);

    private void Run(CircuitForm form) => BatchSolver.Sweep(
        circuits, Specimens.RatedFeed, slips, sum, form, BatchRun.OneCore);
}

/// <summary>Batches in which every point has a circuit, a frequency and a voltage of its own.</summary>
[MemoryDiagnoser]
public class LayeredBenchmarks
{
    private const int Count = 10_000;

    private readonly double[] hz = [.. Enumerable.Range(0, Count).Select(i => 5 + 45.0 * i / Count)];
    private readonly double[] slips = Specimens.Slips(Count);
    private readonly PointColumns points = new(new double[Count], new double[Count], new double[Count]);
    private readonly TorqueColumns torques = new(new double[Count]);
    private FeedColumns feeds, feedsWithDrop;
    private CircuitColumns circuits = null!;

    /// <summary>Lays the circuits out.</summary>
    [GlobalSetup]
    public void Setup()
    {
        circuits = Specimens.Circuits(Count, saturation: 0.3);
        double[] volts = [.. hz.Select(f => Specimens.RatedPhaseV * f / 50)];
        feeds = new(hz, volts);
        feedsWithDrop = new(hz, volts, Enumerable.Repeat(4.0, Count).ToArray());
    }

    /// <summary>Operating points of either form.</summary>
    /// <param name="form">The form.</param>
    [Benchmark(OperationsPerInvoke = Count)]
    [Arguments(CircuitForm.ConstantParameters)]
    [Arguments(CircuitForm.Saturated)]
    public void OperatingPoints(CircuitForm form) =>
        BatchSolver.OperatingPoints(circuits, feeds, slips, points, form, BatchRun.OneCore);

    /// <summary>Pull-out torques of either form.</summary>
    /// <param name="form">The form.</param>
    [Benchmark(OperationsPerInvoke = Count)]
    [Arguments(CircuitForm.ConstantParameters)]
    [Arguments(CircuitForm.Saturated)]
    public void PullOut(CircuitForm form) => BatchSolver.PullOut(circuits, feeds, torques, form, BatchRun.OneCore);

    /// <summary>Pull-out torques with saturation and a drop that opposes the current.</summary>
    [Benchmark(OperationsPerInvoke = Count)]
    public void PullOutWithDrop() => BatchSolver.PullOut(circuits, feedsWithDrop, torques, CircuitForm.Saturated, BatchRun.OneCore);
}

/// <summary>Overpowering speeds.</summary>
[MemoryDiagnoser]
public class OverpoweringBenchmarks
{
    private const int Count = 10_000;

    private DriveColumns drives = null!;
    private HandColumns hands;

    /// <summary>Share of the magnetising current that stands on the seventh power of flux; 0 for constant parameters.</summary>
    [Params(0, 0.3)]
    public double Saturation { get; set; }

    /// <summary>Threads.</summary>
    [Params(1, 2)]
    public int Cores { get; set; }

    /// <summary>Lays the samples out.</summary>
    [GlobalSetup]
    public void Setup() => (drives, hands) = Specimens.Overpowering(Count, Saturation);

    /// <summary>Cold and hot circuit of each sample.</summary>
    /// <returns>The speeds.</returns>
    [Benchmark(OperationsPerInvoke = Count)]
    public OverpoweringColumns OverpoweringSpeeds() => OverpoweringBatch.Of(drives, hands, Specimens.Someone, new() { Cores = Cores });
}
