using Spindlewright.Cutting;
using Spindlewright.Foundations.Reading;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>A section <c>[[experience]]</c>: what the owner found to work.</summary>
internal static class ExperienceSection
{
    private static readonly KeySpec<string> Material = Key.Required(
        "material", Forms.Text(60), "Short name of a material", "\"grey-iron\"");

    private static readonly KeySpec<Length> Diameter = Key.Required(
        "diameter", Forms.Quantity(QuantityKinds.Length), "Drill diameter", "\"10 mm\"") with
    { Quantity = "drill diameter" };

    private static readonly KeySpec<RotationalSpeed> Speed = Key.Required(
        "speed", Forms.Quantity(QuantityKinds.RotationalSpeed), "Spindle speed that worked", "\"725 r/min\"") with
    { Quantity = "spindle speed" };

    private static readonly KeySpec<string> Note = Key.Optional("note", Forms.Text(200), "Your words on it", "\"cuts quieter\"");

    internal static SectionSpec Spec { get; } = new(
        "experience", "What you found to work: your line is drawn beside the handbook's", [Material, Diameter, Speed, Note])
    { Repeats = true };

    internal static Experience? Read(Section section, IReadOnlyCollection<string> materials)
    {
        if (section.Get(Material) is not { } id) return null;
        if (!materials.Contains(id))
        {
            section.Fault(Material, MaterialNames.Unknown(id, materials), string.Join(", ", materials));
            return null;
        }
        return section.Make(() => new Experience(
            id, section.Get(Diameter)!.Value, section.Get(Speed)!.Value, section.Get(Note) ?? ""));
    }
}
