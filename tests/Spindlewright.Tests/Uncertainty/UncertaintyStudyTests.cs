using System.Diagnostics;
using System.Text;
using MathNet.Numerics.RootFinding;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Sampling;
using Spindlewright.Foundations.Tables;
using Spindlewright.Hands;
using Spindlewright.Machines;
using Spindlewright.Studies;
using Spindlewright.Studies.Overpowering;
using Spindlewright.Studies.Torques;
using Spindlewright.Studies.Uncertainty;

namespace Spindlewright.Tests.Uncertainty;

public sealed class UncertaintyStudyTests
{
    private static readonly Handbook Handbook = Handbook.FromEmbedded();
    private static readonly HandStrength Strength = HandStrength.OfHandbook(Handbook);

    [Theory]
    [MemberData(nameof(Demos))]
    public void A_draw_at_the_ends_of_the_hazard_side_crosses_where_the_single_study_does(string machine)
    {
        var press = Demo(machine);
        var inputs = UncertainMachine.Of(press, Strength);
        var samples = new CrossingSamples(press, inputs, Strength);
        var single = OverpoweringStudy.Of(press, TorqueStudy.Of(press), Strength);
        foreach (var (belt, place) in single.Belts.Select((belt, place) => (belt, place)))
            foreach (var (hand, which) in belt.Hands.Select((hand, which) => (hand, which)))
            {
                // The single study takes the larger torque of a cold and a hot motor at each frequency.
                var ours = new[] { press.Motor.Winding.Cold, press.Motor.Winding.Hot }
                    .Min(at => Crossing(samples, HazardRow(press, inputs, at.DegreesCelsius), place, samples.Hands[which]));
                var theirs = hand.Crossing.Hazard?.RevolutionsPerMinute ?? double.PositiveInfinity;
                if (double.IsInfinity(theirs)) Assert.Equal(theirs, ours);
                else Assert.Equal(1, ours / theirs, 1e-3);
            }
    }

    private static double[] HazardRow(DrillPress press, IReadOnlyList<VariedInput> inputs, double celsius)
    {
        var values = new Dictionary<string, double>
        {
            [UncertainFigures.SupplyVoltage] = press.Supply.Highest.Volts,
            [UncertainFigures.LoadedLink] = press.Inverter.Link.LoadedFraction.Hazard,
            [UncertainFigures.PhaseDrop] = press.Inverter.PhaseDrop.Hazard.Volts,
            [UncertainFigures.WindingTemperature] = celsius,
            [UncertainFigures.MotorCircuit] = 1,
            [UncertainFigures.RotorResistance] = 1,
            [UncertainFigures.StandstillResistance] = 1,
            [UncertainFigures.Leakage] = 1,
            [UncertainFigures.BeltTension] = 1,
            [UncertainFigures.CuttingTorque] = 1,
            [UncertainFigures.BeltEfficiency] = 1,
            [UncertainFigures.SpindleFriction] = press.Spindle.FrictionTorque.Hazard.NewtonMeters,
            [UncertainFigures.HandTorque] = 10,
        };
        return [.. inputs.Select(input => values[input.Name])];
    }

    [Fact]
    public void A_crossing_between_points_is_that_of_the_torque_itself()
    {
        var press = Demo("measured-six-pole-bench");
        var inputs = UncertainMachine.Of(press, Strength);
        var samples = new CrossingSamples(press, inputs, Strength);
        var (drives, places) = (new DrawnDrives(press), new DrawPlaces(inputs));
        var generator = new CounterGenerator(9);
        var (lowest, top) = (press.Inverter.LowestFrequency.Hertz, press.Inverter.Curve.BaseFrequency.Hertz);
        var found = 0;
        for (ulong sample = 0; sample < 40; sample++)
        {
            var row = inputs.Select((input, place) => input.Distribution.Quantile(generator.Uniform((uint)place, sample))).ToArray();
            var crossing = Crossing(samples, row, 0, samples.Hands[0]);
            var drive = drives.Make(places.Drive(row));
            var belt = press.Belts[0];
            var gain = belt.Ratio * places.EfficiencyOf(belt, row);
            double Excess(double hertz) => drive.PullOutNm(hertz) * gain - row[places.SpindleFriction] - samples.Hands[0].Torque.NewtonMeters;
            if (Excess(lowest) >= 0 || Excess(top) < 0) continue;
            var hertz = Brent.FindRoot(Excess, lowest, top, 1e-9, 100);
            Assert.Equal(1, crossing / samples.SpeedAt(0, (hertz - lowest) / (top - lowest)), 1e-3);
            found++;
        }

        Assert.True(found > 5, $"{found} crossings were compared");
    }

