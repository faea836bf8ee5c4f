using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Machines.Text;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[contact]</c>: what turns, what may be caught, and how it stops.</summary>
internal static class ContactSection
{
    private static readonly ContactInputs Usual = ContactInputs.Usual(Power.FromKilowatts(0.75), 4);

    private static readonly KeySpec<MassMomentOfInertia> SpindleInertia = Own(
        "spindle_inertia", QuantityKinds.MomentOfInertia, "Moment of inertia of spindle, chuck and spindle pulley", "\"0.004 kg m2\"",
        Usual.SpindleInertia, "a small aluminium pulley; a large one of cast iron on the hazard side");

    private static readonly KeySpec<MassMomentOfInertia> MotorInertia = Key.Optional(
        "motor_inertia", Forms.Quantity(QuantityKinds.MomentOfInertia), "Moment of inertia of rotor and motor pulley", "\"0.003 kg m2\"",
        "a catalogue rotor scaled by rated power and poles, and twice as much on the hazard side");

    private static readonly KeySpec<Length> ToolShank = Own(
        "tool_shank", QuantityKinds.Length, "Diameter of the tool's shank", "\"10 mm\"", Usual.ToolShank, "a common chuck's largest; a small drill on the hazard side");

    private static readonly KeySpec<Length> Roll = Own(
        "roll", QuantityKinds.Length, "Diameter of a roll of cloth or glove wound on the tool", "\"40 mm\"", Usual.Roll, "some turns of a sleeve on a shank");

    private static readonly KeySpec<Length> Layer = Own(
        "layer", QuantityKinds.Length, "Thickness of a layer that is wound on", "\"1 mm\"", Usual.Layer, "thin cloth; a work glove on the hazard side");

    private static readonly KeySpec<double> WantedTurns = Own(
        "wanted_turns", QuantityKinds.Number, "Turns after which the spindle is wanted to stand still, from the stop command", "3",
        Sided.Same(Usual.WantedTurns), "what is asked of a stop; no published figure was found");

    private static readonly KeySpec<Length> ChuckLength = Key.Optional(
        "chuck_length", Forms.Quantity(QuantityKinds.Length), "Length of chuck and drill that a guard is to cover", "\"180 mm\"", "not determined: no length of a guard can be given");

    private static readonly KeySpec<Duration> StopTime = Key.Optional(
        "stop_time", Forms.Quantity(QuantityKinds.Duration), "Measured time from the stop command to standstill, from the fastest speed in use", "\"2.5 s\"",
        "not determined: contact while running down is not compared");

    internal static SectionSpec Spec { get; } = new(
        "contact", "What turns, what may be caught, and how it stops",
        [SpindleInertia, MotorInertia, ToolShank, Roll, Layer, WantedTurns, ChuckLength, StopTime]);

    internal static ContactInputs? Read(Section root, MachineMotor motor, DefaultsTaken defaults)
    {
        var section = root.Only(Spec);
        var inertia = MotorBuild.UsualInertia(motor.RatedPower, motor.Circuit.Hazard.Poles);
        if (section?.Has(MotorInertia) != true) defaults.Add(InertiaDefault(inertia));
        ContactInputs Make() => new()
        {
            SpindleInertia = section.PairOf(SpindleInertia, Spec, defaults),
            MotorInertia = section?.Get(MotorInertia) is { } given ? Sided.Same(given) : inertia,
            ToolShank = section.PairOf(ToolShank, Spec, defaults),
            Roll = section.PairOf(Roll, Spec, defaults),
            Layer = section.PairOf(Layer, Spec, defaults),
            WantedTurns = section.PairOf(WantedTurns, Spec, defaults).Hazard,
            ChuckLength = section?.Get(ChuckLength),
            StopTime = section?.Get(StopTime),
            ClampFriction = Usual.ClampFriction,
        };
        var inputs = section is null ? Make() : section.Make(Make);
        if (inputs is null) return null;
        var (loose, test) = (LooseWorkSection.Read(root, defaults), StallTestSection.Read(root));
        return loose is null || test is null ? null : inputs with
        {
            Plate = loose.Plate,
            ClampDistance = loose.ClampDistance,
            ClampFriction = loose.Friction,
            StallTest = test,
            SpeedLimits = [.. root.Each(SpeedLimitSection.Spec).Select(SpeedLimitSection.Read).OfType<SpeedLimit>()],
            Controls = ControlsSection.Read(root),
        };
    }

    private static AppliedDefault InertiaDefault(Sided<MassMomentOfInertia> pair) => new(
        "contact.motor_inertia", MotorInertia.Meaning, MotorInertia.Form.Write(pair.Capability), MotorInertia.Form.Write(pair.Hazard),
        MotorBuild.InertiaCitation.Provenance, MotorBuild.InertiaCitation.Source, MotorBuild.InertiaCitation.Note);

    private static KeySpec<T> Own<T>(string name, QuantityKind<T> kind, string meaning, string example, Sided<T> pair, string note)
        where T : struct =>
        Key.WithDefault(name, Forms.Quantity(kind), meaning, example, new(pair, Provenance.OwnChoice, "this-project", note));
}
