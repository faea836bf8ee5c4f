using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Studies.Speeds;
using UnitsNet;

namespace Spindlewright.Studies.Work;

/// <summary>Stopping a tap at depth.</summary>
/// <param name="StopTime">From the stop command to standstill on the inverter's ramp.</param>
/// <param name="Revolutions">Turns in that time.</param>
/// <param name="Travel">Way that the tap still goes in: the room that a blind hole must have.</param>
public sealed record TapStop(Duration StopTime, double Revolutions, Length Travel)
{
    internal static TapStop? Of(DrillPress press, WorkItem item, Frequency frequency)
    {
        if (item.Operation.Tap is not { } tap) return null;
        // The ramp is stated from base frequency to standstill.
        var time = press.Inverter.Ramps.Deceleration * (frequency / press.Inverter.Curve.BaseFrequency);
        var (revolutions, travel) = tap.Overrun(item.Speed, time);
        return new(time, revolutions, travel);
    }
}

/// <summary>How exactly a speed is held while a mounted assembly turns.</summary>
/// <param name="Unloaded">Spindle speed at the synchronous speed of that frequency.</param>
/// <param name="StepOfTenthHertz">Change of spindle speed when the frequency is set 0.1 Hz higher.</param>
/// <param name="SlipLoss">Speed lost by the motor's slip under the drag of the spindle.</param>
/// <param name="CreepLoss">Speed that the belt's creep may take besides, under load.</param>
public sealed record SpinAccuracy(
    RotationalSpeed Unloaded, RotationalSpeed StepOfTenthHertz, RotationalSpeed SlipLoss, RotationalSpeed CreepLoss)
{
    internal static SpinAccuracy? Of(
        DrillPress press, WorkItem item, Belts.BeltPosition belt, Frequency frequency, Handbook handbook)
    {
        if (item.Kind != OperationKind.SpinTesting) return null;
        var circuit = press.Motor.Circuit.Capability;
        var unloaded = belt.SpindleSpeed(circuit.SynchronousSpeedAt(frequency));
        return new(
            unloaded, belt.SpindleSpeed(circuit.SynchronousSpeedAt(Frequency.FromHertz(0.1))), unloaded - item.Speed,
            item.Speed * handbook.BeltFacts["creep"].Range().Value.Most);
    }
}
