using Spindlewright.Foundations;
using Spindlewright.Foundations.Sampling;
using Spindlewright.Hands;
using Spindlewright.Machines;

namespace Spindlewright.Studies.Uncertainty;

/// <summary>What is uncertain about a machine and the hands at it: usual spreads, and the owner's own in their place.</summary>
/// <remarks>
/// A span between two defaults is drawn evenly: nothing says which end is likelier. A tolerance of a standard is taken as two
/// standard deviations of a normal spread, cut at the tolerance (own choice).
/// </remarks>
public static class UncertainMachine
{
    private const string Ours = "this-project";
    private const string TensionMeaning = "torque at which the belt slips, low (0) to high (1) figure";

    /// <summary>What is uncertain, in a fixed order.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="strength">The hands of a sample.</param>
    /// <returns>One row a figure; a figure that the owner gave exactly is "always" that value.</returns>
    public static IReadOnlyList<VariedInput> Of(DrillPress press, HandStrength strength) =>
    [
        .. Usual(press, strength).Select(usual => press.Uncertainty.Spreads.TryGetValue(usual.Name, out var own)
            ? usual with { Distribution = own, Provenance = Provenance.Yours, Source = "", Note = "given in [uncertain]" }
            : usual),
    ];

    private static IEnumerable<VariedInput> Usual(DrillPress press, HandStrength strength)
    {
        var (supply, motor, inverter) = (press.Supply, press.Motor, press.Inverter);
        yield return new(
            UncertainFigures.SupplyVoltage, "supply voltage", "V",
            Peaked(supply.Lowest.Volts, supply.Nominal.Volts, supply.Highest.Volts), Provenance.FromMemory, "en-50160",
            "lowest to highest, likeliest nominal; the shape is own choice");
        yield return Between(
            UncertainFigures.LoadedLink, "link voltage under load over its peak", "", inverter.Link.LoadedFraction,
            "from the loaded to the unloaded link");
        yield return Between(
            UncertainFigures.PhaseDrop, "drop of dead time and devices", "V", inverter.PhaseDrop.Map(drop => drop.Volts),
            "from all of it made good to none");
        yield return Between(
            UncertainFigures.WindingTemperature, "temperature of winding and bars", "°C",
            new(motor.Winding.Cold.DegreesCelsius, motor.Winding.Hot.DegreesCelsius), "from a cold to a hot motor");
        yield return new(
            UncertainFigures.MotorCircuit, "motor circuit, low (0) to high (1) defaults", "",
            motor.Circuit.Capability == motor.Circuit.Hazard ? new Distribution.Fixed(0) : new Distribution.Uniform(0, 1),
            Provenance.OwnChoice, Ours, "between the circuits fitted to the low and the high defaults");
        foreach (var tolerance in Tolerances(motor)) yield return tolerance;
        yield return new(
            UncertainFigures.BeltEfficiency, "belt efficiency, low (0) to high (1) figure", "",
            press.Belts.All(belt => belt.Efficiency.Capability == belt.Efficiency.Hazard)
                ? new Distribution.Fixed(0)
                : new Distribution.Uniform(0, 1),
            Provenance.OwnChoice, Ours, "one draw for all belt positions");
        yield return Between(
            UncertainFigures.SpindleFriction, "drag of the spindle's bearings", "N·m",
            press.Spindle.FrictionTorque.Map(torque => torque.NewtonMeters), "from none to the usual");
        yield return press.Belting is null
            ? new(UncertainFigures.BeltTension, TensionMeaning, "", new Distribution.Fixed(0.5), Provenance.OwnChoice, Ours, "no belt is described")
            : new(
                UncertainFigures.BeltTension, TensionMeaning, "", new Distribution.Uniform(0, 1), Provenance.OwnChoice, Ours,
                "readings of the tension test and friction, both from their low to their high figure");
        yield return new(
            UncertainFigures.CuttingTorque, "cutting torque over that of the handbook's coefficients", "",
            new Distribution.Triangular(0.5, 1, 1.25), Provenance.OwnChoice, Ours,
            "methods differ by a factor of two and the handbook's, which is used, stands on the high side; a blunt tool asks a quarter more");
        yield return Hand(strength);
    }

