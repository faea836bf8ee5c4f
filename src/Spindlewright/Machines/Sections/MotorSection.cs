using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines.Text;
using Spindlewright.Motors;
using Spindlewright.Motors.Fitting;
using Spindlewright.Motors.Plates;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[motor]</c>: a nameplate, or ratings and a measured circuit in <c>[motor.circuit]</c>.</summary>
internal static class MotorSection
{
    internal static readonly KeySpec<Connection> ConnectionKey = Key.Required(
        "connection", Forms.Choice(("delta", Connection.Delta), ("star", Connection.Star)),
        "How the windings are joined at the inverter", "\"delta\"") with
    { Quantity = "volts per hertz" };

    private static readonly KeySpec<Temperature> Cold = Key.WithDefault(
        "winding_cold", Forms.Quantity(QuantityKinds.Temperature), "Coldest winding to be expected", "\"20 °C\"",
        Defaults.Pair(Temperature.FromDegreesCelsius(20), Provenance.OwnChoice, "a workshop in the morning"));

    private static readonly KeySpec<Temperature> Hot = Key.WithDefault(
        "winding_hot", Forms.Quantity(QuantityKinds.Temperature), "Hottest winding to be expected", "\"120 °C\"",
        Defaults.Pair(Temperature.FromDegreesCelsius(120), Provenance.SecondHand, "40 °C and the 80 K rise of class B", "iec-60034-1"));

    private static readonly KeySpec<Temperature> AtRatedLoad = Key.WithDefault(
        "winding_at_rated_load", Forms.Quantity(QuantityKinds.Temperature), "Winding temperature at which the nameplate holds", "\"95 °C\"",
        Defaults.Pair(FitSettings.UsualTemperature, Provenance.FromMemory, "reference temperature of class B", "iec-60034-1"));

    private static readonly KeySpec<Ratio> CoreShare = Key.WithDefault(
        "core_loss_share", Forms.Quantity(QuantityKinds.Ratio), "Core loss over all losses at rated load", "\"20 %\"",
        Defaults.Shares(shares => shares.Core)) with
    { Quantity = "core share" };

    private static readonly KeySpec<Ratio> RotationalShare = Key.WithDefault(
        "friction_and_windage_share", Forms.Quantity(QuantityKinds.Ratio), "Friction and windage over all losses at rated load", "\"8 %\"",
        Defaults.Shares(shares => shares.Rotational)) with
    { Quantity = "friction and windage share" };

    private static readonly KeySpec<Ratio> StrayShare = Key.WithDefault(
        "stray_load_share", Forms.Quantity(QuantityKinds.Ratio), "Stray-load loss over all losses at rated load", "\"2 %\"",
        Defaults.Shares(shares => shares.Stray)) with
    { Quantity = "stray-load share" };

    private static readonly KeySpec<Ratio> LeakageSplit = Key.WithDefault(
        "stator_share_of_leakage", Forms.Quantity(QuantityKinds.Ratio), "X1 over X1 + X2", "\"50 %\"",
        Defaults.Pair(Ratio.FromPercent(50), Provenance.SecondHand, "design A", "ieee-112")) with
    { Quantity = "stator share of leakage" };

    private static readonly KeySpec<Ratio> Saturation = Key.WithDefault(
        "saturation", Forms.Quantity(QuantityKinds.Ratio), "Share of the magnetising current at rated flux that stands on the seventh power of flux", "\"25 %\"",
        new(FitSettings.UsualSaturation.Map(share => Ratio.FromDecimalFractions(share)), Provenance.OwnChoice, "this-project", "no-load current rises by 1.2 to 1.4 for 10 % more volts"));

    private static readonly CircuitKeys Circuit = new();

    internal static SectionSpec Spec { get; } = new(
        "motor", "The motor: its nameplate, or its ratings and a measured circuit",
        [
            .. PlateKeys.All, ConnectionKey, Cold, Hot, AtRatedLoad, CoreShare, RotationalShare, StrayShare, LeakageSplit,
            Saturation,
        ])
    { Required = true, Sections = [Circuit.Spec] };

    /// <summary>Marks as faulty what the values alone show: figures that are needed together.</summary>
    internal static void Check(Section section) => PlateKeys.Check(section, section.Only(Circuit.Spec) is not null);

