using MathNet.Numerics.RootFinding;
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
    private const string FeedFromThrust = "feed that the thrust gives";

    // Span of the handbook's feed table.
    private static readonly (double Least, double Most) FeedMm = (0.01, 1.25);

    public string Area => "drilling";

    public IReadOnlyCollection<string> Quantities { get; } = [Thrust, CuttingTorque, CutterPower, FeedFromThrust];

    public Evaluation Evaluate(Check check, Handbook handbook)
    {
        var (inputs, unit) = (check.Inputs, check.Unit);
        var (factors, tables) = Factors(check.Method, handbook);
        var value = check.Quantity switch
        {
            Thrust => InUnit.Of(Load(Feed(inputs)).Thrust, QuantityKinds.Force, unit),
            CuttingTorque => InUnit.Of(Load(Feed(inputs)).Torque, QuantityKinds.Torque, unit),
            CutterPower => InUnit.Of(Load(Feed(inputs)).Power(Spindle(inputs)), QuantityKinds.Power, unit),
            _ => InUnit.Of(SolveFeed(), QuantityKinds.FeedPerRevolution, unit),
        };
        return new(value, unit, $"handbook method, {tables}");

        TwistDrillLoad Load(Length feed) => TwistDrillLoad.Of(
            factors, Material(inputs.Word("material"), handbook), Diameter(inputs), feed,
            new(inputs.Number("chisel_over_diameter"), inputs.Number("wear")));

        Length SolveFeed() => Length.FromMillimeters(Brent.FindRoot(
            mm => Load(Length.FromMillimeters(mm)).Thrust.Newtons - inputs.Number("thrust_n"), FeedMm.Least, FeedMm.Most,
            1e-9));
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

    private static Length Feed(CheckInputs inputs) =>
        inputs.NumberOrNull("feed_in_per_rev") is { } inches ? Length.FromInches(inches)
        : inputs.NumberOrNull("feed_over_diameter") is { } share ? Diameter(inputs) * share
        : Length.FromMillimeters(inputs.Number("feed_mm_per_rev"));

    private static RotationalSpeed Spindle(CheckInputs inputs) =>
        inputs.NumberOrNull("cutting_speed_m_per_min") is { } cutting
            ? CuttingSpeed.SpindleSpeed(Speed.FromMetersPerMinutes(cutting), Diameter(inputs))
            : RotationalSpeed.FromRevolutionsPerMinute(inputs.Number("speed_r_per_min"));
}
