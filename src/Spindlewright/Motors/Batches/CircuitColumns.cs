using System.Runtime.CompilerServices;
using Spindlewright.Foundations;

namespace Spindlewright.Motors.Batches;

/// <summary>Many equivalent circuits as a structure of arrays: one column a parameter, one place a circuit.</summary>
/// <remarks>
/// <para>
/// Made once and refilled at will; a batch reads it and never writes. Circuits of any poles, rated voltage and rated
/// frequency stand together. Friction, windage and stray-load loss do not enter: all torques are air-gap torques.
/// </para>
/// <para>Not to be refilled while a batch runs over it.</para>
/// </remarks>
public sealed class CircuitColumns
{
    private const string Part = "batch of circuits";
    private const int MostCircuits = 100_000_000;

    private readonly double[][] columns;

    /// <summary>Makes room for circuits; until one is set, a place gives NaN.</summary>
    /// <param name="count">How many, 1 to 100 million.</param>
    /// <exception cref="PartException">The number is out of range.</exception>
    public CircuitColumns(int count)
    {
        Count = (int)Guard.Within(count, 1, MostCircuits, Part, "number of circuits");
        columns = new double[(int)Column.Places][];
        for (var column = 0; column < columns.Length; column++)
        {
            columns[column] = new double[Count];
            Array.Fill(columns[column], double.NaN);
        }
    }

    /// <summary>Lays circuits out.</summary>
    /// <param name="circuits">One or more.</param>
    /// <exception cref="PartException">There is none.</exception>
    public CircuitColumns(IReadOnlyList<EquivalentCircuit> circuits)
        : this(circuits.Count)
    {
        for (var place = 0; place < Count; place++) Set(place, circuits[place]);
    }

    /// <summary>Names of the columns.</summary>
    internal enum Column
    {
        R1Ohm, X1Ohm, R2Ohm, X2Ohm, MagnetisingS, CoreConductanceS, RatedHz, PerRatedHz, PolePairs, RatedPhaseV, RatedAirGapV, Saturation,
        CoreLossExponent, CageRise, CageFall, Corner, Places,
    }

    /// <summary>How many circuits.</summary>
    public int Count { get; }

    /// <summary>Whether any circuit has, or ever had, a double cage; without one the quicker formulas serve.</summary>
    internal bool DoubleCage { get; private set; }

    /// <summary>Puts a circuit at a place.</summary>
    /// <param name="place">0 to <see cref="Count"/> − 1.</param>
    /// <param name="circuit">The circuit.</param>
    public void Set(int place, EquivalentCircuit circuit) => Set(place, circuit.Si);

    internal void Set(int place, in CircuitSi circuit)
    {
        // Taken apart by position, so that a circuit that comes to know more stops compiling here.
        var (r1Ohm, x1Ohm, r2Ohm, x2Ohm, xmOhm, coreConductanceS, ratedHz, poles, ratedPhaseV, saturation, coreLossExponent, rise, fall) =
            circuit;
        this[Column.R1Ohm][place] = r1Ohm;
        this[Column.X1Ohm][place] = x1Ohm;
        this[Column.R2Ohm][place] = r2Ohm;
        this[Column.X2Ohm][place] = x2Ohm;
        // Quotients that every point would take anew are taken once.
        this[Column.MagnetisingS][place] = 1 / xmOhm;
        this[Column.CoreConductanceS][place] = coreConductanceS;
        this[Column.RatedHz][place] = ratedHz;
        this[Column.PerRatedHz][place] = 1 / ratedHz;
        this[Column.PolePairs][place] = poles / 2.0;
        this[Column.RatedPhaseV][place] = ratedPhaseV;
        this[Column.RatedAirGapV][place] = circuit.RatedAirGapV;
        this[Column.Saturation][place] = saturation;
        this[Column.CoreLossExponent][place] = coreLossExponent;
        this[Column.CageRise][place] = rise;
        this[Column.CageFall][place] = fall;
        this[Column.Corner][place] = rise == 0 ? 0 : fall * x2Ohm / (rise * r2Ohm);
        if (rise != 0) DoubleCage = true;
    }

    internal Span<double> this[Column column]
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => columns[(int)column];
    }
}
