using Spindlewright.Cutting;
using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Machines;

/// <summary>One hole that the owner wants to drill.</summary>
/// <param name="Name">What the owner calls it.</param>
/// <param name="Material">The work.</param>
/// <param name="Diameter">Drill diameter, 1.6 mm to 76 mm.</param>
/// <param name="FeedPerRevolution">Feed per revolution, 0.01 mm to 1.25 mm.</param>
/// <param name="Condition">Point and wear.</param>
/// <param name="WantedSpeed">Spindle speed that the owner asks for; null for the middle of the cutting-speed range.</param>
public sealed record WorkItem(
    string Name, CuttingMaterial Material, Length Diameter, Length FeedPerRevolution, DrillCondition Condition,
    RotationalSpeed? WantedSpeed)
{
    private const string Part = "work";

    /// <summary>Drill diameter.</summary>
    public Length Diameter { get; } = Guard.Within(
        Diameter, Length.FromMillimeters(1.6), Length.FromMillimeters(76), Part, "drill diameter",
        "the span of the handbook's tables");

    /// <summary>Feed per revolution.</summary>
    public Length FeedPerRevolution { get; } = Guard.Within(
        FeedPerRevolution, Length.FromMillimeters(0.01), Length.FromMillimeters(1.25), Part, "feed per revolution",
        "the span of the handbook's tables");

    /// <summary>Spindle speed that the owner asks for.</summary>
    public RotationalSpeed? WantedSpeed { get; } =
        WantedSpeed is { } given ? Guard.Positive(given, Part, "wanted speed") : null;

    /// <summary>The speed that the study looks for.</summary>
    public RotationalSpeed Speed => WantedSpeed ?? CuttingSpeed.SpindleSpeed(
        (Material.SlowestSpeed.Value + Material.FastestSpeed.Value) / 2, Diameter);
}
