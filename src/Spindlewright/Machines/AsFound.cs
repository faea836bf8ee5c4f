using Spindlewright.Belts;
using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Machines;

/// <summary>The machine before the conversion: a motor of fixed speed on its belt positions.</summary>
public sealed record AsFound
{
    private const string Part = "machine as found";

    /// <summary>Makes the machine as found.</summary>
    /// <param name="description">One line.</param>
    /// <param name="power">Rated shaft power of the old motor.</param>
    /// <param name="speed">Its rated (full-load) speed.</param>
    /// <param name="breakdownTorque">Breakdown torque over rated, 1 to 6.</param>
    /// <param name="belts">Its belt positions, at least one.</param>
    /// <exception cref="PartException">A value is out of range.</exception>
    public AsFound(
        string description, Power power, RotationalSpeed speed, Sided<double> breakdownTorque,
        IReadOnlyList<BeltPosition> belts)
    {
        Description = description;
        Power = Guard.Within(power, Power.FromWatts(10), Power.FromWatts(100_000), Part, "power");
        Speed = Guard.Positive(speed, Part, "speed");
        BreakdownTorque = breakdownTorque.Map(
            ratio => Guard.Within(ratio, 1, 6, Part, "breakdown torque over rated"));
        Belts = belts.Count > 0 ? belts : throw new PartException(Part, "belt positions", "none", "one or more");
    }

    /// <summary>One line.</summary>
    public string Description { get; }

    /// <summary>Rated shaft power.</summary>
    public Power Power { get; }

    /// <summary>Rated (full-load) speed.</summary>
    public RotationalSpeed Speed { get; }

    /// <summary>Breakdown torque over rated torque.</summary>
    public Sided<double> BreakdownTorque { get; }

    /// <summary>Its belt positions.</summary>
    public IReadOnlyList<BeltPosition> Belts { get; }

    /// <summary>Rated torque of the old motor.</summary>
    public Torque RatedTorque => Torque.FromNewtonMeters((double)Power.Watts / Speed.RadiansPerSecond);
}
