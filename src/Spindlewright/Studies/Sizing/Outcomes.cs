using Spindlewright.Belts;
using UnitsNet;

namespace Spindlewright.Studies.Sizing;

/// <summary>Why a candidate does not do an operation; the later, the farther from doing it.</summary>
public enum Shortfall
{
    /// <summary>It does.</summary>
    None,

    /// <summary>The winding passes the limit of its class over the holes in a row.</summary>
    TooHot,

    /// <summary>The belt slips at the tension described.</summary>
    Slips,

    /// <summary>Short-time torque is less than what is needed, with the margin wanted.</summary>
    TooWeak,

    /// <summary>No belt position turns fast enough within the speed limits.</summary>
    TooSlow,

    /// <summary>No belt position turns slowly enough.</summary>
    TooFast,

    /// <summary>Arm or column: no motor helps.</summary>
    ArmOrColumn,
}

/// <summary>Words for shortfalls.</summary>
public static class ShortfallWords
{
    /// <summary>In a few words.</summary>
    /// <param name="why">The shortfall.</param>
    /// <returns>Words to stand after an operation's name.</returns>
    public static string InWords(this Shortfall why) => why switch
    {
        Shortfall.None => "done",
        Shortfall.TooHot => "the winding passes its class limit",
        Shortfall.Slips => "the belt slips",
        Shortfall.TooWeak => "too little torque",
        Shortfall.TooSlow => "not fast enough within the limits",
        Shortfall.TooFast => "not slow enough",
        _ => "arm or column give out",
    };
}

/// <summary>How one candidate fares at one operation, on its best belt position and on the low side. Plain numbers: there are hundreds of thousands.</summary>
/// <param name="Why">Why it is not done.</param>
/// <param name="Belt">Place of the belt position.</param>
/// <param name="Hertz">Output frequency; NaN at fixed speeds.</param>
/// <param name="Rpm">Loaded spindle speed, r/min.</param>
/// <param name="AvailableNm">Short-time torque at the spindle, N·m.</param>
/// <param name="Margin">Available over needed torque; infinite where no torque is needed.</param>
/// <param name="WindingC">Hottest winding over the holes in a row, °C; NaN where it is not determined.</param>
internal readonly record struct Outcome(
    Shortfall Why, int Belt, double Hertz, double Rpm, double AvailableNm, double Margin, double WindingC)
{
    /// <summary>True where this is nearer to being done than another.</summary>
    internal bool Beats(in Outcome other) => Why != other.Why ? Why < other.Why : Margin > other.Margin;
}

/// <summary>How a candidate fares at an operation, with what a reader needs to follow it by hand.</summary>
/// <param name="Demand">What is asked.</param>
/// <param name="Why">Why it is not done, or that it is.</param>
/// <param name="Belt">The belt position that comes nearest.</param>
/// <param name="Frequency">Output frequency; null at fixed speeds.</param>
/// <param name="Speed">Loaded spindle speed.</param>
/// <param name="Available">Short-time torque at the spindle there, low side.</param>
/// <param name="Margin">Available over needed torque, low and high side; null where no torque is needed.</param>
/// <param name="Winding">Hottest winding over the holes in a row, cool and hot side; null where it is not determined.</param>
public sealed record DemandOutcome(
    WorkDemand Demand, Shortfall Why, BeltPosition Belt, Frequency? Frequency, RotationalSpeed Speed, Torque Available,
    Foundations.Interval? Margin, (Temperature Cool, Temperature Hot)? Winding);
