using Spindlewright.Foundations;
using Spindlewright.Inverters;
using Spindlewright.Machines;
using Spindlewright.Motors;
using Spindlewright.Motors.Batches;
using Spindlewright.Studies.Heat;

namespace Spindlewright.Studies.Sizing;

/// <summary>What many motors give, lose and turn at under one V/f law and on one side, over frequency and load.</summary>
/// <remarks>
/// <para>
/// Torques are solved exactly at some sixty frequencies a motor and seventeen slips a frequency, and read by straight lines between: the
/// number of candidates that share a motor and a law costs nothing. Against the studies of one machine the margins differ by less
/// than 1 %, the frequencies by less than 0.5 % (a test holds both).
/// </para>
/// <para>Short-time torque is that of the torque study: 1.6 times rated, 0.75 of pull-out, and at the current limit, whichever is least.</para>
/// </remarks>
internal sealed class DriveTables
{
    /// <summary>Loads at each frequency, from none to where short-time torque has surely been passed.</summary>
    private const int Loads = 17;

    /// <summary>Above 1, so that loads stand closer together where motors work.</summary>
    private const double Crowding = 1.3;

    /// <summary>The last load's slip over that of pull-out: torque there is above 0.75 of the peak on any curve that bends one way.</summary>
    private const double LastShare = 0.85;

    private readonly double[] hertz, shortTimeNm, pullOutNm;
    private readonly LoadCurves turning, airWarm, limitWarm;

    private DriveTables(double[] hertz, double[] shortTimeNm, double[] pullOutNm, LoadCurves turning, LoadCurves airWarm, LoadCurves limitWarm) =>
        (this.hertz, this.shortTimeNm, this.pullOutNm, this.turning, this.airWarm, this.limitWarm) =
            (hertz, shortTimeNm, pullOutNm, turning, airWarm, limitWarm);

    /// <summary>Solves the tables.</summary>
    /// <param name="motors">The motors.</param>
    /// <param name="law">The law.</param>
    /// <param name="side">The side.</param>
    /// <param name="hertz">Frequencies, rising.</param>
    internal static DriveTables Of(IReadOnlyList<TabulatedMotor> motors, VoltsPerHertzCurve law, Side side, double[] hertz)
    {
        var volts = PhaseVolts(motors, law, side, hertz);
        var cold = new SolvedLoads(motors, side, motor => motor.Cold(side), hertz, volts);
        var hot = new SolvedLoads(motors, side, motor => motor.Hot(side), hertz, volts);
        var (shortTime, pullOut) = (new double[volts.Length], new double[volts.Length]);
        for (var at = 0; at < hertz.Length; at++)
            for (var place = 0; place < motors.Count; place++)
            {
                var row = at * motors.Count + place;
                pullOut[row] = side == Side.Capability
                    ? Math.Min(cold.PullOutNm[row], hot.PullOutNm[row]) : Math.Max(cold.PullOutNm[row], hot.PullOutNm[row]);
                var atLimit = side == Side.Capability
                    ? Math.Min(cold.AtCurrentNm(row, motors[place].LimitA), hot.AtCurrentNm(row, motors[place].LimitA))
                    : Math.Max(cold.AtCurrentNm(row, motors[place].LimitA), hot.AtCurrentNm(row, motors[place].LimitA));
                var frictionNm = motors[place].FrictionNm(side, hertz[at]);
                shortTime[row] = Torques.TorqueStudy.ShortTimeNm(motors[place].RatedNm, pullOut[row], frictionNm, atLimit);
            }
        // On the capability side the hot motor, which turns slower under a load, counts.
        return new(
            hertz, shortTime, pullOut, (side == Side.Capability ? hot : cold).Curves(),
            new SolvedLoads(motors, side, motor => motor.AirWarm(side), hertz, volts).Curves(),
            new SolvedLoads(motors, side, motor => motor.LimitWarm(side), hertz, volts).Curves());
    }

