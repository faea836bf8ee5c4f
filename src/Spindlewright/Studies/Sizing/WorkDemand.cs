using Spindlewright.Cutting;
using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Studies.Sizing;

/// <summary>What one operation asks of any candidate.</summary>
/// <param name="Item">The operation.</param>
/// <param name="Piloted">True where the arm does not push the drill into the full, and a pilot hole is drilled first.</param>
/// <param name="Torque">Torque at the spindle, at the feed that the arm keeps up where that is less than the feed asked for.</param>
/// <param name="Slowest">Slowest speed at which it counts as done.</param>
/// <param name="Wanted">Speed wanted.</param>
/// <param name="Fastest">Fastest speed at which it counts as done.</param>
/// <param name="Cutting">Time of one hole in the cut at the wanted speed; of spin testing the time it turns.</param>
/// <param name="Rest">Time between two holes, the motor running unloaded.</param>
/// <param name="Holes">How many in a row.</param>
/// <param name="Unmet">Why no motor whatever does it: arm or column; null where it depends on the motor.</param>
public sealed record WorkDemand(
    WorkItem Item, bool Piloted, Torque Torque, RotationalSpeed Slowest, RotationalSpeed Wanted, RotationalSpeed Fastest, Duration Cutting,
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
        var (cut, piloted, unmet) = Pushed(press, handbook, factors, item);
        // A mounted assembly is turned to look at it at a speed: slower is not done.
        var slowest = item.Kind == OperationKind.SpinTesting ? 1 / FastestShare : wishes.SlowestShare;
        var (cutting, rest) = cut.Time is { } time ? (time.Cutting, time.Handling + item.Pause) : (item.Pause, Duration.Zero);
        return new(
            item, piloted, cut.Load?.Torque ?? Torque.Zero, item.Speed * slowest, item.Speed, item.Speed * FastestShare, cutting, rest,
            Math.Min(item.Holes, MostHolesFollowed), unmet);
    }

    /// <summary>The cut at the feed that the arm keeps up; a drill that the arm does not push into the full gets a pilot hole first.</summary>
    private static (OperationCut Cut, bool Piloted, string? Unmet) Pushed(DrillPress press, Handbook handbook, TabulatedFactors factors, WorkItem item)
    {
        var cut = item.Cut(factors, handbook);
        if (!Operation.DrillsFromTable(item.Kind)) return (cut, false, ColumnShort(press, cut));
        HandFeed Fed(Length? hole) => HandFeed.Of(factors, item.Material, item.Diameter, item.Condition, press.Quill.SustainedThrust, hole);
        var (fed, operation) = (Fed(item.Operation.Hole), item.Operation);
        var piloted = fed.FeedPerRevolution is null && operation.Hole is null;
        if (piloted)
        {
            operation = operation with { Hole = item.Diameter * Work.LargestDrillStudy.PilotShare };
            fed = Fed(operation.Hole);
        }
        if (fed.FeedPerRevolution is not { } most)
            return (cut, piloted, Invariant($"the arm gives {fed.Thrust.Newtons:0} N, and below {fed.LeastThrust.Newtons:0} N nothing is cut"));
        if (piloted || most < cut.Feed)
            cut = OperationCut.Of(operation with { Feed = cut.Feed is { } asked ? UnitMath.Min(asked, most) : most }, factors, handbook, item.Speed);
        return (cut, piloted, ColumnShort(press, cut));
    }

    private static string? ColumnShort(DrillPress press, OperationCut cut) =>
        cut.Load?.Thrust is { } thrust && press.Quill.GreatestThrust is { } greatest && thrust > greatest
            ? Invariant($"{thrust.Newtons:0} N of thrust, and the column bears {greatest.Newtons:0} N")
            : null;
}
