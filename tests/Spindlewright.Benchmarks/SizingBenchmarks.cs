using BenchmarkDotNet.Attributes;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Studies.Sizing;
using UnitsNet;

namespace Spindlewright.Benchmarks;

/// <summary>The sizing study over more and more candidates and operations: its time must grow with both as a straight line.</summary>
public class SizingBenchmarks
{
    private readonly Handbook handbook = Handbook.FromEmbedded();
    private DrillPress press = null!;
    private SizingWishes wishes = null!;

    /// <summary>About how many candidates.</summary>
    [Params(4_000, 6_000, 10_000)]
    public int Candidates { get; set; }

    /// <summary>How many operations.</summary>
    [Params(10, 20, 30)]
    public int Operations { get; set; }

    /// <summary>Machine and wishes.</summary>
    [GlobalSetup]
    public void Setup() => (press, wishes) = SizingSpecimens.Of(Candidates, Operations, handbook);

    /// <summary>The whole study: motors fitted, tables, screening, Pareto set, draws.</summary>
    /// <returns>The study.</returns>
    [Benchmark]
    public SizingStudy Whole() => SizingStudy.Of(press, wishes, CandidateSpace.Of(press, wishes, handbook), handbook);
}

/// <summary>A machine whose work is repeated, and wishes that lead to about as many candidates as asked for.</summary>
internal static class SizingSpecimens
{
    private static readonly double[] Lowest = [4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19];

    internal static (DrillPress Press, SizingWishes Wishes) Of(int candidates, int operations, Handbook handbook)
    {
        var press = MachineFile.ReadFile(Path.Combine(Root(), "data", "machines", "school-workshop.toml"), handbook).Press!;
        var work = Enumerable.Range(0, operations).Select(place => press.Work[place % press.Work.Count] with { Name = $"operation {place + 1}" }).ToList();
        SizingWishes Wishes(int lowest) => SizingWishes.Usual(handbook, press.Inverter.Curve.BaseFrequency) with
        {
            LowestFrequencies = [.. Lowest.Take(lowest).Select(hertz => Frequency.FromHertz(hertz))], Boosts = [0, 0.02, 0.04, 0.08],
        };
        var made = press with { Work = work };
        // Motors and laws stay the same; limits of frequency make the number.
        var count = Enumerable.Range(1, Lowest.Length).First(lowest =>
            lowest == Lowest.Length || CandidateSpace.Of(made, Wishes(lowest), handbook).Candidates.Count >= candidates);
        return (made, Wishes(count));
    }

    private static string Root()
    {
        var folder = AppContext.BaseDirectory;
        while (!Directory.Exists(Path.Combine(folder, "data", "machines"))) folder = Path.GetDirectoryName(folder)!;
        return folder;
    }
}