    /// <summary>The interval's meaning, tried on machines whose truth is known because they were drawn.</summary>
    [Theory]
    [MemberData(nameof(Demos))]
    public void The_interval_of_a_threshold_covers_the_truth_in_93_of_100_machines_at_least(string machine)
    {
        var press = Demo(machine);
        var study = Study(press);
        var samples = new CrossingSamples(press, study.Inputs, Strength);
        var generator = new CounterGenerator(4711);
        const int Machines = 400;
        var rows = Enumerable.Range(0, Machines).Select(sample => study.Inputs
            .Select((input, place) => input.Distribution.Quantile(generator.Uniform((uint)place, (ulong)sample))).ToArray()).ToList();
        var truths = samples.CrossingsOf(rows, samples.Hands[^1]);
        foreach (var (belt, place) in study.Belts.Select((belt, place) => (belt, place)))
        {
            var interval = belt.Hands[^1].Crossing.Middle;
            var covered = truths[place].Count(interval.Contains);
            Assert.True(covered >= 0.93 * Machines, $"{belt.Belt.Name}: {covered} of {Machines}");
        }
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Chances_rise_with_speed_and_the_bound_stands_above_the_interval(string machine)
    {
        var clock = Stopwatch.StartNew();
        var study = Study(Demo(machine));
        TestContext.Current.SendDiagnosticMessage($"{machine}: {clock.Elapsed}");
        TestContext.Current.TestOutputHelper?.WriteLine($"{machine}: {clock.Elapsed}");
        Assert.True(study.Bound.NewtonMeters > study.PullOutAtBase.Middle.Most);
        Assert.True(study.Bound.NewtonMeters > study.LockedRotorAtLowest.Middle.Most);
        foreach (var belt in study.Belts)
        {
            Assert.Equal(belt.Chances.Select(at => at.Chance.Estimate).Order(), belt.Chances.Select(at => at.Chance.Estimate));
            Assert.All(belt.Chances, at => Assert.True(at.Chance.Doubt.Contains(at.Chance.Estimate)));
            Assert.True(belt.Hands[0].Crossing.Median <= belt.Hands[1].Crossing.Median);
            Assert.Equal(belt.Drivers.Select(driver => driver.Swing).OrderDescending(), belt.Drivers.Select(driver => driver.Swing));
        }
    }

    [Fact]
    public void More_boost_in_doubt_moves_nothing_of_the_bound()
    {
        var press = Demo("measured-six-pole-bench");
        var wide = Study(press).Belts.Select(belt => belt.Bound.NewtonMeters);
        Assert.Equal(TorqueStudy.Of(press).Spindle.Select(spindle => spindle.Bound.NewtonMeters), wide);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Operations_are_tried_on_every_machine_and_their_bound_stands_above_what_the_motor_gives(string machine)
    {
        var study = StudyResults.Of(Demo(machine), Handbook, cancellation: TestContext.Current.CancellationToken).Uncertainty;
        Assert.NotEmpty(study.Work);
        foreach (var each in study.Work)
        {
            Assert.True(each.Needed.Middle.Least * each.Margin.Middle.Most < each.Bound.NewtonMeters, each.Name);
            Assert.Equal(each.Margin.Middle.Least <= 1, each.Stalls.Estimate >= 0.025);
            Assert.True(each.Stalls.Doubt.Contains(each.Stalls.Estimate));
        }
    }

    [Fact]
    public void A_study_that_is_cancelled_hands_nothing_out_and_tells_its_progress_before()
    {
        var press = Demo("school-workshop") with { Uncertainty = new OwnUncertainty(new Dictionary<string, Distribution>(), 20_000) };
        using var end = new CancellationTokenSource();
        var told = new System.Collections.Concurrent.ConcurrentBag<double>();
        var progress = new Immediate(share =>
        {
            told.Add(share);
            end.Cancel();
        });
        Assert.ThrowsAny<OperationCanceledException>(() => UncertaintyStudy.Of(
            press, TorqueStudy.Of(press), Strength, 1, progress: progress, cancellation: end.Token));
        Assert.All(told, share => Assert.InRange(share, 0, 0.5));
        Assert.NotEmpty(told);
        Assert.ThrowsAny<OperationCanceledException>(() => StudyResults.Of(press, Handbook, cancellation: end.Token));
    }

    [Fact]
    public void A_figure_known_exactly_moves_nothing_and_narrows_the_interval()
    {
        var press = Demo("measured-six-pole-bench");
        var wide = Study(press);
        var driver = wide.Belts[0].Drivers[0];
        var known = Study(press with
        {
            Uncertainty = new OwnUncertainty(
                new Dictionary<string, Distribution> { [driver.Input.Name] = new Distribution.Fixed(driver.Input.Distribution.Median) }, 2000),
        });
        Assert.Equal(0, known.Belts[0].Drivers.Single(each => each.Input.Name == driver.Input.Name).Swing);
        Assert.Equal(Provenance.Yours, known.Inputs.Single(each => each.Name == driver.Input.Name).Provenance);
        var (before, after) = (wide.PullOutAtBase.Middle.Width, known.PullOutAtBase.Middle.Width);
        Assert.True(after < before, $"{before} became {after}");
    }

    private sealed class Immediate(Action<double> tell) : IProgress<double>
    {
        public void Report(double value) => tell(value);
    }

    private static double Crossing(CrossingSamples samples, double[] row, int belt, StatedHand hand) => samples.CrossingsOf([row], hand)[belt][0];

    private static DrillPress Demo(string name)
    {
        var text = EmbeddedTables.Read($"data/machines/{name}.toml");
        return MachineFile.Read(Encoding.UTF8.GetBytes(text), name, Handbook).Press!;
    }

    private static UncertaintyStudy Study(DrillPress press) => UncertaintyStudy.Of(
        press, TorqueStudy.Of(press), Strength, seed: 20, cancellation: TestContext.Current.CancellationToken);

    public static TheoryData<string> Demos => new("boatyard-fittings-bench", "measured-six-pole-bench", "school-workshop");
}
