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
            Turns => (InUnit.Plain(RunDown.TurnsOf(Rpm(inputs), Coast(inputs)), unit == "rev" ? "1" : unit), "n t / 2"),
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
        Millimetres(inputs, "length_mm", 0), Millimetres(inputs, "width_mm", 0), Millimetres(inputs, "thickness_mm", 1),
        Millimetres(inputs, "offset_mm", 0), inputs.NumberOrNull("density_kg_per_m3") ?? 1000);

    /// <summary>A size that a check needs not give stands in where the answer does not rest on it.</summary>
    private static Length Millimetres(CheckInputs inputs, string name, double otherwise) =>
        Length.FromMillimeters(inputs.NumberOrNull(name) ?? otherwise);

    private static Duration Coast(CheckInputs inputs) =>
        RunDown.CoastTime(Inertia(inputs), Rpm(inputs), Torque.FromNewtonMeters(inputs.Number("friction_nm")));

    private static Duration Stop(CheckInputs inputs) => Duration.FromSeconds(inputs.Number("stop_s"));

    private static MassMomentOfInertia Inertia(CheckInputs inputs) =>
        MassMomentOfInertia.FromKilogramSquareMeters(inputs.Number("inertia_kgm2"));

    private static RotationalSpeed Rpm(CheckInputs inputs) =>
        RotationalSpeed.FromRevolutionsPerMinute(inputs.Number("speed_r_per_min"));
}
