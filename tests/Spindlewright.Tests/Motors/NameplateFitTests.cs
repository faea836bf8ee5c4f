using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Motors;
using Spindlewright.Motors.Fitting;
using UnitsNet;

namespace Spindlewright.Tests.Motors;

public class NameplateFitTests
{
    private static readonly FitSettings Bare =
        new(LossShares.WindingsOnly, 0.5, 0, Temperature.FromDegreesCelsius(20), 2.5);

    [Fact]
    public void A_nameplate_computed_from_a_published_circuit_gives_its_parameters_back()
    {
        // Krause 3 hp at 1710 r/min; X1 = X2 as printed, so that the parameters can be compared.
        var circuit = PublishedCircuits.Krause3Hp;
        var fit = NameplateFit.Of(PlateOf(circuit, 1710), Bare).Circuit;
        Assert.Equal(0.435, fit.R1.Ohms, 1e-6);
        Assert.Equal(0.754, fit.X1.Ohms, 1e-6);
        Assert.Equal(0.816, fit.R2.Ohms, 1e-6);
        Assert.Equal(0.754, fit.X2.Ohms, 1e-6);
        Assert.Equal(26.13, fit.Xm.Ohms, 1e-4);
    }

    [Fact]
    public void Fitted_circuits_reach_rated_speed_current_power_factor_and_breakdown_torque() =>
        Gen.Select(Plates, Gen.Double[0, 0.5]).Sample((plate, saturation) =>
        {
            var fit = NameplateFit.Of(plate, Bare with { Saturation = saturation });
            Assert.Equal("", fit.Verdict);
            Assert.All(fit.Targets.Where(target => target.Fitted), target => Assert.True(Math.Abs(target.Residual) < 1e-6, $"{target}"));
        });

    [Fact]
    public void Loss_shares_come_out_as_asked()
    {
        var plate = SmallMotor(3.4);
        var shares = new LossShares(0.2, 0.08, 0.02);
        var circuit = NameplateFit.Of(plate, Bare with { Shares = shares }).Circuit;
        var rated = CircuitSolver.SolveAtRatedSupply(circuit, plate.Speed);
        var losses = rated.Input - rated.Shaft;
        Assert.Equal(0.2, (double)(rated.CoreLoss.Watts / losses.Watts), 1e-6);
        Assert.Equal(0.08, (double)(rated.RotationalLoss.Watts / losses.Watts), 1e-6);
        Assert.Equal(0.02, (double)(rated.StrayLoss.Watts / losses.Watts), 1e-6);
    }

    [Theory]
    [InlineData(1.2)]
    [InlineData(6.0)]
    public void What_no_circuit_can_meet_is_named_and_the_nearest_given(double breakdown)
    {
        var fit = NameplateFit.Of(SmallMotor(breakdown), Bare);
        var target = fit.Targets.Single(each => each.Quantity.StartsWith("breakdown", StringComparison.Ordinal));
        Assert.Equal(fit.Verdict.Length == 0, target.Met);
    }

    [Fact]
    public void A_slip_that_asks_for_more_loss_than_there_is_is_refused_with_the_numbers()
    {
        var error = Assert.Throws<PartException>(() => NameplateFit.Of(
            new(Power.FromWatts(750), ElectricPotential.FromVolts(400), Connection.Star, Frequency.FromHertz(50), 4,
                RotationalSpeed.FromRevolutionsPerMinute(1100), ElectricCurrent.FromAmperes(1.7), 0.77), Bare));
        Assert.Contains("rotor alone loses", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rated_speed_at_or_above_synchronous_is_refused_with_the_reason()
    {
        var error = Assert.Throws<PartException>(() => new Nameplate(
            Power.FromWatts(750), ElectricPotential.FromVolts(400), Connection.Star, Frequency.FromHertz(50), 4,
            RotationalSpeed.FromRevolutionsPerMinute(1500), ElectricCurrent.FromAmperes(1.7), 0.77));
        Assert.Contains("1500 r/min synchronous", error.Message, StringComparison.Ordinal);
    }

    private static readonly Gen<Nameplate> Plates =
        from circuit in RandomMotors.Circuits
        from slip in Gen.Double[0.15, 0.4]
        let bare = circuit with { CoreLossResistance = null, Saturation = 0, Cage = RotorCage.SingleCage }
        let breakdown = CircuitSolver.Breakdown(bare, bare.RatedFrequency, bare.RatedLineVoltage / Math.Sqrt(3))
        where breakdown.Slip < 1
        let speed = bare.SynchronousSpeed.RevolutionsPerMinute * (1 - slip * breakdown.Slip)
        let rated = CircuitSolver.SolveAtRatedSupply(bare, RotationalSpeed.FromRevolutionsPerMinute(speed))
        where rated.PowerFactor is > 0.25 and < 0.98 && (double)rated.Shaft.Watts is > 10 and < 100_000
        where breakdown.Torque / rated.ShaftTorque is > 1.2 and < 6
        select PlateOf(bare, speed);

    private static Nameplate SmallMotor(double breakdown) => new(
        Power.FromWatts(750), ElectricPotential.FromVolts(400), Connection.Star, Frequency.FromHertz(50), 4,
        RotationalSpeed.FromRevolutionsPerMinute(1430), ElectricCurrent.FromAmperes(1.85), 0.76)
    { BreakdownTorque = breakdown };

    private static Nameplate PlateOf(EquivalentCircuit circuit, double speedRpm)
    {
        var speed = RotationalSpeed.FromRevolutionsPerMinute(speedRpm);
        var rated = CircuitSolver.SolveAtRatedSupply(circuit, speed);
        var (breakdown, _) = CircuitSolver.Breakdown(circuit, circuit.RatedFrequency, circuit.RatedLineVoltage / Math.Sqrt(3));
        return new(
            rated.Shaft, circuit.RatedLineVoltage, Connection.Star, circuit.RatedFrequency, circuit.Poles, speed,
            rated.Current, rated.PowerFactor)
        { BreakdownTorque = breakdown / rated.ShaftTorque };
    }
}
