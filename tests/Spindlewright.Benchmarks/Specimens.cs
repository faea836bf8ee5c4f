using Spindlewright.Foundations;
using Spindlewright.Hands;
using Spindlewright.Inverters;
using Spindlewright.Motors;
using Spindlewright.Motors.Batches;
using Spindlewright.Studies.Batches;
using UnitsNet;

namespace Spindlewright.Benchmarks;

/// <summary>What is timed: small six-pole motors of our own, spread around a 0.55 kW circuit.</summary>
internal static class Specimens
{
    internal const double RatedPhaseV = 230.94010767585033;

    internal static Person Someone { get; } = new(5, 95, Duration.FromSeconds(1.5));

    internal static Inverter Inverter { get; } = new(
        ElectricCurrent.FromAmperes(7), 1.5, Frequency.FromHertz(3), Frequency.FromHertz(50),
        new StraightCurve(ElectricPotential.FromVolts(400), Frequency.FromHertz(50), ElectricPotential.Zero),
        new DcLink(false, Sided.Same(1.0), Modulation.SpaceVector), Sided.Same(ElectricPotential.Zero), true);

    /// <summary>Rated frequency and voltage.</summary>
    internal static FeedColumns RatedFeed { get; } = new(new[] { 50.0 }, new[] { RatedPhaseV });

    /// <summary>Eight uniform numbers a sample, by a rule that any language repeats exactly: multiples of fixed steps, their whole parts dropped.</summary>
    internal static double Uniform(int sample, int input)
    {
        var at = 0.5 + (sample + 1) * Steps[input];
        return at - Math.Floor(at);
    }

    // Powers of the root of x^9 = x + 1: a low-discrepancy sequence after Roberts (from memory).
    private static double[] Steps { get; } = [.. Enumerable.Range(1, 8).Select(power => Math.Pow(1 / 1.0757660660868371, power))];

    internal static double[] Circuit(int sample) =>
    [
        19 * (0.8 + 0.4 * Uniform(sample, 0)), 14.3 * (0.8 + 0.4 * Uniform(sample, 1)), 15.6 * (0.8 + 0.4 * Uniform(sample, 2)),
        14.3 * (0.8 + 0.4 * Uniform(sample, 3)), 154 * (0.8 + 0.4 * Uniform(sample, 4)), 2500 * (0.7 + 0.6 * Uniform(sample, 5)),
    ];

    internal static CircuitColumns Circuits(int count, double saturation = 0, double warmer = 1)
    {
        var columns = new CircuitColumns(count);
        for (var sample = 0; sample < count; sample++)
        {
            var ohms = Circuit(sample);
            columns.Set(sample, new EquivalentCircuit(
                Ohms(ohms[0] * warmer), Ohms(ohms[1]), Ohms(ohms[2] * warmer), Ohms(ohms[3]), Ohms(ohms[4]),
                ElectricPotential.FromVolts(400), Frequency.FromHertz(50), 6)
            {
                CoreLossResistance = Ohms(ohms[5]),
                Saturation = saturation,
            });
        }
        return columns;
    }

    /// <summary>Machines and hands for overpowering speeds; cold and hot circuits are both solved.</summary>
    internal static (DriveColumns Drives, HandColumns Hands) Overpowering(int count, double saturation)
    {
        var drives = new DriveColumns(
            Inverter, Side.Hazard, saturation > 0 ? CircuitForm.Saturated : CircuitForm.ConstantParameters,
            [Circuits(count, saturation), Circuits(count, saturation, 1.3)]);
        var (ratio, efficiency, friction, hand) = (new double[count], new double[count], new double[count], new double[count]);
        for (var sample = 0; sample < count; sample++)
        {
            drives.LinkFactor.Span[sample] = 0.9 + 0.2 * Uniform(sample, 6);
            (ratio[sample], efficiency[sample], friction[sample]) = (4, 1, 0.2);
            hand[sample] = 4 + 20 * Uniform(sample, 7);
        }
        return (drives, new(ratio, efficiency, friction, hand));
    }

    internal static double[] Slips(int count) => [.. Enumerable.Range(0, count).Select(i => (i + 1.0) / count)];

    private static ElectricResistance Ohms(double value) => ElectricResistance.FromOhms(value);
}

/// <summary>Takes points and keeps one sum: the least that anybody could do with them.</summary>
internal sealed class Sum : IPointConsumer
{
    internal double Total { get; private set; }

    public void Take(
        int circuit, int feed, int firstSlip, ReadOnlySpan<double> torqueNm, ReadOnlySpan<double> currentA,
        ReadOnlySpan<double> powerFactor) =>
        Total += torqueNm[^1] + currentA[^1] + powerFactor[^1];
}
