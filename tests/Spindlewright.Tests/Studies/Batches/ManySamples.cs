using Spindlewright.Foundations;
using Spindlewright.Motors;
using Spindlewright.Motors.Batches;
using Spindlewright.Studies.Batches;
using UnitsNet;

namespace Spindlewright.Tests.Studies.Batches;

/// <summary>Samples around the hand-computed machine, the same at every call.</summary>
internal static class ManySamples
{
    internal static (DriveColumns Drives, HandColumns Hands) Of(int count, CircuitForm form, bool withDrop)
    {
        // Dice of the framework are the same for a seed; no result of the library hangs on them.
        var dice = new Random(5);
        double Around(double middle, double spread) => middle * (1 + spread * (2 * dice.NextDouble() - 1));
        var press = Presses.HandComputed(4, Duration.FromSeconds(1.5));
        var circuits = new[] { new CircuitColumns(count), new CircuitColumns(count) };
        var drives = new DriveColumns(press.Inverter, Side.Hazard, form, circuits);
        var (ratio, efficiency, friction, hand) = (new double[count], new double[count], new double[count], new double[count]);
        // Double cages stand among single ones where everything else is there too.
        var doubleCages = withDrop && form == CircuitForm.Saturated;
        for (var sample = 0; sample < count; sample++)
        {
            var cold = new CircuitSi(
                Around(19, 0.2), Around(14.3, 0.2), Around(15.6, 0.2), Around(14.3, 0.2), Around(154, 0.2), 1 / Around(2500, 0.3), 50, 6,
                400 / Math.Sqrt(3), sample % 3 == 0 ? 0 : Around(0.3, 0.5), sample % 2 == 0 ? 1.5 : Around(1.5, 0.2),
                doubleCages && sample % 3 == 1 ? Around(2, 0.5) : 0, 0.4);
            circuits[0].Set(sample, cold);
            circuits[1].Set(sample, cold with { R1Ohm = 1.3 * cold.R1Ohm, R2Ohm = 1.3 * cold.R2Ohm });
            drives.LinkFactor.Span[sample] = Around(1, 0.1);
            drives.CeilingPhaseV.Span[sample] = Around(225, 0.05);
            if (withDrop) drives.DropV.Span[sample] = Around(4, 0.9);
            (ratio[sample], efficiency[sample]) = (Around(4, 0.3), Around(0.9, 0.1));
            (friction[sample], hand[sample]) = (Around(0.2, 0.5), Around(14, 0.8));
        }
        return (drives, new(ratio, efficiency, friction, hand));
    }
}
