using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Studies.Frequencies;

/// <summary>One point of a torque–speed curve.</summary>
/// <param name="Speed">Speed of the motor.</param>
/// <param name="AsModelled">Air-gap torque on the set curve.</param>
/// <param name="IdealBoost">Air-gap torque, hazard side, with stator flux held at its rated value.</param>
public sealed record TorqueSpeedPoint(RotationalSpeed Speed, Sided<Torque> AsModelled, Torque IdealBoost);

/// <summary>The torque–speed curve at one frequency, from standstill to synchronous speed.</summary>
/// <param name="Frequency">Output frequency.</param>
/// <param name="Points">From standstill up.</param>
public sealed record TorqueSpeedCurve(Frequency Frequency, IReadOnlyList<TorqueSpeedPoint> Points);

/// <summary>The voltage that would hold breakdown torque at what it is at base frequency.</summary>
/// <param name="Frequency">Output frequency, up to base frequency.</param>
/// <param name="Set">Line voltage that the curve sets.</param>
/// <param name="Needed">Line voltage at the motor's terminals that the boost law asks for, by side.</param>
public sealed record BoostLawPoint(Frequency Frequency, ElectricPotential Set, Sided<ElectricPotential> Needed);

/// <summary>A torque and the frequency at which it stands.</summary>
/// <param name="Frequency">Output frequency.</param>
/// <param name="Torque">At the motor shaft.</param>
public sealed record TorqueAt(Frequency Frequency, Torque Torque);

/// <summary>The motor at twice base frequency over the motor at base frequency.</summary>
/// <param name="Frequency">Twice the base frequency, whether or not the settings reach it.</param>
/// <param name="LockedRotor">Locked-rotor torque there over that at base.</param>
/// <param name="PullOut">Pull-out torque there over that at base.</param>
/// <param name="StoredEnergy">Energy of rotation there over that at base: the square of the speeds' ratio.</param>
/// <param name="WithinSettings">True where the highest frequency reaches it.</param>
public sealed record TwiceBaseFrequency(
    Frequency Frequency, Sided<double> LockedRotor, Sided<double> PullOut, double StoredEnergy, bool WithinSettings);

/// <summary>Torques of the motor at one frequency.</summary>
/// <param name="Frequency">Output frequency.</param>
/// <param name="PullOut">As modelled: largest torque over 0 &lt; s ≤ 1.</param>
/// <param name="LockedRotor">As modelled: torque at standstill.</param>
public sealed record MotorTorques(Frequency Frequency, Sided<Torque> PullOut, Sided<Torque> LockedRotor);

/// <summary>What one boost does: a straight law with it, on the same machine.</summary>
/// <param name="Share">Line voltage at 0 Hz over base voltage.</param>
/// <param name="Points">Torques from the lowest to the base frequency.</param>
/// <param name="NoLoadCurrent">Line current at the lowest frequency with nothing on the shaft; the larger of cold and hot winding.</param>
/// <param name="NoLoadFlux">Air-gap volts per hertz there over their rated value.</param>
/// <param name="Bound">The no-credit bound at the motor shaft with this boost.</param>
public sealed record BoostCase(
    double Share, IReadOnlyList<MotorTorques> Points, Sided<ElectricCurrent> NoLoadCurrent, Sided<double> NoLoadFlux,
    Torque Bound);

/// <summary>What one temperature of winding and bars does.</summary>
/// <param name="Winding">Temperature of winding and bars.</param>
/// <param name="Points">Torques from the lowest to the highest frequency.</param>
public sealed record TemperatureCase(Temperature Winding, IReadOnlyList<MotorTorques> Points);
