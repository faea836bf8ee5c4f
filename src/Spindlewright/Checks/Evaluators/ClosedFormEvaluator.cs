using Spindlewright.Cutting;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Checks of the closed forms against the printed factors, and of the law by which torque goes with feed.</summary>
internal sealed class ClosedFormEvaluator : ICheckEvaluator
{
    private const string Factor = "factor in closed form";
    private const string TorqueRatio = "torque ratio";

    private readonly ClosedFormFactors forms = new();

    public string Area => "drilling";

    public IReadOnlyCollection<string> Quantities { get; } = [Factor, TorqueRatio];

    public Evaluation Evaluate(Check check, Handbook handbook)
    {
        var value = check.Quantity == Factor
            ? FactorAt(check.Subject, check.Inputs.Word("column"), check.Inputs.Number("at"))
            : RatioAt(check.Inputs.Number("feed_ratio"), handbook);
        return new(InUnit.Plain(value, check.Unit), check.Unit, "closed form");
    }

    private double FactorAt(string table, string column, double at) => (table, column) switch
    {
        ("drilling-feed-metric", "feed_factor") => forms.Feed(Length.FromMillimeters(at)),
        ("drilling-diameter-metric", "thrust_factor") => forms.ThrustDiameter(Length.FromMillimeters(at)),
        ("drilling-diameter-metric", "torque_factor") => forms.TorqueDiameter(Length.FromMillimeters(at)),
        ("drilling-chisel", "torque_factor_a") => forms.Chisel(at).Torque,
        ("drilling-chisel", "thrust_factor_b") => forms.Chisel(at).Thrust,
        ("drilling-chisel", "thrust_factor_j") => forms.Chisel(at).Indentation,
        _ => throw new ArgumentException($"no closed form stands for the column '{column}' of {table}."),
    };

    /// <summary>Torque of a drill at some multiple of a feed over its torque at that feed; any drill and feed will do.</summary>
    private double RatioAt(double feedRatio, Handbook handbook)
    {
        var (feed, material) = (Length.FromMillimeters(0.1), CuttingMaterial.Of(handbook.Materials[0], handbook));
        double TorqueNm(double times) => TwistDrillLoad.Of(
            forms, material, Length.FromMillimeters(10), feed * times, DrillCondition.Usual).Torque.NewtonMeters;
        return TorqueNm(feedRatio) / TorqueNm(1);
    }
}