    private static double[] PhaseVolts(IReadOnlyList<TabulatedMotor> motors, VoltsPerHertzCurve law, Side side, double[] hertz)
    {
        var volts = new double[hertz.Length * motors.Count];
        for (var at = 0; at < hertz.Length; at++)
            for (var place = 0; place < motors.Count; place++)
            {
                var drive = motors[place].Drives.On(side);
                volts[at * motors.Count + place] = Math.Min(law.LineVolts(hertz[at]) * drive.LinkFactor / Math.Sqrt(3), drive.CeilingPhaseV);
            }
        return volts;
    }

    /// <summary>Reads the tables of one motor.</summary>
    internal Reader At(int motor, int motors) => new(this, motor, motors);

    /// <summary>The tables of one motor.</summary>
    internal readonly struct Reader(DriveTables tables, int motor, int motors)
    {
        /// <summary>Short-time torque at the shaft.</summary>
        internal double ShortTimeNm(double hertz) => Read(tables.shortTimeNm, hertz);

        /// <summary>Pull-out torque across the gap.</summary>
        internal double PullOutNm(double hertz) => Read(tables.pullOutNm, hertz);

        /// <summary>Slip under a load at the shaft; NaN where the motor stalls.</summary>
        internal double Slip(double hertz, double loadNm) => Read(tables.turning, LoadCurves.What.Slip, hertz, loadNm);

        /// <summary>Losses with the winding at the temperature of the air, W.</summary>
        internal double AirWarmLossW(double hertz, double loadNm) => Read(tables.airWarm, LoadCurves.What.LossW, hertz, loadNm);

        /// <summary>Losses with the winding at the limit of its class, W.</summary>
        internal double LimitWarmLossW(double hertz, double loadNm) => Read(tables.limitWarm, LoadCurves.What.LossW, hertz, loadNm);

        /// <summary>Slip with the winding at the limit of its class.</summary>
        internal double LimitWarmSlip(double hertz, double loadNm) => Read(tables.limitWarm, LoadCurves.What.Slip, hertz, loadNm);

        /// <summary>The lowest frequency between two at which pull-out torque reaches a torque; infinite for none.</summary>
        internal double FirstReachingHz(double torqueNm, double lowestHz, double topHz)
        {
            var (fromHz, fromNm) = (lowestHz, PullOutNm(lowestHz));
            if (fromNm >= torqueNm) return lowestHz;
            foreach (var inner in tables.hertz)
            {
                if (inner <= lowestHz) continue;
                var toHz = Math.Min(inner, topHz);
                var toNm = PullOutNm(toHz);
                if (toNm >= torqueNm) return fromHz + (toHz - fromHz) * (torqueNm - fromNm) / (toNm - fromNm);
                if (inner >= topHz) break;
                (fromHz, fromNm) = (toHz, toNm);
            }
            return double.PositiveInfinity;
        }

        private double Read(double[] column, double hertz)
        {
            var (lower, share) = Place(hertz);
            var row = lower * motors + motor;
            return column[row] + (column[row + motors] - column[row]) * share;
        }

        private double Read(LoadCurves curves, LoadCurves.What what, double hertz, double loadNm)
        {
            var (lower, share) = Place(hertz);
            var row = lower * motors + motor;
            // Read at the same share of what the motor gives at either frequency: curves of neighbours are alike then, also near the peak.
            var (lowNm, highNm) = (curves.LastNm(row), curves.LastNm(row + motors));
            var loaded = loadNm / (lowNm + (highNm - lowNm) * share);
            var (low, high) = (curves.Read(row, what, loaded * lowNm), curves.Read(row + motors, what, loaded * highNm));
            return low + (high - low) * share;
        }

        private (int Lower, double Share) Place(double hertz)
        {
            var grid = tables.hertz;
            var upper = Math.Clamp(grid.AsSpan().BinarySearch(hertz) is var found && found < 0 ? ~found : found, 1, grid.Length - 1);
            return (upper - 1, Math.Clamp((hertz - grid[upper - 1]) / (grid[upper] - grid[upper - 1]), 0, 1));
        }
    }

