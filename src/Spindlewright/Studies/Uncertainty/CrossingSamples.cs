using Spindlewright.Foundations.Sampling;
using Spindlewright.Hands;
using Spindlewright.Machines;
using Spindlewright.Studies.Overpowering;
using UnitsNet;

namespace Spindlewright.Studies.Uncertainty;

/// <summary>Computes, sample by sample, where the spindle overpowers hands.</summary>
internal sealed class CrossingSamples
{
    /// <summary>Result: locked-rotor torque at the motor shaft at the lowest frequency, N·m.</summary>
    internal const string LockedRotor = "locked-rotor torque at the lowest frequency";

    /// <summary>Result: pull-out torque at the motor shaft at the top frequency, N·m.</summary>
    internal const string PullOut = "pull-out torque at the top frequency";

    /// <summary>The hand that is drawn with the machine.</summary>
    internal const string Population = "a hand of the population";

    private readonly DrillPress press;
    private readonly DrawnDrives drives;
    private readonly int[] places;
    private readonly double lowestHz, topHz, diameterFactor, strongestSpeedRpm;

    internal CrossingSamples(DrillPress press, IReadOnlyList<VariedInput> inputs, HandStrength strength)
    {
        this.press = press;
        drives = new DrawnDrives(press);
        var diameter = press.Spindle.ChuckDiameter;
        diameterFactor = HandDiameter.Factor(diameter);
        StatedHand Hand(string name, double percentile) => new(name, percentile, strength.At(percentile, diameter));
        Hands = [Hand("weak hand", press.Person.WeakPercentile), Hand("strong hand", press.Person.StrongPercentile)];
        lowestHz = press.Inverter.LowestFrequency.Hertz;
        topHz = Math.Min(press.Inverter.Curve.BaseFrequency.Hertz, press.Inverter.HighestFrequency.Hertz);
        strongestSpeedRpm = press.Person.OneTurnSpeed.RevolutionsPerMinute;
        places = [.. Figures.Select(name => inputs.Index().Single(each => each.Item.Name == name).Index)];
        Names = [LockedRotor, PullOut, .. press.Belts.Index().SelectMany(belt => HandNames.SelectMany(
            hand => new[] { Crossing(belt.Index, hand), Conditioned(belt.Index, hand) }))];
    }

    /// <summary>Stated hands, weak first.</summary>
    internal IReadOnlyList<StatedHand> Hands { get; }

    /// <summary>Names of the results.</summary>
    internal IReadOnlyList<string> Names { get; }

    private static string[] Figures { get; } =
    [
        UncertainFigures.SupplyVoltage, UncertainFigures.LoadedLink, UncertainFigures.PhaseDrop, UncertainFigures.WindingTemperature,
        UncertainFigures.MotorCircuit, UncertainFigures.RotorResistance, UncertainFigures.Leakage, UncertainFigures.BeltEfficiency,
        UncertainFigures.SpindleFriction, UncertainFigures.HandTorque,
    ];

    private IEnumerable<string> HandNames => Hands.Select(hand => hand.Name).Append(Population);

    /// <summary>Result: spindle speed in r/min where a hand is first passed, conditions left out.</summary>
    internal static string Crossing(int belt, string hand) => FormattableString.Invariant($"{hand} at belt {belt}");

    /// <summary>Result: the same where the conditions of an overpowering speed hold, else infinite.</summary>
    internal static string Conditioned(int belt, string hand) => FormattableString.Invariant($"{hand} at belt {belt}, conditions held");

    /// <summary>Spindle speed in r/min at a share of the way from the lowest to the top frequency.</summary>
    internal double SpeedAt(int belt, double share) => press.Belts[belt].SpindleSpeed(
        press.Motor.Circuit.Hazard.SynchronousSpeedAt(Frequency.FromHertz(lowestHz + (topHz - lowestHz) * share))).RevolutionsPerMinute;

    /// <summary>Computes all results of a block.</summary>
    internal void Compute(ReadOnlySpan<ReadOnlyMemory<double>> inputs, ReadOnlySpan<Memory<double>> results)
    {
        Span<double> row = stackalloc double[inputs.Length];
        Span<double> pullOut = stackalloc double[TorqueCurve.Points];
        Span<double> lockedRotor = stackalloc double[TorqueCurve.Points];
        Span<double> hands = stackalloc double[Hands.Count + 1];
        for (var sample = 0; sample < results[0].Length; sample++)
        {
            for (var input = 0; input < row.Length; input++)
                row[input] = inputs[input].Span[sample];
            Curves(row, pullOut, lockedRotor);
            results[0].Span[sample] = lockedRotor[0];
            results[1].Span[sample] = pullOut[^1];
            for (var hand = 0; hand < Hands.Count; hand++)
                hands[hand] = Hands[hand].Torque.NewtonMeters;
            hands[^1] = row[places[9]] * diameterFactor;
            var risesTo = TorqueCurve.AtLargest(lockedRotor);
            var place = 2;
            for (var belt = 0; belt < press.Belts.Count; belt++)
                foreach (var hand in hands)
                {
                    var share = Share(row, pullOut, belt, hand);
                    var speed = double.IsInfinity(share) ? share : SpeedAt(belt, share);
                    results[place++].Span[sample] = speed;
                    results[place++].Span[sample] = share <= risesTo && speed < strongestSpeedRpm ? speed : double.PositiveInfinity;
                }
        }
    }

    /// <summary>Crossing of one hand at one belt position for one row of inputs, r/min; infinite for none.</summary>
    internal double CrossingOf(ReadOnlySpan<double> row, int belt, StatedHand hand)
    {
        Span<double> pullOut = stackalloc double[TorqueCurve.Points];
        Curves(row, pullOut, []);
        var share = Share(row, pullOut, belt, hand.Torque.NewtonMeters);
        return double.IsInfinity(share) ? share : SpeedAt(belt, share);
    }

    private double Share(ReadOnlySpan<double> row, ReadOnlySpan<double> pullOut, int belt, double handNm)
    {
        var position = press.Belts[belt];
        var efficiency = position.Efficiency.Capability
            + (position.Efficiency.Hazard - position.Efficiency.Capability) * row[places[7]];
        return TorqueCurve.FirstReaching(pullOut, (handNm + row[places[8]]) / (position.Ratio * efficiency));
    }

    private void Curves(ReadOnlySpan<double> row, Span<double> pullOut, Span<double> lockedRotor)
    {
        var drive = drives.Make(
            row[places[0]], row[places[1]], row[places[2]], row[places[3]], row[places[4]], row[places[5]], row[places[6]]);
        for (var point = 0; point < TorqueCurve.Points; point++)
        {
            var hertz = TorqueCurve.Hertz(point, lowestHz, topHz);
            pullOut[point] = drive.PullOutNm(hertz);
            if (!lockedRotor.IsEmpty) lockedRotor[point] = drive.LockedRotorNm(hertz);
        }
    }
}
