using System.Collections.Immutable;
using Spindlewright.Checks.Evaluators;
using Spindlewright.Foundations.Tables;

namespace Spindlewright.Checks;

/// <summary>What an evaluator computed for a check.</summary>
/// <param name="Value">The number that is compared with the published one.</param>
/// <param name="Unit">Its unit, spelt as in the check.</param>
/// <param name="Method">What it was computed with.</param>
/// <param name="Exact">The exact answer, where the number repeats a source's approximation; else null.</param>
public sealed record Evaluation(double Value, string Unit, string Method, double? Exact = null);

/// <summary>Computes one quantity of checks.</summary>
/// <remarks>
/// Where a source used an approximation, the evaluator repeats that approximation, names it as its method and gives
/// the exact answer beside it.
/// </remarks>
public interface ICheckEvaluator
{
    /// <summary>The area it serves: motor, inverter, drilling, belt, hazard, heat or supply.</summary>
    string Area { get; }

    /// <summary>The quantities it computes, as the checks name them.</summary>
    IReadOnlyCollection<string> Quantities { get; }

    /// <summary>Computes a check.</summary>
    /// <param name="check">A check of this area and one of these quantities.</param>
    /// <param name="handbook">The tables.</param>
    /// <returns>The number computed.</returns>
    /// <exception cref="ArgumentException">An input is missing or out of range.</exception>
    Evaluation Evaluate(Check check, Handbook handbook);
}

/// <summary>The evaluators by area and quantity. Immutable.</summary>
public sealed class CheckEvaluators
{
    private readonly ImmutableDictionary<(string Area, string Quantity), ICheckEvaluator> evaluators;

    private CheckEvaluators(ImmutableDictionary<(string Area, string Quantity), ICheckEvaluator> evaluators) =>
        this.evaluators = evaluators;

    /// <summary>No evaluators.</summary>
    public static CheckEvaluators None { get; } =
        new(ImmutableDictionary<(string Area, string Quantity), ICheckEvaluator>.Empty);

    /// <summary>All evaluators of this library: the catalogue to which a new one is added.</summary>
    public static CheckEvaluators All { get; } = None.With(
        new OperatingPointEvaluator(), new TorqueCurveEvaluator(), new NameplateRoundTripEvaluator(),
        new EfficiencyLimitEvaluator(),
        new PrintedFactorEvaluator(), new ClosedFormEvaluator(), new TwistDrillEvaluator(), new SpindleSpeedEvaluator(),
        new InverterEvaluator(), new HandEvaluator(), new ContactEvaluator(), new StoredEnergyEvaluator(), new HeatEvaluator(), new RectifierEvaluator(), new BeltEvaluator(),
        new OperationEvaluator());

    /// <summary>The evaluators with further ones.</summary>
    /// <param name="added">The evaluators.</param>
    /// <returns>A new set.</returns>
    /// <exception cref="ArgumentException">A quantity of an area has an evaluator already.</exception>
    public CheckEvaluators With(params IReadOnlyCollection<ICheckEvaluator> added)
    {
        var builder = evaluators.ToBuilder();
        foreach (var evaluator in added)
            foreach (var quantity in evaluator.Quantities)
                if (!builder.TryAdd((evaluator.Area, quantity), evaluator))
                    throw new ArgumentException(
                        $"'{quantity}' of the area {evaluator.Area} has an evaluator already.", nameof(added));
        return new(builder.ToImmutable());
    }

    /// <summary>The evaluator of a check.</summary>
    /// <param name="check">The check.</param>
    /// <returns>The evaluator; null where none is bound.</returns>
    public ICheckEvaluator? For(Check check) => evaluators.GetValueOrDefault((check.Area, check.Quantity));
}
