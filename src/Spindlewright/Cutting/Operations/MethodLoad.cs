using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Cutting.Operations;

/// <summary>Torque and thrust by one method.</summary>
/// <param name="Method">Its name.</param>
/// <param name="Torque">Cutting torque.</param>
/// <param name="Thrust">Thrust; null where the method gives none.</param>
/// <param name="Source">Where its constants come from.</param>
public sealed record MethodLoad(string Method, Torque Torque, Force? Thrust, Citation Source);

/// <summary>Torque and thrust of an operation by every method that has an answer; the first is the one used.</summary>
/// <param name="Methods">At least one; the handbook method first where it applies.</param>
/// <remarks>
/// Published methods differ by a factor of two, and the spread is part of the answer: nothing is averaged. Specific cutting force
/// leaves out margins, chisel edge and wear; the power laws stand for a sharp drill.
/// </remarks>
public sealed record OperationLoad(IReadOnlyList<MethodLoad> Methods)
{
    /// <summary>Torque of the method used.</summary>
    public Torque Torque => Methods[0].Torque;

    /// <summary>Thrust of the method used; null where it gives none.</summary>
    public Force? Thrust => Methods[0].Thrust;

    /// <summary>Torque over all methods, least to most.</summary>
    public (Torque Least, Torque Most) TorqueSpread => (Methods.Min(each => each.Torque), Methods.Max(each => each.Torque));

    /// <summary>Thrust over all methods that give one; null where none does.</summary>
    public (Force Least, Force Most)? ThrustSpread => Methods.Select(each => each.Thrust).OfType<Force>().ToList() is { Count: > 0 } all
        ? (all.Min(), all.Max())
        : null;

    /// <summary>Power at the tool.</summary>
    /// <param name="spindle">Spindle speed.</param>
    /// <returns>Torque of the method used times angular speed.</returns>
    public Power Power(RotationalSpeed spindle) => UnitsNet.Power.FromWatts(Torque.NewtonMeters * spindle.RadiansPerSecond);

    /// <summary>Torque when the feed jumps as the point breaks through.</summary>
    /// <param name="feedJump">Feed over the feed before, 1 to 10.</param>
    /// <returns>Torque × jump^0.8, the exponent of the feed factor.</returns>
    /// <exception cref="PartException">The jump is out of range.</exception>
    public Torque AtBreakThrough(double feedJump) =>
        Torque * Math.Pow(Guard.Within(feedJump, 1, 10, "break-through", "feed over the feed before"), 0.8);

    /// <summary>The loads of an operation at a feed.</summary>
    /// <param name="operation">The operation.</param>
    /// <param name="feed">Feed a revolution.</param>
    /// <param name="factors">The handbook's factors.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The loads; null for spin testing, and for tapping in a material without a tapping force.</returns>
    /// <exception cref="PartException">A value is off the tables.</exception>
    public static OperationLoad? Of(Operation operation, Length feed, IDrillFactors factors, Handbook handbook)
    {
        var methods = operation.Kind switch
        {
            OperationKind.SpinTesting => [],
            OperationKind.Tapping => Tapping(operation),
            _ => Cutting(operation, feed, factors, handbook),
        };
        return methods.Count > 0 ? new(methods) : null;
    }

    private static List<MethodLoad> Tapping(Operation operation) =>
        operation is { Tap: { } tap, Material.TappingForce: { } force }
            ? [new("thread geometry", tap.Torque(force.Value), null, Cited(force))]
            : [];

    private static List<MethodLoad> Cutting(Operation operation, Length feed, IDrillFactors factors, Handbook handbook)
    {
        List<MethodLoad> methods = [];
        var (material, diameter) = (operation.Material, operation.Diameter);
        var solid = operation.Hole is null;
        if (ByHandbook(operation, feed, factors) is { } load)
            methods.Add(new(
                solid ? "handbook method" : "handbook method with a pilot hole", load.Torque, load.Thrust, Cited(material.TorqueFactor)));
        methods.Add(BySpecificForce(operation, feed, handbook));
        if (solid && Operation.DrillsFromTable(operation.Kind) && material.PowerLaw is { } law)
            methods.Add(new(
                "power law, sharp", law.Value.TorqueAt(diameter, feed), law.Value.ThrustAt(diameter, feed), Cited(law)));
        return methods;
    }

    /// <summary>The handbook method where the cut is that of a drill, or of lips around a hole; null elsewhere.</summary>
    private static TwistDrillLoad? ByHandbook(Operation operation, Length feed, IDrillFactors factors)
    {
        var (kind, hole) = (operation.Kind, operation.Hole);
        if (Operation.DrillsFromTable(kind))
            return TwistDrillLoad.Of(factors, operation.Material, operation.Diameter, feed, operation.Condition, hole);
        var lipsAroundAHole = kind is OperationKind.Counterboring or OperationKind.Reaming or OperationKind.SeatCutting
            && hole >= operation.Diameter * operation.Condition.ChiselOverDiameter
            && operation.Diameter >= TwistDrillLoad.LeastDiameter && operation.Diameter <= TwistDrillLoad.MostDiameter
            && feed >= TwistDrillLoad.LeastFeed && feed <= TwistDrillLoad.MostFeed;
        return lipsAroundAHole
            ? TwistDrillLoad.Of(factors, operation.Material, operation.Diameter, feed, operation.Condition, hole)
            : null;
    }

    private static MethodLoad BySpecificForce(Operation operation, Length feed, Handbook handbook)
    {
        var facts = handbook.CuttingFacts;
        var diameter = operation.Diameter;
        var inside = operation.Kind == OperationKind.HoleSawing
            ? diameter - Length.FromMillimeters(2 * facts["hole-saw-kerf"].Required().Value)
            : operation.Hole ?? Length.Zero;
        var teeth = operation.Kind switch
        {
            OperationKind.Reaming => facts["reamer-flutes"].Required().Value,
            OperationKind.Countersinking => facts["countersink-flutes"].Required().Value,
            OperationKind.Counterboring => facts["counterbore-teeth"].Required().Value,
            OperationKind.SeatCutting => facts["seat-teeth"].Required().Value,
            OperationKind.HoleSawing => Math.Max(4, Math.PI * diameter.Millimeters / facts["hole-saw-tooth-pitch"].Required().Value),
            _ => 2,
        };
        var chip = Operation.DrillsFromTable(operation.Kind) ? SpecificForce.DrillChip(feed)
            : operation.Kind is OperationKind.Countersinking or OperationKind.Reaming ? feed / teeth * Math.Sqrt(0.5)
            : feed / teeth;
        var force = operation.Material.SpecificForce;
        return new(
            "specific cutting force", force.Value.TorqueFor(chip, Removal.PerRevolution(diameter, inside, feed)), null, Cited(force));
    }

    private static Citation Cited<T>(Sourced<T> sourced) => new(sourced.Source, sourced.Provenance, sourced.Note);
}