    internal static MachineMotor? Read(Section section, Handbook handbook, DefaultsTaken defaults) => section.Make(() =>
    {
        var connection = section.Get(ConnectionKey)!.Value;
        var (cold, hot) = (section.Sided(Cold).Value.Capability, section.Sided(Hot).Value.Capability);
        var winding = (cold, Guard.Within(hot, cold, Temperature.FromDegreesCelsius(250), "motor", "winding hot", "not below winding_cold"));
        return section.Only(Circuit.Spec) is { } circuit
            ? Measured(section, circuit, connection, winding)
            : Fitted(section, handbook, defaults, connection, winding);
    });

    private static MachineMotor Measured(
        Section section, Section circuit, Connection connection, (Temperature Cold, Temperature Hot) winding)
    {
        var read = Circuit.Read(
            circuit, PlateKeys.Voltage(section, connection), section.Get(PlateKeys.RatedFrequency)!.Value, section.Get(PlateKeys.Poles)!.Value,
            section.Sided(Saturation).Value);
        var speed = section.Get(PlateKeys.RatedSpeed)!.Value;
        var synchronous = read.Hazard.SynchronousSpeed;
        if (speed >= synchronous)
            throw new PartException(
                "motor", "rated speed", QuantityWriter.Write(speed, QuantityKinds.RotationalSpeed),
                $"below {QuantityWriter.Write(synchronous, QuantityKinds.RotationalSpeed)}", "synchronous speed, 120 f / poles");
        var atRated = CircuitSolver.SolveAtRatedSupply(read.Hazard, speed);
        return new()
        {
            Circuit = read,
            Connection = connection,
            RatedPower = section.Get(PlateKeys.RatedPower)!.Value,
            RatedSpeed = speed,
            RatedCurrent = section.Get(connection == Connection.Delta ? PlateKeys.CurrentDelta : PlateKeys.CurrentStar) ?? atRated.Current,
            Winding = winding,
        };
    }

    private static MachineMotor Fitted(
        Section section, Handbook handbook, DefaultsTaken defaults, Connection connection,
        (Temperature Cold, Temperature Hot) winding)
    {
        var fitted = PlateFit.Of(
            PlateKeys.Read(section, connection), handbook, (side, breakdown) => Settings(section, side, breakdown));
        var plate = fitted.Completion.Nameplates.Capability;
        foreach (var each in fitted.Completion.Defaults)
            defaults.Add(new($"motor.{each.Figure}", each.Meaning, each.Capability, each.Hazard, each.Provenance, each.Source, each.Reason));
        if (!section.Has(PlateKeys.Breakdown)) defaults.Add(BreakdownDefault(fitted.BreakdownDefault));
        return MachineMotor.Of(fitted, connection, winding);
    }

    private static AppliedDefault BreakdownDefault(Sided<Sourced<double>> pair) => new(
        "motor.breakdown_torque", "breakdown torque over rated torque",
        QuantityWriter.Number(pair.Capability.Value), QuantityWriter.Number(pair.Hazard.Value),
        pair.Hazard.Provenance, pair.Capability.Source,
        $"{pair.Capability.Provenance.InWords()}: {pair.Capability.Note}; {pair.Hazard.Provenance.InWords()}: {pair.Hazard.Note}");

    private static FitSettings Settings(Section section, Side side, double breakdown) => new(
        new LossShares(
            section.Sided(CoreShare).Value.On(side).DecimalFractions,
            section.Sided(RotationalShare).Value.On(side).DecimalFractions,
            section.Sided(StrayShare).Value.On(side).DecimalFractions),
        section.Sided(LeakageSplit).Value.On(side).DecimalFractions, section.Sided(Saturation).Value.On(side).DecimalFractions,
        section.Sided(AtRatedLoad).Value.On(side), breakdown);

    /// <summary>Shapes of the section's defaults.</summary>
    private static class Defaults
    {
        internal static Sourced<Sided<T>> Pair<T>(T value, Provenance provenance, string note, string source = "this-project") =>
            new(Sided.Same(value), provenance, source, note);

        internal static Sourced<Sided<Ratio>> Shares(Func<LossShares, double> share) => new(
            LossShares.Default.Map(shares => Ratio.FromDecimalFractions(share(shares))), Provenance.OwnChoice, "this-project",
            "small enclosed motors; a larger share leaves less stator resistance");
    }
}
