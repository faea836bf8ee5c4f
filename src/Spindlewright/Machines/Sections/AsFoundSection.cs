using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[as_found]</c>: the machine before the conversion.</summary>
internal static class AsFoundSection
{
    private static readonly KeySpec<string> Description =
        Key.Required("description", Forms.Text(), "One line on the machine before the conversion", "\"single-phase motor, fixed speed\"");

    private static readonly KeySpec<Power> RatedPower = Key.Required(
        "power", Forms.Quantity(QuantityKinds.Power), "Rated shaft power of the old motor", "\"0.55 kW\"");

    private static readonly KeySpec<RotationalSpeed> RatedSpeed = Key.Required(
        "speed", Forms.Quantity(QuantityKinds.RotationalSpeed), "Rated (full-load) speed of the old motor", "\"1420 r/min\"");

    private static readonly KeySpec<Ratio> Breakdown = Key.WithDefault(
        "breakdown_torque", Forms.Quantity(QuantityKinds.Ratio), "Breakdown torque of the old motor over its rated torque", "\"220 %\"",
        new(new(Ratio.FromPercent(180), Ratio.FromPercent(350)), Provenance.OwnChoice, "this-project", "single- and three-phase motors of this size; high side as for the new motor")) with
    { Quantity = "breakdown torque over rated" };

    internal static SectionSpec Spec { get; } = new(
        "as_found", "The machine before the conversion", [Description, RatedPower, RatedSpeed, Breakdown])
    { Sections = [BeltSection.AsFoundSpec] };

    internal static IReadOnlyList<Section> BeltsOf(Section section) => section.Each(BeltSection.AsFoundSpec);

    internal static AsFound? Read(Section section, IReadOnlyList<BeltPosition> belts)
    {
        var own = BeltsOf(section).Select(BeltSection.Read).ToList();
        if (own.Contains(null)) return null;
        return section.Make(() => new AsFound(
            section.Get(Description)!, section.Get(RatedPower)!.Value, section.Get(RatedSpeed)!.Value,
            section.Sided(Breakdown).Value.Map(ratio => ratio.DecimalFractions), own.Count > 0 ? [.. own.Select(belt => belt!)] : belts));
    }
}