    private const string StandstillMeaning = "rotor resistance of a double cage at standstill over the circuit's";

    /// <summary>
    /// IEC 60034-1 lets slip stand 20 % off (30 % below 1 kW), locked-rotor torque 15 % low and 25 % high, and breakdown torque 10 % low.
    /// </summary>
    private static IEnumerable<VariedInput> Tolerances(MachineMotor motor)
    {
        const string Iec = "iec-60034-1";
        if (motor.Fit is null)
        {
            const string Note = "readings and their arithmetic; a circuit that was given";
            yield return new(
                UncertainFigures.RotorResistance, "rotor resistance over the circuit's", "", Cut(0.05), Provenance.OwnChoice, Ours, Note);
            yield return new(
                UncertainFigures.StandstillResistance, StandstillMeaning, "", new Distribution.Fixed(1), Provenance.OwnChoice, Ours,
                "goes with rotor resistance");
            yield return new(UncertainFigures.Leakage, "leakage over the circuit's", "", Cut(0.05), Provenance.OwnChoice, Ours, Note);
            yield break;
        }

        var slip = motor.RatedPower.Kilowatts < 1 ? 0.3 : 0.2;
        yield return new(
            UncertainFigures.RotorResistance, "rotor resistance over the circuit's", "", Cut(slip), Provenance.FromMemory, Iec,
            FormattableString.Invariant($"tolerance on slip, {100 * slip:0} % either way: slip goes with rotor resistance"));
        yield return motor.Circuit.Capability.Cage.Rise > 1 || motor.Circuit.Hazard.Cage.Rise > 1
            ? new(
                UncertainFigures.StandstillResistance, StandstillMeaning, "",
                new Distribution.Truncated(new Distribution.Normal(1.05, 0.1), 0.85, 1.25), Provenance.FromMemory, Iec,
                "tolerance on locked-rotor torque, 15 % low to 25 % high: it goes with rotor resistance at standstill")
            : new(
                UncertainFigures.StandstillResistance, StandstillMeaning, "", new Distribution.Fixed(1), Provenance.OwnChoice, Ours,
                "a single cage: goes with rotor resistance");
        yield return new(
            UncertainFigures.Leakage, "leakage over the circuit's", "", Cut(0.1), Provenance.FromMemory, Iec,
            "tolerance on breakdown torque, 10 %: it goes inversely with leakage; upwards as far as downwards is own choice");
    }

    private static Distribution.Truncated Cut(double tolerance) =>
        new(new Distribution.Normal(1, tolerance / 2), 1 - tolerance, 1 + tolerance);

    private static VariedInput Hand(HandStrength strength)
    {
        const double Widest = 3;
        var (mean, deviation) = (strength.Mean.NewtonMeters, strength.StandardDeviation.NewtonMeters);
        Distribution hands = deviation == 0
            ? new Distribution.Fixed(mean)
            : new Distribution.Truncated(
                new Distribution.Normal(mean, deviation), Math.Max(0.05 * mean, mean - Widest * deviation), mean + Widest * deviation);
        return new(
            UncertainFigures.HandTorque, "hand torque across people", "N·m", hands, strength.Provenance, strength.Source,
            $"{strength.Sample}; normal across people and cut at three standard deviations (own choice)");
    }

    private static VariedInput Between(string name, string meaning, string unit, Sided<double> ends, string note)
    {
        var (least, most) = (Math.Min(ends.Capability, ends.Hazard), Math.Max(ends.Capability, ends.Hazard));
        return new(
            name, meaning, unit, least < most ? new Distribution.Uniform(least, most) : new Distribution.Fixed(least),
            Provenance.OwnChoice, Ours, least < most ? note : "given, or the same on both sides");
    }

    private static Distribution Peaked(double least, double likeliest, double most) =>
        least < most ? new Distribution.Triangular(least, likeliest, most) : new Distribution.Fixed(likeliest);
}
