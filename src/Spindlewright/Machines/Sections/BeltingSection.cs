using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[belting]</c>: section, distance between the axes and tension of the belts.</summary>
internal static class BeltingSection
{
    private static readonly KeySpec<string> Profile = Key.Required(
        "profile", Forms.Text(8), "Section of the belt: Z, A, B or SPZ", "\"A\"");

    private static readonly KeySpec<Length> CentreDistance = Key.Required(
        "centre_distance", Forms.Quantity(QuantityKinds.Length), "Between the axes of motor and spindle, or of motor and intermediate pulley", "\"420 mm\"");

    private static readonly KeySpec<Length> SecondCentreDistance = Key.Optional(
        "second_centre_distance", Forms.Quantity(QuantityKinds.Length), "Between the axes of intermediate pulley and spindle", "\"220 mm\"", "the first one");

    private static readonly KeySpec<Force> DeflectionForce = Key.Required(
        "deflection_force", Forms.Quantity(QuantityKinds.Force), "Force at the middle of the span that moves one belt by the deflection", "\"15 N\"");

    private static readonly KeySpec<Ratio> Deflection = Key.Optional(
        "deflection", Forms.Quantity(QuantityKinds.Ratio), "How far the middle of the span moves under that force, over the span", "\"1.6 %\"", "1/64 of the span");

    private static readonly KeySpec<int> Count = Key.Optional(
        "belts", Forms.WholeNumber(1, 8), "Belts side by side", "1", "1") with { Quantity = "number of belts" };

    internal static SectionSpec Spec { get; } = new(
        "belting", "Section, centre distance and tension of the belts; without it belt slip is not determined",
        [Profile, CentreDistance, SecondCentreDistance, DeflectionForce, Deflection, Count]);

    internal static Belting? Read(Section? section, Handbook handbook, IReadOnlyList<BeltPosition> belts)
    {
        if (section?.Get(Profile) is not { } id) return null;
        if (!handbook.BeltProfiles.TryFind(id, out var profile))
        {
            section.Fault(Profile, "no such section", string.Join(", ", handbook.BeltProfiles.Keys));
            return null;
        }
        return section.Make(() =>
        {
            var facts = handbook.BeltFacts;
            var first = section.Get(CentreDistance)!.Value;
            var belting = new Belting
            {
                Profile = profile,
                Count = section.Get(Count) ?? 1,
                CentreDistances = section.Get(SecondCentreDistance) is { } second ? [first, second] : [first],
                DeflectionForce = section.Get(DeflectionForce)!.Value,
                DeflectionOverSpan = section.Get(Deflection)?.DecimalFractions ?? facts["deflection-over-span"].Required().Value,
                EffectiveFriction = facts["effective-friction-range"].Range().Value,
                ReadingSpread = facts["reading-spread"].Required().Value,
            };
            // Pulleys that would touch are refused here, at the distance that is too short.
            foreach (var belt in belts) belting.Layouts(belt);
            return belting;
        });
    }
}
