using Spindlewright.Cutting;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using Spindlewright.Hands;
using Spindlewright.Hazards;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Checks of contact: blunt contact, grabs with inertia, wrap-in, grip.</summary>
internal sealed class ContactEvaluator : ICheckEvaluator
{
    private const string Limit = "contact speed limit";
    private const string Contact = "contact energy";
    private const string Grab = "grab force";
    private const string FreeGrab = "grab force on a free hand";
    private const string Wrap = "wrap length";
    private const string Turns = "wrap turns";
    private const string Surface = "spindle speed for a surface speed";
    private const string Capstan = "capstan ratio";
    private const string Grip = "hand torque by grip";

    public string Area => "hazard";

    public IReadOnlyCollection<string> Quantities { get; } = [Limit, Contact, Grab, FreeGrab, Wrap, Turns, Surface, Capstan, Grip];

    public Evaluation Evaluate(Check check, Handbook handbook)
    {
        var (inputs, unit) = (check.Inputs, check.Unit);
        return check.Quantity switch
        {
            Limit => new(InUnit.Of(GrabForce.SpeedLimit(ForceOf(inputs), Body(inputs)), QuantityKinds.Speed, unit), unit, "F / sqrt(k M)"),
            Contact => new(InUnit.Of(GrabForce.EnergyAt(ForceOf(inputs), Body(inputs)), QuantityKinds.Energy, unit), unit, "F² / (2 k)"),
            Grab or FreeGrab => new(InUnit.Of(GrabOf(inputs, handbook, check.Quantity == FreeGrab), QuantityKinds.Force, unit), unit, "Fd + sqrt(Fd² + k μ v²)"),
            Surface => new(
                InUnit.Of(CuttingSpeed.SpindleSpeed(Speed.FromMetersPerMinutes(inputs.Number("surface_m_per_min")), Diameter(inputs)), QuantityKinds.RotationalSpeed, unit), unit, "v / (π d)"),
            Turns => new(InUnit.Plain(Wound(inputs).Turns, unit == "rev" ? "1" : unit), unit, "n (reaction + stop / 2)"),
            Wrap => new(InUnit.Of(Wound(inputs).Length, QuantityKinds.Length, unit), unit, "π d n (reaction + stop / 2)"),
            Capstan => new(InUnit.Plain(WrapIn.CapstanRatio(inputs.Number("friction"), inputs.Number("turns")), unit), unit, "exp(2 π μ n)"),
            _ => new(InUnit.Of(
                GripTorque.Of(Force.FromNewtons(inputs.Number("grip_n")), inputs.Number("friction"), Diameter(inputs)),
                QuantityKinds.Torque, unit), unit, "G μ D"),
        };
    }

    private static Force GrabOf(CheckInputs inputs, Handbook handbook, bool free)
    {
        var (hand, diameter) = (ContactBody.HandOf(handbook), Diameter(inputs));
        var trapped = GrabForce.TrappedMass(MassMomentOfInertia.FromKilogramSquareMeters(inputs.NumberOrNull("inertia_kgm2") ?? 0), diameter);
        return GrabForce.Of(
            SurfaceForce.Of(Torque.FromNewtonMeters(inputs.Number("torque_nm")), diameter), hand,
            free ? GrabForce.FreeMass(hand, trapped) : trapped,
            Speed.FromMetersPerSecond(Rpm(inputs).RadiansPerSecond * diameter.Meters / 2));
    }

    private static WoundOn Wound(CheckInputs inputs) => WrapIn.Of(
        inputs.NumberOrNull("diameter_mm") is null ? Length.FromMillimeters(1) : Diameter(inputs), // turns ask for no diameter
        Rpm(inputs), Duration.FromSeconds(inputs.Number("reaction_s")),
        Duration.FromSeconds(inputs.NumberOrNull("stop_s") ?? 0), Length.Zero);

    private static ContactBody Body(CheckInputs inputs) => new(
        "stated", Mass.FromKilograms(inputs.NumberOrNull("mass_kg") ?? 1),
        1000 * inputs.Number("spring_n_per_mm"), Provenance.Yours, "");

    private static Force ForceOf(CheckInputs inputs) => Force.FromNewtons(inputs.Number("force_n"));

    private static RotationalSpeed Rpm(CheckInputs inputs) =>
        RotationalSpeed.FromRevolutionsPerMinute(inputs.NumberOrNull("speed_r_per_min") ?? 0); // at rest where none is given

    private static Length Diameter(CheckInputs inputs) => Length.FromMillimeters(inputs.Number("diameter_mm"));
}
