using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Cutting.Operations;

/// <summary>One operation as it is asked for.</summary>
/// <param name="Kind">What is done.</param>
/// <param name="Material">The work.</param>
/// <param name="Diameter">Outside diameter of the cut: drill, reamer, cutter, major diameter of a thread.</param>
public sealed record Operation(OperationKind Kind, CuttingMaterial Material, Length Diameter)
{
    private const string Part = "operation";
    private static readonly Length LeastDiameter = Length.FromMillimeters(1);
    private static readonly Length MostDiameter = Length.FromMillimeters(150);

    /// <summary>Outside diameter of the cut, 1.6 mm to 76 mm for a drill, 1 mm to 150 mm else.</summary>
    public Length Diameter { get; } = DrillsFromTable(Kind)
        ? Guard.Within(
            Diameter, TwistDrillLoad.LeastDiameter, TwistDrillLoad.MostDiameter, Part, "drill diameter", "the span of the handbook's tables")
        : Guard.Within(Diameter, LeastDiameter, MostDiameter, Part, "diameter");

    /// <summary>Diameter of the hole that is there already, or of the core that stays; null for none.</summary>
    public Length? Hole
    {
        get;
        init => field = value is { } hole
            ? Guard.Within(hole, Length.FromMillimeters(0.1), Diameter * TwistDrillLoad.MostPilotOverDiameter, Part, "existing hole", "narrower than the cut")
            : null;
    }

    /// <summary>Feed a revolution; null for what the tables give.</summary>
    public Length? Feed
    {
        get;
        init => field = value is { } feed ? Guard.Positive(feed, Part, "feed per revolution") : null;
    }

    /// <summary>Depth of the cut; two diameters unless said otherwise.</summary>
    public Length Depth
    {
        get;
        init => field = Guard.Positive(value, Part, "depth");
    } = Diameter * 2;

    /// <summary>Point and wear of a drill.</summary>
    public DrillCondition Condition { get; init; } = DrillCondition.Usual;

    /// <summary>What the tool is made of; null for high-speed steel.</summary>
    public ToolMaterialRow? Tool { get; init; }

    /// <summary>How it is cooled.</summary>
    public Cooling Cooling { get; init; }

    /// <summary>The thread to tap; null where none is.</summary>
    public TapCut? Tap { get; init; }

    /// <summary>Whether the tool is a twist drill of the handbook's tables.</summary>
    /// <param name="kind">The operation.</param>
    /// <returns>True for drilling, deep drilling and opening out.</returns>
    public static bool DrillsFromTable(OperationKind kind) =>
        kind is OperationKind.Drilling or OperationKind.DeepDrilling or OperationKind.OpeningOut;
}
