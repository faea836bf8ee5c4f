using Spindlewright.Hands;
using Spindlewright.Machines;
using Spindlewright.Motors.Batches;
using Spindlewright.Studies.Overpowering;
using Spindlewright.Studies.Speeds;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Studies.Uncertainty;

/// <summary>Computes, block by block of samples, where the spindle overpowers hands and how operations fare.</summary>
internal sealed class CrossingSamples
{
    /// <summary>Result: locked-rotor torque at the motor shaft at the lowest frequency, N·m.</summary>
    internal const string LockedRotor = "locked-rotor torque at the lowest frequency";

    /// <summary>Result: pull-out torque at the motor shaft at the top frequency, N·m.</summary>
    internal const string PullOut = "pull-out torque at the top frequency";

    /// <summary>The hand that is drawn with the machine.</summary>
    internal const string Population = "a hand of the population";

    /// <summary>Both hands of the same person at the upper figure, twice one (own choice, no source).</summary>
    internal const string BothHands = "both hands of the population";

    private readonly DrillPress press;
    private readonly DrawnDrives drives;
    private readonly DrawPlaces places;
    private readonly double[] workHz;
    private readonly double lowestHz, topHz, diameterFactor, strongestSpeedRpm, addedHzPerNm;

    /// <summary>Prepares.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="inputs">What is uncertain about it.</param>
    /// <param name="strength">The hands of a sample.</param>
    /// <param name="work">What it is to do; null for hands alone.</param>
    /// <param name="slipCompensation">Share of the rated slip; above 0 a crossing stands at the speed that is set, below the one that goes out.</param>
    internal CrossingSamples(
        DrillPress press, IReadOnlyList<VariedInput> inputs, HandStrength strength, IReadOnlyList<WorkToTry>? work = null,
        double slipCompensation = 0)
    {
        this.press = press;
        drives = new DrawnDrives(press);
        places = new DrawPlaces(inputs);
        Work = work ?? [];
        workHz = [.. Work.Select(each => each.FrequencyHz)];
        var diameter = press.Spindle.ChuckDiameter;
        diameterFactor = HandDiameter.Factor(diameter);
        addedHzPerNm = SlipCompensation.AddedHzPerNm(press, slipCompensation);
        StatedHand Hand(string name, double percentile) => new(name, percentile, strength.At(percentile, diameter));
        Hands = [Hand("weak hand", press.Person.WeakPercentile), Hand("strong hand", press.Person.StrongPercentile)];
        lowestHz = press.Inverter.LowestFrequency.Hertz;
        topHz = OverpoweringStudy.TopHz(press.Inverter);
        strongestSpeedRpm = press.Person.OneTurnSpeed.RevolutionsPerMinute;
        Names =
        [
            LockedRotor, PullOut,
            .. press.Belts.Index().SelectMany(belt => HandNames.SelectMany(
                hand => new[] { Crossing(belt.Index, hand), Conditioned(belt.Index, hand) })),
            .. Work.SelectMany(each => each.ResultNames),
        ];
    }

    /// <summary>Stated hands, weak first.</summary>
    internal IReadOnlyList<StatedHand> Hands { get; }

    /// <summary>Operations that are tried on every drawn machine.</summary>
    internal IReadOnlyList<WorkToTry> Work { get; }

    /// <summary>Names of the results.</summary>
    internal IReadOnlyList<string> Names { get; }

    private CircuitForm Form => drives.Saturates ? CircuitForm.Saturated : CircuitForm.ConstantParameters;

    private IEnumerable<string> HandNames => Hands.Select(hand => hand.Name).Append(Population).Append(BothHands);

    /// <summary>Result: spindle speed in r/min where a hand is first passed, conditions left out; infinite for none.</summary>
    internal static string Crossing(int belt, string hand) => Invariant($"{hand} at belt {belt}");

    /// <summary>Result: the same where the conditions of an overpowering speed hold, else infinite.</summary>
    internal static string Conditioned(int belt, string hand) => Invariant($"{hand} at belt {belt}, conditions held");

    /// <summary>Spindle speed in r/min at a share of the way from the lowest to the top frequency.</summary>
    internal double SpeedAt(int belt, double share) => SpeedAtHz(belt, lowestHz + (topHz - lowestHz) * share);

