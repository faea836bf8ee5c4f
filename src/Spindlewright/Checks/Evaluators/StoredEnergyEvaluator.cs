using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using Spindlewright.Hazards;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Checks of stored energy: run-down, braking and a plate that is taken round.</summary>
internal sealed class StoredEnergyEvaluator : ICheckEvaluator
{
    private const string Energy = "energy of rotation";
    private const string Time = "run-down time";
    private const string Turns = "run-down turns";
    private const string Braking = "braking torque";
    private const string Power = "braking power";
    private const string Resistor = "braking resistor";
    private const string PlateMass = "mass of a plate";
    private const string PlateInertia = "inertia of a plate about its hole";
    private const string EdgeRadius = "edge radius of a plate";
    private const string EdgeSpeed = "edge speed of a plate";
    private const string PlateEnergy = "energy of a swinging plate";

    public string Area => "hazard";

    public IReadOnlyCollection<string> Quantities { get; } =
        [Energy, Time, Turns, Braking, Power, Resistor, PlateMass, PlateInertia, EdgeRadius, EdgeSpeed, PlateEnergy];

    public Evaluation Evaluate(Check check, Handbook handbook)
    {
        var (inputs, unit) = (check.Inputs, check.Unit);
        double Of<T>(T value, QuantityKind<T> kind) where T : struct => InUnit.Of(value, kind, unit);
        var (value, method) = check.Quantity switch
        {
            Energy => (Of(RunDown.EnergyOf(Inertia(inputs), Rpm(inputs)), QuantityKinds.Energy), "J ω² / 2"),
            Time => (Of(Coast(inputs), QuantityKinds.Duration), "J ω / T"),
            Turns => (unit == "rev" ? RunDown.TurnsOf(Rpm(inputs), Coast(inputs)) : InUnit.Plain(double.NaN, unit), "n t / 2"),
            Braking => (Of(RunDown.BrakingTorque(Inertia(inputs), Rpm(inputs), Stop(inputs)), QuantityKinds.Torque), "J ω / t"),
            Power => (Of(RunDown.BrakingPower(Inertia(inputs), Rpm(inputs), Stop(inputs)), QuantityKinds.Power), "J ω² / t"),
            Resistor => (Of(RunDown.MostResistance(
                ElectricPotential.FromVolts(inputs.Number("link_v")),
                RunDown.BrakingPower(Inertia(inputs), Rpm(inputs), Stop(inputs))), QuantityKinds.Resistance), "V² / P"),
            PlateMass => (Of(Plate(inputs).Mass, QuantityKinds.Mass), "ρ l w t"),
            PlateInertia => (Of(Plate(inputs).Inertia, QuantityKinds.MomentOfInertia), "m (l² + w²) / 12 + m (l/2 - e)²"),
            EdgeRadius => (Of(Plate(inputs).EdgeRadius, QuantityKinds.Length), "farthest corner"),
            EdgeSpeed => (Of(Plate(inputs).EdgeSpeed(Rpm(inputs)), QuantityKinds.Speed), "ω r"),
            _ => (Of(RunDown.EnergyOf(Plate(inputs).Inertia, Rpm(inputs)), QuantityKinds.Energy), "J ω² / 2"),
        };
        return new(value, unit, method);
    }

    private static LoosePlate Plate(CheckInputs inputs) => new(
        Millimetres(inputs, "length_mm"), Millimetres(inputs, "width_mm"), Millimetres(inputs, "thickness_mm"),
        inputs.Names.Contains("offset_mm") ? Millimetres(inputs, "offset_mm") : Length.Zero, inputs.Number("density_kg_per_m3"));

    private static Length Millimetres(CheckInputs inputs, string name) => Length.FromMillimeters(inputs.Number(name));

    private static Duration Coast(CheckInputs inputs) =>
        RunDown.CoastTime(Inertia(inputs), Rpm(inputs), Torque.FromNewtonMeters(inputs.Number("friction_nm")));

    private static Duration Stop(CheckInputs inputs) => Duration.FromSeconds(inputs.Number("stop_s"));

    private static MassMomentOfInertia Inertia(CheckInputs inputs) =>
        MassMomentOfInertia.FromKilogramSquareMeters(inputs.Number("inertia_kgm2"));

    private static RotationalSpeed Rpm(CheckInputs inputs) =>
        RotationalSpeed.FromRevolutionsPerMinute(inputs.Number("speed_r_per_min"));
}
