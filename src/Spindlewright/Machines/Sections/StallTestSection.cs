using Spindlewright.Foundations.Reading;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[stall_test]</c>: arm and scale of a torque test. Never with a hand.</summary>
internal static class StallTestSection
{
    private static readonly KeySpec<Length> Arm = Key.Optional(
        "arm", Forms.Quantity(QuantityKinds.Length), "From the axis to the point where the arm rests on the scale", "\"300 mm\"", "not determined: the sheet gives the least length that scale and arm ask for");

    private static readonly KeySpec<Force> Scale = Key.Optional("scale", Forms.Quantity(QuantityKinds.Force), "Most that the scale reads", "\"500 N\"", "not determined");

    private static readonly KeySpec<Force> ArmBears = Key.Optional("arm_bears", Forms.Quantity(QuantityKinds.Force), "Most that the arm bears where it rests on the scale", "\"800 N\"", "not determined");

    internal static SectionSpec Spec { get; } = new(
        "stall_test", "Arm and scale of a torque test, never with a hand; a sheet is refused where either is too small for the bound", [Arm, Scale, ArmBears]);

    internal static StallTest? Read(Section root) => root.Only(Spec) is not { } section
        ? new(null, null, null)
        : section.Make(() => new StallTest(section.Get(Arm), section.Get(Scale), section.Get(ArmBears)));
}
