using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Cutting.Operations;

/// <summary>Cutting speeds of an operation.</summary>
/// <param name="Slowest">Low end.</param>
/// <param name="Fastest">High end.</param>
/// <param name="Sources">Where they come from: the material's row first, then each rule that was applied.</param>
public sealed record OperationSpeeds(Speed Slowest, Speed Fastest, IReadOnlyList<Citation> Sources)
{
    /// <summary>Diameters' worth of depth from which a hole counts as deep.</summary>
    public const double DeepFromDiameters = 3;

    /// <summary>Middle of the range.</summary>
    public Speed Middle => (Slowest + Fastest) / 2;

    /// <summary>Spindle speed for the middle of the range.</summary>
    /// <param name="diameter">Outside diameter of the cut.</param>
    /// <returns>Spindle speed.</returns>
    public RotationalSpeed Spindle(Length diameter) => CuttingSpeed.SpindleSpeed(Middle, diameter);

    /// <summary>Cutting speeds of an operation in a material.</summary>
    /// <param name="kind">The operation; spin testing has none.</param>
    /// <param name="material">The work.</param>
    /// <param name="handbook">Tables.</param>
    /// <param name="tool">Tool material; null for high-speed steel.</param>
    /// <param name="cooling">How it is cooled.</param>
    /// <returns>The range; null for spin testing, whose speed is given.</returns>
    public static OperationSpeeds? Of(
        OperationKind kind, CuttingMaterial material, Handbook handbook, ToolMaterialRow? tool = null,
        Cooling cooling = Cooling.AsPrinted)
    {
        var drill = new OperationSpeeds(material.SlowestSpeed.Value, material.FastestSpeed.Value, [CitationOf(material.SlowestSpeed)]);
        if (OfKind(kind, material, drill, handbook.CuttingFacts) is not { } speeds) return null;
        if (tool is not null) speeds = speeds.Times(tool.SpeedFactor, tool.Citation);
        return cooling == Cooling.ByHand ? speeds.Times(handbook.CuttingFacts["hand-oil"]) : speeds;
    }

    private static OperationSpeeds? OfKind(
        OperationKind kind, CuttingMaterial material, OperationSpeeds drill, Table<FactRow> facts) => kind switch
        {
            OperationKind.Drilling or OperationKind.OpeningOut => drill,
            OperationKind.DeepDrilling => drill.Times(facts["deep-hole"]),
            OperationKind.Reaming when material.ReamSpeed is { } ream => new(ream.Value, ream.Value, [CitationOf(ream)]),
            OperationKind.Reaming => drill.Times(facts["machine-reaming-speed"]),
            OperationKind.Countersinking => drill.Times(facts["countersink-speed"]),
            OperationKind.Counterboring => drill.Times(facts["counterbore-speed"]),
            OperationKind.HoleSawing when material.HoleSawSpeed is { } saw => new(saw.Value, saw.Value, [CitationOf(saw)]),
            OperationKind.HoleSawing => drill,
            OperationKind.Tapping => drill.Times(facts["tapping-speed"]),
            OperationKind.SeatCutting => drill.Times(facts["seat-speed"]),
            _ => null,
        };

    private OperationSpeeds Times(FactRow fact) => Times(
        fact.Low is not null ? fact.Range().Value : new(fact.Required().Value, fact.Required().Value), fact.Citation);

    private OperationSpeeds Times(Interval factor, Citation citation) =>
        new(Slowest * factor.Least, Fastest * factor.Most, [.. Sources, citation]);

    private static Citation CitationOf<T>(Sourced<T> sourced) => new(sourced.Source, sourced.Provenance, sourced.Note);
}
