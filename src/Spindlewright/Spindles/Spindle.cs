using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Spindles;

/// <summary>The spindle with its chuck.</summary>
/// <param name="ChuckDiameter">Outside diameter of the chuck body, 10 mm to 250 mm.</param>
/// <param name="HighestSpeed">Highest speed that chuck and bearings are made for; null where unknown.</param>
/// <param name="FrictionTorque">Drag of spindle bearings and seals, 0 N·m to 5 N·m; 0 on the hazard side.</param>
public sealed record Spindle(Length ChuckDiameter, RotationalSpeed? HighestSpeed, Sided<Torque> FrictionTorque)
{
    private const string Part = "spindle";

    /// <summary>Outside diameter of the chuck body.</summary>
    public Length ChuckDiameter { get; } = Guard.Within(
        ChuckDiameter, Length.FromMillimeters(10), Length.FromMillimeters(250), Part, "chuck diameter");

    /// <summary>Highest speed that chuck and bearings are made for; null where unknown.</summary>
    public RotationalSpeed? HighestSpeed { get; } =
        HighestSpeed is { } given ? Guard.Positive(given, Part, "highest speed") : null;

    /// <summary>Drag of bearings and seals.</summary>
    public Sided<Torque> FrictionTorque { get; } = FrictionTorque.Map(torque => Guard.Within(
        torque, Torque.Zero, Torque.FromNewtonMeters(5), Part, "friction torque"));
}
