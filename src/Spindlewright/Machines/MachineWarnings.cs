using Spindlewright.Foundations;
using Spindlewright.Motors;
using static System.FormattableString;

namespace Spindlewright.Machines;

/// <summary>What a reader must be told before any number.</summary>
internal static class MachineWarnings
{
    // Below this the machine is most likely connected the other way from what was meant.
    private const double LeastBaseFlux = 0.75;

    internal static IReadOnlyList<string> Of(DrillPress press) =>
        [.. Underflux(press), .. press.Motor.Questions.Select(question => question.Words), .. ExactRatedPoint(press), .. Unlimiting(press), .. BaseAboveCeiling(press)];

    private static IEnumerable<string> Underflux(DrillPress press)
    {
        var (curve, rated) = (press.Inverter.Curve, press.Motor.Circuit.Capability);
        var volts = Math.Min(
            curve.BaseVoltage.Volts, press.Inverter.Link.Ceiling(press.Supply.Nominal, Side.Capability).Volts);
        var flux = volts / curve.BaseFrequency.Hertz / (rated.RatedLineVoltage.Volts / rated.RatedFrequency.Hertz);
        if (flux >= LeastBaseFlux) yield break;
        var remedy = press.Motor.Connection == Connection.Star
            ? "If the plate allows a delta connection at the inverter's voltage, that is the one to use; let a licensed person rejoin the windings."
            : "Check the base frequency and base voltage that are set.";
        yield return
            Invariant($"The motor gets too few volts: {volts:0} V at {curve.BaseFrequency.Hertz:0.#} Hz in {press.Motor.Connection.ToString().ToLowerInvariant()}, where its plate asks for {rated.RatedLineVoltage.Volts:0} V at {rated.RatedFrequency.Hertz:0.#} Hz. It runs at {flux:0.00} of rated flux and {flux * flux:0.00} of its torque. {remedy}");
    }

    private static IEnumerable<string> ExactRatedPoint(DrillPress press) =>
        press.Motor.Fit is { } fit
            ? new[] { fit.Capability.Verdict, fit.Hazard.Verdict }.Where(verdict => verdict.Length > 0).Distinct()
            : [];

    private static IEnumerable<string> Unlimiting(DrillPress press)
    {
        var ratio = press.Inverter.LimitingCurrent / press.Motor.RatedCurrent;
        if (ratio > 2)
            yield return
                Invariant($"The inverter limits at {press.Inverter.LimitingCurrent.Amperes:0.##} A, {ratio:0.0} times the motor's rated current: it does not limit this motor's torque in any useful way.");
    }

    private static IEnumerable<string> BaseAboveCeiling(DrillPress press)
    {
        var ceiling = press.Inverter.Link.Ceiling(press.Supply.Nominal, Side.Capability);
        var curve = press.Inverter.Curve;
        if (ceiling.Volts < 0.9 * curve.BaseVoltage.Volts)
            yield return
                Invariant($"The base voltage is set to {curve.BaseVoltage.Volts:0} V, but the loaded DC link gives {ceiling.Volts:0} V at most: the voltage stops rising before {curve.BaseFrequency.Hertz:0.#} Hz.");
    }
}
