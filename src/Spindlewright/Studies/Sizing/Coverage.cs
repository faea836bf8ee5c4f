using Spindlewright.Foundations;
using Spindlewright.Machines;
using UnitsNet;

namespace Spindlewright.Studies.Sizing;

/// <summary>How much of the speeds between the slowest and the fastest of the work a candidate serves.</summary>
/// <param name="Share">Of the span on a logarithmic scale, loaded with half the rated torque to unloaded.</param>
/// <param name="Gaps">Speeds that no position serves, unloaded.</param>
/// <remarks>A position serves the speeds that it turns at, and those for which it is not too fast nor too slow as an operation counts that.</remarks>
public sealed record Coverage(Interval Share, IReadOnlyList<(RotationalSpeed From, RotationalSpeed To)> Gaps)
{
    internal static Coverage Of(
        DrillPress press, Candidate candidate, CandidateEvaluator evaluator, SizingWishes wishes, IReadOnlyList<WorkDemand> demands)
    {
        if (demands.Count == 0) return new(new(1, 1), []);
        var (slowest, fastest) = (
            demands.Min(demand => demand.Wanted.RevolutionsPerMinute), demands.Max(demand => demand.Wanted.RevolutionsPerMinute));
        var unloaded = Merged(Bands(press, candidate, evaluator, 0), wishes);
        var loaded = Merged(Bands(press, candidate, evaluator, Speeds.SpeedChart.StatedShare), wishes);
        var (bare, under) = (ShareOf(unloaded, slowest, fastest), ShareOf(loaded, slowest, fastest));
        return new(new(Math.Min(bare, under), Math.Max(bare, under)), GapsOf(unloaded, slowest, fastest));
    }

    /// <summary>Speeds of every position, r/min, under a share of rated torque.</summary>
    private static IEnumerable<(double From, double To)> Bands(DrillPress press, Candidate candidate, CandidateEvaluator evaluator, double load)
    {
        if (candidate.Kind != CandidateKind.Converted)
            return candidate.Pulleys.Belts.Select(belt => press.AsFound!.Speed.RevolutionsPerMinute / belt.Ratio).Select(rpm => (rpm, rpm));
        var reader = evaluator.Reader(candidate, Side.Capability);
        var limits = candidate.Limits!.Value;
        var loadNm = load * candidate.Motor!.Motor.RatedTorque.NewtonMeters;
        double Rpm(double hertz) => 120 * hertz / candidate.Motor.Poles * (1 - (load == 0 ? 0 : reader.Slip(hertz, loadNm)));
        return candidate.Pulleys.Belts.Select(belt =>
        {
            var top = Math.Min(limits.Highest.Hertz, evaluator.PermittedHertz(candidate, belt));
            // A motor that stalls at this load at the lowest frequency covers the slow end only as slow as it turns where it carries it.
            var (from, to) = (Rpm(limits.Lowest.Hertz), Rpm(top));
            return double.IsNaN(to) || top < limits.Lowest.Hertz ? (0, 0) : ((double.IsNaN(from) ? LowestCarried(Rpm, limits.Lowest.Hertz, top) : from) / belt.Ratio, to / belt.Ratio);
        }).Where(band => band.Item2 > 0);
    }

    private static double LowestCarried(Func<double, double> rpm, double stalls, double carries)
    {
        for (var step = 0; step < 30; step++)
        {
            var middle = (stalls + carries) / 2;
            if (double.IsNaN(rpm(middle))) stalls = middle;
            else carries = middle;
        }
        return rpm(carries);
    }

    private static List<(double From, double To)> Merged(IEnumerable<(double From, double To)> bands, SizingWishes wishes)
    {
        List<(double From, double To)> merged = [];
        foreach (var (from, to) in bands.Select(band => (From: band.From / WorkDemand.FastestShare, To: band.To / wishes.SlowestShare)).OrderBy(band => band.From))
            if (merged.Count > 0 && from <= merged[^1].To) merged[^1] = (merged[^1].From, Math.Max(merged[^1].To, to));
            else merged.Add((from, to));
        return merged;
    }

    private static double ShareOf(List<(double From, double To)> bands, double slowest, double fastest)
    {
        if (fastest <= slowest * (1 + 1e-9)) return bands.Any(band => band.From <= slowest && slowest <= band.To) ? 1 : 0;
        var covered = bands.Sum(band => Math.Max(0, Math.Log(Math.Min(band.To, fastest) / Math.Max(band.From, slowest))));
        return Math.Clamp(covered / Math.Log(fastest / slowest), 0, 1);
    }

    private static List<(RotationalSpeed, RotationalSpeed)> GapsOf(List<(double From, double To)> bands, double slowest, double fastest)
    {
        List<(RotationalSpeed, RotationalSpeed)> gaps = [];
        var reached = slowest;
        foreach (var (from, to) in bands)
        {
            if (from > fastest) break;
            if (from > reached) gaps.Add((Rpm(reached), Rpm(from)));
            reached = Math.Max(reached, to);
        }
        if (reached < fastest) gaps.Add((Rpm(reached), Rpm(fastest)));
        return gaps;

        static RotationalSpeed Rpm(double rpm) => RotationalSpeed.FromRevolutionsPerMinute(rpm);
    }
}