    /// <summary>Computes all results of a block.</summary>
    internal void Compute(ReadOnlySpan<ReadOnlyMemory<double>> inputs, ReadOnlySpan<Memory<double>> results)
    {
        var rows = new double[results[0].Length][];
        for (var sample = 0; sample < rows.Length; sample++)
        {
            rows[sample] = new double[places.Count];
            for (var input = 0; input < places.Count; input++)
                rows[sample][input] = inputs[input].Span[sample];
        }

        var torques = Solve(rows, workHz);
        for (var sample = 0; sample < rows.Length; sample++)
        {
            var place = HandsOf(torques, rows[sample], sample, results);
            for (var work = 0; work < Work.Count; work++)
                place = Work[work].Fill(places, rows[sample], torques.PullOutNm(sample, work), sample, results, place);
        }
    }

    /// <summary>Crossings of one hand at every belt position for some rows of inputs, r/min; infinite for none.</summary>
    /// <returns>One array a belt position, with one number a row.</returns>
    internal double[][] CrossingsOf(IReadOnlyList<double[]> rows, StatedHand hand)
    {
        var torques = Solve(rows, []);
        var room = new double[2 * TorqueCurve.Points];
        var found = press.Belts.Select(_ => new double[rows.Count]).ToArray();
        for (var row = 0; row < rows.Count; row++)
        {
            var curve = torques.PullOutCurve(row, room);
            for (var belt = 0; belt < found.Length; belt++)
            {
                var limitNm = LimitNm(rows[row], belt, hand.Torque.NewtonMeters);
                found[belt][row] = SpeedAtHz(belt, SetHz(curve.FirstReaching(limitNm), limitNm));
            }
        }

        return found;
    }

    private DrawnTorques Solve(IReadOnlyList<double[]> rows, IReadOnlyList<double> otherHz) =>
        new([.. rows.Select(row => drives.Make(places.Drive(row)))], Form, lowestHz, topHz, otherHz);

    /// <summary>Fills in the results of one sample that are not of an operation; returns the place after them.</summary>
    private int HandsOf(DrawnTorques torques, double[] row, int sample, ReadOnlySpan<Memory<double>> results)
    {
        Span<double> room = stackalloc double[4 * TorqueCurve.Points];
        var pullOut = torques.PullOutCurve(sample, room[..(2 * TorqueCurve.Points)]);
        var lockedRotor = torques.LockedRotorCurve(sample, room[(2 * TorqueCurve.Points)..]);
        (results[0].Span[sample], results[1].Span[sample]) = (lockedRotor.First, pullOut.Last);
        var place = 2;
        for (var belt = 0; belt < press.Belts.Count; belt++)
            for (var hand = 0; hand < Hands.Count + 2; hand++)
            {
                var limitNm = LimitNm(row, belt, HandNm(row, hand));
                var hertz = pullOut.FirstReaching(limitNm);
                var speed = SpeedAtHz(belt, SetHz(hertz, limitNm));
                results[place++].Span[sample] = speed;
                results[place++].Span[sample] = speed < strongestSpeedRpm && lockedRotor.HasRisenTo(hertz) ? speed : double.PositiveInfinity;
            }

        return place;
    }

    /// <summary>Torque of a stated hand, then of one hand that is drawn and of both hands.</summary>
    private double HandNm(double[] row, int hand) => hand < Hands.Count
        ? Hands[hand].Torque.NewtonMeters
        : row[places.HandTorque] * diameterFactor * (1 + hand - Hands.Count);

    /// <summary>The frequency that is set where another goes out under a load.</summary>
    private double SetHz(double hertz, double loadNm) => Math.Max(lowestHz, hertz - addedHzPerNm * loadNm);

    /// <summary>Torque that the motor shaft must give to pass a hand.</summary>
    private double LimitNm(double[] row, int belt, double handNm)
    {
        var position = press.Belts[belt];
        return (handNm + row[places.SpindleFriction]) / (position.Ratio * places.EfficiencyOf(position, row));
    }

    private double SpeedAtHz(int belt, double hertz) => double.IsInfinity(hertz)
        ? hertz
        : press.Belts[belt].SpindleSpeed(
            press.Motor.Circuit.Hazard.SynchronousSpeedAt(Frequency.FromHertz(hertz))).RevolutionsPerMinute;
}
