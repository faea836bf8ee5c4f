using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Mains;

/// <summary>What is accepted for the loop of a supply and for the link behind a rectifier, wherever they are given.</summary>
internal static class InputLimits
{
    internal const double LeastLinkMicrofarads = 5;
    internal const double MostLinkMicrofarads = 100_000;

    internal static ElectricResistance LoopResistance(ElectricResistance value, string part) => Guard.Within(
        value, ElectricResistance.FromOhms(0.001), ElectricResistance.FromOhms(100), part, "loop resistance");

    internal static ElectricInductance LoopInductance(ElectricInductance value, string part) => Guard.Within(
        value, ElectricInductance.FromMillihenries(0.01), ElectricInductance.FromMillihenries(100), part, "loop inductance");

    internal static ElectricCapacitance LinkCapacitance(ElectricCapacitance value, string part) => Guard.Within(
        value, ElectricCapacitance.FromMicrofarads(LeastLinkMicrofarads),
        ElectricCapacitance.FromMicrofarads(MostLinkMicrofarads), part, "link capacitance");
}
