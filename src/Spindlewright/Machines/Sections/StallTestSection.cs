using Spindlewright.Foundations.Reading;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[stall_test]</c>: arm and scale of a torque test. Never with a hand.</summary>
internal static class StallTestSection
{
    private static readonly KeySpec<Length> Arm = Key.Optional(
        "arm", Forms.Quantity(QuantityKinds.Length), "From the axis to the point where the arm rests on the scale", "\"300 mm\"", "not determined: the sheet gives the scale that a length asks for");

    private static readonly KeySpec<Force> Scale = Key.Optional("scale", Forms.Quantity(QuantityKinds.Force), "Most that the scale reads", "\"500 N\"", "not determined");

    private static readonly KeySpec<Force> ArmBears = Key.Optional("arm_bears", Forms.Quantity(QuantityKinds.Force), "Most that the arm bears where it rests on the scale", "\"800 N\"", "not determined");

    internal static SectionSpec Spec { get; } = new(
        "stall_test", "Arm and scale of a torque test, never with a hand; a sheet is refused where either is too small for the bound", [Arm, Scale, ArmBears]);

    internal static StallTest? Read(Section root) => root.Only(Spec) is not { } section
        ? new(null, null, null)
        : section.Make(() => new StallTest(section.Get(Arm), section.Get(Scale), section.Get(ArmBears)));
}

/// <summary>A section <c>[[speed_limit]]</c>: a highest speed that something on the machine is made for.</summary>
internal static class SpeedLimitSection
{
    private static readonly KeySpec<string> Name = Key.Required("name", Forms.Text(60), "What it is", "\"hole saw 60 mm\"");

    private static readonly KeySpec<RotationalSpeed> Speed = Key.Required(
        "speed", Forms.Quantity(QuantityKinds.RotationalSpeed), "Its highest speed", "\"500 r/min\"");

    private static readonly KeySpec<bool> WithMotor = Key.Optional(
        "turns_with", Forms.Choice(("spindle", false), ("motor", true)), "What it turns with", "\"spindle\"", "spindle");

    internal static SectionSpec Spec { get; } = new(
        "speed_limit", "A highest speed of a bearing, pulley, cutter or mounted work", [Name, Speed, WithMotor])
    { Repeats = true };

    internal static SpeedLimit? Read(Section section) => section.Make(() =>
        new SpeedLimit(section.Get(Name)!, section.Get(Speed)!.Value, section.Get(WithMotor) ?? false));
}
