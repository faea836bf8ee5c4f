using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using Spindlewright.Motors;
using Spindlewright.Motors.Fitting;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>
/// Checks of nameplate round trips: a plate is written from what a published circuit does at its rated point and at
/// breakdown, a circuit is fitted to the plate, and it must do what the published one does elsewhere.
/// </summary>
/// <remarks>
/// The split X1/X2 of both published circuits is stated as equal, and they have no core or mechanical loss in the
/// trip, so parameters may be compared too.
/// </remarks>
internal sealed class NameplateRoundTripEvaluator : ICheckEvaluator
{
    private static readonly Dictionary<string, Func<NameplateFit, string, double>> All = new(StringComparer.Ordinal)
    {
        ["fitted stator resistance"] = (fit, unit) => InUnit.Of(fit.Circuit.R1, QuantityKinds.Resistance, unit),
        ["fitted stator leakage reactance"] = (fit, unit) => InUnit.Of(fit.Circuit.X1, QuantityKinds.Reactance, unit),
        ["fitted rotor resistance"] = (fit, unit) => InUnit.Of(fit.Circuit.R2, QuantityKinds.Resistance, unit),
        ["fitted magnetising reactance"] = (fit, unit) => InUnit.Of(fit.Circuit.Xm, QuantityKinds.Reactance, unit),
        ["fitted locked-rotor torque over rated"] = (fit, unit) =>
            InUnit.Plain(Locked(fit).AirGapTorque / fit.Nameplate.RatedTorque, unit),
        ["fitted locked-rotor current over rated"] = (fit, unit) =>
            InUnit.Plain(Locked(fit).Current / fit.Nameplate.Current, unit),
        ["fitted breakdown slip"] = (fit, unit) => InUnit.Plain(
            CircuitSolver.Breakdown(fit.Circuit, fit.Circuit.RatedFrequency, PhaseVoltage(fit)).Slip, unit),
    };

    public string Area => "motor";

    public IReadOnlyCollection<string> Quantities => All.Keys;

    public Evaluation Evaluate(Check check, Handbook handbook)
    {
        var row = handbook.MotorCircuits[check.Subject];
        var inputs = check.Inputs;
        var plate = new Nameplate(
            Power.FromWatts(inputs.Number("shaft_power_w")), row.LineVoltage, Connection.Star, row.Frequency, row.Poles,
            RotationalSpeed.FromRevolutionsPerMinute(inputs.Number("speed_r_per_min")),
            ElectricCurrent.FromAmperes(inputs.Number("current_a")), inputs.Number("power_factor"))
        { BreakdownTorque = inputs.Number("breakdown_over_rated") };
        var settings = new FitSettings(
            LossShares.WindingsOnly, 0.5, 0, Temperature.FromDegreesCelsius(20), inputs.Number("breakdown_over_rated"));
        var fit = NameplateFit.Of(plate, settings);
        if (fit.Verdict.Length > 0) throw new InvalidOperationException(fit.Verdict);
        return new(All[check.Quantity](fit, check.Unit), check.Unit, "nameplate fit, X1 = X2, winding losses only");
    }

    private static OperatingPoint Locked(NameplateFit fit) =>
        CircuitSolver.SolveAtRatedSupply(fit.Circuit, RotationalSpeed.Zero);

    private static ElectricPotential PhaseVoltage(NameplateFit fit) => fit.Circuit.RatedLineVoltage / Math.Sqrt(3);
}
