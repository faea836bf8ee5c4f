using Spindlewright.Machines;

namespace Spindlewright.Studies.Sizing;

/// <summary>Discards candidates that fail two requirements or more whatever their circuit is, before anything is solved.</summary>
/// <remarks>
/// Two facts serve: a loaded motor never turns faster than synchronous, and short-time torque is never more than 1.6 times rated. Both hold on
/// either side, with the belt's better efficiency and no drag, so that nothing is discarded that a full evaluation keeps. Who fails one requirement
/// alone is kept, because it may be the choice once that requirement is given up.
/// </remarks>
internal sealed class EarlyFilter(
    DrillPress press, SizingWishes wishes, IReadOnlyList<WorkDemand> demands, IReadOnlyList<Func<Candidate, bool>> limits)
{
    internal bool Keeps(Candidate candidate)
    {
        var failed = limits.Count(meets => !meets(candidate));
        if (candidate.Kind != CandidateKind.Converted) return true;
        var synchronous = 120 * candidate.Limits!.Value.Highest.Hertz / candidate.Motor!.Poles;
        var mostNm = Torques.TorqueStudy.MomentaryExcess * candidate.Motor.Motor.RatedTorque.NewtonMeters;
        for (var item = 0; item < demands.Count && failed < 2; item++)
            if (demands[item].Unmet is not null || !CanDo(demands[item], candidate.Pulleys.Belts, synchronous, mostNm))
                failed++;
        return failed < 2;
    }

    private bool CanDo(WorkDemand demand, IReadOnlyList<Belts.BeltPosition> belts, double synchronousRpm, double mostNm)
    {
        foreach (var belt in belts)
            if (CanDo(demand, belt, synchronousRpm, mostNm))
                return true;
        return false;
    }

    private bool CanDo(WorkDemand demand, Belts.BeltPosition belt, double synchronousRpm, double mostNm)
    {
        var gain = belt.Ratio * Math.Max(belt.Efficiency.Capability, belt.Efficiency.Hazard);
        var friction = Math.Min(press.Spindle.FrictionTorque.Capability.NewtonMeters, press.Spindle.FrictionTorque.Hazard.NewtonMeters);
        return synchronousRpm / belt.Ratio >= demand.Slowest.RevolutionsPerMinute * (1 - 1e-9)
            && mostNm * gain - friction >= wishes.TorqueMargin * demand.Torque.NewtonMeters * (1 - 1e-9);
    }
}
