using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Inverters;
using Spindlewright.Machines;
using Spindlewright.Studies.Torques;
using Spindlewright.Tests.Studies;
using UnitsNet;

namespace Spindlewright.Tests.Laws;

public class LawTests
{
    private static readonly Gen<VoltsPerHertzCurve> Laws =
        from boost in Gen.Double[0, 0.3]
        from quadratic in Gen.Bool
        from steps in Gen.Double[0.01, 1].Array[1, 6]
        from rises in Gen.Double[0, 1].Array[7, 7]
        select quadratic ? (VoltsPerHertzCurve)new QuadraticCurve(Volts(230), Hertz(50), Volts(230 * boost)) : Points(boost, steps, rises);

    [Fact]
    public void The_largest_volts_per_hertz_stand_at_a_bend_or_an_end() =>
        Gen.Select(Laws, Gen.Double[0.5, 40], Gen.Double[0, 1]).Sample((law, lowest, share) =>
        {
            var hertz = lowest + (120 - lowest) * share;
            var most = law.BendsHz.Where(bend => bend > lowest && bend < 120).Append(lowest).Append(120).Max(At);
            Assert.True(At(hertz) <= most * (1 + 1e-12), $"{At(hertz)} at {hertz} Hz, most {most}");
            double At(double at) => law.LineVolts(at) / at;
        });

    [Fact]
    public void The_bound_holds_under_quadratic_and_multi_point_laws() =>
        Gen.Select(Presses.Random, Laws, Gen.Double[0, 1], Gen.Double[0, 1]).Sample((machine, law, share, slip) =>
        {
            var rated = machine.Motor.Circuit.Hazard;
            var scaled = Scaled(law, rated.RatedLineVoltage / Volts(230), rated.RatedFrequency / Hertz(50));
            var press = machine.WithCurve(scaled);
            var bound = TorqueBound.Of(press).Motor.NewtonMeters;
            var drive = new Drive(press, Side.Hazard);
            var hertz = press.Inverter.LowestFrequency.Hertz
                + (press.Inverter.HighestFrequency - press.Inverter.LowestFrequency).Hertz * share;
            Assert.True(drive.PullOutNm(hertz) <= bound * (1 + 1e-9));
            Assert.True(drive.TorqueNm(hertz, slip) <= bound * (1 + 1e-9));
            Assert.True(drive.IdealBoostNm(hertz) <= bound * (1 + 1e-9));
        }, iter: 200);

    [Fact]
    public void A_quadratic_law_gives_a_quarter_of_the_volts_at_half_frequency() =>
        Assert.Equal(57.5, new QuadraticCurve(Volts(230), Hertz(50), Volts(0)).LineVoltage(Hertz(25)).Volts, 1e-9);

    [Fact]
    public void A_multi_point_law_passes_through_its_points_and_straight_between()
    {
        var law = new MultiPointCurve(Volts(230), Hertz(50), Volts(10), [new(Hertz(10), Volts(70)), new(Hertz(30), Volts(150))]);
        Assert.Equal(
            [40, 70, 110, 150, 190, 230, 230],
            new double[] { 5, 10, 20, 30, 40, 50, 80 }.Select(hertz => Math.Round(law.LineVoltage(Hertz(hertz)).Volts, 9)));
        Assert.Equal(2, law.Points.Count);
    }

    [Fact]
    public void Points_out_of_order_are_refused_by_name()
    {
        var fault = Assert.Throws<PartException>(() => new MultiPointCurve(
            Volts(230), Hertz(50), Volts(0), [new(Hertz(20), Volts(100)), new(Hertz(10), Volts(120))]));
        Assert.Equal("points of the V/f law", fault.Quantity);
        Assert.Throws<PartException>(() => new MultiPointCurve(Volts(230), Hertz(50), Volts(0), []));
        Assert.Throws<PartException>(() => new MultiPointCurve(Volts(230), Hertz(50), Volts(0), [new(Hertz(20), Volts(300))]));
    }

    [Fact]
    public void Energy_from_slowing_down_lifts_the_link_as_its_square()
    {
        // 1000 µF at 325 V hold 52.8 J; with 52.8 J more the voltage is √2 times as high.
        var after = LinkRise.After(Volts(325), ElectricCapacitance.FromMicrofarads(1000), Energy.FromJoules(52.8125));
        Assert.Equal(325 * Math.Sqrt(2), after.Volts, 1e-6);
        Assert.Equal(52.8125, LinkRise.Room(ElectricCapacitance.FromMicrofarads(1000), Volts(325), after).Joules, 1e-6);
    }

    private static MultiPointCurve Points(double boost, double[] steps, double[] rises)
    {
        var (hertz, volts, total) = (0.0, boost * 230, steps.Sum() + 0.5);
        var points = steps.Select((step, i) =>
        {
            hertz += 50 * step / total;
            volts += (230 - volts) * rises[i];
            return new CurvePoint(Hertz(hertz), Volts(volts));
        }).ToList();
        return new(Volts(230), Hertz(50), Volts(boost * 230), points);
    }

    private static VoltsPerHertzCurve Scaled(VoltsPerHertzCurve law, double volts, double hertz) => law switch
    {
        MultiPointCurve points => new MultiPointCurve(
            points.BaseVoltage * volts, points.BaseFrequency * hertz, points.Boost * volts,
            [.. points.Points.Select(point => new CurvePoint(point.Frequency * hertz, point.Voltage * volts))]),
        QuadraticCurve quadratic => new QuadraticCurve(
            quadratic.BaseVoltage * volts, quadratic.BaseFrequency * hertz, quadratic.Boost * volts),
        _ => law,
    };

    private static ElectricPotential Volts(double volts) => ElectricPotential.FromVolts(volts);

    private static Frequency Hertz(double hertz) => Frequency.FromHertz(hertz);
}
