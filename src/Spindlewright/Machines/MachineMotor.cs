using Spindlewright.Foundations;
using Spindlewright.Motors;
using Spindlewright.Motors.Fitting;
using Spindlewright.Motors.Plates;
using UnitsNet;

namespace Spindlewright.Machines;

/// <summary>The motor as it is connected to the inverter.</summary>
public sealed record MachineMotor
{
    private const string Part = "motor";

    /// <summary>The circuit as connected, by side: one fitted to the low defaults, one to the high ones.</summary>
    public required Sided<EquivalentCircuit> Circuit { get; init; }

    /// <summary>The connection in use.</summary>
    public required Connection Connection { get; init; }

    /// <summary>Rated shaft power at rated frequency.</summary>
    public required Power RatedPower { get; init; }

    /// <summary>Rated (full-load) speed.</summary>
    public required RotationalSpeed RatedSpeed { get; init; }

    /// <summary>Rated line current in the connection in use.</summary>
    public required ElectricCurrent RatedCurrent { get; init; }

    /// <summary>Coldest and hottest winding to be expected.</summary>
    public required (Temperature Cold, Temperature Hot) Winding { get; init; }

    /// <summary>
    /// Breakdown torque over rated that no bound goes below: the plate's, or the high default where the plate is silent;
    /// null where a circuit was given.
    /// </summary>
    public double? BreakdownTorqueForBound { get; init; }

    /// <summary>How the circuits were fitted; null where a circuit was given.</summary>
    public Sided<NameplateFit>? Fit { get; init; }

    /// <summary>What does not go together on the plate; empty where a circuit was given.</summary>
    public IReadOnlyList<PlateQuestion> Questions { get; init; } = [];

    /// <summary>Rated torque, power over speed.</summary>
    public Torque RatedTorque => Torque.FromNewtonMeters((double)RatedPower.Watts / RatedSpeed.RadiansPerSecond);

    /// <summary>A motor of which a plate is known, as connected.</summary>
    /// <param name="fitted">Circuits fitted to the plate.</param>
    /// <param name="connection">The connection in use.</param>
    /// <param name="winding">Coldest and hottest winding to be expected.</param>
    /// <returns>The motor; its ratings are those of the capability side's plate.</returns>
    public static MachineMotor Of(PlateFit fitted, Connection connection, (Temperature Cold, Temperature Hot) winding)
    {
        var plate = fitted.Completion.Nameplates.Capability;
        return new()
        {
            Circuit = fitted.Fits.Map(each => each.Circuit.Rejoined(plate.Connection, connection)),
            Connection = connection,
            RatedPower = plate.Power,
            RatedSpeed = plate.Speed,
            RatedCurrent = plate.Current * CurrentFactor(plate.Connection, connection),
            Winding = winding,
            BreakdownTorqueForBound = fitted.BreakdownTorqueForBound,
            Fit = fitted.Fits,
            Questions = fitted.Completion.Questions,
        };
    }

    private static double CurrentFactor(Connection from, Connection to) =>
        from == to ? 1 : to == Connection.Delta ? Math.Sqrt(3) : 1 / Math.Sqrt(3);

    /// <summary>A motor of the same design and another size.</summary>
    /// <param name="times">Its rated power over this one's, above 0.</param>
    /// <returns>The motor; see <see cref="EquivalentCircuit.OfPower"/>.</returns>
    public MachineMotor OfPower(double times) => this with
    {
        Circuit = Circuit.Map(circuit => circuit.OfPower(times)),
        RatedPower = Power.FromWatts((double)RatedPower.Watts * times),
        RatedCurrent = RatedCurrent * times,
    };

    /// <summary>A motor of the same power and another number of poles.</summary>
    /// <param name="poles">Even, 2 to 24.</param>
    /// <returns>The motor; see <see cref="EquivalentCircuit.WithPoles"/>.</returns>
    public MachineMotor WithPoles(int poles) => this with
    {
        Circuit = Circuit.Map(circuit => circuit.WithPoles(poles)),
        RatedSpeed = RatedSpeed * ((double)Circuit.Hazard.Poles / poles),
    };

    /// <summary>The circuits of one side, cold and hot: capability takes the smaller torque of the two, hazard the larger.</summary>
    /// <param name="side">The side.</param>
    /// <returns>Two circuits, or one where cold and hot are the same.</returns>
    /// <remarks>
    /// Cold raises breakdown and low-frequency torque, hot raises locked-rotor torque near and above base frequency, so
    /// neither alone serves a side.
    /// </remarks>
    public IReadOnlyList<EquivalentCircuit> AtBothTemperatures(Side side)
    {
        var cold = Circuit.On(side).AtTemperature(Winding.Cold);
        return Winding.Cold.Kelvins.Equals(Winding.Hot.Kelvins) ? [cold] : [cold, Circuit.On(side).AtTemperature(Winding.Hot)];
    }
}
