using Spindlewright.Cutting;
using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>A section <c>[[work]]</c>: one operation.</summary>
internal static class WorkSection
{
    private const double StandardPoint = 0.18;
    private const double SplitPoint = 0.03;

    private static readonly KeySpec<string> Name = Key.Required("name", Forms.Text(80), "What the owner calls the hole", "\"bracket in mild steel\"");

    private static readonly KeySpec<OperationKind> Kind = Key.Optional(
        "operation", Forms.Choice([.. OperationWords.All.Select(each => (each.Words, each.Kind))]), "What is done", "\"drilling\"", "drilling");

    private static readonly KeySpec<string> Material =
        Key.Required("material", Forms.Text(60), "Short name of a material of the handbook, or of a [[material]]", "\"mild-steel\"");

    private static readonly KeySpec<double> Hardness = Key.Optional(
        "hardness", Forms.Quantity(QuantityKinds.Hardness), "Brinell hardness of the work, checked against the material's span", "\"150 HB\"", "not checked");

    private static readonly KeySpec<Length> Diameter = Key.Required(
        "diameter", Forms.Quantity(QuantityKinds.Length), "Diameter of drill, reamer or cutter; of a thread its major diameter", "\"13 mm\"") with
    { Quantity = "drill diameter" };

    private static readonly KeySpec<Length> Hole = Key.Optional(
        "hole", Forms.Quantity(QuantityKinds.Length), "Diameter of the pilot or of the hole that is there already", "\"6 mm\"", "none") with
    { Quantity = "existing hole" };

    private static readonly KeySpec<Length> Depth = Key.Optional(
        "depth", Forms.Quantity(QuantityKinds.Length), "Depth of the cut", "\"20 mm\"", "two diameters");

    private static readonly KeySpec<string> Thread = Key.Optional(
        "thread", Forms.Text(20), "Thread to tap, in place of hole and feed", "\"M8\"");

    private static readonly KeySpec<Length> Feed = Key.Optional(
        "feed", Forms.Quantity(QuantityKinds.FeedPerRevolution), "Feed per revolution; of a tap its pitch", "\"0.10 mm/rev\"", "the handbook's for the operation and diameter") with
    { Quantity = "feed per revolution" };

    private static readonly KeySpec<RotationalSpeed> Speed = Key.Optional(
        "speed", Forms.Quantity(QuantityKinds.RotationalSpeed), "Spindle speed that the owner asks for", "\"300 r/min\"",
        "the middle of the handbook's cutting-speed range") with
    { Quantity = "wanted speed" };

    private static readonly KeySpec<double> Point = Key.Optional(
        "point", Forms.Choice(("standard", StandardPoint), ("split", SplitPoint)), "Point of the drill", "\"standard\"", "standard");

    private static readonly KeySpec<string> Tool = Key.Optional(
        "tool", Forms.Text(20), "What the tool is made of: hss, cobalt, carbide or carbon-steel", "\"hss\"", "hss");

    private static readonly KeySpec<Cooling> Coolant = Key.Optional(
        "cooling", Forms.Choice(("as printed", Cooling.AsPrinted), ("by hand", Cooling.ByHand)), "How the tool is cooled", "\"by hand\"", "as printed in the tables");

    private static readonly KeySpec<double> Wear = Key.WithDefault(
        "wear", Forms.Quantity(QuantityKinds.Number), "Wear factor: 1.0 sharp, 1.3 normal, 1.5 very dull or hard to machine", "1.3",
        new(Sided.Same(1.3), Provenance.FromMemory, "mh31-work-factors", "normal drilling")) with
    { Quantity = "wear factor" };

    private static readonly KeySpec<int> Holes = Key.Optional(
        "holes", Forms.WholeNumber(1, 100_000), "How many in a row", "10", "10") with { Quantity = "number of holes" };

    private static readonly KeySpec<Duration> Pause = Key.Optional(
        "pause", Forms.Quantity(QuantityKinds.Duration), "Time between two holes, the motor running unloaded", "\"30 s\"", "30 s");

    internal static SectionSpec Spec { get; } = new(
        "work", "One operation that the owner wants to do",
        [Name, Kind, Material, Hardness, Diameter, Hole, Depth, Thread, Feed, Speed, Point, Tool, Coolant, Wear, Holes, Pause])
    { Repeats = true };

