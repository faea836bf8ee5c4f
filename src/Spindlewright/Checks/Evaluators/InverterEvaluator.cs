using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using Spindlewright.Inverters;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Checks of what an inverter can give: its voltage ceiling, and the drop of its output stage.</summary>
internal sealed class InverterEvaluator : ICheckEvaluator
{
    private const string Ceiling = "voltage ceiling";

    public string Area => "inverter";

    public IReadOnlyCollection<string> Quantities { get; } = [Ceiling, "phase drop"];

    public Evaluation Evaluate(Check check, Handbook handbook)
    {
        var voltage = check.Quantity == Ceiling ? CeilingOf(check.Inputs) : DropOf(check.Inputs);
        return new(InUnit.Of(voltage, QuantityKinds.Voltage, check.Unit), check.Unit, check.Method);
    }

    private static ElectricPotential CeilingOf(CheckInputs inputs)
    {
        var fraction = inputs.Number("loaded_fraction");
        var modulation = inputs.Word("modulation") switch
        {
            "space vector" => Modulation.SpaceVector,
            "sine" => Modulation.Sine,
            var word => throw new ArgumentException($"the modulation '{word}' is not accepted; accepted: space vector, sine."),
        };
        var link = new DcLink(inputs.Has("doubler"), new Sided<double>(fraction, fraction), modulation);
        return link.Ceiling(ElectricPotential.FromVolts(inputs.Number("supply_v")), Side.Capability);
    }

    private static ElectricPotential DropOf(CheckInputs inputs) => OutputDrop.PerPhase(
        ElectricPotential.FromVolts(inputs.Number("link_v")), Duration.FromMicroseconds(inputs.Number("dead_time_us")),
        Frequency.FromKilohertz(inputs.Number("carrier_khz")), ElectricPotential.FromVolts(inputs.Number("device_v")));
}
