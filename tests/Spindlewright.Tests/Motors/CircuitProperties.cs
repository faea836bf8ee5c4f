using CsCheck;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Tests.Motors;

public class CircuitProperties
{
    private static readonly Gen<double> Frequencies = Gen.Double[3, 120];
    private static readonly Gen<double> Slips = Gen.OneOf(Gen.Double[-1, 0], Gen.Double[0, 1], Gen.Double[1, 2]);

    [Fact]
    public void Power_in_equals_power_out_plus_losses_at_every_slip() =>
        Gen.Select(RandomMotors.Circuits, Frequencies, Slips, Gen.Double[0, 8]).Sample((circuit, hertz, slip, dropV) =>
        {
            var point = Solve(circuit, hertz, slip, dropV);
            var input = (double)point.Input.Watts;
            var parts = (double)(point.StatorLoss + point.CoreLoss + point.AirGapPower).Watts;
            var gap = (double)(point.RotorLoss + point.RotationalLoss + point.StrayLoss + point.Shaft).Watts;
            var scale = 1e-12 + (double)(point.StatorLoss + point.CoreLoss).Watts + Math.Abs((double)point.AirGapPower.Watts);
            Assert.Equal(input, parts, 1e-9 * scale);
            Assert.Equal((double)point.AirGapPower.Watts, gap, 1e-9 * scale);
        });

    [Fact]
    public void Air_gap_torque_is_zero_at_synchronous_speed() =>
        Gen.Select(RandomMotors.Circuits, Frequencies).Sample((circuit, hertz) =>
            Assert.Equal(0, Solve(circuit, hertz, 0, 0).AirGapTorque.NewtonMeters));

    [Fact]
    public void Pull_out_torque_is_the_largest_between_synchronism_and_standstill() =>
        Gen.Select(RandomMotors.Circuits, Frequencies, Gen.Double[0, 8], Gen.Double[0, 1]).Sample((circuit, hertz, dropV, slip) =>
        {
            var (torque, _) = CircuitSolver.PullOut(circuit, Hz(hertz), PhaseVolts(circuit, hertz), Volts(dropV));
            var there = Solve(circuit, hertz, slip, dropV).AirGapTorque;
            Assert.True(torque.NewtonMeters >= there.NewtonMeters * (1 - 1e-12), $"{torque} at pull-out, {there} at {slip}");
        });

    [Fact]
    public void Closed_breakdown_point_is_the_peak_of_the_curve() =>
        RandomMotors.Circuits.Select(Frequencies).Sample((circuit, hertz) =>
        {
            var linear = circuit with { Saturation = 0 };
            var (torque, slip) = CircuitSolver.Breakdown(linear, Hz(hertz), PhaseVolts(circuit, hertz));
            var there = Solve(linear, hertz, slip, 0).AirGapTorque;
            Assert.Equal(1, there / torque, 1e-9);
            Assert.True(Solve(linear, hertz, slip * 1.01, 0).AirGapTorque < torque);
            Assert.True(Solve(linear, hertz, slip * 0.99, 0).AirGapTorque < torque);
        });

    [Fact]
    public void Without_stator_resistance_and_core_loss_breakdown_does_not_depend_on_frequency_under_constant_volts_per_hertz() =>
        Gen.Select(RandomMotors.Circuits, Frequencies).Sample((circuit, hertz) =>
        {
            var lossless = RatedFlux.Lossless(circuit.Si);
            var atRated = lossless.Breakdown(lossless.RatedHz, lossless.RatedPhaseV, lossless.XmOhm).TorqueNm;
            var here = lossless.Breakdown(hertz, lossless.RatedPhaseV * hertz / lossless.RatedHz, lossless.XmOhm).TorqueNm;
            Assert.Equal(1, here / atRated, 1e-12);
        });

    [Fact]
    public void Saturation_at_rated_flux_leaves_the_reactance_as_given_and_reduces_to_constant_at_zero()
    {
        var circuit = PublishedCircuits.Krause3Hp.Si;
        Assert.Equal(circuit.XmOhm, (circuit with { Saturation = 0.4 }).XmAtOhm(1), 1e-12);
        Assert.Equal(circuit.XmOhm, circuit.XmAtOhm(1.7));
    }

