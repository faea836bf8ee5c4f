using Spindlewright.Cutting;
using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Studies.Sizing;

/// <summary>What one operation asks of any candidate.</summary>
/// <param name="Item">The operation.</param>
/// <param name="Torque">Torque at the spindle, at the feed that the arm keeps up where that is less than the feed asked for.</param>
/// <param name="Slowest">Slowest speed at which it counts as done.</param>
/// <param name="Wanted">Speed wanted.</param>
/// <param name="Fastest">Fastest speed at which it counts as done.</param>
/// <param name="Cutting">Time of one hole in the cut at the wanted speed; of spin testing the time it turns.</param>
/// <param name="Rest">Time between two holes, the motor running unloaded.</param>
/// <param name="Holes">How many in a row.</param>
/// <param name="Unmet">Why no motor whatever does it: arm or column; null where it depends on the motor.</param>
public sealed record WorkDemand(
    WorkItem Item, Torque Torque, RotationalSpeed Slowest, RotationalSpeed Wanted, RotationalSpeed Fastest, Duration Cutting,
    Duration Rest, int Holes, string? Unmet)
{
    /// <summary>How much faster than wanted still counts as done. Own choice: a drill's life falls with about the eighth power of speed.</summary>
    public const double FastestShare = 1.05;

    /// <summary>Holes in a row beyond which a motor has settled.</summary>
    internal const int MostHolesFollowed = 500;

    /// <summary>The demands of all operations of a machine.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="wishes">How much slower an operation may turn.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>One an operation, in order.</returns>
    public static IReadOnlyList<WorkDemand> Of(DrillPress press, SizingWishes wishes, Handbook handbook)
    {
        var factors = new TabulatedFactors(handbook.Drilling);
        return [.. press.Work.Select(item => Of(press, wishes, handbook, factors, item))];
    }

    private static WorkDemand Of(DrillPress press, SizingWishes wishes, Handbook handbook, TabulatedFactors factors, WorkItem item)
    {
        var cut = item.Cut(factors, handbook);
        string? unmet = null;
        if (Operation.DrillsFromTable(item.Kind))
        {
            var fed = HandFeed.Of(factors, item.Material, item.Diameter, item.Condition, press.Quill.SustainedThrust, item.Operation.Hole);
            if (fed.FeedPerRevolution is not { } feed)
                unmet = Invariant($"the arm gives {fed.Thrust.Newtons:0} N, and below {fed.LeastThrust.Newtons:0} N nothing is cut");
            else if (feed < cut.Feed)
                cut = OperationCut.Of(item.Operation with { Feed = feed }, factors, handbook, item.Speed);
        }
        if (unmet is null && cut.Load?.Thrust is { } thrust && press.Quill.GreatestThrust is { } greatest && thrust > greatest)
            unmet = Invariant($"{thrust.Newtons:0} N of thrust, and the column bears {greatest.Newtons:0} N");
        // A mounted assembly is turned to look at it at a speed: slower is not done.
        var slowest = item.Kind == OperationKind.SpinTesting ? 1 / FastestShare : wishes.SlowestShare;
        var (cutting, rest) = cut.Time is { } time ? (time.Cutting, time.Handling + item.Pause) : (item.Pause, Duration.Zero);
        return new(
            item, cut.Load?.Torque ?? Torque.Zero, item.Speed * slowest, item.Speed, item.Speed * FastestShare, cutting, rest,
            Math.Min(item.Holes, MostHolesFollowed), unmet);
    }
}
