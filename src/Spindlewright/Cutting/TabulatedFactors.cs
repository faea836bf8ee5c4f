using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Cutting;

/// <summary>The printed factor tables, which are master: exact at printed points, a power law between two of them.</summary>
/// <param name="tables">The handbook's tables.</param>
/// <remarks>Nothing is extrapolated: a value off a table raises an error that names the table's span.</remarks>
public sealed class TabulatedFactors(DrillingFactors tables) : IDrillFactors
{
    /// <inheritdoc/>
    public double Feed(Length perRevolution) => tables.FeedMetric.At(perRevolution.Millimeters);

    /// <inheritdoc/>
    public double ThrustDiameter(Length diameter) => tables.ThrustMetric.At(diameter.Millimeters);

    /// <inheritdoc/>
    public double TorqueDiameter(Length diameter) => tables.TorqueMetric.At(diameter.Millimeters);

    /// <inheritdoc/>
    public ChiselFactors Chisel(double chiselOverDiameter) => new(
        tables.ChiselTorqueA.At(chiselOverDiameter), tables.ChiselThrustB.At(chiselOverDiameter),
        tables.ChiselThrustJ.At(chiselOverDiameter));
}
