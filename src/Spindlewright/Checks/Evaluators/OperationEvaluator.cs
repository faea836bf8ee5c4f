using Spindlewright.Cutting;
using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Checks of removal rate, second methods of torque, tapping, hole saws, speeds of operations and tool life.</summary>
internal sealed class OperationEvaluator : ICheckEvaluator
{
    private const string Rate = "removal rate";
    private const string UnitPower = "torque by unit power";
    private const string ByPowerLaw = "torque by power law";
    private const string ByForce = "torque by specific cutting force";
    private const string Tapping = "tapping torque";
    private const string SawProduct = "hole-saw speed times diameter";
    private const string SpeedShare = "speed over drilling speed";
    private const string SelfFeeding = "self-feeding limit";
    private const string Life = "tool life ratio";
    private const string TooFast = "diameter too large for a speed";
    private const string Engagement = "thread engagement";

    public string Area => "drilling";

    public IReadOnlyCollection<string> Quantities { get; } =
        [Rate, UnitPower, ByPowerLaw, ByForce, Tapping, SawProduct, SpeedShare, SelfFeeding, Life, TooFast, Engagement];

    public Evaluation Evaluate(Check check, Handbook handbook)
    {
        var (inputs, unit) = (check.Inputs, check.Unit);
        return check.Quantity switch
        {
            Rate => new(CubicMillimetres(inputs, unit), unit, "pi/4 D^2 f n"),
            UnitPower => new(NewtonMetres(UnitPowerTorque(inputs), unit), unit, "unit power times volume a revolution over 2 pi"),
            ByPowerLaw => new(NewtonMetres(PowerLawTorque(inputs, handbook), unit), unit, "10 C D^q s^y"),
            ByForce => new(NewtonMetres(ForceTorque(inputs, handbook), unit), unit, "specific cutting force, kc f d^2/8"),
            Tapping => new(NewtonMetres(TappingTorque(inputs, handbook), unit), unit, "thread geometry"),
            SawProduct => new(InchRevolutions(inputs, handbook, unit), unit, "speed of the material's row"),
            SpeedShare => new(InUnit.Plain(Share(inputs, handbook), unit), unit, "speeds of the operation"),
            SelfFeeding => new(
                InUnit.Of(
                    SelfFeed.Lead(Length.FromMillimeters(inputs.Number("drill_mm")), Angle.FromDegrees(inputs.Number("helix_deg"))),
                    QuantityKinds.Length, unit),
                unit, "pi d / tan(helix angle)"),
            Life => new(InUnit.Plain(ToolLife.Ratio(inputs.Number("speed_ratio"), inputs.Number("exponent")), unit), unit, "Taylor"),
            TooFast => new(
                InUnit.Of(
                    Studies.Speeds.CuttingSpeedStudy.TooFastFrom(
                        CuttingMaterial.Of(inputs.Word("material"), handbook).FastestSpeed.Value,
                        RotationalSpeed.FromRevolutionsPerMinute(inputs.Number("speed_r_per_min"))),
                    QuantityKinds.Length, unit),
                unit, "v / (pi n)"),
            _ => new(InUnit.Plain(handbook.Threads[inputs.Word("thread")].Engagement, unit), unit, "(D - hole)/(1.0825 P)"),
        };
    }

    private static double NewtonMetres(Torque torque, string unit) => InUnit.Of(torque, QuantityKinds.Torque, unit);

    private static Volume PerRevolution(CheckInputs inputs) => Removal.PerRevolution(
        Length.FromMillimeters(inputs.Number("drill_mm")), Length.Zero, Length.FromMillimeters(inputs.Number("feed_mm_per_rev")));

    private static double CubicMillimetres(CheckInputs inputs, string unit) => unit == "mm3/s"
        ? Removal.Rate(PerRevolution(inputs), RotationalSpeed.FromRevolutionsPerMinute(inputs.Number("speed_r_per_min"))).CubicMillimetersPerSecond
        : throw new ArgumentException($"a removal rate has the unit mm3/s here, not '{unit}'.", nameof(unit));

    /// <summary>Energy a volume is a specific cutting force: W s/mm³ is kN/mm². The speed cancels, and is put in to show that it does.</summary>
    private static Torque UnitPowerTorque(CheckInputs inputs)
    {
        var spindle = RotationalSpeed.FromRevolutionsPerMinute(inputs.Number("speed_r_per_min"));
        var rate = Removal.Rate(PerRevolution(inputs), spindle);
        var watts = inputs.Number("unit_power_ws_per_mm3") * rate.CubicMillimetersPerSecond;
        return Torque.FromNewtonMeters(watts / spindle.RadiansPerSecond);
    }

    private static Torque PowerLawTorque(CheckInputs inputs, Handbook handbook)
    {
        var (diameter, feed) = (Length.FromMillimeters(inputs.Number("drill_mm")), Length.FromMillimeters(inputs.Number("feed_mm_per_rev")));
        var law = inputs.Has("row")
            ? handbook.PowerLaws[inputs.Word("row")].Torque
            : new PowerLaw(inputs.Number("coefficient"), inputs.Number("diameter_exponent"), inputs.Number("feed_exponent"));
        return Torque.FromNewtonMeters(law.At(diameter, feed));
    }

    private static Torque ForceTorque(CheckInputs inputs, Handbook handbook)
    {
        var row = handbook.Kienzle[inputs.Word("group")];
        var feed = Length.FromMillimeters(inputs.Number("feed_mm_per_rev"));
        return new SpecificForce(row.Kc11, row.ExponentMc).TorqueFor(SpecificForce.DrillChip(feed), PerRevolution(inputs));
    }

    private static Torque TappingTorque(CheckInputs inputs, Handbook handbook)
    {
        var material = CuttingMaterial.Of(inputs.Word("material"), handbook);
        var tap = TapCut.Of(handbook.Threads[inputs.Word("thread")], material, handbook);
        return tap.Torque(material.TappingForce!.Value);
    }

    private static double InchRevolutions(CheckInputs inputs, Handbook handbook, string unit)
    {
        if (unit != "in r/min") throw new ArgumentException($"this product has the unit in r/min, not '{unit}'.", nameof(unit));
        // The product does not depend on the diameter: any will do.
        var diameter = Length.FromInches(1.5);
        var material = CuttingMaterial.Of(inputs.Word("material"), handbook);
        return OperationSpeeds.Of(OperationKind.HoleSawing, material, handbook)!.Spindle(diameter).RevolutionsPerMinute * diameter.Inches;
    }

    private static double Share(CheckInputs inputs, Handbook handbook)
    {
        var kind = OperationWords.All.Single(each => each.Words == inputs.Word("operation")).Kind;
        var material = CuttingMaterial.Of(inputs.Word("material"), handbook);
        var tool = inputs.Has("tool") ? handbook.ToolMaterials[inputs.Word("tool")] : null;
        var cooling = inputs.Has("cooling") ? Cooling.ByHand : Cooling.AsPrinted;
        OperationSpeeds Of(OperationKind each) => OperationSpeeds.Of(each, material, handbook, tool, cooling)!;
        return Of(kind).Slowest / OperationSpeeds.Of(OperationKind.Drilling, material, handbook)!.Slowest;
    }
}
