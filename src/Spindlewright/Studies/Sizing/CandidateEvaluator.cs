using System.Collections.Concurrent;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Motors.Heat;
using Spindlewright.Studies.Speeds;
using UnitsNet;

namespace Spindlewright.Studies.Sizing;

/// <summary>Tries candidates at operations: tables of every motor and law are solved once, and then read.</summary>
internal sealed class CandidateEvaluator
{
    private const int Frequencies = 48;

    /// <summary>Step of the frequencies about the peaks of torque.</summary>
    private const double PeakStepHz = 0.5;
    private const int MostFixes = 12;

    /// <summary>Share of the margin wanted from which heat is worked out.</summary>
    private const double HeatAskedFrom = 0.5;

    private readonly DrillPress press;
    private readonly SizingWishes wishes;
    private readonly IReadOnlyList<WorkDemand> demands;
    private readonly Dictionary<MotorChoice, int> places;
    private readonly Dictionary<LawChoice, Sided<DriveTables>> tables;
    private readonly TabulatedMotor[] motors;
    private readonly ConcurrentDictionary<PulleySet, PulleyDemands> pulleys = new(ReferenceEqualityComparer.Instance);
    private readonly ConcurrentDictionary<(PulleySet Set, DrillLadder Ladder), PulleyDemands> ladders = new();

    internal CandidateEvaluator(
        DrillPress press, SizingWishes wishes, CandidateSpace space, IReadOnlyList<WorkDemand> demands, Handbook handbook,
        CancellationToken cancellation)
    {
        (this.press, this.wishes, this.demands) = (press, wishes, demands);
        var data = press.Heating ?? HeatingData.Usual(handbook);
        places = space.Motors.Index().ToDictionary(each => each.Item, each => each.Index, (IEqualityComparer<MotorChoice>)ReferenceEqualityComparer.Instance);
        motors = new TabulatedMotor[space.Motors.Count];
        var options = new ParallelOptions { CancellationToken = cancellation };
        Parallel.For(0, motors.Length, options, place =>
            motors[place] = new(press.With(space.Motors[place].Inverter, space.Motors[place].Motor, press.Belts), data));
        var hertz = Grid(space, motors);
        var made = new (LawChoice Law, Side Side, DriveTables Tables)[2 * space.Laws.Count];
        Parallel.For(0, made.Length, options, place =>
        {
            var (law, side) = (space.Laws[place / 2], place % 2 == 0 ? Side.Capability : Side.Hazard);
            made[place] = (law, side, DriveTables.Of(motors, law.Curve, side, hertz));
        });
        tables = space.Laws.ToDictionary(law => law, law => new Sided<DriveTables>(
            made.Single(each => each.Law == law && each.Side == Side.Capability).Tables,
            made.Single(each => each.Law == law && each.Side == Side.Hazard).Tables), (IEqualityComparer<LawChoice>)ReferenceEqualityComparer.Instance);
    }

    /// <summary>
    /// Frequencies evenly spread on a logarithmic scale, with the bends of every law, and close together where the links of the motors stop the
    /// voltage's rise: torque has a sharp peak there, at another place for every motor.
    /// </summary>
    private static double[] Grid(CandidateSpace space, IReadOnlyList<TabulatedMotor> motors)
    {
        var limits = space.Candidates.Select(each => each.Limits).OfType<FrequencyLimits>().ToList();
        var (lowest, highest) = (limits.Min(each => each.Lowest.Hertz), limits.Max(each => each.Highest.Hertz));
        var grid = new SortedSet<double>(Enumerable.Range(0, Frequencies).Select(i => lowest * Math.Pow(highest / lowest, i / (Frequencies - 1.0))));
        foreach (var curve in space.Laws.Select(law => law.Curve))
        {
            grid.UnionWith(curve.BendsHz.Where(hertz => hertz > lowest && hertz < highest));
            var stops = motors.Select(motor => motor.Drives.Capability)
                .Select(drive => curve.HertzReaching(drive.CeilingPhaseV * Math.Sqrt(3) / drive.LinkFactor)).ToList();
            for (var hertz = stops.Min() - PeakStepHz; hertz < stops.Max() + PeakStepHz; hertz += PeakStepHz)
                if (hertz > lowest && hertz < highest) grid.Add(Math.Round(hertz / PeakStepHz) * PeakStepHz);
        }
        return [.. grid];
    }

    /// <summary>The tables of one motor under a law.</summary>
    internal DriveTables.Reader Reader(Candidate candidate, Side side) =>
        tables[candidate.Law!].On(side).At(places[candidate.Motor!], motors.Length);

    /// <summary>The motor of a candidate as the tables know it.</summary>
    internal TabulatedMotor Motor(Candidate candidate) => motors[places[candidate.Motor!]];

