using System.Numerics;
using Spindlewright.Foundations.Tables;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>A published circuit, solved in the form in which its source solved it.</summary>
/// <remarks>
/// The library solves the T circuit exactly. Some books leave the shunt branch out or move it to the terminals; both
/// are repeated here and nowhere else, by the same solver with a shunt branch so large that it carries nothing. One
/// source lays the core branch before the stator leakage: an exact circuit of another form, which the solver takes
/// after the leakage has been moved behind the gap.
/// </remarks>
internal sealed class PublishedCircuit
{
    internal const string Exact = "exact circuit";
    internal const string NoShunt = "no shunt branch";
    internal const string ShuntAtTerminals = "shunt branch at the terminals";
    internal const string CoreFirst = "core branch before the stator leakage";

    // Far below the printed digits, yet within what a circuit accepts.
    private const double NoCurrentOhm = 1e12;
    private const double NoResistanceOhm = 1e-12;

    private readonly MotorCircuitRow row;
    private readonly string form;
    private readonly bool otherLossIsInput;

    private PublishedCircuit(MotorCircuitRow row, string form, CheckInputs inputs)
    {
        (this.row, this.form) = (row, form);
        otherLossIsInput = inputs.Has("other_loss") && inputs.Word("other_loss") == "added to the input power";
        var shunt = row.Xm is { } xm && form is (Exact or CoreFirst) ? xm : ElectricResistance.FromOhms(NoCurrentOhm);
        var windings = Circuit(
            row, shunt, form is Exact or CoreFirst ? row.Rfe : null, inputs.NumberOrNull("stator_resistance_ohm"));
        Windings = form == CoreFirst ? LeakageBehindGap(windings) : windings;
    }

    /// <summary>True where the source gives a shunt branch.</summary>
    internal bool HasShunt => row.Xm is not null;

    /// <summary>The star-equivalent circuit without friction, windage and stray-load loss.</summary>
    internal EquivalentCircuit Windings { get; }

    internal Frequency RatedFrequency => Windings.RatedFrequency;

    internal ElectricPotential RatedPhaseVoltage => Windings.RatedLineVoltage / Math.Sqrt(3);

    /// <summary>Finds the circuit of a check.</summary>
    /// <param name="check">Its subject names the circuit.</param>
    /// <param name="handbook">Tables.</param>
    /// <param name="form">One of the four forms.</param>
    /// <exception cref="ArgumentException">No such form, or the source gives no shunt branch for it.</exception>
    internal static PublishedCircuit Of(Check check, Handbook handbook, string form)
    {
        if (form is not (Exact or NoShunt or ShuntAtTerminals or CoreFirst))
            throw new ArgumentException($"'{form}' is no form of the circuit; accepted: {Exact}, {NoShunt}, {ShuntAtTerminals}, {CoreFirst}.");
        var row = handbook.MotorCircuits[check.Subject];
        if (row.Xm is null && form != NoShunt)
            throw new ArgumentException($"{row.Id} has no shunt branch, so its only form is '{NoShunt}'.");
        return new(row, form, check.Inputs);
    }

    /// <summary>Solves the circuit.</summary>
    /// <param name="frequency">Supply frequency.</param>
    /// <param name="phaseVoltage">Rms a phase of the star.</param>
    /// <param name="slip">Slip.</param>
    /// <returns>The state as the source counts it.</returns>
    internal OperatingPoint Solve(Frequency frequency, ElectricPotential phaseVoltage, double slip)
    {
        var speed = Windings.SynchronousSpeedAt(frequency) * (1 - slip);
        var point = CircuitSolver.Solve(WithLossesAt(speed), frequency, phaseVoltage, slip);
        if (form == ShuntAtTerminals) point = WithShuntAtTerminals(point);
        return otherLossIsInput ? point with { Input = point.Input + (row.OtherLoss ?? Power.Zero) } : point;
    }

    /// <summary>
    /// The circuit with its losses. A source without a reference speed takes its losses as constant: they then stand
    /// at the speed that is solved for, and at standstill there are none.
    /// </summary>
    internal EquivalentCircuit WithLossesAt(RotationalSpeed speed)
    {
        var reference = row.LossSpeed ?? speed;
        if (reference <= RotationalSpeed.Zero) return Windings;
        var rotational = (row.FrictionWindage ?? Power.Zero)
            + (otherLossIsInput ? Power.Zero : row.OtherLoss ?? Power.Zero);
        return Windings with
        {
            Rotational = new(rotational, reference, 2),
            Stray = row.StrayLoad is { } stray && row.StrayLoadCurrent is { } current
                ? new(stray, current, reference)
                : StrayLoadLoss.None,
        };
    }

    private static EquivalentCircuit Circuit(
        MotorCircuitRow row, ElectricResistance shunt, ElectricResistance? core, double? r1Ohm)
    {
        var r1 = r1Ohm is { } given ? ElectricResistance.FromOhms(Math.Max(given, NoResistanceOhm)) : row.R1;
        // The phase values of a delta are those of the same windings in star at √3 times the voltage.
        var circuit = new EquivalentCircuit(
            r1, row.X1, row.R2, row.X2, shunt, row.InDelta ? row.LineVoltage * Math.Sqrt(3) : row.LineVoltage,
            row.Frequency, row.Poles)
        { CoreLossResistance = core };
        return row.InDelta ? circuit.Rejoined(Connection.Star, Connection.Delta) : circuit;
    }

    /// <summary>
    /// The same two-port with all leakage behind the magnetising branch, c = (X1 + Xm)/Xm: X1 → 0, Xm → X1 + Xm,
    /// X2 → c X1 + c² X2, R2 → c² R2. A core branch across the new magnetising branch lies before the stator leakage.
    /// </summary>
    private static EquivalentCircuit LeakageBehindGap(EquivalentCircuit circuit)
    {
        var c = (circuit.X1 + circuit.Xm) / circuit.Xm;
        return new(
            circuit.R1, ElectricResistance.Zero, circuit.R2 * (c * c), circuit.X1 * c + circuit.X2 * (c * c),
            circuit.X1 + circuit.Xm, circuit.RatedLineVoltage, circuit.RatedFrequency, circuit.Poles)
        { CoreLossResistance = circuit.CoreLossResistance };
    }

    /// <summary>Adds the current of the shunt branch at the terminals to that of the series leg.</summary>
    private OperatingPoint WithShuntAtTerminals(OperatingPoint series)
    {
        if (row.InDelta)
            throw new ArgumentException($"'{ShuntAtTerminals}' is written for star circuits; {row.Id} is a delta.");
        var (volts, a) = (series.SetPhaseVoltage.Volts, series.Frequency / row.Frequency);
        var conductance = row.Rfe is { } core ? 1 / core.Ohms : 0;
        var current = Complex.FromPolarCoordinates(series.Current.Amperes, -Math.Acos(series.PowerFactor))
            + volts * new Complex(conductance, -1 / (a * row.Xm!.Value.Ohms));
        return series with
        {
            Current = ElectricCurrent.FromAmperes(current.Magnitude),
            PowerFactor = current.Real / current.Magnitude,
            Input = Power.FromWatts(3 * volts * current.Real),
            CoreLoss = Power.FromWatts(3 * volts * volts * conductance),
        };
    }
}
