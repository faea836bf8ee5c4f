using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Mains;
using UnitsNet;

namespace Spindlewright.Tests.Rectifiers;

public class InputRectifierTests
{
    private static readonly Frequency Hertz = Frequency.FromHertz(50);

    private static readonly Gen<(InputRectifier Rectifier, double Volts, double Watts)> Cases =
        from kind in Gen.Int[0, 2].Select(each => (RectifierKind)each)
        from ohms in Gen.Double[0.2, 0.8]
        from millihenries in Gen.Double[0.05, 0.8]
        from share in Gen.Double[0.5, 2]
        from watts in Gen.Double[100, 700]
        select (Make(kind, ohms, millihenries, share * watts * (kind == RectifierKind.Doubler ? 4 : 1)), kind == RectifierKind.Doubler ? 120.0 : 230.0, watts);

    [Fact]
    public void Power_taken_from_the_source_is_the_load_and_what_the_resistance_burns() =>
        Cases.Sample(each =>
        {
            var state = each.Rectifier.UnderPower(ElectricPotential.FromVolts(each.Volts), Hertz, Power.FromWatts(each.Watts));
            var conductors = each.Rectifier.Kind == RectifierKind.ThreePhase ? 3 : 1;
            var burnt = conductors * state.Current.Amperes * state.Current.Amperes * each.Rectifier.LoopResistance.Ohms;
            // What is left is the rounding of diode switching to steps; a slip in the model would be far larger.
            Assert.Equal(each.Watts + burnt, (double)state.Input.Watts, 1e-4 * each.Watts);
        }, iter: 40);

    [Fact]
    public void Factors_hold_together() =>
        Cases.Sample(each =>
        {
            var state = each.Rectifier.UnderPower(ElectricPotential.FromVolts(each.Volts), Hertz, Power.FromWatts(each.Watts));
            var fromShape = state.DisplacementFactor / Math.Sqrt(1 + state.Distortion * state.Distortion);
            Assert.Equal(fromShape, state.PowerFactor, 2e-3);
            Assert.True(state.LinkLeast <= state.LinkMean && state.LinkMean <= state.LinkMost);
            Assert.InRange(state.PowerFactor, 0.2, 1);
        }, iter: 40);

    [Fact]
    public void A_doubler_on_half_the_voltage_is_a_bridge_of_twice_the_current()
    {
        // A doubler's input current is that of a bridge on twice the voltage, doubled: each half wave feeds half the link.
        var doubler = Make(RectifierKind.Doubler, 0.25, 0.2, 1400).UnderPower(ElectricPotential.FromVolts(120), Hertz, Power.FromWatts(700));
        var bridge = Make(RectifierKind.SinglePhase, 1, 0.8, 700).UnderPower(ElectricPotential.FromVolts(240), Hertz, Power.FromWatts(700));
        Assert.Equal(2, doubler.Current / bridge.Current, 0.15);
        Assert.Equal(1, doubler.LinkMean / bridge.LinkMean, 0.03);
    }

    [Fact]
    public void Charging_an_empty_link_through_resistance_alone_peaks_at_crest_over_resistance()
    {
        var rectifier = Make(RectifierKind.SinglePhase, 0.5, 0.01, 1000);
        var peak = rectifier.ChargingPeak(ElectricPotential.FromVolts(230), Hertz, ElectricResistance.FromOhms(49.5));
        Assert.Equal(325.27 / 50, peak.Amperes, 0.02 * 325.27 / 50);
    }

    [Fact]
    public void Charging_through_inductance_follows_the_series_circuit()
    {
        // Undamped: I = V √(C/L); at R = 0.5 Ω, L = 0.4 mH, C = 1000 µF the damped closed form gives 297 A for a constant crest.
        var alpha = 0.5 / (2 * 0.4e-3);
        var omega = Math.Sqrt(1 / (0.4e-3 * 1e-3) - alpha * alpha);
        var expected = 325.27 / (omega * 0.4e-3) * Math.Exp(-alpha / omega * Math.Atan(omega / alpha)) * Math.Sin(Math.Atan(omega / alpha));
        var peak = Make(RectifierKind.SinglePhase, 0.5, 0.4, 1000).ChargingPeak(ElectricPotential.FromVolts(230), Hertz, ElectricResistance.Zero);
        Assert.Equal(expected, peak.Amperes, 0.03 * expected); // the mains falls a little from its crest meanwhile
    }

    [Fact]
    public void A_load_that_the_loop_cannot_carry_is_refused_by_name()
    {
        var fault = Assert.Throws<PartException>(() => Make(RectifierKind.SinglePhase, 50, 0.4, 470)
            .UnderPower(ElectricPotential.FromVolts(230), Hertz, Power.FromWatts(2000)));
        Assert.Equal("power", fault.Quantity);
    }

    [Fact]
    public void A_link_that_swings_without_end_is_refused_rather_than_averaged()
    {
        var fault = Assert.Throws<PartException>(() => Make(RectifierKind.Doubler, 0.068, 1.5, 768)
            .UnderPower(ElectricPotential.FromVolts(120), Hertz, Power.FromWatts(384)));
        Assert.Contains("never settles", fault.Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, 0.4, 470, "loop resistance")]
    [InlineData(0.5, 1000, 470, "loop inductance")]
    [InlineData(0.5, 0.4, 0, "link capacitance")]
    public void A_wrong_part_is_named_with_its_range(double ohms, double millihenries, double microfarads, string quantity)
    {
        var fault = Assert.Throws<PartException>(() => Make(RectifierKind.SinglePhase, ohms, millihenries, microfarads));
        Assert.Equal(quantity, fault.Quantity);
        Assert.Contains(" to ", fault.Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public void The_inner_loop_allocates_nothing()
    {
        var circuit = new RectifierCircuit(RectifierKind.SinglePhase, 325.27, 2 * Math.PI * 50, 0.5, 0.4e-3, 470e-6, 700, 0);
        RectifierStepper.Settle(circuit);
        var before = GC.GetAllocatedBytesForCurrentThread();
        RectifierStepper.Settle(circuit);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 64);
    }

    private static InputRectifier Make(RectifierKind kind, double ohms, double millihenries, double microfarads) => new(
        kind, ElectricResistance.FromOhms(ohms), ElectricInductance.FromMillihenries(millihenries),
        ElectricCapacitance.FromMicrofarads(microfarads));
}
