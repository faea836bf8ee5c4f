using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Machines.Text;
using Spindlewright.Spindles;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[spindle]</c>.</summary>
internal static class SpindleSection
{
    private static readonly KeySpec<Length> ChuckDiameter = Key.Required(
        "chuck_diameter", Forms.Quantity(QuantityKinds.Length), "Outside diameter of the chuck body", "\"53 mm\"");

    private static readonly KeySpec<RotationalSpeed> HighestSpeed = Key.Optional(
        "highest_speed", Forms.Quantity(QuantityKinds.RotationalSpeed), "Highest speed that chuck and bearings are made for", "\"3000 r/min\"",
        "not determined: no highest permitted frequency can be given");

    private static readonly KeySpec<Torque> Friction = Key.WithDefault(
        "friction_torque", Forms.Quantity(QuantityKinds.Torque), "Drag of spindle bearings and seals", "\"0.1 N m\"",
        new(new(Torque.FromNewtonMeters(0.1), Torque.Zero), Provenance.OwnChoice, "this-project", "a warm greased spindle; none on the hazard side"));

    internal static SectionSpec Spec { get; } =
        new("spindle", "The spindle with its chuck", [ChuckDiameter, HighestSpeed, Friction]) { Required = true };

    internal static Spindle? Read(Section section) => section.Make(() =>
        new Spindle(section.Get(ChuckDiameter)!.Value, section.Get(HighestSpeed), section.Sided(Friction).Value));
}
