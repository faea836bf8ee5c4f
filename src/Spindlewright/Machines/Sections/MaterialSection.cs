using Spindlewright.Cutting;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>A section <c>[[material]]</c>: a material of the owner's own, like one of the handbook but for what is given.</summary>
internal static class MaterialSection
{
    private static readonly KeySpec<string> Id = Key.Required(
        "id", Forms.Text(40), "Short name by which [[work]] and [[experience]] name it", "\"old-cleats\"");

    private static readonly KeySpec<string> Name = Key.Optional("name", Forms.Text(80), "Name shown to people", "\"bronze of old cleats\"", "the short name");

    private static readonly KeySpec<string> Like = Key.Required(
        "like", Forms.Text(60), "Material of the handbook that stands for what is not given", "\"bronze\"");

    private static readonly KeySpec<double> HardnessLow = Key.Optional(
        "hardness_low", Forms.Quantity(QuantityKinds.Hardness), "Least Brinell hardness", "\"120 HB\"", "that of the material it is like");

    private static readonly KeySpec<double> HardnessHigh = Key.Optional(
        "hardness_high", Forms.Quantity(QuantityKinds.Hardness), "Greatest Brinell hardness", "\"160 HB\"", "that of the material it is like");

    private static readonly KeySpec<Speed> SlowestSpeed = Key.Optional(
        "slowest_speed", Forms.Quantity(QuantityKinds.Speed), "Low end of the cutting speed of drills of high-speed steel", "\"20 m/min\"", "that of the material it is like");

    private static readonly KeySpec<Speed> FastestSpeed = Key.Optional(
        "fastest_speed", Forms.Quantity(QuantityKinds.Speed), "High end of the cutting speed", "\"30 m/min\"", "that of the material it is like");

    private static readonly KeySpec<double> TorqueFactor = Key.Optional(
        "torque_factor", Forms.Quantity(QuantityKinds.Number), "Factor Kd of torque", "14000", "that of the material it is like");

    private static readonly KeySpec<double> ThrustFactor = Key.Optional(
        "thrust_factor", Forms.Quantity(QuantityKinds.Number), "Factor Kd of thrust", "14000", "that of the material it is like");

    private static readonly KeySpec<Pressure> Force = Key.Optional(
        "specific_cutting_force", Forms.Quantity(QuantityKinds.Pressure), "kc1.1: force over area at a chip of 1 mm by 1 mm", "\"1100 MPa\"", "that of the material it is like");

    private static readonly KeySpec<double> Exponent = Key.Optional(
        "exponent_mc", Forms.Quantity(QuantityKinds.Number), "Exponent mc of the specific cutting force", "0.25", "that of the material it is like");

    internal static SectionSpec Spec { get; } = new(
        "material", "A material of your own, like one of the handbook but for what you give",
        [Id, Name, Like, HardnessLow, HardnessHigh, SlowestSpeed, FastestSpeed, TorqueFactor, ThrustFactor, Force, Exponent])
    { Repeats = true };

    internal static CuttingMaterial? Read(Section section, Handbook handbook)
    {
        if (section.Get(Like) is not { } like) return null;
        if (!handbook.Materials.TryFind(like, out var row))
        {
            section.Fault(Like, MaterialNames.Unknown(like, handbook.Materials.Keys), string.Join(", ", handbook.Materials.Keys));
            return null;
        }
        return section.Make(() => Of(section, CuttingMaterial.Of(row, handbook)));
    }

    private static CuttingMaterial Of(Section section, CuttingMaterial like)
    {
        const string Part = "material";
        var (slow, fast) = (Given(section.Get(SlowestSpeed), like.SlowestSpeed), Given(section.Get(FastestSpeed), like.FastestSpeed));
        if (fast.Value < slow.Value)
            throw new PartException(
                Part, "fastest speed", fast.Value.ToString("G6", System.Globalization.CultureInfo.InvariantCulture),
                "the slowest speed or more");
        var (low, high) = (section.Get(HardnessLow) ?? like.HardnessHb?.Least, section.Get(HardnessHigh) ?? like.HardnessHb?.Most);
        var force = section.Has(Force) || section.Has(Exponent)
            ? new Sourced<SpecificForce>(
                new(section.Get(Force) ?? like.SpecificForce.Value.Kc11, section.Get(Exponent) ?? like.SpecificForce.Value.ExponentMc),
                Provenance.Yours, "")
            : like.SpecificForce;
        return (like with
        {
            Id = section.Get(Id)!,
            Name = section.Get(Name) ?? section.Get(Id)!,
            TorqueFactor = Given(section.Get(TorqueFactor) is { } torque ? Guard.Positive(torque, Part, "torque factor") : null, like.TorqueFactor),
            ThrustFactor = Given(section.Get(ThrustFactor) is { } thrust ? Guard.Positive(thrust, Part, "thrust factor") : null, like.ThrustFactor),
            SlowestSpeed = slow,
            FastestSpeed = fast,
        }) with
        {
            HardnessHb = low is { } least && high is { } most ? Interval.Of(least, most) : null,
            SpecificForce = force,
        };
    }

    private static Sourced<T> Given<T>(T? given, Sourced<T> otherwise) where T : struct =>
        given is { } own ? new(own, Provenance.Yours, "") : otherwise;
}

/// <summary>Words for a material that nobody knows.</summary>
internal static class MaterialNames
{
    internal static string Unknown(string id, IEnumerable<string> known) =>
        "the handbook has no such material" + (NearestName.Of(id, known) is { } near ? $"; did you mean {near}?" : "");
}
