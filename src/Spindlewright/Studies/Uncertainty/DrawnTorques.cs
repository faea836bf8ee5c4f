using Spindlewright.Motors.Batches;

namespace Spindlewright.Studies.Uncertainty;

/// <summary>Torques of the draws of a block over frequency, solved as one batch.</summary>
internal sealed class DrawnTorques
{
    private readonly int count;
    private readonly double[] hertz, phaseV, dropV, pullOutNm, lockedRotorNm;
    private readonly int[] ceilingAt;

    /// <summary>Solves.</summary>
    /// <param name="drives">The drives, one a draw.</param>
    /// <param name="form">Form of their circuits.</param>
    /// <param name="lowestHz">From this frequency</param>
    /// <param name="topHz">to this one.</param>
    /// <param name="otherHz">Frequencies besides, at which pull-out torque is wanted.</param>
    internal DrawnTorques(DrawnDrive[] drives, CircuitForm form, double lowestHz, double topHz, IReadOnlyList<double> otherHz)
    {
        count = drives.Length;
        var layers = TorqueCurve.Points + otherHz.Count;
        double[] Room() => new double[layers * count];
        (hertz, phaseV, dropV, pullOutNm, lockedRotorNm) = (Room(), Room(), Room(), Room(), Room());
        ceilingAt = new int[count];
        var circuits = new CircuitColumns(count);
        Span<double> at = stackalloc double[TorqueCurve.Points];
        for (var draw = 0; draw < count; draw++)
        {
            circuits.Set(draw, drives[draw].Circuit);
            ceilingAt[draw] = TorqueCurve.Frequencies(at, lowestHz, topHz, drives[draw].CeilingMetHz);
            for (var layer = 0; layer < layers; layer++)
            {
                var place = layer * count + draw;
                hertz[place] = layer < at.Length ? at[layer] : otherHz[layer - at.Length];
                phaseV[place] = drives[draw].PhaseV(hertz[place]);
                dropV[place] = drives[draw].DropV;
            }
        }

        var feeds = new FeedColumns(hertz, phaseV, dropV);
        // Blocks are computed side by side already.
        BatchSolver.PullOut(circuits, feeds, new(pullOutNm), form, BatchRun.OneCore);
        BatchSolver.LockedRotor(circuits, feeds, new(lockedRotorNm), form, BatchRun.OneCore);
    }

    /// <summary>Pull-out torque of one draw at one of the other frequencies.</summary>
    internal double PullOutNm(int draw, int other) => pullOutNm[(TorqueCurve.Points + other) * count + draw];

    /// <summary>Pull-out torque of one draw over frequency.</summary>
    /// <param name="draw">Which.</param>
    /// <param name="room">Room for twice as many numbers as a curve has points.</param>
    internal TorqueCurve PullOutCurve(int draw, Span<double> room) => Curve(pullOutNm, draw, room);

    /// <summary>Locked-rotor torque of one draw over frequency.</summary>
    /// <inheritdoc cref="PullOutCurve"/>
    internal TorqueCurve LockedRotorCurve(int draw, Span<double> room) => Curve(lockedRotorNm, draw, room);

    private TorqueCurve Curve(double[] torques, int draw, Span<double> room)
    {
        const int Points = TorqueCurve.Points;
        for (var point = 0; point < Points; point++)
            (room[point], room[Points + point]) = (hertz[point * count + draw], torques[point * count + draw]);
        return new(room[..Points], room.Slice(Points, Points), ceilingAt[draw]);
    }
}
