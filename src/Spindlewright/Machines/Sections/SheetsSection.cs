using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[sheets]</c>: what is printed for the workshop wall.</summary>
internal static class SheetsSection
{
    private static readonly KeySpec<Length> PlateWidth = Key.Optional(
        "plate_width", Forms.Quantity(QuantityKinds.Length), "Width of the speed plate that is stuck on the machine", "\"140 mm\"", "140 mm") with
    { Quantity = "width of the plate" };

    private static readonly KeySpec<Length> PlateHeight = Key.Optional(
        "plate_height", Forms.Quantity(QuantityKinds.Length), "Height of that plate", "\"90 mm\"", "90 mm") with
    { Quantity = "height of the plate" };

    private static readonly KeySpec<IReadOnlyList<string>> Materials = Key.Optional(
        "materials", Forms.List(Forms.Text(60), 1, 8), "Materials that get a wall chart and a row of the card", "[\"mild-steel\", \"grey-iron\"]",
        "those of [[work]] and [[experience]]");

    private static readonly KeySpec<IReadOnlyList<string>> Threads = Key.Optional(
        "threads", Forms.List(Forms.Text(30), 1, 16), "Threads of the drill-and-tap table", "[\"M6\", \"M8\", \"1/4-20 UNC\"]",
        "coarse metric ones up to M12 and those of [[work]]");

    private static readonly KeySpec<IReadOnlyList<Length>> Drills = Key.Optional(
        "drills", Forms.List(Forms.Quantity(QuantityKinds.Length), 1, 9), "Drill diameters of the card", "[\"5 mm\", \"10 mm\", \"16 mm\"]",
        "usual ones from 3 to 20 mm") with
    { Quantity = "drill" };

    internal static SectionSpec Spec { get; } = new(
        "sheets", "What is printed for the workshop wall", [PlateWidth, PlateHeight, Materials, Threads, Drills]);

    internal static SheetWishes Read(Section? section, IReadOnlyCollection<string> materials, Handbook handbook)
    {
        if (section is null) return SheetWishes.Usual;
        foreach (var id in (section.Get(Materials) ?? []).Where(id => !materials.Contains(id)))
            section.Fault(Materials, MaterialNames.Unknown(id, materials), string.Join(", ", materials));
        foreach (var name in (section.Get(Threads) ?? []).Where(name => !handbook.Threads.Keys.Contains(name)))
            section.Fault(Threads, new UnknownRowException("thread", name, [.. handbook.Threads.Keys]).Message, string.Join(", ", handbook.Threads.Keys));
        var usual = SheetWishes.Usual;
        return section.Make(() => new SheetWishes(
            section.Get(PlateWidth) ?? usual.PlateWidth, section.Get(PlateHeight) ?? usual.PlateHeight,
            section.Get(Materials) ?? [], section.Get(Threads) ?? [], section.Get(Drills) ?? [])) ?? usual;
    }
}
