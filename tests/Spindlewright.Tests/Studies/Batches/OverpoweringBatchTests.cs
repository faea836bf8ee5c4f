using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Hands;
using Spindlewright.Inverters;
using Spindlewright.Machines;
using Spindlewright.Motors;
using Spindlewright.Motors.Batches;
using Spindlewright.Studies.Batches;
using Spindlewright.Studies.Overpowering;
using Spindlewright.Studies.Torques;
using UnitsNet;

namespace Spindlewright.Tests.Studies.Batches;

/// <summary>The study of one machine is the reference: <see cref="OverpoweringStudy"/> and <see cref="TorqueBound"/>.</summary>
public class OverpoweringBatchTests
{
    // The study's own root ends where the excess of torque is within 1e-10 N·m, which on a shallow curve is far from the root's last bits;
    // so the torque at the crossing is held to 1e-12 of the hand's by the scalar path, and the crossing itself to this.
    private const double RootShare = 1e-7;

    [Fact]
    public void Overpowering_speeds_of_a_batch_are_those_of_the_study()
    {
        var seen = new System.Collections.Concurrent.ConcurrentDictionary<OverpoweringOutcome, int>();
        Gen.Select(Presses.Random, Gen.Double[0.01, 1], Gen.Double[0.15, 1.5]).Sample(
            (press, share, reactionS) => Compare(press with { Person = new Person(5, 95, Duration.FromSeconds(reactionS)) }, share, seen),
            iter: 150);
        // A comparison that never met an outcome would say nothing about it.
        Assert.Equal(Enum.GetValues<OverpoweringOutcome>(), seen.Keys.Order());
    }

    [Fact]
    public void A_locked_rotor_torque_that_falls_and_rises_again_has_fallen_in_study_and_batch()
    {
        var seen = new System.Collections.Concurrent.ConcurrentDictionary<OverpoweringOutcome, int>();
        for (var share = 0.5; share < 1; share += 0.02) Compare(Presses.TwiceRising(Duration.FromSeconds(0.15)), share, seen);
        Assert.Equal(
            [OverpoweringOutcome.NeverPassed, OverpoweringOutcome.AlreadyAtStandstill, OverpoweringOutcome.LockedRotorFallsBefore, OverpoweringOutcome.At],
            seen.Keys.Order());
    }

    /// <summary>Locked-rotor torque falls on a level piece of the law, here narrower than a step of the watch.</summary>
    [Fact]
    public void A_level_piece_of_the_law_is_a_fall_in_study_and_batch()
    {
        var given = Presses.HandComputed(12, Duration.FromSeconds(0.15));
        CurvePoint At(double hertz) => new(Frequency.FromHertz(hertz), ElectricPotential.FromVolts(160));
        var press = given.WithCurve(new MultiPointCurve(
            ElectricPotential.FromVolts(400), Frequency.FromHertz(50), ElectricPotential.Zero, [At(20), At(20.5)]));
        var drive = new Drive(press, Side.Hazard);
        Assert.True(drive.LockedRotorNm(20.5) < drive.LockedRotorNm(20) && drive.LockedRotorNm(22) > drive.LockedRotorNm(20));
        var seen = new System.Collections.Concurrent.ConcurrentDictionary<OverpoweringOutcome, int>();
        for (var share = 0.1; share < 1; share += 0.02) Compare(press, share, seen);
        Assert.Equal(
            [OverpoweringOutcome.NeverPassed, OverpoweringOutcome.LockedRotorFallsBefore, OverpoweringOutcome.At], seen.Keys.Order());
        // Rising again below its next peak, which the highest of all peaks alone would have let pass.
        var row = OverpoweringStudy.Of(
            press, TorqueStudy.Of(press),
            new HandStrength(Torque.FromNewtonMeters(drive.PullOutNm(22) * 12), Torque.Zero, "a stated hand", Provenance.OwnArithmetic, "")).Belts[0];
        Assert.IsType<OverpoweringSpeed.NoSpeed>(row.Hands[0].Answer);
    }

    [Theory]
    [InlineData(CircuitForm.ConstantParameters)]
    [InlineData(CircuitForm.Saturated)]
    public void A_hand_that_is_passed_only_about_a_peak_is_found_wherever_the_peak_stands(CircuitForm form)
    {
        // Where the law meets the link's ceiling pull-out torque has a sharp peak. A sample for each of the study's cells, its hand a hair below.
        var press = Presses.HandComputed(4, Duration.FromSeconds(1.5));
        var cells = new FrequencyCells(press.Inverter);
        var (first, count) = (20, FrequencyCells.Last - 20);
        var circuit = press.Motor.Circuit.Hazard.Si with { Saturation = form == CircuitForm.Saturated ? 0.3 : 0 };
        var drives = new DriveColumns(press.Inverter, Side.Hazard, form, [new CircuitColumns(count)]);
        var (ones, none, hands) = (new double[count], new double[count], new double[count]);
        Array.Fill(ones, 1);
        for (var sample = 0; sample < count; sample++)
        {
            drives.Circuits[0].Set(sample, circuit);
            var ceilingV = drives.CeilingPhaseV.Span[sample] = cells.LineV[first + sample] / Math.Sqrt(3);
            hands[sample] = CircuitSolver.PullOutSi(circuit, cells.Hz[first + sample], ceilingV, 0).TorqueNm * (1 - 1e-6);
        }
        var found = OverpoweringBatch.Of(drives, new(ones, ones, none, hands), press.Person, BatchRun.OneCore);
        for (var sample = 0; sample < count; sample++)
            Assert.InRange(found.Hz.Span[sample], cells.Hz[first + sample - 1], cells.Hz[first + sample]);
    }

