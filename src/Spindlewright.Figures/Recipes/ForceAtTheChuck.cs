using Spindlewright.Figures.Catalogue;
using Spindlewright.Foundations;
using Spindlewright.Studies;

namespace Spindlewright.Figures.Recipes;

/// <summary>Torque at the spindle beside the torque of hands on the chuck, by belt position.</summary>
public sealed class ForceAtTheChuck : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "torque-against-hands";

    /// <inheritdoc/>
    public string Name => "torque against hands";

    /// <inheritdoc/>
    public string Description => "What can the spindle put against a hand that holds the chuck, at each belt position?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var (rows, torques) = (results.Hands.Belts, results.Torques.Spindle);
        double[] at = [.. rows.Select((_, i) => i + 1.0)];
        var hands = rows[0].Hands;
        return new(
            Id, "The spindle against a hand on the chuck",
            new Axis("torque", "N·m", AxisScale.Logarithmic),
            Axis.Names("belt position", [.. rows.Select(row => row.Belt.Name)]),
            [
                new Points(Role.Bound, [.. rows.Select(row => row.Bound.NewtonMeters)], [.. at]),
                new Points(Role.IdealBoost, [.. torques.Select(each => each.Points.Max(point => point.IdealBoost.Hazard.NewtonMeters))], [.. at], legend: "ideal boost, largest, hazard side"),
                new Points(Role.AsModelled, [.. torques.Select(each => each.Points.Max(point => point.PullOut.Hazard.NewtonMeters))], [.. at], legend: "as modelled, largest, hazard side"),
                .. hands.Select(hand => new Rule(
                    Role.Hand, RuleDirection.Upright, hand.Hand.Torque.NewtonMeters, hand.Hand.Name,
                    legend: "hand on the chuck, weak and strong")),
            ],
            sources:
            [
                StudyMarks.OwnModel,
                new(results.Hands.Strength.Source, $"hand torque: {results.Hands.Strength.Sample}", results.Hands.Strength.Provenance),
            ],
            notes: ["The percentiles are our own normal approximation of the sample; two hands give one to two times as much (own choice, no source)."],
            cautions: ["A hand that holds a spindle at standstill does not stop one that turns. No mark in this figure shows where a hand may be put."]);
    }
}
