using Spindlewright.Cutting;
using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Checks of the spindle speed that a cutting speed asks for.</summary>
internal sealed class SpindleSpeedEvaluator : ICheckEvaluator
{
    public string Area => "drilling";

    public IReadOnlyCollection<string> Quantities { get; } = ["spindle speed"];

    public Evaluation Evaluate(Check check, Handbook handbook)
    {
        var inputs = check.Inputs;
        var cutting = inputs.NumberOrNull("cutting_speed_ft_per_min") is { } feet
            ? Speed.FromFeetPerMinute(feet)
            : Speed.FromMetersPerMinutes(inputs.Number("cutting_speed_m_per_min"));
        var diameter = inputs.NumberOrNull("drill_in") is { } inches
            ? Length.FromInches(inches)
            : Length.FromMillimeters(inputs.Number("drill_mm"));
        var spindle = CuttingSpeed.SpindleSpeed(cutting, diameter);
        return new(InUnit.Of(spindle, QuantityKinds.RotationalSpeed, check.Unit), check.Unit, check.Method);
    }
}
