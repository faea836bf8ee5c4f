using Spindlewright.Foundations;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Motors;

/// <summary>Figures of a nameplate that a default may stand in for.</summary>
[Flags]
public enum PlateFigure
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>Rated shaft power.</summary>
    Power = 1,

    /// <summary>Rated speed.</summary>
    Speed = 2,

    /// <summary>Rated current.</summary>
    Current = 4,

    /// <summary>Power factor at rated load.</summary>
    PowerFactor = 8,
}

/// <summary>What is printed on a motor, for one connection of its windings.</summary>
/// <remarks>
/// <see cref="Speed"/> is the rated (full-load) speed, which stands below the synchronous speed 120 f / poles by the
/// rated slip. Torque and current ratios are over rated torque and rated current.
/// </remarks>
public sealed record Nameplate
{
    private const string Part = "motor nameplate";

    /// <summary>Makes a nameplate.</summary>
    /// <param name="power">Rated shaft power, 10 W to 100 kW.</param>
    /// <param name="lineVoltage">Line voltage of <paramref name="connection"/>.</param>
    /// <param name="connection">The connection that voltage and current belong to.</param>
    /// <param name="frequency">Rated frequency, 10 Hz to 400 Hz.</param>
    /// <param name="poles">Even, 2 to 24.</param>
    /// <param name="speed">Rated speed, below synchronous and above half of it.</param>
    /// <param name="current">Rated line current.</param>
    /// <param name="powerFactor">0.2 to 0.99.</param>
    /// <exception cref="PartException">A value is out of range, or together they give out more power than goes in.</exception>
    public Nameplate(
        Power power, ElectricPotential lineVoltage, Connection connection, Frequency frequency, int poles,
        RotationalSpeed speed, ElectricCurrent current, double powerFactor)
    {
        Power = Guard.Within(power, Power.FromWatts(10), Power.FromWatts(100_000), Part, "rated power");
        LineVoltage = Guard.Positive(lineVoltage, Part, "voltage");
        Connection = connection;
        Frequency = Guard.Within(
            frequency, Frequency.FromHertz(10), Frequency.FromHertz(400), Part, "rated frequency");
        Poles = poles is >= 2 and <= 24 && poles % 2 == 0
            ? poles
            : throw new PartException(Part, "number of poles", $"{poles}", "an even number from 2 to 24");
        var synchronous = RotationalSpeed.FromRevolutionsPerMinute(120 * frequency.Hertz / poles);
        Speed = speed < synchronous && speed > synchronous / 2
            ? speed
            : throw new PartException(
                Part, "rated speed", Invariant($"{speed.RevolutionsPerMinute:0.#} r/min"),
                Invariant($"above {synchronous.RevolutionsPerMinute / 2:0.#} and below {synchronous.RevolutionsPerMinute:0.#} r/min"),
                Invariant($"{poles} poles at {frequency.Hertz:0.#} Hz turn at {synchronous.RevolutionsPerMinute:0.#} r/min synchronous, and a loaded motor runs below that"));
        Current = Guard.Positive(current, Part, "rated current");
        PowerFactor = Guard.Within(powerFactor, 0.2, 0.99, Part, "power factor");
        if (Efficiency >= 1)
            throw new PartException(
                Part, "rated power", Invariant($"{(double)power.Watts:0.#} W"), Invariant($"below {InputWatts:0.#} W"),
                "that is what voltage, current and power factor take in: √3 V I cosφ");
    }

    /// <summary>The nameplate that a motor with a given circuit would carry.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="connection">The connection for which it stands.</param>
    /// <param name="speed">Rated speed.</param>
    /// <returns>Rated point, breakdown and locked-rotor figures as the circuit gives them.</returns>
    /// <exception cref="PartException">A figure is out of the range that a nameplate may have.</exception>
    public static Nameplate OfCircuit(EquivalentCircuit circuit, Connection connection, RotationalSpeed speed)
    {
        var (rated, locked) = (CircuitSolver.SolveAtRatedSupply(circuit, speed), CircuitSolver.SolveAtRatedSupply(circuit, RotationalSpeed.Zero));
        var plate = new Nameplate(
            rated.Shaft, circuit.RatedLineVoltage, connection, circuit.RatedFrequency, circuit.Poles, speed, rated.Current,
            rated.PowerFactor);
        return plate with
        {
            BreakdownTorque = Fitting.Reached.BreakdownRatio(plate, circuit),
            LockedRotorTorque = locked.AirGapTorque / plate.RatedTorque,
            LockedRotorCurrent = locked.Current / plate.Current,
        };
    }