    [Fact]
    public void The_saturated_state_agrees_with_its_own_flux() =>
        Gen.Select(RandomMotors.Circuits, Frequencies, Slips, Gen.Double[0.2, 2.5]).Sample((circuit, hertz, slip, boost) =>
        {
            var si = circuit.Si with { Saturation = 0.5 };
            var state = si.Solve(hertz, si.RatedPhaseV * hertz / si.RatedHz * boost, 0, slip);
            var flux = state.AirGapV / (hertz / si.RatedHz * si.RatedAirGapV);
            Assert.Equal(1, si.XmAtOhm(flux) / state.XmOhm, 1e-9);
        });

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 0.5)]
    [InlineData(2, 0.25)]
    public void Stray_load_loss_goes_with_current_squared_and_its_own_power_of_speed(double exponent, double expected)
    {
        var (amperes, speed) = (ElectricCurrent.FromAmperes(10), RotationalSpeed.FromRevolutionsPerMinute(1710));
        var loss = new StrayLoadLoss(Power.FromWatts(20), amperes, speed) { SpeedExponent = exponent };
        Assert.Equal(20 * expected, loss.Watts(10, speed.RadiansPerSecond / 2), 1e-9);
        Assert.Equal(20 * 4 * expected, loss.Watts(20, -speed.RadiansPerSecond / 2), 1e-9);
    }

    [Fact]
    public void Star_and_delta_of_the_same_windings_give_the_same_torque_for_the_same_winding_voltage() =>
        Gen.Select(RandomMotors.Circuits, Frequencies, Slips).Sample((star, hertz, slip) =>
        {
            var delta = star.Rejoined(Connection.Star, Connection.Delta);
            var (inStar, inDelta) = (Solve(star, hertz, slip, 0), Solve(delta, hertz, slip, 0));
            Assert.Equal(inStar.AirGapTorque.NewtonMeters, inDelta.AirGapTorque.NewtonMeters, 1e-9 * (1 + Math.Abs(inStar.AirGapTorque.NewtonMeters)));
            Assert.Equal(Math.Sqrt(3), inDelta.Current / inStar.Current, 1e-9);
        });

    [Fact]
    public void Star_in_place_of_delta_gives_a_third_of_the_torque() =>
        Gen.Select(RandomMotors.Circuits, Frequencies, Slips).Sample((delta, hertz, slip) =>
        {
            // The same supply on the same windings, joined in star: common practice, no source.
            var (linear, phase) = (delta with { Saturation = 0 }, PhaseVolts(delta, hertz));
            var star = linear.Rejoined(Connection.Delta, Connection.Star);
            var inDelta = CircuitSolver.Solve(linear, Hz(hertz), phase, slip).AirGapTorque;
            var inStar = CircuitSolver.Solve(star, Hz(hertz), phase, slip).AirGapTorque;
            Assert.Equal(inDelta.NewtonMeters / 3, inStar.NewtonMeters, 1e-9 * (1 + Math.Abs(inDelta.NewtonMeters)));
        });

    [Fact]
    public void A_phase_drop_opposes_the_current_phasor() =>
        Gen.Select(RandomMotors.Circuits, Frequencies, Gen.Double[0.01, 1], Gen.Double[0.1, 8]).Sample((circuit, hertz, slip, dropV) =>
        {
            var point = Solve(circuit, hertz, slip, dropV);
            if (point.Current.Amperes == 0) return;
            // Phasor sum with the current as reference: terminal voltage at the power-factor angle plus the drop.
            var angle = Math.Acos(point.PowerFactor);
            var (re, im) = (point.TerminalPhaseVoltage.Volts * Math.Cos(angle) + dropV, point.TerminalPhaseVoltage.Volts * Math.Sin(angle));
            Assert.Equal(point.SetPhaseVoltage.Volts, Math.Sqrt(re * re + im * im), 1e-6 * point.SetPhaseVoltage.Volts);
        });

    [Fact]
    public void The_running_point_carries_its_load() =>
        Gen.Select(RandomMotors.Circuits, Frequencies, Gen.Double[0.05, 0.95]).Sample((circuit, hertz, share) =>
        {
            var phase = PhaseVolts(circuit, hertz);
            var load = CircuitSolver.PullOut(circuit, Hz(hertz), phase).Torque * share;
            var point = CircuitSolver.Running(circuit, Hz(hertz), phase, load);
            Assert.NotNull(point);
            Assert.Equal(1, point.ShaftTorque / load, 1e-6);
            Assert.Null(CircuitSolver.Running(circuit, Hz(hertz), phase, load / share * 1.001));
        });

    private static OperatingPoint Solve(EquivalentCircuit circuit, double hertz, double slip, double dropV) =>
        CircuitSolver.Solve(circuit, Hz(hertz), PhaseVolts(circuit, hertz), slip, Volts(dropV));

    private static Frequency Hz(double value) => Frequency.FromHertz(value);

    private static ElectricPotential Volts(double value) => ElectricPotential.FromVolts(value);

    private static ElectricPotential PhaseVolts(EquivalentCircuit circuit, double hertz) =>
        circuit.RatedLineVoltage / Math.Sqrt(3) * Math.Min(1, hertz / circuit.RatedFrequency.Hertz);
}
