using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Hazards;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>What the section of loose work comes to.</summary>
internal sealed record LooseWorkRead(LoosePlate? Plate, Length? ClampDistance, Sided<double> Friction);

/// <summary>The section <c>[loose_work]</c>: a workpiece that may be taken round, and how it is held.</summary>
internal static class LooseWorkSection
{
    private static readonly KeySpec<Length> LengthKey = Size("length", "Long side of the plate, or of vice and work together", "\"200 mm\"");
    private static readonly KeySpec<Length> Width = Size("width", "Its other side", "\"50 mm\"");
    private static readonly KeySpec<Length> Thickness = Size("thickness", "Its thickness", "\"6 mm\"");
    private static readonly KeySpec<Length> Offset = Size("offset", "From the hole's centre to the nearer short edge", "\"20 mm\"");

    private static readonly KeySpec<double> Density = Key.WithDefault(
        "density", Forms.Quantity(QuantityKinds.Number), "Density in kg/m³", "7850",
        new Sourced<Sided<double>>(Sided.Same(7850.0), Provenance.OwnChoice, "this-project", "steel"));

    private static readonly KeySpec<Length> ClampDistance = Key.Optional(
        "clamp_distance", Forms.Quantity(QuantityKinds.Length), "Mean distance of the clamps, or of the stop pin, from the spindle's axis", "\"150 mm\"",
        "not compared: forces are given for several distances");

    private static readonly KeySpec<Ratio> Friction = Key.WithDefault(
        "friction", Forms.Quantity(QuantityKinds.Ratio), "Friction between work and table that a clamp can count on", "\"15 %\"",
        new(new(Ratio.FromPercent(20), Ratio.FromPercent(10)), Provenance.OwnChoice, "this-project", "dry; with oil and chips on the hazard side")) with
    { Quantity = "clamp friction" };

    internal static SectionSpec Spec { get; } = new(
        "loose_work", "A workpiece that may be taken round, and how it is held; without its four sizes that mechanism is not determined",
        [LengthKey, Width, Thickness, Offset, Density, ClampDistance, Friction]);

    internal static LooseWorkRead? Read(Section root, DefaultsTaken defaults)
    {
        var section = root.Only(Spec);
        LooseWorkRead Make()
        {
            var friction = section.PairOf(Friction, Spec, defaults).Map(ratio => ratio.DecimalFractions);
            var sizes = new[] { LengthKey, Width, Thickness, Offset }.Select(key => section?.Get(key)).ToArray();
            return new(
                sizes.All(size => size is not null)
                    ? new(sizes[0]!.Value, sizes[1]!.Value, sizes[2]!.Value, sizes[3]!.Value, section.PairOf(Density, Spec, defaults).Hazard)
                    : null,
                section?.Get(ClampDistance), friction);
        }

        if (section is null) return Make();
        KeySpec<Length>[] needed = [LengthKey, Width, Thickness, Offset];
        var missing = needed.Where(key => !section.Has(key)).Select(key => key.Name).ToList();
        if (missing.Count is > 0 and < 4)
            section.Fault(null, $"{string.Join(", ", missing)} left out", "length, width, thickness and offset together, or none of them");
        return section.Make(Make);
    }

    private static KeySpec<Length> Size(string name, string meaning, string example) =>
        Key.Optional(name, Forms.Quantity(QuantityKinds.Length), meaning, example, "not determined");
}