    /// <summary>Rated shaft power.</summary>
    public Power Power { get; }

    /// <summary>Line voltage of <see cref="Connection"/>.</summary>
    public ElectricPotential LineVoltage { get; }

    /// <summary>The connection that voltage and current belong to.</summary>
    public Connection Connection { get; }

    /// <summary>Rated frequency.</summary>
    public Frequency Frequency { get; }

    /// <summary>Number of poles, even.</summary>
    public int Poles { get; }

    /// <summary>Rated (full-load) speed.</summary>
    public RotationalSpeed Speed { get; }

    /// <summary>Rated line current.</summary>
    public ElectricCurrent Current { get; }

    /// <summary>Power factor at rated load.</summary>
    public double PowerFactor { get; }

    /// <summary>Breakdown torque over rated torque, 1.2 to 6; null where the plate is silent.</summary>
    public double? BreakdownTorque
    {
        get;
        init => field = value is { } given ? Guard.Within(given, 1.2, 6, Part, "breakdown torque over rated") : null;
    }

    /// <summary>Locked-rotor torque over rated torque, 0.3 to 6; null where the plate is silent.</summary>
    public double? LockedRotorTorque
    {
        get;
        init => field = value is { } given ? Guard.Within(given, 0.3, 6, Part, "locked-rotor torque over rated") : null;
    }

    /// <summary>Locked-rotor current over rated current, 1.5 to 12; null where the plate is silent.</summary>
    public double? LockedRotorCurrent
    {
        get;
        init => field = value is { } given ? Guard.Within(given, 1.5, 12, Part, "locked-rotor current over rated") : null;
    }

    /// <summary>Line current at no load, rated voltage and frequency; null where not measured.</summary>
    public ElectricCurrent? NoLoadCurrent
    {
        get;
        init => field = value is { } given
            ? Guard.Within(given, Current * 0.02, Current * 1.5, Part, "no-load current", "2 % to 150 % of the rated current")
            : null;
    }

    /// <summary>Resistance between two terminals as connected; null where not measured.</summary>
    /// <remarks>Twice the star-equivalent R1 in star and in delta alike.</remarks>
    public ElectricResistance? WindingResistance
    {
        get;
        init => field = value is { } given ? Guard.Positive(given, Part, "winding resistance between terminals") : null;
    }

    /// <summary>Winding temperature at which <see cref="WindingResistance"/> was measured.</summary>
    public Temperature WindingMeasuredAt
    {
        get;
        init => field = Guard.Within(
            value, Temperature.FromDegreesCelsius(-40), Temperature.FromDegreesCelsius(250), Part,
            "temperature of the measured winding");
    } = Temperature.FromDegreesCelsius(20);

    /// <summary>The figures that are defaults; a fit lets them give way to the others.</summary>
    public PlateFigure Assumed { get; init; }

    internal bool GivesLockedRotor => LockedRotorTorque is not null || LockedRotorCurrent is not null;

    internal bool GivesMoreThanRatedPoint => GivesLockedRotor || NoLoadCurrent is not null || WindingResistance is not null;

    /// <summary>Efficiency that voltage, current, power factor and power imply.</summary>
    public double Efficiency => (double)Power.Watts / InputWatts;

    /// <summary>(ns − n) / ns at rated load.</summary>
    public double RatedSlip => 1 - Speed.RevolutionsPerMinute * Poles / (120 * Frequency.Hertz);

    /// <summary>Synchronous speed at rated frequency, 120 f / poles; never the rated speed.</summary>
    public RotationalSpeed SynchronousSpeed => RotationalSpeed.FromRevolutionsPerMinute(120 * Frequency.Hertz / Poles);

    /// <summary>Rated torque, power over speed.</summary>
    public Torque RatedTorque => Torque.FromNewtonMeters((double)Power.Watts / Speed.RadiansPerSecond);

    internal double InputWatts => Math.Sqrt(3) * LineVoltage.Volts * Current.Amperes * PowerFactor;
}
