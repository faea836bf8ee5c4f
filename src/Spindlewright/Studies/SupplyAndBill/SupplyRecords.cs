using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Mains;
using UnitsNet;

namespace Spindlewright.Studies.SupplyAndBill;

/// <summary>What the socket gives and the link holds at one supply voltage, the motor at rated power.</summary>
/// <param name="Name">lowest, nominal or highest.</param>
/// <param name="Voltage">Supply voltage.</param>
/// <param name="State">Input current, factors and link voltage.</param>
/// <param name="Ceiling">Voltage ceiling with the link so loaded, line to line.</param>
/// <param name="UnloadedCeiling">Voltage ceiling with the link unloaded.</param>
public sealed record SupplyLevel(
    string Name, ElectricPotential Voltage, RectifierState State, ElectricPotential Ceiling, ElectricPotential UnloadedCeiling);

/// <summary>Input of the inverter at one load of the motor, base frequency and nominal supply.</summary>
/// <param name="Share">Shaft torque over rated torque.</param>
/// <param name="Shaft">Shaft power.</param>
/// <param name="MotorInput">Power into the motor.</param>
/// <param name="State">Input current, factors and link voltage.</param>
public sealed record InputAtLoad(double Share, Power Shaft, Power MotorInput, RectifierState State);

/// <summary>Rated current of fuse or plug against the input current at rated motor power and lowest supply.</summary>
/// <param name="Fuse">Rated current; null where it was not given.</param>
/// <param name="Current">Rms input current.</param>
/// <param name="Words">How they compare.</param>
public sealed record FuseMargin(ElectricCurrent? Fuse, ElectricCurrent Current, string Words)
{
    /// <summary>Input current over rated current; null where that was not given.</summary>
    public double? Share => Fuse is { } rated ? Current / rated : null;
}

/// <summary>Currents when something is switched on.</summary>
/// <param name="LinkBare">Peak into the discharged link at the crest of the highest supply with nothing to limit it.</param>
/// <param name="LinkLimited">The same through the charging resistance; null where none was given.</param>
/// <param name="LockedRotor">Steady locked-rotor current of the motor direct on line at its rated voltage.</param>
/// <param name="FirstPeak">Range of the first half-cycle peak direct on line.</param>
/// <param name="RampMotor">Highest motor current on the acceleration ramp, by side: little and much inertia.</param>
/// <param name="RampInput">Rms input current of the inverter at the end of that ramp.</param>
public sealed record SwitchingOn(
    ElectricCurrent LinkBare, ElectricCurrent? LinkLimited, ElectricCurrent LockedRotor, Interval FirstPeak,
    Sided<ElectricCurrent?> RampMotor, Sided<ElectricCurrent?> RampInput);

/// <summary>What slowing down does to the link.</summary>
/// <param name="Frequency">Where it starts.</param>
/// <param name="Energy">Energy of rotation, by side: little and much inertia.</param>
/// <param name="AllIntoLink">Link voltage if all of it came at once.</param>
/// <param name="Trip">Link voltage at which the unit trips.</param>
/// <param name="LeastTime">Least time from that frequency to standstill without a braking resistor.</param>
/// <param name="SetTime">Time that the deceleration ramp takes from that frequency.</param>
public sealed record SlowingDown(
    Frequency Frequency, Sided<Energy> Energy, Sided<ElectricPotential> AllIntoLink, ElectricPotential Trip,
    Sided<Duration> LeastTime, Duration SetTime);

/// <summary>Energy of one task over the day.</summary>
/// <param name="Task">The task.</param>
/// <param name="WithInverter">From the socket through the inverter, without standby in the pauses.</param>
/// <param name="DirectOnLine">The same shaft work by the same motor direct on a three-phase line; null where it stalls.</param>
/// <param name="AtDrill">Shaft work.</param>
public sealed record TaskEnergy(DayTask Task, Energy? WithInverter, Energy? DirectOnLine, Energy AtDrill);

/// <summary>Energy of a working day.</summary>
/// <param name="Tasks">One row a task.</param>
/// <param name="WithInverter">All tasks and standby through the inverter; null where a task stalls.</param>
/// <param name="Standby">Part of it that is standby while the motor is off.</param>
/// <param name="DirectOnLine">All tasks direct on line.</param>
/// <param name="Words">What the inverter saves and what it does not.</param>
public sealed record DayEnergy(
    IReadOnlyList<TaskEnergy> Tasks, Energy? WithInverter, Energy Standby, Energy? DirectOnLine, string Words)
{
    /// <summary>Share of the direct-on-line energy that the inverter saves; negative where it takes more.</summary>
    public double? Saving => WithInverter is { } with && DirectOnLine is { } line ? 1 - with / line : null;
}
