using Spindlewright.Motors;

namespace Spindlewright.Tests.Motors;

/// <summary>An element between two nodes of one phase; node 0 is the star point, node 1 the terminal.</summary>
internal sealed record CircuitElement(string Name, int From, int To, double Ohms, bool IsReactance);

/// <summary>
/// One phase of a motor as a list of resistances and reactances at a slip and frequency: what the two independent
/// solutions start from. A double cage stands there as its two cages, not as a rise and a fall.
/// </summary>
internal static class CircuitElements
{
    internal const int Terminal = 1;
    internal const int Gap = 3;
    private const int Bars = 4;
    private const int InnerCage = 5;

    internal static IReadOnlyList<CircuitElement> Of(EquivalentCircuit circuit, double hertz, double slip)
    {
        var a = hertz / circuit.RatedFrequency.Hertz;
        List<CircuitElement> elements =
        [
            new("R1", Terminal, 2, circuit.R1.Ohms, false), new("X1", 2, Gap, a * circuit.X1.Ohms, true),
            new("Xm", Gap, 0, a * circuit.Xm.Ohms, true),
        ];
        if (circuit.CoreLossResistance is { } core)
            elements.Add(new("Rfe", Gap, 0, core.Ohms * Math.Pow(a, 2 - circuit.CoreLossExponent), false));
        var (rise, fall) = (circuit.Cage.Rise, circuit.Cage.LeakageFall);
        elements.Add(new("X2", Gap, Bars, a * circuit.X2.Ohms * (1 - fall), true));
        if (!circuit.Cage.IsDouble)
        {
            elements.Add(new("R2", Bars, 0, circuit.R2.Ohms / slip, false));
            return elements;
        }
        // Two parallel cages: outer rise·R2, inner rise·R2/(rise − 1) in series with the slot leakage.
        var outer = rise * circuit.R2.Ohms;
        elements.Add(new("R2outer", Bars, 0, outer / slip, false));
        elements.Add(new("X2slot", Bars, InnerCage, a * fall * circuit.X2.Ohms * Math.Pow(rise / (rise - 1), 2), true));
        elements.Add(new("R2inner", InnerCage, 0, outer / (rise - 1) / slip, false));
        return elements;
    }
}
