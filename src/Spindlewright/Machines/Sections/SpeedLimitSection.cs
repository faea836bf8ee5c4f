using Spindlewright.Foundations.Reading;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>A section <c>[[speed_limit]]</c>: a highest speed that something on the machine is made for.</summary>
internal static class SpeedLimitSection
{
    private static readonly KeySpec<string> Name = Key.Required("name", Forms.Text(60), "What it is", "\"hole saw 60 mm\"");

    private static readonly KeySpec<RotationalSpeed> Speed = Key.Required(
        "speed", Forms.Quantity(QuantityKinds.RotationalSpeed), "Its highest speed", "\"500 r/min\"");

    private static readonly KeySpec<bool> WithMotor = Key.Optional(
        "turns_with", Forms.Choice(("spindle", false), ("motor", true)), "What it turns with", "\"spindle\"", "spindle");

    private static readonly KeySpec<bool> AtTimes = Key.Optional(
        "fitted", Forms.Choice(("always", false), ("at times", true)), "Whether it always turns, or is a cutter or mounted work fitted at times", "\"at times\"", "always");

    internal static SectionSpec Spec { get; } = new(
        "speed_limit", "A highest speed of a bearing, pulley, cutter or mounted work", [Name, Speed, WithMotor, AtTimes])
    { Repeats = true };

    internal static SpeedLimit? Read(Section section) => section.Make(() =>
        new SpeedLimit(section.Get(Name)!, section.Get(Speed)!.Value, section.Get(WithMotor) ?? false, section.Get(AtTimes) ?? false));
}