    /// <summary>Shaft torque, slip and losses at a dozen slips of each row.</summary>
    internal sealed class LoadCurves(double[] torqueNm, double[] slip, double[] lossW)
    {
        internal enum What { Slip, LossW }

        /// <summary>The largest load of a row.</summary>
        internal double LastNm(int row) => torqueNm[row * Loads + Loads - 1];

        /// <summary>
        /// A figure under a load; NaN where the curve does not reach it. Slip by straight lines over torque, losses by straight lines over its
        /// square, with which copper losses go.
        /// </summary>
        internal double Read(int row, What what, double loadNm)
        {
            var torques = torqueNm.AsSpan(row * Loads, Loads);
            var column = (what == What.Slip ? slip : lossW).AsSpan(row * Loads, Loads);
            var upper = 1;
            while (upper < Loads && torques[upper] < loadNm * (1 - 1e-12)) upper++;
            if (upper == Loads) return double.NaN;
            var (low, high) = (torques[upper - 1], torques[upper]);
            var share = Math.Max(0, what == What.Slip ? (loadNm - low) / (high - low) : (loadNm * loadNm - low * low) / (high * high - low * low));
            return column[upper - 1] + (column[upper] - column[upper - 1]) * share;
        }
    }

    /// <summary>Solves pull-out and loads of all motors at one temperature.</summary>
    private sealed class SolvedLoads
    {
        private readonly double[] slips, torqueNm, currentA, lossW;

        internal SolvedLoads(
            IReadOnlyList<TabulatedMotor> motors, Side side, Func<TabulatedMotor, EquivalentCircuit> circuit, double[] hertz, double[] volts)
        {
            var (count, rows) = (motors.Count, hertz.Length * motors.Count);
            EquivalentCircuit[] circuits = [.. motors.Select(circuit)];
            var columns = new CircuitColumns(circuits);
            var form = circuits.Any(each => each.Saturation > 0) ? CircuitForm.Saturated : CircuitForm.ConstantParameters;
            var frequencies = new double[rows];
            var drops = new double[rows];
            for (var row = 0; row < rows; row++)
                (frequencies[row], drops[row]) = (hertz[row / count], motors[row % count].Drives.On(side).DropV);
            PullOutNm = new double[rows];
            var pullOutSlip = new double[rows];
            BatchSolver.PullOut(columns, new(frequencies, volts, drops), new(PullOutNm, pullOutSlip), form, BatchRun.OneCore);
            (slips, torqueNm, currentA, lossW) =
                (new double[rows * Loads], new double[rows * Loads], new double[rows * Loads], new double[rows * Loads]);
            var (layerSlip, layerNm, layerA, layerFactor) = (new double[rows], new double[rows], new double[rows], new double[rows]);
            for (var load = 0; load < Loads; load++)
            {
                for (var row = 0; row < rows; row++) layerSlip[row] = pullOutSlip[row] * LastShare * Math.Pow(load / (Loads - 1.0), Crowding);
                BatchSolver.OperatingPoints(
                    columns, new(frequencies, volts, drops), layerSlip, new(layerNm, layerA, layerFactor), form, BatchRun.OneCore);
                for (var row = 0; row < rows; row++)
                    Set(row * Loads + load, motors[row % count], circuits[row % count], side,
                        new(frequencies[row], volts[row], drops[row], layerSlip[row], layerNm[row], layerA[row], layerFactor[row]));
            }
        }

        internal double[] PullOutNm { get; }

        private void Set(int place, TabulatedMotor motor, EquivalentCircuit circuit, Side side, in SolvedPoint at)
        {
            var speed = (1 - at.Slip) * 4 * Math.PI * at.Hertz / circuit.Poles;
            var shaftNm = at.TorqueNm - ShaftLosses.At(circuit, at.CurrentA, speed).TorqueNm;
            (slips[place], torqueNm[place], currentA[place]) = (at.Slip, shaftNm, at.CurrentA);
            lossW[place] = at.InputW - shaftNm * speed + motor.WaveformLossW.On(side);
        }

