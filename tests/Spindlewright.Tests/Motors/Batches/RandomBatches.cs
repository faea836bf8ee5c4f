using CsCheck;
using Spindlewright.Motors;
using Spindlewright.Motors.Batches;
using Spindlewright.Tests.Motors;

namespace Spindlewright.Tests.Motors.Batches;

/// <summary>A batch of random circuits with random feeds, and the same handed to the scalar path.</summary>
internal sealed record RandomBatch(CircuitSi[] Circuits, double[] Hz, double[] PhaseV, double[] DropV, double[] Slips)
{
    private static readonly Gen<double> SlipGen = Gen.OneOf(
        Gen.Const(0.0), Gen.Const(1.0), Gen.Double[-1, 0], Gen.Double[0, 0.1], Gen.Double[0, 1], Gen.Double[1, 2]);

    private static readonly Gen<CircuitSi> CircuitGen =
        from circuit in RandomMotors.Circuits
        from exponent in Gen.OneOf(Gen.Const(1.5), Gen.Const(1.0), Gen.Const(2.0), Gen.Double[1, 2])
        from core in Gen.Bool
        let si = circuit.Si
        select si with { CoreLossExponent = exponent, CoreConductanceS = core ? si.CoreConductanceS : 0 };

    /// <summary>One to 40 circuits in one to three layers: every remainder of every number of lanes.</summary>
    internal static Gen<RandomBatch> Batches { get; } =
        from circuits in CircuitGen.Array[1, 40]
        from layers in Gen.Int[1, 3]
        let count = circuits.Length * layers
        from hz in Gen.Double[1, 120].Array[count]
        from flux in Gen.Double[0, 2.5].Array[count]
        from drop in Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 0.98], Gen.Double[1, 1.5]).Array[count]
        from slips in SlipGen.Array[count]
        let phaseV = Enumerable.Range(0, count).Select(i =>
            circuits[i % circuits.Length].RatedPhaseV * hz[i] / circuits[i % circuits.Length].RatedHz * flux[i]).ToArray()
        // A drop is kept 2 % away from the voltage: nearer, the scalar path's own V² − Vd² cancels to fewer digits than are compared.
        select new RandomBatch(circuits, hz, phaseV, [.. phaseV.Zip(drop, (v, share) => v * share)], slips);

    internal int Count => Hz.Length;

    internal CircuitColumns Columns
    {
        get
        {
            var columns = new CircuitColumns(Circuits.Length);
            for (var place = 0; place < Circuits.Length; place++) columns.Set(place, Circuits[place]);
            return columns;
        }
    }

    internal FeedColumns Feeds(bool withDrop) => new(Hz, PhaseV, withDrop ? DropV : default);

    internal double Drop(int point, bool withDrop) => withDrop ? DropV[point] : 0;

    /// <summary>The circuit of a point in a form, for the scalar path.</summary>
    internal CircuitSi Scalar(int point, CircuitForm form)
    {
        var circuit = Circuits[point % Circuits.Length];
        return form == CircuitForm.Saturated ? circuit : circuit with { Saturation = 0 };
    }
}
