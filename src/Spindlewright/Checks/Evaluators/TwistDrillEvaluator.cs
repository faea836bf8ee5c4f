using Spindlewright.Cutting;
using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Checks of thrust, torque and power of a twist drill by the handbook method.</summary>
internal sealed class TwistDrillEvaluator : ICheckEvaluator
{
    private const string Thrust = "thrust";
    private const string CuttingTorque = "torque";
    private const string CutterPower = "cutter power";
    private const string MotorPower = "motor power";
    private const string FeedFromThrust = "feed that the thrust gives";

    public string Area => "drilling";

    public IReadOnlyCollection<string> Quantities { get; } = [Thrust, CuttingTorque, CutterPower, MotorPower, FeedFromThrust];

    public Evaluation Evaluate(Check check, Handbook handbook)
    {
        var (inputs, unit) = (check.Inputs, check.Unit);
        var (factors, tables) = Factors(check.Method, handbook);
        var value = check.Quantity switch
        {
            Thrust => InUnit.Of(Load(Feed(inputs)).Thrust, QuantityKinds.Force, unit),
            CuttingTorque => InUnit.Of(Load(Feed(inputs)).Torque, QuantityKinds.Torque, unit),
            CutterPower => InUnit.Of(Load(Feed(inputs)).Power(Spindle(inputs)), QuantityKinds.Power, unit),
            MotorPower => InUnit.Of(
                Load(Feed(inputs)).MotorPower(Spindle(inputs), inputs.Number("efficiency")), QuantityKinds.Power, unit),
            _ => InUnit.Of(SolveFeed(), QuantityKinds.FeedPerRevolution, unit),
        };
        return new(value, unit, $"handbook method, {tables}");

        TwistDrillLoad Load(Length feed) => TwistDrillLoad.Of(
            factors, Material(inputs.Word("material"), handbook), Diameter(inputs), feed, Condition(inputs), Pilot(inputs));

        Length SolveFeed() => HandFeed.Of(
                factors, Material(inputs.Word("material"), handbook), Diameter(inputs), Condition(inputs),
                Force.FromNewtons(inputs.Number("thrust_n")), Pilot(inputs)).FeedPerRevolution
            ?? throw new ArgumentException("this thrust gives no feed.");
    }

    private static (IDrillFactors Factors, string Tables) Factors(string method, Handbook handbook) => method switch
    {
        "inch tables" => (new InchTableFactors(handbook.Drilling), method),
        "metric tables" => (new TabulatedFactors(handbook.Drilling), method),
        "closed forms" => (new ClosedFormFactors(), method),
        _ => throw new ArgumentException($"the method '{method}' is not accepted; accepted: inch tables, metric tables, closed forms."),
    };

    private static CuttingMaterial Material(string name, Handbook handbook) => CuttingMaterial.Of(
        handbook.Materials.FirstOrDefault(row => row.DrillingMaterial == name)
            ?? throw new ArgumentException($"no workshop material stands on the drilling factors of '{name}'."),
        handbook);

    private static Length Diameter(CheckInputs inputs) => inputs.NumberOrNull("drill_in") is { } inches
        ? Length.FromInches(inches)
        : Length.FromMillimeters(inputs.Number("drill_mm"));

    private static DrillCondition Condition(CheckInputs inputs) =>
        new(inputs.NumberOrNull("chisel_over_diameter") ?? DrillCondition.Usual.ChiselOverDiameter, inputs.Number("wear"));

    private static Length? Pilot(CheckInputs inputs) =>
        inputs.NumberOrNull("pilot_mm") is { } millimetres ? Length.FromMillimeters(millimetres) : null;

    private static Length Feed(CheckInputs inputs) =>
        inputs.NumberOrNull("feed_in_per_rev") is { } inches ? Length.FromInches(inches)
        : inputs.NumberOrNull("feed_over_diameter") is { } share ? Diameter(inputs) * share
        : Length.FromMillimeters(inputs.Number("feed_mm_per_rev"));

    private static RotationalSpeed Spindle(CheckInputs inputs) =>
        inputs.NumberOrNull("cutting_speed_m_per_min") is { } cutting
            ? CuttingSpeed.SpindleSpeed(Speed.FromMetersPerMinutes(cutting), Diameter(inputs))
            : RotationalSpeed.FromRevolutionsPerMinute(inputs.Number("speed_r_per_min"));
}
