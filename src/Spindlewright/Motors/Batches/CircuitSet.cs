using System.Runtime.CompilerServices;
using static Spindlewright.Motors.Batches.CircuitColumns;

namespace Spindlewright.Motors.Batches;

/// <summary>Circuits, one a lane, at no frequency yet: their columns, loaded once for many frequencies.</summary>
internal struct CircuitSet<L> where L : struct, ILanes<L>
{
    internal L R1, X1, R2, X2, MagnetisingS, CoreS, RatedHz, PerRatedHz, PolePairs, RatedAirGapV, Saturation, CoreLossExponent, CageRise, CageFall, Corner;
    internal bool DoubleCage;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static CircuitSet<L> Load(CircuitColumns circuits, in Group group, CircuitForm form)
    {
        CircuitSet<L> made;
        made.R1 = group.LoadCircuits<L>(circuits[Column.R1Ohm]);
        made.X1 = group.LoadCircuits<L>(circuits[Column.X1Ohm]);
        made.R2 = group.LoadCircuits<L>(circuits[Column.R2Ohm]);
        made.X2 = group.LoadCircuits<L>(circuits[Column.X2Ohm]);
        made.MagnetisingS = group.LoadCircuits<L>(circuits[Column.MagnetisingS]);
        made.CoreS = group.LoadCircuits<L>(circuits[Column.CoreConductanceS]);
        made.RatedHz = group.LoadCircuits<L>(circuits[Column.RatedHz]);
        made.PerRatedHz = group.LoadCircuits<L>(circuits[Column.PerRatedHz]);
        made.PolePairs = group.LoadCircuits<L>(circuits[Column.PolePairs]);
        made.RatedAirGapV = group.LoadCircuits<L>(circuits[Column.RatedAirGapV]);
        made.Saturation = form == CircuitForm.Saturated ? group.LoadCircuits<L>(circuits[Column.Saturation]) : L.All(0);
        made.CoreLossExponent = group.LoadCircuits<L>(circuits[Column.CoreLossExponent]);
        made.DoubleCage = circuits.DoubleCage;
        (made.CageRise, made.CageFall, made.Corner) = made.DoubleCage ? Cage(circuits, group) : (L.All(0), L.All(0), L.All(0));
        return made;
    }

    private static (L Rise, L Fall, L Corner) Cage(CircuitColumns circuits, in Group group) => (
        group.LoadCircuits<L>(circuits[Column.CageRise]), group.LoadCircuits<L>(circuits[Column.CageFall]),
        group.LoadCircuits<L>(circuits[Column.Corner]));
}
