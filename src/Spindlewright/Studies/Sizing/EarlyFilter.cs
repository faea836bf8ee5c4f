using Spindlewright.Foundations;
using Spindlewright.Machines;
using UnitsNet;

namespace Spindlewright.Studies.Sizing;

/// <summary>Discards candidates that cannot meet a requirement whatever their circuit is, before anything is solved.</summary>
/// <remarks>
/// Two facts serve: a loaded motor never turns faster than synchronous, and short-time torque is never more than 1.6 times rated. Both hold on
/// either side, with the belt's better efficiency and no drag, so that nothing is discarded that a full evaluation keeps.
/// </remarks>
internal sealed class EarlyFilter(
    DrillPress press, SizingWishes wishes, IReadOnlyList<WorkDemand> demands, IReadOnlyList<Func<Candidate, bool>> limits)
{
    internal bool Keeps(Candidate candidate)
    {
        if (!limits.All(meets => meets(candidate))) return false;
        if (candidate.Kind != CandidateKind.Converted) return true;
        var synchronous = 120 * candidate.Limits!.Value.Highest.Hertz / candidate.Motor!.Poles;
        var mostNm = Torques.TorqueStudy.MomentaryExcess * candidate.Motor.Motor.RatedTorque.NewtonMeters;
        return demands.All(demand => demand.Unmet is null && candidate.Pulleys.Belts.Any(belt => CanDo(demand, belt, synchronous, mostNm)));
    }

    private bool CanDo(WorkDemand demand, Belts.BeltPosition belt, double synchronousRpm, double mostNm)
    {
        var gain = belt.Ratio * Math.Max(belt.Efficiency.Capability, belt.Efficiency.Hazard);
        var friction = Math.Min(press.Spindle.FrictionTorque.Capability.NewtonMeters, press.Spindle.FrictionTorque.Hazard.NewtonMeters);
        return synchronousRpm / belt.Ratio >= demand.Slowest.RevolutionsPerMinute * (1 - 1e-9)
            && mostNm * gain - friction >= wishes.TorqueMargin * demand.Torque.NewtonMeters * (1 - 1e-9);
    }
}
