using UnitsNet;

namespace Spindlewright.Foundations.Tables;

/// <summary>An equivalent circuit as a published example prints it: one phase of a star or of a delta.</summary>
/// <param name="Id">Name of the circuit.</param>
/// <param name="InDelta">True where the values are those of a phase of the delta.</param>
/// <param name="LineVoltage">Line voltage.</param>
/// <param name="Frequency">Frequency at which the reactances stand.</param>
/// <param name="Poles">Number of poles.</param>
/// <param name="R1">Stator resistance.</param>
/// <param name="X1">Stator leakage reactance.</param>
/// <param name="R2">Rotor resistance referred to the stator.</param>
/// <param name="X2">Rotor leakage reactance referred to the stator.</param>
/// <param name="Xm">Magnetising reactance; null where the source leaves the branch out.</param>
/// <param name="Rfe">Core-loss resistance across the magnetising branch; null for none.</param>
/// <param name="FrictionWindage">Friction and windage; null for none.</param>
/// <param name="OtherLoss">Loss that the source takes off the converted power or puts into the efficiency.</param>
/// <param name="LossSpeed">Speed at which friction, windage and stray-load loss stand; null where constant.</param>
/// <param name="StrayLoad">Stray-load loss at <paramref name="LossSpeed"/>; null for none.</param>
/// <param name="StrayLoadCurrent">Line current at which the stray-load loss stands.</param>
/// <param name="RotorInertia">Rotor inertia; null where not given.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record MotorCircuitRow(
    string Id, bool InDelta, ElectricPotential LineVoltage, Frequency Frequency, int Poles,
    ElectricResistance R1, ElectricResistance X1, ElectricResistance R2, ElectricResistance X2, ElectricResistance? Xm,
    ElectricResistance? Rfe, Power? FrictionWindage, Power? OtherLoss, RotationalSpeed? LossSpeed, Power? StrayLoad,
    ElectricCurrent? StrayLoadCurrent, MassMomentOfInertia? RotorInertia, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => Id;

    /// <summary>The table of circuits.</summary>
    public static TableDefinition<MotorCircuitRow> Definition { get; } = new(
        "motor-circuits",
        ["id", "connection", "line_voltage_v", "frequency_hz", "poles", "stator_resistance_ohm",
            "stator_leakage_reactance_ohm", "rotor_resistance_ohm", "rotor_leakage_reactance_ohm",
            "magnetising_reactance_ohm", "core_loss_resistance_ohm", "friction_windage_w", "other_loss_w",
            "loss_speed_r_per_min", "stray_load_w", "stray_load_current_a", "rotor_inertia_kgm2"],
        line => new(
            line.Text("id"), line.OneOf("connection", ("star", false), ("delta", true)),
            ElectricPotential.FromVolts(line.Positive("line_voltage_v")),
            Frequency.FromHertz(line.Positive("frequency_hz")), line.WholeNumber("poles"),
            Ohm(line.Positive("stator_resistance_ohm")), Ohm(line.Positive("stator_leakage_reactance_ohm")),
            Ohm(line.Positive("rotor_resistance_ohm")), Ohm(line.Positive("rotor_leakage_reactance_ohm")),
            OhmOrNull(line.PositiveOrNull("magnetising_reactance_ohm")),
            OhmOrNull(line.PositiveOrNull("core_loss_resistance_ohm")),
            WattOrNull(line.PositiveOrNull("friction_windage_w")), WattOrNull(line.PositiveOrNull("other_loss_w")),
            line.PositiveOrNull("loss_speed_r_per_min") is { } speed
                ? RotationalSpeed.FromRevolutionsPerMinute(speed)
                : null,
            WattOrNull(line.PositiveOrNull("stray_load_w")),
            line.PositiveOrNull("stray_load_current_a") is { } current ? ElectricCurrent.FromAmperes(current) : null,
            line.PositiveOrNull("rotor_inertia_kgm2") is { } inertia
                ? MassMomentOfInertia.FromKilogramSquareMeters(inertia)
                : null,
            line.Citation()));

    private static ElectricResistance Ohm(double ohm) => ElectricResistance.FromOhms(ohm);

    private static ElectricResistance? OhmOrNull(double? ohm) => ohm is { } given ? Ohm(given) : null;

    private static Power? WattOrNull(double? watt) => watt is { } given ? Power.FromWatts(given) : null;
}

/// <summary>One point of a measured load test.</summary>
/// <param name="Circuit">Name of the circuit that was fitted to the motor.</param>
/// <param name="ShaftPower">Shaft power.</param>
/// <param name="LineCurrent">Rms line current.</param>
/// <param name="ShaftSpeed">Shaft speed.</param>
/// <param name="PowerFactor">Power factor.</param>
/// <param name="Efficiency">Efficiency, 0 to 1.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record LoadTestRow(
    string Circuit, Power ShaftPower, ElectricCurrent LineCurrent, RotationalSpeed ShaftSpeed, double PowerFactor,
    double Efficiency, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => FormattableString.Invariant($"{Circuit} at {ShaftPower.Watts:G6} W");

    /// <summary>The table of load tests.</summary>
    public static TableDefinition<LoadTestRow> Definition { get; } = new(
        "motor-load-test",
        ["circuit", "shaft_power_w", "current_a", "speed_r_per_min", "power_factor", "efficiency"],
        line => new(
            line.Text("circuit"), Power.FromWatts(line.Positive("shaft_power_w")),
            ElectricCurrent.FromAmperes(line.Positive("current_a")),
            RotationalSpeed.FromRevolutionsPerMinute(line.Positive("speed_r_per_min")),
            line.Positive("power_factor"), line.Positive("efficiency"), line.Citation()));
}

