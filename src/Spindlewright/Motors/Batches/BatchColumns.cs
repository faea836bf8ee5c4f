using Spindlewright.Foundations;

namespace Spindlewright.Motors.Batches;

/// <summary>What circuits are fed with, one place a point.</summary>
/// <param name="FrequencyHz">Output frequency in Hz, above 0.</param>
/// <param name="PhaseV">Rms volts a phase of the star that are set, 0 or more.</param>
/// <param name="DropV">Rms volts a phase that oppose the current, 0 or more; empty for none.</param>
/// <remarks>
/// <para>
/// As many places as circuits, or a multiple: layer follows layer, each with all circuits in their order. Thirty points of each of
/// 10 000 circuits are thirty layers.
/// </para>
/// <para>Plain numbers in the units that the names state: a quantity a point would cost more than its solution.</para>
/// </remarks>
public readonly record struct FeedColumns(
    ReadOnlyMemory<double> FrequencyHz, ReadOnlyMemory<double> PhaseV, ReadOnlyMemory<double> DropV = default)
{
    /// <summary>How many points.</summary>
    public int Count => FrequencyHz.Length;

    internal void Check(CircuitColumns circuits)
    {
        if (Count == 0 || Count % circuits.Count != 0)
            throw new PartException(
                BatchSolver.Part, "number of frequencies", $"{Count}", $"a multiple of the number of circuits, {circuits.Count}");
        BatchSolver.SameLength(PhaseV.Length, Count, "number of phase voltages");
        if (!DropV.IsEmpty) BatchSolver.SameLength(DropV.Length, Count, "number of phase drops");
    }
}

/// <summary>Receives operating points, one place a point.</summary>
/// <param name="TorqueNm">Air-gap torque in N·m.</param>
/// <param name="CurrentA">Rms stator current in A.</param>
/// <param name="PowerFactor">Power factor at the motor's terminals, negative when generating.</param>
public readonly record struct PointColumns(Memory<double> TorqueNm, Memory<double> CurrentA, Memory<double> PowerFactor);

/// <summary>Receives torques with the slips at which they stand, one place a point.</summary>
/// <param name="TorqueNm">Air-gap torque in N·m.</param>
/// <param name="Slip">Slip at which it stands; empty where it is not wanted.</param>
public readonly record struct TorqueColumns(Memory<double> TorqueNm, Memory<double> Slip = default);
