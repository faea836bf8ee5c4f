using Spindlewright.Foundations;
using Spindlewright.Inverters;
using Spindlewright.Machines;
using Spindlewright.Motors.Batches;

namespace Spindlewright.Studies.Batches;

/// <summary>Many drives that share an inverter's settings: motors, supply and drops differ from sample to sample.</summary>
/// <remarks>
/// <para>One place a sample. Law, lowest and highest frequency are shared; candidates with other settings are another batch.</para>
/// <para>Not to be changed while a batch runs over it.</para>
/// </remarks>
public sealed class DriveColumns
{
    /// <summary>Makes room for drives.</summary>
    /// <param name="inverter">Its law and its frequencies count.</param>
    /// <param name="side">On the hazard side the largest torque over the circuits of a sample counts, on the other the smallest.</param>
    /// <param name="form">Form of the circuits.</param>
    /// <param name="circuits">One column of circuits, or two of one length where cold and hot are both to be solved.</param>
    /// <exception cref="PartException">There are no circuits, or columns of unequal length.</exception>
    public DriveColumns(Inverter inverter, Side side, CircuitForm form, IReadOnlyList<CircuitColumns> circuits)
    {
        if (circuits.Count is not (1 or 2))
            throw new PartException("batch of drives", "number of columns of circuits", $"{circuits.Count}", "1, or 2 for cold and hot");
        foreach (var column in circuits)
            if (column.Count != circuits[0].Count)
                throw new PartException(
                    "batch of drives", "number of circuits", $"{column.Count}", $"{circuits[0].Count}, as many as in the first column");
        (Inverter, Side, Form, Circuits) = (inverter, side, form, circuits);
        LinkFactor = new double[Count];
        CeilingPhaseV = new double[Count];
        DropV = new double[Count];
        LinkFactor.Span.Fill(1);
        CeilingPhaseV.Span.Fill(double.PositiveInfinity);
    }

    /// <summary>The shared settings.</summary>
    public Inverter Inverter { get; }

    /// <summary>Which torque of a sample's circuits counts.</summary>
    public Side Side { get; }

    /// <summary>Form of the circuits.</summary>
    public CircuitForm Form { get; }

    /// <summary>Circuits of the samples.</summary>
    public IReadOnlyList<CircuitColumns> Circuits { get; }

    /// <summary>How many samples.</summary>
    public int Count => Circuits[0].Count;

    /// <summary>What the law's voltage goes with, above 0; 1 until set.</summary>
    public Memory<double> LinkFactor { get; }

    /// <summary>Most volts a phase that the link can give; without limit until set.</summary>
    public Memory<double> CeilingPhaseV { get; }

    /// <summary>Rms volts a phase that oppose the current; 0 until set.</summary>
    public Memory<double> DropV { get; }

    /// <summary>The same drives with other circuits.</summary>
    internal DriveColumns With(IReadOnlyList<CircuitColumns> circuits)
    {
        var made = new DriveColumns(Inverter, Side, Form, circuits);
        BatchSolver.SameLength(made.Count, Count, "number of circuits", "samples");
        LinkFactor.CopyTo(made.LinkFactor);
        CeilingPhaseV.CopyTo(made.CeilingPhaseV);
        DropV.CopyTo(made.DropV);
        return made;
    }

    /// <summary>The drive of a machine, repeated: what is uncertain is then set over it.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="side">Which side of it.</param>
    /// <param name="count">How many samples.</param>
    /// <returns>The drives; saturated where the machine's circuit is.</returns>
    /// <exception cref="PartException">The number is out of range.</exception>
    public static DriveColumns Of(DrillPress press, Side side, int count)
    {
        var drive = new Drive(press, side);
        var circuits = drive.Si.Select(circuit =>
        {
            var columns = new CircuitColumns(count);
            for (var place = 0; place < count; place++) columns.Set(place, circuit);
            return columns;
        }).ToArray();
        var form = drive.Si.Any(circuit => circuit.Saturation > 0) ? CircuitForm.Saturated : CircuitForm.ConstantParameters;
        var made = new DriveColumns(press.Inverter, side, form, circuits);
        made.LinkFactor.Span.Fill(drive.LinkFactor);
        made.CeilingPhaseV.Span.Fill(drive.CeilingPhaseV);
        made.DropV.Span.Fill(drive.DropV);
        return made;
    }
}
