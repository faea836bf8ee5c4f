using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using Spindlewright.Hands;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Checks of what a hand meets: force at a surface, the reaction's turn, torque against diameter.</summary>
internal sealed class HandEvaluator : ICheckEvaluator
{
    private const string Force = "tangential force";
    private const string OneTurn = "speed for one turn in the reaction time";
    private const string Factor = "diameter factor of hand torque";

    public string Area => "hazard";

    public IReadOnlyCollection<string> Quantities { get; } = [Force, OneTurn, Factor];

    public Evaluation Evaluate(Check check, Handbook handbook)
    {
        var (inputs, unit) = (check.Inputs, check.Unit);
        var (value, method) = check.Quantity switch
        {
            Force => (InUnit.Of(
                SurfaceForce.Of(Torque.FromNewtonMeters(inputs.Number("torque_nm")), Diameter(inputs)),
                QuantityKinds.Force, unit), "2 T / d"),
            OneTurn => (InUnit.Of(
                new Person(5, 95, Duration.FromSeconds(inputs.Number("reaction_s"))).OneTurnSpeed,
                QuantityKinds.RotationalSpeed, unit), "1 / t"),
            _ => (InUnit.Plain(HandDiameter.Factor(Diameter(inputs)), unit), "in proportion to d² up to 25 mm"),
        };
        return new(value, unit, method);
    }

    private static Length Diameter(CheckInputs inputs) => Length.FromMillimeters(inputs.Number("diameter_mm"));
}
