using Spindlewright.Foundations.Tables;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Computes one quantity of a published circuit, as a number of the unit given.</summary>
internal delegate double CircuitQuantity(PublishedCircuit circuit, CheckInputs inputs, string unit);

/// <summary>Checks of a published circuit: in the form of the source, with the exact answer beside it.</summary>
/// <param name="quantities">What is computed, by name.</param>
internal abstract class CircuitEvaluator(IReadOnlyDictionary<string, CircuitQuantity> quantities) : ICheckEvaluator
{
    public string Area => "motor";

    public IReadOnlyCollection<string> Quantities => [.. quantities.Keys];

    public Evaluation Evaluate(Check check, Handbook handbook)
    {
        var circuit = PublishedCircuit.Of(check, handbook, check.Method);
        var repeatsApproximation = circuit.HasShunt
            && check.Method is (PublishedCircuit.NoShunt or PublishedCircuit.ShuntAtTerminals);
        return new(
            In(circuit), check.Unit, check.Method,
            repeatsApproximation ? In(PublishedCircuit.Of(check, handbook, PublishedCircuit.Exact)) : null);

        double In(PublishedCircuit form) => quantities[check.Quantity](form, check.Inputs, check.Unit);
    }
}
