using Spindlewright.Cutting;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>A section <c>[[work]]</c>: one hole.</summary>
internal static class WorkSection
{
    private const double StandardPoint = 0.18;
    private const double SplitPoint = 0.03;

    private static readonly KeySpec<string> Name = Key.Required("name", Forms.Text(80), "What the owner calls the hole", "\"bracket in mild steel\"");

    private static readonly KeySpec<string> Material =
        Key.Required("material", Forms.Text(60), "Short name of a material of the handbook", "\"mild-steel\"");

    private static readonly KeySpec<Length> Diameter = Key.Required(
        "diameter", Forms.Quantity(QuantityKinds.Length), "Drill diameter", "\"13 mm\"") with
    { Quantity = "drill diameter" };

    private static readonly KeySpec<Length> Feed = Key.Required(
        "feed", Forms.Quantity(QuantityKinds.FeedPerRevolution), "Feed per revolution", "\"0.10 mm/rev\"") with
    { Quantity = "feed per revolution" };

    private static readonly KeySpec<RotationalSpeed> Speed = Key.Optional(
        "speed", Forms.Quantity(QuantityKinds.RotationalSpeed), "Spindle speed that the owner asks for", "\"300 r/min\"",
        "the middle of the handbook's cutting-speed range") with
    { Quantity = "wanted speed" };

    private static readonly KeySpec<double> Point = Key.Optional(
        "point", Forms.Choice(("standard", StandardPoint), ("split", SplitPoint)), "Point of the drill", "\"standard\"", "standard");

    private static readonly KeySpec<double> Wear = Key.WithDefault(
        "wear", Forms.Quantity(QuantityKinds.Number), "Wear factor: 1.0 sharp, 1.3 normal, 1.5 very dull or hard to machine", "1.3",
        new(Sided.Same(1.3), Provenance.FromMemory, "mh31-work-factors", "normal drilling")) with
    { Quantity = "wear factor" };

    internal static SectionSpec Spec { get; } =
        new("work", "One hole that the owner wants to drill", [Name, Material, Diameter, Feed, Speed, Point, Wear]) { Repeats = true };

    internal static WorkItem? Read(Section section, Handbook handbook)
    {
        if (section.Get(Material) is not { } id || MaterialOf(section, handbook, id) is not { } material) return null;
        return section.Make(() => new WorkItem(
            section.Get(Name)!, material, section.Get(Diameter)!.Value, section.Get(Feed)!.Value,
            new DrillCondition(section.Get(Point) ?? StandardPoint, section.Sided(Wear).Value.Capability), section.Get(Speed)));
    }

    private static CuttingMaterial? MaterialOf(Section section, Handbook handbook, string id)
    {
        if (!handbook.Materials.TryFind(id, out var row))
        {
            var nearest = NearestName.Of(id, handbook.Materials.Keys) is { } near ? $"; did you mean {near}?" : "";
            section.Fault(
                Material, $"the handbook has no such material{nearest}", string.Join(", ", handbook.Materials.Keys));
            return null;
        }

        return CuttingMaterial.Of(row, handbook);
    }
}
