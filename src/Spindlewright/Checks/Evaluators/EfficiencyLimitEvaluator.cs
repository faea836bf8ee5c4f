using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Checks of the efficiency limits between printed powers: the cubic is asked for a power that is printed.</summary>
internal sealed class EfficiencyLimitEvaluator : ICheckEvaluator
{
    public string Area => "motor";

    public IReadOnlyCollection<string> Quantities { get; } = ["efficiency limit by the standard's cubic"];

    public Evaluation Evaluate(Check check, Handbook handbook)
    {
        var (name, poles) = (check.Inputs.Word("class"), check.Inputs.Number("poles"));
        var power = Power.FromKilowatts(check.Inputs.Number("power_kw"));
        var curve = handbook.MotorEfficiency.Curves.FirstOrDefault(row =>
            row.EfficiencyClass == name && row.Poles == poles && power >= row.PowerLow && power <= row.PowerHigh)
            ?? throw new ArgumentException($"no cubic holds for {name}, {poles} poles at {check.Inputs.Word("power_kw")} kW.");
        return new(100 * curve.At(power), "%", check.Method);
    }
}