    [Theory]
    [InlineData(0.88)]
    [InlineData(0.931)]
    [InlineData(0.7777)]
    public void A_crossing_at_the_very_ceiling_is_found_by_study_and_batch(double ceilingShare)
    {
        // The ceiling is met between two steps of the walk; beyond it torque falls, and the hand is a hair below its sharp peak.
        var given = Presses.HandComputed(4, Duration.FromSeconds(0.15));
        var old = given.Inverter;
        var inverter = new Inverter(
            old.RatedCurrent, old.CurrentLimit, old.LowestFrequency, old.HighestFrequency, old.Curve,
            new DcLink(false, Sided.Same(ceilingShare), Modulation.SpaceVector), old.PhaseDrop, old.OutputFollowsLink);
        var press = new DrillPress(given.Title, given.Supply, inverter, given.Motor, given.Belts, given.Spindle) { Person = given.Person };
        var (drive, belt) = (new Drive(press, Side.Hazard), press.Belts[0]);
        Assert.InRange(drive.CeilingMetHz, old.LowestFrequency.Hertz + 1, old.Curve.BaseFrequency.Hertz - 1);
        var hand = drive.PullOutNm(drive.CeilingMetHz) * belt.Ratio * belt.Efficiency.Hazard * (1 - 1e-9);
        var strength = new HandStrength(Torque.FromNewtonMeters(hand), Torque.Zero, "a stated hand", Provenance.OwnArithmetic, "");
        var stated = OverpoweringStudy.Of(press, TorqueStudy.Of(press), strength).Belts[0].Hands[0];
        Assert.NotNull(stated.Crossing.Hazard);
        double[] Only(double value) => [value];
        var found = OverpoweringBatch.Of(
            DriveColumns.Of(press, Side.Hazard, 1),
            new(Only(belt.Ratio), Only(belt.Efficiency.Hazard), Only(0), Only(stated.Hand.Torque.NewtonMeters)), press.Person, BatchRun.OneCore);
        Assert.Equal(1, found.Rpm.Span[0] / stated.Crossing.Hazard.Value.RevolutionsPerMinute, RootShare);
    }

    [Fact]
    public void Bounds_of_a_batch_are_those_of_the_study()
    {
        var (counted, beyond) = (0, 0);
        Presses.Random.Sample(
            press =>
            {
                var bound = TorqueBound.Of(press);
                var found = new double[1];
                double[] nameplate = [(press.Motor.BreakdownTorqueForBound * press.Motor.RatedTorque)?.NewtonMeters ?? 0];
                BoundBatch.Of(
                    DriveColumns.Of(press, Side.Hazard, 1), DriveColumns.Of(press, Side.Capability, 1).Circuits,
                    new[] { bound.SupplyFactor }, nameplate, found, BatchRun.OneCore);
                Assert.Equal(1, found[0] / bound.Motor.NewtonMeters, 1e-12);
                Interlocked.Increment(ref bound.SetOverflux > TorqueBound.MostCountedOverflux ? ref beyond : ref counted);
            },
            iter: 100);
        Assert.True(counted > 0 && beyond > 0, $"{counted} within and {beyond} beyond the overflux that counts in full");
    }

    [Fact]
    public void A_bound_of_the_capability_side_is_refused()
    {
        var drives = DriveColumns.Of(Presses.HandComputed(4, Duration.FromSeconds(1)), Side.Capability, 1);
        var one = new double[1];
        Assert.Throws<PartException>(() => BoundBatch.Of(drives, [], one, default, one, BatchRun.OneCore));
    }

    private static void Compare(
        DrillPress press, double share, System.Collections.Concurrent.ConcurrentDictionary<OverpoweringOutcome, int> seen)
    {
        var torques = TorqueStudy.Of(press);
        var points = torques.Spindle[0].Points;
        // A hand between nothing and a little more than the largest torque meets every outcome. No simple share makes it the largest
        // torque itself, where the last bits of either path decide whether it is passed.
        var hand = share * 1.1016 * points.Max(at => at.PullOut.Hazard.NewtonMeters);
        var strength = new HandStrength(Torque.FromNewtonMeters(hand), Torque.Zero, "a stated hand", Provenance.OwnArithmetic, "");
        var row = OverpoweringStudy.Of(press, torques, strength).Belts[0];
        var stated = row.Hands[0];
        foreach (var side in Enum.GetValues<Side>())
        {
            double[] Only(double value) => [value];
            var hands = new HandColumns(
                Only(row.Belt.Ratio), Only(row.Belt.Efficiency.On(side)), Only(0), Only(stated.Hand.Torque.NewtonMeters));
            var found = OverpoweringBatch.Of(DriveColumns.Of(press, side, 1), hands, press.Person, BatchRun.OneCore);
            var crossing = stated.Crossing.On(side)?.RevolutionsPerMinute ?? double.NaN;
            if (double.IsNaN(crossing)) Assert.Equal(double.NaN, found.Rpm.Span[0]);
            else Assert.Equal(1, found.Rpm.Span[0] / crossing, RootShare);
            if (found.Hz.Span[0] > press.Inverter.LowestFrequency.Hertz)
                Assert.Equal(1, new Drive(press, side).PullOutNm(found.Hz.Span[0]) * hands.Ratio.Span[0] * hands.Efficiency.Span[0] / hands.HandNm.Span[0], 1e-12);
            if (side == Side.Capability) continue;
            seen.AddOrUpdate(found.Outcome.Span[0], 1, (_, count) => count + 1);
            Assert.IsType(stated.Answer.GetType(), found.Answer(0));
            Assert.Equal(Reason(stated.Answer), Reason(found.Answer(0)));
        }
    }

    // Numbers in the words are compared above; here only which condition decides.
    private static string Reason(OverpoweringSpeed answer) => new([.. answer.Words.Where(letter => !char.IsAsciiDigit(letter))]);
}
