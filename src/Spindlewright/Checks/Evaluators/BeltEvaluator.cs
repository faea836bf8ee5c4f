using Spindlewright.Belts;
using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Checks of belt geometry, tension and grip.</summary>
internal sealed class BeltEvaluator : ICheckEvaluator
{
    private const string Friction = "effective friction";
    private const string Transmitted = "transmitted power";
    private const string OpenLength = "open belt length";
    private const string Wrap = "wrap angle of the small pulley";
    private const string Ratio = "tension ratio";
    private const string Tension = "static tension over deflection force";
    private const string SlackStrand = "wrap that closes the slip law";

    public string Area => "belt";

    public IReadOnlyCollection<string> Quantities { get; } =
        [Friction, Transmitted, OpenLength, Wrap, Ratio, Tension, SlackStrand];

    public Evaluation Evaluate(Check check, Handbook handbook)
    {
        var (inputs, unit) = (check.Inputs, check.Unit);
        return check.Quantity switch
        {
            Friction => new(
                InUnit.Plain(BeltGrip.EffectiveFriction(inputs.Number("friction"), Angle.FromDegrees(2 * inputs.Number("half_angle_deg"))), unit),
                unit, "mu / sin(beta/2)"),
            Transmitted => new(
                InUnit.Of(
                    BeltGrip.Power(
                        Force.FromPoundsForce(inputs.Number("tight_lbf")), Force.FromPoundsForce(inputs.Number("slack_lbf")),
                        Speed.FromFeetPerMinute(inputs.Number("belt_speed_ft_per_min"))),
                    QuantityKinds.Power, unit),
                unit, "(F1 - F2) v"),
            OpenLength => new(InUnit.Of(InchLayout(inputs).DatumLength, QuantityKinds.Length, unit), unit, "exact geometry"),
            Wrap => new(InUnit.Of(MetricLayout(inputs).WrapOfSmaller, QuantityKinds.Angle, unit), unit, "exact geometry"),
            Ratio => new(
                InUnit.Plain(
                    BeltGrip.TensionRatio(
                        BeltGrip.EffectiveFriction(inputs.Number("friction"), Angle.FromDegrees(inputs.Number("groove_deg"))),
                        MetricLayout(inputs).WrapOfSmaller), unit),
                unit, "exp(f theta)"),
            Tension => new(InUnit.Plain(TensionOverForce(inputs), unit), unit, "a string pushed aside at its middle"),
            _ => new(InUnit.Of(Closing(inputs), QuantityKinds.Angle, unit), unit, "ln(F1/F2)/f"),
        };
    }

    private static BeltLayout InchLayout(CheckInputs inputs) => new(
        new(Length.FromInches(inputs.Number("small_in")), Length.FromInches(inputs.Number("large_in"))),
        Length.FromInches(inputs.Number("centre_in")));

    private static BeltLayout MetricLayout(CheckInputs inputs) => new(
        new(Length.FromMillimeters(inputs.Number("small_mm")), Length.FromMillimeters(inputs.Number("large_mm"))),
        Length.FromMillimeters(inputs.Number("centre_mm")));

    private static double TensionOverForce(CheckInputs inputs)
    {
        var (force, span) = (Force.FromNewtons(1), Length.FromMeters(1));
        return new BeltTension(force, span * inputs.Number("deflection_over_span"), span, 0).Static / force;
    }

    /// <summary>The wrap at which the slip law with the given friction gives the ratio of the given strands.</summary>
    private static Angle Closing(CheckInputs inputs)
    {
        var friction = BeltGrip.EffectiveFriction(inputs.Number("friction"), Angle.FromDegrees(2 * inputs.Number("half_angle_deg")));
        var perRadian = Math.Log(BeltGrip.TensionRatio(friction, Angle.FromRadians(1)));
        return Angle.FromRadians(Math.Log(inputs.Number("tight_lbf") / inputs.Number("slack_lbf")) / perRadian);
    }
}
