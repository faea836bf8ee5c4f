using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Motors.Heat;

/// <summary>How much more than rated power a motor may give when it does not give it all the time.</summary>
/// <remarks>
/// Losses are taken as constant ones and ones that go with the square of power, as the textbooks take them (Dubey,
/// Fundamentals of Electrical Drives, Ex. 4.4; Pillai, A First Course on Electrical Drives, Ex. 7.3). Pull-out is not looked
/// at: a motor may well stall long before it is too hot.
/// </remarks>
public static class LoadRating
{
    private const string Part = "load rating";

    /// <summary>Power over rated power for a short time from cold, reaching rated rise at its end.</summary>
    /// <param name="body">The motor.</param>
    /// <param name="on">How long the load lasts, above 0.</param>
    /// <param name="constantOverVariable">Constant losses over variable losses at rated load, 0 or more.</param>
    /// <returns>Power over rated power; √((1 + α)/(1 − e^(−t/τ)) − α).</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static double ShortTime(ThermalBody body, Duration on, double constantOverVariable)
    {
        Guard.Positive(on, Part, "time under load");
        var rise = new DutyCycle(body, [new(on, body.RatedLoss, body.RatedSpeed)]).Over(TemperatureDelta.Zero)[^1];
        return PowerFor(rise / body.RatedRise, constantOverVariable);
    }

    /// <summary>Power over rated power in a repeated duty, on and off, whose highest rise is the rated one.</summary>
    /// <param name="body">The motor.</param>
    /// <param name="on">Time under load, above 0.</param>
    /// <param name="off">Time switched off at standstill, 0 or more.</param>
    /// <param name="constantOverVariable">Constant losses over variable losses at rated load, 0 or more.</param>
    /// <returns>Power over rated power.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static double Intermittent(ThermalBody body, Duration on, Duration off, double constantOverVariable)
    {
        Guard.Positive(on, Part, "time under load");
        var duty = new DutyCycle(body, [new(on, body.RatedLoss, body.RatedSpeed), DutyStage.Off(off)]);
        return PowerFor(duty.HighestRise!.Value / body.RatedRise, constantOverVariable);
    }

    /// <summary>The rise is in proportion to the loss, so the loss that may be had is the inverse of the rise at rated loss.</summary>
    private static double PowerFor(double riseAtRatedLoss, double constantOverVariable)
    {
        var alpha = Guard.Within(constantOverVariable, 0, 10, Part, "constant over variable losses");
        return Math.Sqrt((1 + alpha) / riseAtRatedLoss - alpha);
    }
}
