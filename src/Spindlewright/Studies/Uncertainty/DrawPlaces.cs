using Spindlewright.Belts;
using Spindlewright.Machines;

namespace Spindlewright.Studies.Uncertainty;

/// <summary>Where each figure stands in a row of draws.</summary>
internal sealed class DrawPlaces(IReadOnlyList<VariedInput> inputs)
{
    private readonly int supply = Place(inputs, UncertainFigures.SupplyVoltage), link = Place(inputs, UncertainFigures.LoadedLink),
        drop = Place(inputs, UncertainFigures.PhaseDrop), temperature = Place(inputs, UncertainFigures.WindingTemperature),
        circuit = Place(inputs, UncertainFigures.MotorCircuit), rotor = Place(inputs, UncertainFigures.RotorResistance),
        standstill = Place(inputs, UncertainFigures.StandstillResistance), leakage = Place(inputs, UncertainFigures.Leakage);

    /// <summary>How many figures a row has.</summary>
    internal int Count { get; } = inputs.Count;

    internal int BeltEfficiency { get; } = Place(inputs, UncertainFigures.BeltEfficiency);

    internal int BeltTension { get; } = Place(inputs, UncertainFigures.BeltTension);

    internal int SpindleFriction { get; } = Place(inputs, UncertainFigures.SpindleFriction);

    internal int CuttingTorque { get; } = Place(inputs, UncertainFigures.CuttingTorque);

    internal int HandTorque { get; } = Place(inputs, UncertainFigures.HandTorque);

    /// <summary>What a row says of inverter and motor.</summary>
    internal DriveDraw Drive(ReadOnlySpan<double> row) => new(
        row[supply], row[link], row[drop], row[temperature], row[circuit], row[rotor], row[standstill], row[leakage]);

    /// <summary>What a row says of the efficiency of a belt position.</summary>
    internal double EfficiencyOf(BeltPosition belt, double[] row) =>
        belt.Efficiency.Capability + (belt.Efficiency.Hazard - belt.Efficiency.Capability) * row[BeltEfficiency];

    private static int Place(IReadOnlyList<VariedInput> inputs, string name) =>
        inputs.Index().Single(each => each.Item.Name == name).Index;
}