        /// <summary>Shaft torque on the running side with the current at or below a limit, by straight lines; infinite where none limits.</summary>
        internal double AtCurrentNm(int row, double limitA)
        {
            var (first, last) = (row * Loads, row * Loads + Loads - 1);
            if (currentA[last] <= limitA) return double.PositiveInfinity;
            if (currentA[first] >= limitA) return 0;
            var upper = first + 1;
            while (currentA[upper] < limitA) upper++;
            var share = (limitA - currentA[upper - 1]) / (currentA[upper] - currentA[upper - 1]);
            return torqueNm[upper - 1] + (torqueNm[upper] - torqueNm[upper - 1]) * share;
        }

        internal LoadCurves Curves() => new(torqueNm, slips, lossW);
    }

    /// <summary>One solved point; input power follows from power factor, drop and set voltage.</summary>
    private readonly record struct SolvedPoint(
        double Hertz, double PhaseV, double DropV, double Slip, double TorqueNm, double CurrentA, double PowerFactor)
    {
        /// <summary>V² = (z·cosφ + Vd)² + (z·sinφ)² with z the volts at the terminals.</summary>
        internal double InputW
        {
            get
            {
                if (PhaseV <= DropV) return 0;
                var along = PowerFactor * DropV;
                var terminalV = Math.Sqrt(along * along + PhaseV * PhaseV - DropV * DropV) - along;
                return 3 * terminalV * CurrentA * PowerFactor;
            }
        }
    }
}

/// <summary>A motor on its inverter, with what its tables need.</summary>
internal sealed class TabulatedMotor
{
    private readonly Sided<HeatedMotor> heated;
    private readonly Sided<CircuitsByTemperature> circuits;

    internal TabulatedMotor(DrillPress press, Motors.Heat.HeatingData data)
    {
        heated = new(new(press, data, Side.Capability), new(press, data, Side.Hazard));
        Drives = heated.Map(each => each.Drive);
        circuits = new(Temperatures(press, Side.Capability), Temperatures(press, Side.Hazard));
        RatedNm = press.Motor.RatedTorque.NewtonMeters;
        LimitA = press.Inverter.LimitingCurrent.Amperes;
        WaveformLossW = new(heated.Capability.WaveformLossW, heated.Hazard.WaveformLossW);
    }

    internal Sided<Drive> Drives { get; }

    internal double RatedNm { get; }

    internal double LimitA { get; }

    internal Sided<double> WaveformLossW { get; }

    internal HeatedMotor Heated(Side side) => heated.On(side);

    internal EquivalentCircuit Cold(Side side) => circuits.On(side).Cold;

    internal EquivalentCircuit Hot(Side side) => circuits.On(side).Hot;

    internal EquivalentCircuit AirWarm(Side side) => circuits.On(side).Air;

    internal EquivalentCircuit LimitWarm(Side side) => circuits.On(side).Limit;

    /// <summary>Friction and windage at synchronous speed, as the torque study takes them off.</summary>
    internal double FrictionNm(Side side, double hertz) =>
        ShaftLosses.At(Cold(side), 0, Drives.On(side).Si[0].SynchronousRadPerS(hertz)).TorqueNm;

    private CircuitsByTemperature Temperatures(DrillPress press, Side side)
    {
        var (circuit, motor) = (press.Motor.Circuit.On(side), heated.On(side));
        return new(
            circuit.AtTemperature(press.Motor.Winding.Cold), circuit.AtTemperature(press.Motor.Winding.Hot), circuit.AtTemperature(motor.Air),
            circuit.AtTemperature(motor.Limit));
    }

    private sealed record CircuitsByTemperature(
        EquivalentCircuit Cold, EquivalentCircuit Hot, EquivalentCircuit Air, EquivalentCircuit Limit);
}