/// <summary>One instant of the reference trajectory of a start under volts per hertz.</summary>
/// <param name="Time">Time from the start.</param>
/// <param name="ShaftSpeed">Shaft speed.</param>
/// <param name="Current">Rms stator current as the length of the space phasor gives it.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record TrajectoryRow(
    Duration Time, RotationalSpeed ShaftSpeed, ElectricCurrent Current, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => FormattableString.Invariant($"{Time.Seconds:G6} s");

    /// <summary>The table of instants.</summary>
    public static TableDefinition<TrajectoryRow> Definition { get; } = new(
        "motor-trajectory", ["time_s", "speed_rad_per_s", "current_rms_a"],
        line => new(
            Duration.FromSeconds(line.Positive("time_s")),
            RotationalSpeed.FromRadiansPerSecond(line.NumberIn("speed_rad_per_s")),
            ElectricCurrent.FromAmperes(line.Positive("current_rms_a")), line.Citation()));
}

/// <summary>Average full-load current of a motor.</summary>
/// <param name="LineVoltage">Line voltage.</param>
/// <param name="Poles">Number of poles.</param>
/// <param name="RatedPower">Rated shaft power.</param>
/// <param name="LineCurrent">Line current.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record FullLoadCurrentRow(
    ElectricPotential LineVoltage, int Poles, Power RatedPower, ElectricCurrent LineCurrent, Citation Citation)
    : ITableRow
{
    /// <inheritdoc/>
    public string Key => FormattableString.Invariant(
        $"{RatedPower.Kilowatts:G6} kW at {LineVoltage.Volts:G6} V, {Poles} poles");

    /// <summary>The table of currents.</summary>
    public static TableDefinition<FullLoadCurrentRow> Definition { get; } = new(
        "motor-full-load-current", ["line_voltage_v", "poles", "rated_power_kw", "current_a"],
        line => new(
            ElectricPotential.FromVolts(line.Positive("line_voltage_v")), line.WholeNumber("poles"),
            Power.FromKilowatts(line.Positive("rated_power_kw")),
            ElectricCurrent.FromAmperes(line.Positive("current_a")), line.Citation()));
}

/// <summary>One piece of the continuous torque of a self-ventilated motor against frequency.</summary>
/// <param name="FrequencyRatioLow">Lower end of the piece, frequency over rated frequency.</param>
/// <param name="FrequencyRatioHigh">Upper end; null for none.</param>
/// <param name="Slope">Coefficient of the ratio.</param>
/// <param name="Constant">Constant.</param>
/// <param name="Reciprocal">Coefficient of one over the ratio.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record DeratingRow(
    double FrequencyRatioLow, double? FrequencyRatioHigh, double Slope, double Constant, double Reciprocal,
    Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => FormattableString.Invariant($"from {FrequencyRatioLow:G6}");

    /// <summary>The table of pieces.</summary>
    public static TableDefinition<DeratingRow> Definition { get; } = new(
        "motor-derating", ["frequency_ratio_low", "frequency_ratio_high", "slope", "constant", "reciprocal"],
        line => new(
            line.NumberIn("frequency_ratio_low"), line.PositiveOrNull("frequency_ratio_high"), line.NumberIn("slope"),
            line.NumberIn("constant"), line.NumberIn("reciprocal"), line.Citation()));

    /// <summary>Continuous torque at a frequency ratio within this piece, per unit of rated torque.</summary>
    /// <param name="frequencyRatio">Above 0.</param>
    /// <returns>Slope x + constant + reciprocal / x.</returns>
    public double At(double frequencyRatio) =>
        Slope * frequencyRatio + Constant + (Reciprocal == 0 ? 0 : Reciprocal / frequencyRatio);
}

/// <summary>Continuous torque of a self-ventilated motor against frequency. Immutable.</summary>
/// <param name="Pieces">The pieces, frequency ascending.</param>
public sealed record MotorDerating(Table<DeratingRow> Pieces)
{
    /// <summary>Continuous torque, per unit of rated torque, at constant flux up to rated frequency.</summary>
    /// <param name="frequencyRatio">Frequency over rated frequency, above 0.</param>
    /// <returns>The torque with where it comes from; its uncertainty is about 0.1.</returns>
    /// <exception cref="PartException">The ratio is not above 0.</exception>
    public Sourced<double> At(double frequencyRatio)
    {
        Guard.Positive(frequencyRatio, "motor derating", "frequency over rated frequency");
        var piece = Pieces.First(row => row.FrequencyRatioHigh is not { } high || frequencyRatio <= high);
        return piece.Citation.On(piece.At(frequencyRatio));
    }
}
