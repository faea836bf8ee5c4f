using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Cutting.Operations;

/// <summary>How long one hole takes.</summary>
/// <param name="Cutting">Tool in the cut.</param>
/// <param name="Handling">Bringing the quill down and up, clearing chips, reversing.</param>
public sealed record OperationTime(Duration Cutting, Duration Handling)
{
    /// <summary>Height of a 118° point over diameter: 1/(2 tan 59°).</summary>
    private const double PointHeightOverDiameter = 0.3;

    /// <summary>Both together.</summary>
    public Duration Whole => Cutting + Handling;

    /// <summary>Time of one hole.</summary>
    /// <param name="operation">The operation.</param>
    /// <param name="feed">Feed a revolution, above 0.</param>
    /// <param name="spindle">Spindle speed, above 0.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The time; setting up and clamping are not in it.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static OperationTime Of(Operation operation, Length feed, RotationalSpeed spindle, Handbook handbook)
    {
        Guard.Positive(feed, "time per hole", "feed per revolution");
        Guard.Positive(spindle, "time per hole", "spindle speed");
        var facts = handbook.CuttingFacts;
        var travel = Operation.DrillsFromTable(operation.Kind)
            ? operation.Depth + operation.Diameter * PointHeightOverDiameter
            : operation.Depth;
        // A tap comes back at the speed at which it went in.
        var ways = operation.Kind == OperationKind.Tapping ? 2 : 1;
        var cutting = Duration.FromSeconds(ways * travel.Millimeters / (feed.Millimeters * spindle.RevolutionsPerSecond));
        var deep = operation.Kind == OperationKind.DeepDrilling;
        var clearings = deep
            ? Math.Floor(operation.Depth / (operation.Diameter * facts["peck-depth"].Required().Value))
            : 0;
        return new(cutting, Duration.FromSeconds(
            facts["approach-time"].Required().Value + clearings * facts["peck-time"].Required().Value));
    }
}
