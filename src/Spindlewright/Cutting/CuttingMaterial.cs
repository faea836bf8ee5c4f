using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Cutting;

/// <summary>A work material as the handbook method and the cutting-speed tables know it.</summary>
/// <param name="Id">Short name used in machine files, such as "mild-steel".</param>
/// <param name="Name">Name shown to people.</param>
/// <param name="TorqueFactor">Kd for torque; the same number in inch and SI forms of the method.</param>
/// <param name="ThrustFactor">Kd for thrust.</param>
/// <param name="SlowestSpeed">Low end of the cutting speed of high-speed steel drills.</param>
/// <param name="FastestSpeed">High end of the cutting speed of high-speed steel drills.</param>
public sealed record CuttingMaterial(
    string Id, string Name, Sourced<double> TorqueFactor, Sourced<double> ThrustFactor,
    Sourced<Speed> SlowestSpeed, Sourced<Speed> FastestSpeed);
