using System.Collections.Immutable;
using Spindlewright.Foundations;

namespace Spindlewright.Figures.Tests;

/// <summary>Invented results of an invented drill press, of the size and shape that real ones have.</summary>
public sealed record SpecimenResults(ImmutableArray<double> Ratios, double LowestHz, double HighestHz)
{
    public static SpecimenResults Bench { get; } = new([3.6, 2.2, 1.4, 0.9, 0.55], 7, 80);

    // A 0.75 kW four-pole motor by hand: ohms at 50 Hz, star-equivalent.
    private const double R1 = 9.5, R2 = 7.5, X = 24, BaseHz = 50, PhaseVolts = 230;

    public ImmutableArray<double> Hertz(int count = 60)
    {
        var (low, high) = (LowestHz, HighestHz);
        return [.. Enumerable.Range(0, count).Select(i => low + (high - low) * i / (count - 1))];
    }

    public static double SpindleRpm(double hz, double ratio) => 30 * hz * 0.95 / ratio;

    public static double Modelled(double hz) => PullOut(hz, R1);

    public static double IdealBoost(double hz) => PullOut(hz, 0);

    public static double Bound => PullOut(BaseHz, 0) * 1.1 * 1.1 * 1.1;

    public static double Locked(double hz, double r1)
    {
        var (v, w, x) = At(hz);
        return 3 * v * v * R2 / (w * ((r1 + R2) * (r1 + R2) + x * x));
    }

    private static double PullOut(double hz, double r1)
    {
        var (v, w, x) = At(hz);
        return 3 * v * v / (2 * w * (r1 + Math.Sqrt(r1 * r1 + x * x)));
    }

    private static (double Volts, double RadPerS, double Ohm) At(double hz) =>
        (PhaseVolts * Math.Min(hz / BaseHz, 1), Math.PI * hz, X * hz / BaseHz);
}

/// <summary>Figures made from <see cref="SpecimenResults"/>.</summary>
public static class Specimens
{
    public static IReadOnlyList<Figure> All =>
        [TorqueAgainstSpeed(), LockedRotor(), SpeedBands(), VoltsPerHertz()];

    private static readonly ImmutableArray<SourceNote> Sources = [new(
        "", "Invented numbers of a bench drill", Provenance.OwnArithmetic)];

    public static Figure TorqueAgainstSpeed()
    {
        var bench = SpecimenResults.Bench;
        var marks = ImmutableArray.CreateBuilder<Mark>();
        for (var i = 0; i < bench.Ratios.Length; i++)
        {
            var ratio = bench.Ratios[i];
            var hertz = bench.Hertz();
            var series = $"belt position {i + 1}";
            ImmutableArray<double> speeds = [.. hertz.Select(f => SpecimenResults.SpindleRpm(f, ratio))];
            marks.Add(new Curve(Role.Bound, [speeds[0], speeds[^1]],
                [SpecimenResults.Bound * ratio, SpecimenResults.Bound * ratio], series, $"{i + 1}"));
            marks.Add(new Curve(Role.IdealBoost, speeds,
                [.. hertz.Select(f => SpecimenResults.IdealBoost(f) * ratio * 0.96)], series));
            marks.Add(new Curve(Role.AsModelled, speeds,
                [.. hertz.Select(f => SpecimenResults.Modelled(f) * ratio * 0.96)], series));
        }
        return new("torque-against-speed", "What torque reaches the spindle at each speed, by belt position",
            new("spindle speed", "r/min", AxisScale.Logarithmic),
                new("torque at the spindle", "N m", AxisScale.Logarithmic), marks.ToImmutable(),
            sources: Sources, notes: ["Numbers at the line ends are belt positions; each line runs from 7 to 80 Hz."],
            cautions:
            [
                "The bound takes no credit for boost, current limit or belt. Not exceeding a figure does not show that "
                + "contact is harmless.",
            ]);
    }

    public static Figure LockedRotor()
    {
        var hertz = SpecimenResults.Bench.Hertz();
        return new("locked-rotor-torque",
            "Locked-rotor torque falls away at low frequency under plain V/f, and boost gives it back",
            new("frequency", "Hz"), new("torque at the motor shaft", "N m"),
            [
                new Curve(Role.Bound, [7, 80], [SpecimenResults.Bound, SpecimenResults.Bound], label: "bound"),
                new Curve(Role.IdealBoost, hertz, [.. hertz.Select(f => SpecimenResults.IdealBoost(f))],
                    label: "ideal boost"),
                new Curve(Role.AsModelled, hertz, [.. hertz.Select(f => SpecimenResults.Locked(f, 9.5))],
                    side: Side.Capability),
                new Curve(Role.AsModelled, hertz, [.. hertz.Select(f => SpecimenResults.Locked(f, 6.5) * 1.21)],
                    side: Side.Hazard),
                new Points(Role.Measured, [10, 15, 20, 30], [4.2, 6.6, 8.0, double.NaN],
                    lower: [3.6, 5.9, 7.1, double.NaN], upper: [4.8, 7.3, 8.9, double.NaN]),
                new Rule(Role.Limit, RuleDirection.Upright, 50, "base frequency 50 Hz"),
                new Rule(Role.Hand, RuleDirection.Level, 3.4, "weak hand at the chuck, 3.4 N m"),
                new TextMark(13, 21, "here boost matters most"),
            ], sources: Sources);
    }

    public static Figure SpeedBands()
    {
        var bench = SpecimenResults.Bench;
        var marks = ImmutableArray.CreateBuilder<Mark>();
        for (var i = 0; i < bench.Ratios.Length; i++)
            marks.Add(new RangeBar(Role.SetCurve, i + 1, SpecimenResults.SpindleRpm(7, bench.Ratios[i]),
                SpecimenResults.SpindleRpm(80, bench.Ratios[i]), series: $"belt position {i + 1}"));
        marks.Add(new Points(Role.AsFound, [.. bench.Ratios.Select(r => SpecimenResults.SpindleRpm(50, r))],
            [1, 2, 3, 4, 5],
            legend: "as found, at 50 Hz"));
        marks.Add(new Rule(Role.Limit, RuleDirection.Upright, 3000, "chuck, highest 3000 r/min"));
        return new("speed-bands", "Spindle speeds of the five belt positions, 7 to 80 Hz",
            new("spindle speed", "r/min", AxisScale.Logarithmic),
            Axis.Names("belt position", [.. bench.Ratios.Select(
                (r, i) => FormattableString.Invariant($"{i + 1}  ({r} : 1)"))]), marks.ToImmutable(), sources: Sources);
    }

    public static Figure VoltsPerHertz()
    {
        ImmutableArray<double> hertz = [0, 2, 4, 6, 8, 10, 12, 15, 20, 30, 40, 48, 50, 60, 80];
        ImmutableArray<Frame> frames = [.. new double[] { 0, 2, 4, 6, 8 }.Select(boost => new Frame(boost,
        [
            new Curve(Role.SetCurve, hertz,
                [.. hertz.Select(f => Math.Min(222, 230 * (f / 50 + boost / 100 * Math.Max(0, 1 - f / 15))))]),
        ]))];
        return new("volts-per-hertz", "Voltage against frequency as set, with boost",
            new("frequency", "Hz"), new("voltage between lines", "V"),
            [
                new Curve(Role.AsFound, [0, 50, 80], [0, 230, 230], legend: "straight line, no ceiling"),
                new Rule(Role.Limit, RuleDirection.Level, 222, "voltage ceiling under load, 222 V"),
            ],
            new FrameSet("boost", "%", frames, 2), Sources, ["Boost is in percent of 230 V and fades out at 15 Hz."]);
    }
}