    /// <summary>The best belt position for one operation.</summary>
    /// <param name="candidate">The candidate.</param>
    /// <param name="item">Which operation.</param>
    /// <param name="side">Which side.</param>
    internal Outcome Of(Candidate candidate, int item, Side side)
    {
        if (demands[item].Unmet is not null) return new(Shortfall.ArmOrColumn, 0, double.NaN, 0, 0, 0, double.NaN);
        var geared = pulleys.GetOrAdd(candidate.Pulleys, set => new(press, set, demands));
        var best = At(candidate, geared, 0, item, side);
        for (var belt = 1; belt < candidate.Pulleys.Belts.Count; belt++)
            if (At(candidate, geared, belt, item, side) is var other && other.Beats(best))
                best = other;
        return best;
    }

    /// <summary>The largest drill of a ladder that a candidate turns; null for none.</summary>
    internal Length? LargestOf(Candidate candidate, DrillLadder ladder, Side side)
    {
        var geared = ladders.GetOrAdd((candidate.Pulleys, ladder), of => new(press, of.Set, of.Ladder.Rungs));
        for (var rung = 0; rung < ladder.Rungs.Count; rung++)
            for (var belt = 0; belt < candidate.Pulleys.Belts.Count; belt++)
                if (At(candidate, geared, belt, rung, side).Why == Shortfall.None)
                    return ladder.Rungs[rung].Item.Diameter;
        return null;
    }

    private Outcome At(Candidate candidate, PulleyDemands geared, int belt, int item, Side side) => candidate.Kind == CandidateKind.Converted
        ? Converted(candidate, candidate.Pulleys.Belts[belt], geared.At(belt, item), geared.PermittedRpm[belt], belt, side)
        : FixedSpeed(candidate.Pulleys.Belts[belt], geared.At(belt, item), belt, side);

    /// <summary>Highest frequency on a belt position by the speed limits; infinite where none is given.</summary>
    internal double PermittedHertz(Candidate candidate, Belts.BeltPosition belt) => PulleyDemands.PermittedRpmOf(press, belt) * candidate.Motor!.Poles / 120;

    private Outcome Converted(Candidate candidate, Belts.BeltPosition belt, in GearedDemand demand, double permittedRpm, int place, Side side)
    {
        var reader = Reader(candidate, side);
        var perRpm = candidate.Motor!.Poles / 120.0;
        var (lowest, highest) = (candidate.Limits!.Value.Lowest.Hertz, Math.Min(candidate.Limits.Value.Highest.Hertz, permittedRpm * perRpm));
        if (highest < lowest) return new(Shortfall.TooFast, place, lowest, 0, 0, 0, double.NaN);
        var loadNm = demand.MotorNm.On(side);
        // Slip at the frequency that makes good for slip: a few fixes, since slip frequency hardly moves with frequency.
        var hertz = Math.Clamp(demand.WantedRpm * perRpm, lowest, highest);
        var slip = reader.Slip(hertz, loadNm);
        for (var fix = 0; fix < MostFixes && !double.IsNaN(slip); fix++)
        {
            var next = Math.Clamp(demand.WantedRpm * perRpm / (1 - slip), lowest, highest);
            if (Math.Abs(next - hertz) < 1e-7 * hertz) break;
            hertz = next;
            slip = reader.Slip(hertz, loadNm);
        }
        var availableNm = Math.Max(0, reader.ShortTimeNm(hertz) * demand.Gain.On(side) - press.Spindle.FrictionTorque.On(side).NewtonMeters);
        var margin = demand.SpindleNm > 0 ? availableNm / demand.SpindleNm : double.PositiveInfinity;
        var rpm = double.IsNaN(slip) ? 0 : hertz / perRpm * (1 - slip) / belt.Ratio;
        var found = new Outcome(Shortfall.None, place, hertz, rpm, availableNm, margin, double.NaN);
        if (double.IsNaN(slip)) return found with { Why = Shortfall.TooWeak };
        if (rpm * belt.Ratio > demand.MostRpm * (1 + 1e-9)) return found with { Why = Shortfall.TooFast };
        if (rpm * belt.Ratio < demand.LeastRpm * (1 - 1e-9)) return found with { Why = Shortfall.TooSlow };
        // Whoever is too weak by a little may still be the choice by draws, and how hot it gets is then asked.
        if (margin < wishes.TorqueMargin * HeatAskedFrom) return found with { Why = Shortfall.TooWeak };
        var windingC = WindingC(candidate, reader, hertz, demand, side);
        if (margin < wishes.TorqueMargin) return found with { WindingC = windingC, Why = Shortfall.TooWeak };
        if (demand.SlipUse > 1) return found with { WindingC = windingC, Why = Shortfall.Slips };
        return found with { WindingC = windingC, Why = windingC <= Motor(candidate).Heated(side).Limit.DegreesCelsius ? Shortfall.None : Shortfall.TooHot };
    }

