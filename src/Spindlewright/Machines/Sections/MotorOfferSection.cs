using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines.Text;
using Spindlewright.Motors.Plates;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>A section <c>[[motor_offer]]</c>: a motor that could be bought.</summary>
/// <remarks>Voltage, frequency and connection are those of <c>[motor]</c> as connected, so that an offer's current is one at that voltage.</remarks>
internal static class MotorOfferSection
{
    private static readonly KeySpec<string> Name = Key.Required("name", Forms.Text(60), "What you call it; no two alike", "\"six-pole, from the yard's store\"");

    private static readonly KeySpec<Power> RatedPower = Key.Required(
        "power", PlateKeys.RatedPower.Form, PlateKeys.RatedPower.Meaning, PlateKeys.RatedPower.Example) with
    { Quantity = PlateKeys.RatedPower.Quantity };

    private static readonly KeySpec<int> Poles = Key.Required("poles", Forms.WholeNumber(2, 8), "Number of poles: 2, 4, 6, 8", "6") with
    { Quantity = PlateKeys.Poles.Quantity };

    private static readonly KeySpec<ElectricCurrent> Current = Key.Optional(
        "current", Forms.Quantity(QuantityKinds.Current), "Rated line current at the voltage and in the connection in which [motor] is used", "\"3.2 A\"",
        "from power, efficiency and power factor") with
    { Quantity = "rated current" };

    private static readonly KeySpec<Length> Frame = Key.Optional(
        "frame_size", Forms.Quantity(QuantityKinds.Length), "Shaft height, foot to shaft axis", "\"80 mm\"", "usual for power and poles");

    private static readonly KeySpec<Length> Shaft = Key.Optional(
        "shaft_diameter", Forms.Quantity(QuantityKinds.Length), "Shaft diameter", "\"19 mm\"", "usual for the frame");

    private static readonly KeySpec<Mass> MassKey = Key.Optional("mass", Forms.Quantity(QuantityKinds.Mass), "Mass", "\"11 kg\"", "usual for the frame: a pair");

    private static readonly KeySpec<double> Price = Key.Optional(
        "price", Forms.Quantity(QuantityKinds.Number), "Price in the currency of [sizing]", "140", "not compared");

    internal static SectionSpec Spec { get; } = new(
        "motor_offer", "A motor that could be bought, for the voltage, frequency and connection in which [motor] is used",
        [
            Name, RatedPower, Poles, PlateKeys.RatedSpeed, Current, PlateKeys.PowerFactor, PlateKeys.Efficiency, PlateKeys.Breakdown,
            PlateKeys.LockedRotorTorque, PlateKeys.LockedRotorCurrent, Frame, Shaft, MassKey, Price,
        ])
    { Repeats = true };

    /// <summary>The sound offers, in the order of the text; faults of the others are marked.</summary>
    /// <param name="sections">The sections of this kind.</param>
    /// <param name="motor">The section <c>[motor]</c>, which was read without faults.</param>
    /// <param name="handbook">Tables of what stands in for figures left out.</param>
    internal static IReadOnlyList<MotorOffer> Read(IReadOnlyList<Section> sections, Section motor, Handbook handbook)
    {
        var offers = new List<MotorOffer>();
        foreach (var section in sections)
        {
            if (section.Get(Poles) is { } poles && poles % 2 != 0) section.Fault(Poles, "poles come in pairs", "2, 4, 6 or 8");
            if (section.Get(Name) is { } name && offers.Exists(offer => offer.Name == name))
                section.Fault(Name, "another offer has this name", "names that differ");
            if (section.Make(() => Offer(section, motor, handbook)) is { } offer) offers.Add(offer);
        }
        return offers;
    }

    private static MotorOffer Offer(Section section, Section motor, Handbook handbook)
    {
        var connection = motor.Get(MotorSection.ConnectionKey)!.Value;
        var offer = new MotorOffer(section.Get(Name)!, new PlateFigures
        {
            LineVoltage = PlateKeys.Voltage(motor, connection),
            Connection = connection,
            Frequency = motor.Get(PlateKeys.RatedFrequency)!.Value,
            Power = section.Get(RatedPower),
            Poles = section.Get(Poles),
            Speed = section.Get(PlateKeys.RatedSpeed),
            Current = section.Get(Current),
            PowerFactor = section.Get(PlateKeys.PowerFactor),
            Efficiency = section.Get(PlateKeys.Efficiency)?.DecimalFractions,
            BreakdownTorque = section.Get(PlateKeys.Breakdown)?.DecimalFractions,
            LockedRotorTorque = section.Get(PlateKeys.LockedRotorTorque)?.DecimalFractions,
            LockedRotorCurrent = section.Get(PlateKeys.LockedRotorCurrent)?.DecimalFractions,
        })
        {
            Frame = section.Get(Frame),
            Shaft = section.Get(Shaft),
            Mass = section.Get(MassKey),
            Price = section.Get(Price),
        };
        // A plate that makes no circuit is told here, at its line, rather than when it is first asked what it drills.
        _ = PlateFit.Of(offer.Figures, handbook);
        return offer;
    }
}
