using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
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
    Sourced<Speed> SlowestSpeed, Sourced<Speed> FastestSpeed)
{
    /// <summary>Gathers a material of the handbook from its tables.</summary>
    /// <param name="row">The material.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The material with its factors and cutting speeds.</returns>
    public static CuttingMaterial Of(MaterialRow row, Handbook handbook)
    {
        var (factors, speeds) = (handbook.DrillingFactorOf(row), handbook.SpeedOf(row));
        return new(
            row.Id, row.Name, factors.Citation.On(factors.TorqueKd), factors.Citation.On(factors.ThrustKd),
            speeds.Citation.On(speeds.DrillLow), speeds.Citation.On(speeds.DrillHigh));
    }
}