    internal static WorkItem? Read(Section section, Handbook handbook, IReadOnlyList<CuttingMaterial> own)
    {
        if (section.Get(Material) is not { } id || MaterialOf(section, handbook, own, id) is not { } material) return null;
        var thread = Known(section, Thread, handbook.Threads, "thread");
        var tool = Known(section, Tool, handbook.ToolMaterials, "tool material");
        CheckTap(section);
        return section.Make(() => Item(section, handbook, material, thread, tool));
    }

    private static WorkItem Item(
        Section section, Handbook handbook, CuttingMaterial material, ThreadRow? thread, ToolMaterialRow? tool)
    {
        var kind = section.Get(Kind) ?? OperationKind.Drilling;
        if (section.Get(Hardness) is { } hb) CheckHardness(handbook, material, hb);
        var condition = new DrillCondition(section.Get(Point) ?? StandardPoint, section.Sided(Wear).Value.Capability);
        var operation = new Operation(kind, material, section.Get(Diameter)!.Value)
        {
            Hole = thread?.TapDrill ?? section.Get(Hole),
            Condition = condition,
            Tool = tool,
            Cooling = section.Get(Coolant) ?? Cooling.AsPrinted,
            Tap = kind == OperationKind.Tapping ? Tap(section, handbook, material, thread) : null,
        };
        if (section.Get(Depth) is { } depth) operation = operation with { Depth = depth };
        var feed = section.Get(Feed) ?? OperationFeeds.Of(operation, handbook)?.Used ?? TwistDrillLoad.LeastFeed;
        var speeds = OperationSpeeds.Of(kind, material, handbook, tool, operation.Cooling);
        return new(
            section.Get(Name)!, material, operation.Diameter, feed, condition, section.Get(Speed), kind)
        {
            Operation = operation with { Feed = feed },
            TableSpeed = speeds?.Spindle(operation.Diameter),
            Holes = section.Get(Holes) ?? 10,
            Pause = section.Get(Pause) ?? Duration.FromSeconds(30),
        };
    }

    private static void CheckHardness(Handbook handbook, CuttingMaterial material, double hardnessHb)
    {
        if (material.HardnessHb is not { } span || span.Contains(hardnessHb)) return;
        var other = handbook.MaterialAt(material.Family, hardnessHb);
        throw new PartException(
            "work", "hardness", FormattableString.Invariant($"{hardnessHb:0.#} HB"),
            FormattableString.Invariant($"{span.Least:0} to {span.Most:0} HB for {material.Id}"), $"the material of that hardness is {other.Id}");
    }

    private static void CheckTap(Section section)
    {
        var kind = section.Get(Kind) ?? OperationKind.Drilling;
        if (kind == OperationKind.Tapping && !section.Has(Thread) && !(section.Has(Hole) && section.Has(Feed)))
            section.Fault(null, "tapping without a thread", "thread, or hole and feed (the pitch)");
        if (kind == OperationKind.OpeningOut && !section.Has(Hole))
            section.Fault(null, "opening out without a hole", "hole, the diameter of the pilot");
        if (kind == OperationKind.SpinTesting && !section.Has(Speed))
            section.Fault(null, "spin testing without a speed", "speed");
    }

    private static TapCut Tap(Section section, Handbook handbook, CuttingMaterial material, ThreadRow? thread)
    {
        var (major, hole, pitch) = thread is not null
            ? (thread.Major, thread.TapDrill, thread.Pitch)
            : (section.Get(Diameter)!.Value, section.Get(Hole)!.Value, section.Get(Feed)!.Value);
        return TapCut.Of(
            thread ?? new("", major, pitch, hole, "coarse", Citation.Yours()), material, handbook);
    }

    private static TRow? Known<TRow>(Section section, KeySpec<string> key, Table<TRow> table, string what)
        where TRow : class, ITableRow
    {
        if (section.Get(key) is not { } name) return null;
        if (table.TryFind(name, out var row)) return row;
        var nearest = NearestName.Of(name, table.Keys) is { } near ? $"; did you mean {near}?" : "";
        section.Fault(key, $"no such {what}{nearest}", string.Join(", ", table.Keys));
        return null;
    }

    private static CuttingMaterial? MaterialOf(
        Section section, Handbook handbook, IReadOnlyList<CuttingMaterial> own, string id)
    {
        if (own.FirstOrDefault(material => material.Id == id) is { } given) return given;
        if (handbook.Materials.TryFind(id, out var row)) return CuttingMaterial.Of(row, handbook);
        string[] known = [.. own.Select(material => material.Id), .. handbook.Materials.Keys];
        section.Fault(Material, MaterialNames.Unknown(id, known), string.Join(", ", known));
        return null;
    }
}
