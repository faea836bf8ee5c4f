using Spindlewright.Cutting;
using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Studies.Sizing;

/// <summary>The largest drill of one material that a candidate turns and that arm and column push.</summary>
/// <param name="Material">The material.</param>
/// <param name="Piloted">True with a pilot that clears the chisel edge.</param>
/// <param name="Low">By the low side's torque; null for none of the sizes tried.</param>
/// <param name="High">By the high side's.</param>
/// <param name="Pushed">The largest that arm and column push; a larger motor does not raise it.</param>
public sealed record LargestDrillOf(CuttingMaterial Material, bool Piloted, Length? Low, Length? High, Length? Pushed)
{
    /// <summary>True where the motor turns all that can be pushed.</summary>
    public bool LimitedByPush => Low is { } low && Pushed is { } pushed && low >= pushed;
}

/// <summary>A candidate with its measures, each with an interval from the low to the high side.</summary>
public sealed record CandidateResult
{
    /// <summary>The candidate.</summary>
    public required Candidate Candidate { get; init; }

    /// <summary>How it fares at every operation.</summary>
    public required IReadOnlyList<DemandOutcome> Work { get; init; }

    /// <summary>Requirements that it does not meet.</summary>
    public required IReadOnlyList<Requirement> Unmet { get; init; }

    /// <summary>Worst torque margin, low and high side; null where no operation needs torque.</summary>
    public required Interval? Margin { get; init; }

    /// <summary>Which operation has it; null where none needs torque.</summary>
    public required DemandOutcome? Tightest { get; init; }

    /// <summary>Speeds served.</summary>
    public required Coverage Coverage { get; init; }

    /// <summary>Largest drills.</summary>
    public required IReadOnlyList<LargestDrillOf> Drills { get; init; }

    /// <summary>Hottest winding over the operations, cool and hot side; null where it is not determined.</summary>
    public required (Temperature Cool, Temperature Hot)? Winding { get; init; }

    /// <summary>Input current at rated motor power, A; null where it is not determined.</summary>
    public required Interval? InputA { get; init; }

    /// <summary>Energy that turns at the highest speed permitted, J.</summary>
    public required Interval EnergyJ { get; init; }

    /// <summary>No-credit bound at the spindle of the slowest position. A bound has no interval: nothing uncertain is credited in it.</summary>
    public required Torque Bound { get; init; }

    /// <summary>
    /// Spindle speed where the modelled torque first passes the strong hand's on the slowest position, conditions left out; null where it does
    /// not below base frequency. An intermediate, not an answer: the bound stands beside it, and nobody may read it as permission.
    /// </summary>
    public required Sided<RotationalSpeed?> Crossing { get; init; }

    /// <summary>Mass of the motor, kg; null where it is not determined.</summary>
    public required Interval? MassKg { get; init; }

    /// <summary>True where every requirement is met on the low side.</summary>
    public bool MeetsAll => Unmet.Count == 0;
}
