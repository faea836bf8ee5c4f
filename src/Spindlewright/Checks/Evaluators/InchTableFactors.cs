using Spindlewright.Cutting;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>The handbook's inch tables, so that its inch example is solved from the digits that its reader sees.</summary>
/// <remarks>
/// The factors are powers 0.8, 0.8 and 1.8 of feed and diameter, so an inch factor becomes a metric one by the same
/// power of 25.4. The library itself reads the metric tables.
/// </remarks>
internal sealed class InchTableFactors(DrillingFactors tables) : IDrillFactors
{
    private const double InchMm = 25.4;

    private readonly TabulatedFactors metric = new(tables);

    public double Feed(Length perRevolution) =>
        tables.FeedInch.At(perRevolution.Inches) * Math.Pow(InchMm, 0.8);

    public double ThrustDiameter(Length diameter) => tables.ThrustInch.At(diameter.Inches) * Math.Pow(InchMm, 0.8);

    public double TorqueDiameter(Length diameter) => tables.TorqueInch.At(diameter.Inches) * Math.Pow(InchMm, 1.8);

    public ChiselFactors Chisel(double chiselOverDiameter) => metric.Chisel(chiselOverDiameter);
}
