using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>A section <c>[[belt]]</c> or <c>[[as_found.belt]]</c>: one belt position.</summary>
internal static class BeltSection
{
    private static readonly KeySpec<string> Name = Key.Required("name", Forms.Text(40), "What the owner calls the position", "\"1\"");

    private static readonly KeySpec<Length> MotorPulley = Key.Optional(
        "motor_pulley", Forms.Quantity(QuantityKinds.Length), "Datum diameter of the motor's pulley", "\"50 mm\"") with
    { Quantity = "diameter of the driving pulley", ShownInTemplate = true };

    private static readonly KeySpec<Length> SpindlePulley = Key.Optional(
        "spindle_pulley", Forms.Quantity(QuantityKinds.Length), "Datum diameter of the spindle's pulley", "\"170 mm\"") with
    { Quantity = "diameter of the driven pulley", ShownInTemplate = true };

    private static readonly KeySpec<Length> IntermediateDriven = Key.Optional(
        "intermediate_driven", Forms.Quantity(QuantityKinds.Length), "Datum diameter of the intermediate pulley that the motor's belt drives", "\"150 mm\"");

    private static readonly KeySpec<Length> IntermediateDriving = Key.Optional(
        "intermediate_driving", Forms.Quantity(QuantityKinds.Length), "Datum diameter of the intermediate pulley that drives the spindle's belt", "\"80 mm\"");

    private static readonly KeySpec<double> RatioKey = Key.Optional(
        "ratio", Forms.Quantity(QuantityKinds.Number), "Motor speed over spindle speed, in place of the pulleys", "3.4") with
    { Quantity = "ratio of motor speed to spindle speed" };

    private static readonly KeySpec<Ratio> Efficiency = Key.WithDefault(
        "efficiency", Forms.Quantity(QuantityKinds.Ratio), "Power at the spindle over power at the motor shaft", "\"90 %\"",
        new(new(Ratio.FromPercent(90), Ratio.FromPercent(100)), Provenance.FromMemory, "mh31-work-factors", "direct belt drive with bearings; no loss on the hazard side"));

    private static readonly KeySpec<Torque> MeasuredSlip = Key.Optional(
        "measured_slip_torque", Forms.Quantity(QuantityKinds.Torque), "Torque at the spindle at which the belt was seen to slip, at the tension it had then",
        "\"14 N m\"", "not compared; it holds for this position and that tension, and no bound credits it");

    private static readonly KeySpec[] Keys =
        [Name, MotorPulley, SpindlePulley, IntermediateDriven, IntermediateDriving, RatioKey, Efficiency, MeasuredSlip];

    internal static SectionSpec Spec { get; } = new("belt", "One belt position", Keys) { Repeats = true, Required = true };

    internal static SectionSpec AsFoundSpec { get; } =
        new("belt", "One belt position of the machine as found; the positions of the converted machine where left out", Keys) { Repeats = true };

    /// <summary>Marks as faulty what the values alone show: pulleys that do not make a path.</summary>
    internal static void Check(Section section)
    {
        var pulleys = section.Has(MotorPulley) && section.Has(SpindlePulley);
        if (section.Has(RatioKey) && (section.Has(MotorPulley) || section.Has(SpindlePulley)))
            section.Fault(RatioKey, "both a ratio and pulleys are given", "one of the two");
        else if (!section.Has(RatioKey) && !pulleys)
            section.Fault(null, "neither a ratio nor both pulleys are given", "motor_pulley and spindle_pulley, or ratio");
        if (section.Has(IntermediateDriven) != section.Has(IntermediateDriving))
            section.Fault(null, "only one of the two intermediate pulleys is given", "intermediate_driven and intermediate_driving, or neither");
    }

    internal static BeltPosition? Read(Section section) => section.Make(() =>
    {
        var efficiency = section.Sided(Efficiency).Value.Map(ratio => ratio.DecimalFractions);
        var name = section.Get(Name)!;
        var belt = section.Get(RatioKey) is { } ratio
            ? new BeltPosition(name, ratio, efficiency)
            : BeltPosition.FromPulleys(name, Pairs(section), efficiency);
        return belt.With(section.Get(MeasuredSlip));
    });

    private static List<PulleyPair> Pairs(Section section)
    {
        var (motor, spindle) = (section.Get(MotorPulley)!.Value, section.Get(SpindlePulley)!.Value);
        return section.Get(IntermediateDriven) is { } driven
            ? [new(motor, driven), new(section.Get(IntermediateDriving)!.Value, spindle)]
            : [new(motor, spindle)];
    }
}