    /// <summary>Hottest winding over the holes in a row, the motor at first as warm as the air; infinite where it runs away.</summary>
    private double WindingC(Candidate candidate, in DriveTables.Reader reader, double hertz, in GearedDemand demand, Side side)
    {
        var heated = Motor(candidate).Heated(side);
        var (body, roomK) = (heated.Body, heated.Room.Kelvins);
        var synchronous = 4 * Math.PI * hertz / candidate.Motor!.Poles;
        (double Gain, double OffsetK) Stage(in DriveTables.Reader reader, double loadNm, double timeS)
        {
            var (air, limit) = (reader.AirWarmLossW(hertz, loadNm), reader.LimitWarmLossW(hertz, loadNm));
            if (double.IsNaN(air + limit)) return (1, double.PositiveInfinity);
            var net = body.ConductanceWPerK(synchronous * (1 - reader.LimitWarmSlip(hertz, loadNm))) - Math.Max(0, (limit - air) / roomK);
            return FirstOrder.Step(air, net, body.CapacityJPerK, timeS);
        }

        var (cutGain, cutOffset) = Stage(reader, demand.MotorNm.On(side), demand.CuttingS);
        if (double.IsInfinity(cutOffset)) return double.PositiveInfinity;
        if (demand.RestS <= 0) return heated.Air.DegreesCelsius + cutOffset;
        var (restGain, restOffset) = Stage(reader, 0, demand.RestS);
        var (gain, offset) = (cutGain * restGain, restGain * cutOffset + restOffset);
        // The rise before the last hole: a sum of powers of the gain of one cycle.
        var cycles = demand.Holes - 1;
        var before = Math.Abs(1 - gain) < 1e-12 ? cycles * offset : offset * (1 - Math.Pow(gain, cycles)) / (1 - gain);
        return heated.Air.DegreesCelsius + Math.Max(cutGain * before + cutOffset, restGain * (cutGain * before + cutOffset) + restOffset);
    }

    /// <summary>The old motor: one speed a position, torque by its plate, heat not determined.</summary>
    private Outcome FixedSpeed(Belts.BeltPosition belt, in GearedDemand demand, int place, Side side)
    {
        var found = press.AsFound!;
        var supply = press.Supply.On(side) / press.Supply.Nominal;
        var ratedNm = found.RatedTorque.NewtonMeters;
        var shortTimeNm = Torques.TorqueStudy.ShortTimeNm(ratedNm, ratedNm * found.BreakdownTorque.On(side) * supply * supply, 0);
        var availableNm = Math.Max(0, shortTimeNm * demand.Gain.On(side) - press.Spindle.FrictionTorque.On(side).NewtonMeters);
        var margin = demand.SpindleNm > 0 ? availableNm / demand.SpindleNm : double.PositiveInfinity;
        var motorRpm = found.Speed.RevolutionsPerMinute;
        return new(
            motorRpm > demand.MostRpm ? Shortfall.TooFast
                : motorRpm < demand.LeastRpm ? Shortfall.TooSlow
                : margin < wishes.TorqueMargin ? Shortfall.TooWeak
                : demand.SlipUse > 1 ? Shortfall.Slips : Shortfall.None,
            place, double.NaN, motorRpm / belt.Ratio, availableNm, margin, double.NaN);
    }
}

/// <summary>A demand seen from the motor shaft of one belt position.</summary>
internal readonly record struct GearedDemand(
    Sided<double> MotorNm, Sided<double> Gain, double SpindleNm, double LeastRpm, double WantedRpm, double MostRpm, double SlipUse,
    double CuttingS, double RestS, int Holes)
{
    internal static GearedDemand Of(DrillPress press, WorkDemand demand, Belts.BeltPosition belt)
    {
        var gain = belt.Efficiency.Map(efficiency => belt.Ratio * efficiency);
        var friction = press.Spindle.FrictionTorque;
        double Motor(Side side) => (demand.Torque + friction.On(side)).NewtonMeters / gain.On(side);
        var slip = demand.Torque > Torque.Zero ? press.Belting?.SlipAtSpindle(belt, demand.Wanted * belt.Ratio) : null;
        double Rpm(RotationalSpeed spindle) => (spindle * belt.Ratio).RevolutionsPerMinute;
        return new(
            new(Motor(Side.Capability), Motor(Side.Hazard)), gain, demand.Torque.NewtonMeters, Rpm(demand.Slowest), Rpm(demand.Wanted),
            Rpm(demand.Fastest), slip is null ? 0 : demand.Torque / slip.Least, demand.Cutting.Seconds, demand.Rest.Seconds, demand.Holes);
    }
}

/// <summary>All demands on all positions of one set of pulleys.</summary>
internal sealed class PulleyDemands
{
    private readonly GearedDemand[] geared;
    private readonly int count;

    internal PulleyDemands(DrillPress press, PulleySet set, IReadOnlyList<WorkDemand> demands)
    {
        count = demands.Count;
        geared = [.. set.Belts.SelectMany(belt => demands.Select(demand => GearedDemand.Of(press, demand, belt)))];
        PermittedRpm = [.. set.Belts.Select(belt => PermittedRpmOf(press, belt))];
    }

    /// <summary>Highest motor speed of each position.</summary>
    internal double[] PermittedRpm { get; }

    /// <summary>Highest motor speed on a belt position by the speed limits, r/min; infinite where none is given.</summary>
    internal static double PermittedRpmOf(DrillPress press, Belts.BeltPosition belt) =>
        PermittedFrequency.MotorSpeedOf(press, belt)?.Speed.RevolutionsPerMinute ?? double.PositiveInfinity;

    internal ref readonly GearedDemand At(int belt, int item) => ref geared[belt * count + item];
}
