using Spindlewright.Belts;
using Spindlewright.Cutting;
using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations;
using Spindlewright.Machines;
using UnitsNet;

namespace Spindlewright.Studies.Work;

/// <summary>One thing that an operation may run up against.</summary>
/// <param name="Name">Which: arm at the lever, column, short-time torque, continuous torque, belt slip.</param>
/// <param name="Use">What is needed over what there is; above 1 it gives out.</param>
public sealed record WorkLimit(string Name, double Use)
{
    /// <summary>True where it gives out; a use of 1 within rounding is just enough.</summary>
    public bool GivesOut => Use > 1.0001;
}

/// <summary>One operation at one belt position.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Frequency">Frequency that turns the loaded spindle at the wanted speed; null where none does.</param>
/// <param name="Available">Short-time torque at the spindle there.</param>
/// <param name="Bound">No-credit bound at the spindle of this position.</param>
/// <param name="Words">What limits the short-time torque, or why the speed is not reached.</param>
public sealed record WorkAtBelt(BeltPosition Belt, Frequency? Frequency, Torque? Available, Torque Bound, string Words)
{
    /// <summary>Available over needed torque; null where the speed is not reached or no torque is needed.</summary>
    public required double? Margin { get; init; }

    /// <summary>Continuous torque at the spindle there; null where the speed is not reached.</summary>
    public Torque? Continuous { get; init; }

    /// <summary>As modelled, torque at standstill at this frequency; null where the speed is not reached.</summary>
    public Torque? Stall { get; init; }

    /// <summary>Torque at which a belt slips; null where the belts were not described.</summary>
    public BeltSlip? Slip { get; init; }

    /// <summary>Hottest winding over the holes in a row; null where the motor stalls.</summary>
    public Sided<Temperature?>? Winding { get; init; }

    /// <summary>Limit of the insulation class; null where the speed is not reached.</summary>
    public Temperature? ClassLimit { get; init; }

    /// <summary>What may give out at this position.</summary>
    public IReadOnlyList<WorkLimit> Limits { get; init; } = [];

    /// <summary>Stopping a tap at depth; null for other tools.</summary>
    public TapStop? TapStop { get; init; }

    /// <summary>How exactly the speed is held; null but for spin testing.</summary>
    public SpinAccuracy? Spin { get; init; }

    /// <summary>Slip torque at the low end over needed torque; null where unknown.</summary>
    public double? SlipMargin => Limits.FirstOrDefault(limit => limit.Name == "belt slip") is { Use: > 0 } slip ? 1 / slip.Use : null;

    /// <summary>True where the holes in a row take the winding past its class limit on the hot side.</summary>
    public bool PassesClassLimit => Winding?.Capability is { } hot && ClassLimit is { } limit && hot > limit;
}

/// <summary>One operation of the machine file over every belt position.</summary>
/// <param name="Item">The operation as asked for.</param>
/// <param name="Cut">Speed, feed, torque, thrust, power and time.</param>
/// <param name="Feed">What the arm's sustained pull gives; null for tools that are not drills.</param>
/// <param name="ArmLimits">Thrust against arm and column.</param>
/// <param name="Belts">One row a belt position.</param>
public sealed record WorkResult(
    WorkItem Item, OperationCut Cut, HandFeed? Feed, IReadOnlyList<WorkLimit> ArmLimits, IReadOnlyList<WorkAtBelt> Belts)
{
    /// <summary>The same at the feed that the arm keeps up; null where the arm gives the feed asked for, or none at all.</summary>
    public WorkResult? AtArmFeed { get; init; }

    /// <summary>Spindle speed looked for.</summary>
    public RotationalSpeed Speed => Cut.Speed;

    /// <summary>Torque needed; zero where the operation has none to speak of.</summary>
    public Torque Torque => Cut.Load?.Torque ?? Torque.Zero;

    /// <summary>Thrust needed; null where the method gives none.</summary>
    public Force? Thrust => Cut.Load?.Thrust;

    /// <summary>Power at the tool at that speed.</summary>
    public Power Power => Cut.Power;

    /// <summary>The position with the largest margin; for spin testing the one that loses the least speed. Null where none reaches the speed.</summary>
    public WorkAtBelt? Best => Belts.Where(belt => belt.Margin is not null).MaxBy(belt => belt.Margin)
        ?? Belts.Where(belt => belt.Frequency is not null).MinBy(belt => belt.Spin?.SlipLoss ?? RotationalSpeed.Zero);

    /// <summary>All limits at the best position, the tightest first.</summary>
    public IReadOnlyList<WorkLimit> Limits =>
        [.. ArmLimits.Concat(Best?.Limits ?? []).OrderByDescending(limit => limit.Use)];

    /// <summary>What gives out first; null where the speed is not reached.</summary>
    public WorkLimit? First => Best is not null && Limits is [var first, ..] ? first : null;

    /// <summary>How it stands, in words.</summary>
    public string Words => Best is null ? "no belt position reaches the speed under this load"
        : Limits.Where(limit => limit.GivesOut).ToList() is { Count: > 0 } past
            ? $"gives out: {string.Join(", ", past.Select(limit => limit.Name))}"
            : Best.PassesClassLimit ? "gives out: the winding passes its class limit over the holes in a row"
            : First is { } first ? FormattableString.Invariant($"within all limits compared; nearest: {first.Name}, {100 * first.Use:0} % used")
            : "no limit was compared";
}
