using Spindlewright.Cutting;
using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using UnitsNet;

namespace Spindlewright.Studies.Speeds;

/// <summary>Cutting speeds of one material against the machine's slowest speeds.</summary>
/// <param name="Material">The material.</param>
/// <param name="Operations">Cutting speeds of every operation that has one.</param>
/// <param name="TooFastFrom">Diameter from which the slowest speed of the converted machine is above the drill's cutting speed.</param>
/// <param name="TooFastFromFixed">The same for the slowest fixed speed of many bench drills.</param>
/// <param name="Experience">The owner's own line; null where there is none.</param>
public sealed record MaterialSpeeds(
    CuttingMaterial Material, IReadOnlyList<(OperationKind Kind, OperationSpeeds Speeds)> Operations, Length TooFastFrom,
    Length TooFastFromFixed, ExperienceLine? Experience);

/// <summary>What the tables of cutting speeds, and the owner, say to the machine's speeds.</summary>
/// <param name="Slowest">Slowest spindle speed of the converted machine, unloaded.</param>
/// <param name="SlowestFixed">Slowest fixed speed: of the machine as found, or of many bench drills.</param>
/// <param name="SlowestFixedIsOwn">True where it is that of the machine as found.</param>
/// <param name="Materials">One a material: the owner's first.</param>
public sealed record CuttingSpeedStudy(
    RotationalSpeed Slowest, RotationalSpeed SlowestFixed, bool SlowestFixedIsOwn, IReadOnlyList<MaterialSpeeds> Materials)
{
    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="speeds">Its speeds.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>Speeds by material and operation.</returns>
    public static CuttingSpeedStudy Of(DrillPress press, SpeedStudy speeds, Handbook handbook)
    {
        var found = press.AsFound is { } before ? before.Belts.Min(belt => belt.SpindleSpeed(before.Speed)) : (RotationalSpeed?)null;
        var slowestFixed = found
            ?? RotationalSpeed.FromRevolutionsPerMinute(handbook.CuttingFacts["bench-slowest-fixed-speed"].Required().Value);
        var own = press.OwnMaterials.Select(material => material.Id).ToHashSet(StringComparer.Ordinal);
        IEnumerable<CuttingMaterial> materials =
            [.. press.OwnMaterials, .. handbook.Materials.Where(row => !own.Contains(row.Id)).Select(row => CuttingMaterial.Of(row, handbook))];
        return new(speeds.Slowest, slowestFixed, found is not null, [.. materials.Select(material => new MaterialSpeeds(
            material,
            [.. OperationWords.All.Select(each => (each.Kind, Speeds: OperationSpeeds.Of(each.Kind, material, handbook)))
                .Where(each => each.Speeds is not null).Select(each => (each.Kind, each.Speeds!))],
            TooFastFrom(material.FastestSpeed.Value, speeds.Slowest), TooFastFrom(material.FastestSpeed.Value, slowestFixed),
            ExperienceLine.Of(material, press.Experience)))]);
    }

    /// <summary>Diameter from which a spindle speed is above a cutting speed: v/(π n).</summary>
    /// <param name="cutting">Cutting speed.</param>
    /// <param name="spindle">Spindle speed, above 0.</param>
    /// <returns>The diameter.</returns>
    public static Length TooFastFrom(Speed cutting, RotationalSpeed spindle) =>
        Length.FromMeters(cutting.MetersPerSecond / (Math.PI * spindle.RevolutionsPerSecond));
}
