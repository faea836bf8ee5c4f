using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using Spindlewright.Mains;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Checks of the capacitor-input rectifier, by time stepping.</summary>
internal sealed class RectifierEvaluator : ICheckEvaluator
{
    public string Area => "supply";

    public IReadOnlyCollection<string> Quantities { get; } =
        ["input current", "power factor", "displacement factor", "distortion", "crest factor", "mean link voltage"];

    public Evaluation Evaluate(Check check, Handbook handbook)
    {
        var state = StateOf(check.Inputs);
        return new(check.Quantity switch
        {
            "input current" => InUnit.Of(state.Current, QuantityKinds.Current, check.Unit),
            "mean link voltage" => InUnit.Of(state.LinkMean, QuantityKinds.Voltage, check.Unit),
            "power factor" => InUnit.Plain(state.PowerFactor, check.Unit),
            "displacement factor" => InUnit.Plain(state.DisplacementFactor, check.Unit),
            "distortion" => InUnit.Plain(state.Distortion, check.Unit),
            _ => InUnit.Plain(state.Crest, check.Unit),
        }, check.Unit, "time stepping");
    }

    private static RectifierState StateOf(CheckInputs inputs)
    {
        var kind = inputs.Word("rectifier") switch
        {
            "single-phase" => RectifierKind.SinglePhase,
            "doubler" => RectifierKind.Doubler,
            "three-phase" => RectifierKind.ThreePhase,
            var word => throw new ArgumentException(
                $"the rectifier '{word}' is not accepted; accepted: single-phase, doubler, three-phase."),
        };
        var rectifier = new InputRectifier(
            kind, ElectricResistance.FromOhms(inputs.Number("loop_ohm")),
            ElectricInductance.FromMillihenries(inputs.Number("loop_mh")),
            ElectricCapacitance.FromMicrofarads(inputs.Number("link_uf")));
        var (voltage, frequency) = (
            ElectricPotential.FromVolts(inputs.Number("supply_v")), Frequency.FromHertz(inputs.Number("frequency_hz")));
        return inputs.NumberOrNull("load_ohm") is { } ohms
            ? rectifier.UnderResistance(voltage, frequency, ElectricResistance.FromOhms(ohms))
            : rectifier.UnderPower(voltage, frequency, Power.FromWatts(inputs.Number("load_w")));
    }
}
