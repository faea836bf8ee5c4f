using Spindlewright.Cutting;
using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Machines;

/// <summary>One operation that the owner wants to do.</summary>
/// <param name="Name">What the owner calls it.</param>
/// <param name="Material">The work.</param>
/// <param name="Diameter">Drill diameter, 1.6 mm to 76 mm; 1 mm to 150 mm for other tools.</param>
/// <param name="FeedPerRevolution">Feed per revolution, 0.01 mm to 1.25 mm; up to 10 mm for other tools.</param>
/// <param name="Condition">Point and wear.</param>
/// <param name="WantedSpeed">Spindle speed that the owner asks for; null for the middle of the cutting-speed range.</param>
/// <param name="Kind">What is done.</param>
public sealed record WorkItem(
    string Name, CuttingMaterial Material, Length Diameter, Length FeedPerRevolution, DrillCondition Condition,
    RotationalSpeed? WantedSpeed, OperationKind Kind = OperationKind.Drilling)
{
    private const string Part = "work";

    /// <summary>Feed per revolution.</summary>
    public Length FeedPerRevolution { get; } = Operation.DrillsFromTable(Kind)
        ? Guard.Within(
            FeedPerRevolution, TwistDrillLoad.LeastFeed, TwistDrillLoad.MostFeed, Part, "feed per revolution",
            "the span of the handbook's tables")
        : Guard.Within(
            FeedPerRevolution, TwistDrillLoad.LeastFeed, Length.FromMillimeters(10), Part, "feed per revolution");

    /// <summary>Spindle speed that the owner asks for.</summary>
    public RotationalSpeed? WantedSpeed { get; } =
        WantedSpeed is { } given ? Guard.Positive(given, Part, "wanted speed") : null;

    /// <summary>The operation with hole, depth, tool and cooling; a plain one where nothing more was said.</summary>
    public Operation Operation { get; init; } = new(Kind, Material, Diameter) { Feed = FeedPerRevolution, Condition = Condition };

    /// <summary>Speed of the tables for this operation; null for the middle of the drill's cutting-speed range.</summary>
    public RotationalSpeed? TableSpeed { get; init; }

    /// <summary>How many in a row, 1 to 100000.</summary>
    public int Holes { get; init => field = value is >= 1 and <= 100_000
        ? value : throw new PartException(Part, "number of holes", FormattableString.Invariant($"{value}"), "1 to 100000"); } = 10;

    /// <summary>Time between two holes with the motor running unloaded.</summary>
    public Duration Pause { get; init => field = Guard.NotNegative(value, Part, "pause"); } = Duration.FromSeconds(30);

    /// <summary>The speed that the study looks for.</summary>
    public RotationalSpeed Speed => WantedSpeed ?? TableSpeed ?? CuttingSpeed.SpindleSpeed(Material.MiddleSpeed, Diameter);

    /// <summary>What the item asks of the spindle.</summary>
    /// <param name="factors">The handbook's factors.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>Speed, feed, torque, thrust, power and time.</returns>
    public OperationCut Cut(IDrillFactors factors, Handbook handbook) => OperationCut.Of(Operation, factors, handbook, Speed);
}
