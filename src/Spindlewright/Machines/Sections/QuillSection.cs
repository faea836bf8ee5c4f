using Spindlewright.Cutting;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[quill]</c>: the lever that pushes the drill, the arm at it and what the column bears.</summary>
internal static class QuillSection
{
    private static readonly QuillFeed Usual = QuillFeed.Usual;

    private static readonly KeySpec<Length> LeverRadius = Key.WithDefault(
        "lever_radius", Forms.Quantity(QuantityKinds.Length), "From the axis of the pinion to the hand on the lever", "\"200 mm\"",
        Own(Usual.Lever.LeverRadius, "a common bench drill; measure it"));

    private static readonly KeySpec<Length> PinionRadius = Key.WithDefault(
        "pinion_radius", Forms.Quantity(QuantityKinds.Length), "Pitch radius of the pinion: travel of the quill in one turn of the lever over 2 pi", "\"15 mm\"",
        Own(Usual.Lever.PinionRadius, "94 mm of travel a turn; measure it"));

    private static readonly KeySpec<Force> ArmForce = Key.WithDefault(
        "arm_force", Forms.Quantity(QuantityKinds.Force), "Pull at the lever that an arm keeps up for a hole", "\"120 N\"",
        Own(Usual.Lever.ArmForce, "a hanging weight of 12 kg"));

    private static readonly KeySpec<Force> GreatestArmForce = Key.WithDefault(
        "greatest_arm_force", Forms.Quantity(QuantityKinds.Force), "Pull at the lever for a moment", "\"300 N\"",
        Own(Usual.GreatestArmForce, "for a moment, with body weight behind it"));

    private static readonly KeySpec<Ratio> Efficiency = Key.WithDefault(
        "efficiency", Forms.Quantity(QuantityKinds.Ratio), "Thrust at the drill over the thrust without friction and return spring", "\"90 %\"",
        Own(Ratio.FromPercent(100 * Usual.Lever.Efficiency), "a return spring takes some of the pull"));

    private static readonly KeySpec<Force> GreatestThrust = Key.Optional(
        "greatest_thrust", Forms.Quantity(QuantityKinds.Force), "Thrust at which column, head or table give too much", "\"3000 N\"", "not compared");

    internal static SectionSpec Spec { get; } = new(
        "quill", "The lever that pushes the drill, the arm at it and what the column bears",
        [LeverRadius, PinionRadius, ArmForce, GreatestArmForce, Efficiency, GreatestThrust]);

    internal static QuillFeed? Read(Section? section, DefaultsTaken defaults)
    {
        if (section is null)
        {
            foreach (var each in DefaultsOfAll()) defaults.Add(each);
            return Usual;
        }
        return section.Make(() => new QuillFeed(
            new(
                section.Sided(LeverRadius).Value.Capability, section.Sided(PinionRadius).Value.Capability,
                section.Sided(ArmForce).Value.Capability, section.Sided(Efficiency).Value.Capability.DecimalFractions),
            section.Sided(GreatestArmForce).Value.Capability, section.Get(GreatestThrust)));
    }

    private static IEnumerable<AppliedDefault> DefaultsOfAll() => Spec.Keys.Where(key => key.DefaultText is not null).Select(key =>
        new AppliedDefault(
            $"quill.{key.Name}", key.Meaning, key.DefaultText!.Capability, key.DefaultText.Hazard, key.DefaultText.Provenance,
            key.DefaultText.Source, key.DefaultText.Note));

    private static Sourced<Sided<T>> Own<T>(T value, string note) =>
        new(Foundations.Sided.Same(value), Provenance.OwnChoice, "this-project", note);
}
