using System.Diagnostics;
using System.Globalization;
using Spindlewright.Foundations.Tables;
using Spindlewright.Studies.Sizing;

namespace Spindlewright.Benchmarks;

/// <summary>Prints the table of times of the sizing study that stands in docs/performance.md.</summary>
internal static class SizingTimes
{
    private const int Repetitions = 5;
    private static readonly int[] CandidatesTried = [4_000, 6_000, 10_000];
    private static readonly int[] OperationsTried = [10, 20, 30];

    internal static void Print()
    {
        var handbook = Handbook.FromEmbedded();
        Console.WriteLine("| candidates | operations | motors and candidates | tables and screening | whole study |");
        Console.WriteLine("| ---: | ---: | ---: | ---: | ---: |");
        foreach (var candidates in CandidatesTried)
            foreach (var operations in OperationsTried)
            {
                var (press, wishes) = SizingSpecimens.Of(candidates, operations, handbook);
                var space = CandidateSpace.Of(press, wishes, handbook);
                var laid = Shortest(() => CandidateSpace.Of(press, wishes, handbook));
                var screened = Shortest(() => SizingStudy.Screen(press, wishes, space, handbook));
                var whole = Shortest(() => SizingStudy.Of(press, wishes, CandidateSpace.Of(press, wishes, handbook), handbook));
                Console.WriteLine(string.Create(
                    CultureInfo.InvariantCulture,
                    $"| {space.Candidates.Count} | {operations} | {laid:0.00} s | {screened:0.00} s | {whole:0.00} s |"));
            }
    }

    private static double Shortest(Action action) => Enumerable.Range(0, Repetitions).Min(_ =>
    {
        var watch = Stopwatch.StartNew();
        action();
        return watch.Elapsed.TotalSeconds;
    });
}
