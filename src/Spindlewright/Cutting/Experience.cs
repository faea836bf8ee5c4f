using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Cutting;

/// <summary>What the owner found to work: one drill in one material at one spindle speed.</summary>
/// <param name="MaterialId">Short name of the material.</param>
/// <param name="Diameter">Drill diameter, above 0.</param>
/// <param name="Speed">Spindle speed, above 0.</param>
/// <param name="Note">The owner's words; may be empty.</param>
public sealed record Experience(string MaterialId, Length Diameter, RotationalSpeed Speed, string Note = "")
{
    private const string Part = "experience";

    /// <summary>Drill diameter.</summary>
    public Length Diameter { get; } = Guard.Positive(Diameter, Part, "drill diameter");

    /// <summary>Spindle speed.</summary>
    public RotationalSpeed Speed { get; } = Guard.Positive(Speed, Part, "spindle speed");

    /// <summary>Cutting speed at the outside of the drill.</summary>
    public Speed CuttingSpeed => Cutting.CuttingSpeed.Of(Speed, Diameter);
}

/// <summary>The owner's own line of cutting speed in one material, to stand beside the handbook's.</summary>
/// <param name="Material">The material.</param>
/// <param name="Middle">Geometric mean of the owner's cutting speeds.</param>
/// <param name="Slowest">Slowest of them.</param>
/// <param name="Fastest">Fastest of them.</param>
/// <param name="OverHandbook">Mean over the middle of the handbook's range.</param>
/// <param name="Rows">What it rests on.</param>
/// <remarks>It never replaces the handbook's line: it stands beside it.</remarks>
public sealed record ExperienceLine(
    CuttingMaterial Material, Speed Middle, Speed Slowest, Speed Fastest, double OverHandbook, IReadOnlyList<Experience> Rows)
{
    /// <summary>The owner's line in a material.</summary>
    /// <param name="material">The material.</param>
    /// <param name="experience">All of the owner's rows.</param>
    /// <returns>The line; null where no row is about this material.</returns>
    public static ExperienceLine? Of(CuttingMaterial material, IEnumerable<Experience> experience)
    {
        var rows = experience.Where(row => row.MaterialId == material.Id).ToList();
        if (rows.Count == 0) return null;
        var speeds = rows.Select(row => row.CuttingSpeed.MetersPerSecond).ToList();
        var mean = Math.Exp(speeds.Average(Math.Log));
        return new(
            material, Speed.FromMetersPerSecond(mean), Speed.FromMetersPerSecond(speeds.Min()),
            Speed.FromMetersPerSecond(speeds.Max()), mean / material.MiddleSpeed.MetersPerSecond, rows);
    }
}
