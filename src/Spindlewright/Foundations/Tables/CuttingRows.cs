using UnitsNet;

namespace Spindlewright.Foundations.Tables;

/// <summary>Work material factor Kd for a sharp drill; the same number in inch and metric formulas.</summary>
/// <param name="Material">The handbook's words for the material.</param>
/// <param name="TorqueKd">Factor for torque.</param>
/// <param name="ThrustKd">Factor for thrust.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record DrillingMaterialRow(string Material, double TorqueKd, double ThrustKd, Citation Citation)
    : ITableRow
{
    /// <inheritdoc/>
    public string Key => Material;

    /// <summary>The table of factors.</summary>
    public static TableDefinition<DrillingMaterialRow> Definition { get; } = new(
        "drilling-materials", ["material", "torque_factor_kd", "thrust_factor_kd"],
        line => new(
            line.Text("material"), line.Positive("torque_factor_kd"), line.Positive("thrust_factor_kd"),
            line.Citation()));
}

/// <summary>Tool wear factor W.</summary>
/// <param name="Condition">State of the drill.</param>
/// <param name="Factor">The factor, 1 for a sharp drill.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record WearRow(string Condition, double Factor, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => Condition;

    /// <summary>The table of factors.</summary>
    public static TableDefinition<WearRow> Definition { get; } = new(
        "drilling-wear", ["condition", "wear_factor"],
        line => new(line.Text("condition"), line.Positive("wear_factor"), line.Citation()));
}

/// <summary>Efficiency of a machine tool's drive.</summary>
/// <param name="Drive">Kind of drive.</param>
/// <param name="Efficiency">Range, 0 to 1.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record MachineEfficiencyRow(string Drive, Interval Efficiency, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => Drive;

    /// <summary>The table of efficiencies.</summary>
    public static TableDefinition<MachineEfficiencyRow> Definition { get; } = new(
        "machine-efficiency", ["drive", "efficiency_low", "efficiency_high"],
        line => new(
            line.Text("drive"), Interval.Of(line.Positive("efficiency_low"), line.Positive("efficiency_high")),
            line.Citation()));
}

/// <summary>Cutting speeds of HSS drills and reamers in one material.</summary>
/// <param name="Set">The set of rows: "navy" or "handbook".</param>
/// <param name="Material">The set's words for the material.</param>
/// <param name="HardnessLowHb">Lower Brinell hardness; null where the set has none.</param>
/// <param name="HardnessHighHb">Upper Brinell hardness.</param>
/// <param name="Condition">Such as "cold drawn"; may be empty.</param>
/// <param name="DrillLow">Lower drilling speed, printed in ft/min.</param>
/// <param name="DrillHigh">Upper drilling speed, printed in ft/min.</param>
/// <param name="Ream">Reaming speed, printed in ft/min; null where there is none.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record CuttingSpeedRow(
    string Set, string Material, double? HardnessLowHb, double? HardnessHighHb, string Condition, Speed DrillLow,
    Speed DrillHigh, Speed? Ream, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => KeyOf(Set, Material, HardnessLowHb, Condition);

    /// <summary>The table of speeds.</summary>
    public static TableDefinition<CuttingSpeedRow> Definition { get; } = new(
        "cutting-speeds",
        ["set", "material", "hardness_low_hb", "hardness_high_hb", "condition", "drill_low_ft_per_min",
            "drill_high_ft_per_min", "ream_ft_per_min"],
        line => new(
            line.Text("set"), line.Text("material"), line.PositiveOrNull("hardness_low_hb"),
            line.PositiveOrNull("hardness_high_hb"), line.TextOrEmpty("condition"),
            Speed.FromFeetPerMinute(line.Positive("drill_low_ft_per_min")),
            Speed.FromFeetPerMinute(line.Positive("drill_high_ft_per_min")),
            line.PositiveOrNull("ream_ft_per_min") is { } ream ? Speed.FromFeetPerMinute(ream) : null,
            line.Citation()));

    /// <summary>The name of a row.</summary>
    /// <param name="set">The set of rows.</param>
    /// <param name="material">The material.</param>
    /// <param name="hardnessLowHb">Lower Brinell hardness; null where the set has none.</param>
    /// <param name="condition">Such as "cold drawn"; empty for none.</param>
    /// <returns>Such as "handbook: grey iron class 20, 120 HB up".</returns>
    public static string KeyOf(string set, string material, double? hardnessLowHb, string condition = "") =>
        $"{set}: {material}"
        + (hardnessLowHb is { } least ? FormattableString.Invariant($", {least:G6} HB up") : "")
        + (condition.Length > 0 ? $", {condition}" : "");
}

/// <summary>Feed of HSS drills in a band of diameters.</summary>
/// <param name="DiameterAbove">Diameters above this; null from the smallest.</param>
/// <param name="DiameterUpTo">Diameters up to this; null for any.</param>
/// <param name="FeedLow">Lower feed a revolution, for the harder materials.</param>
/// <param name="FeedHigh">Upper feed a revolution.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record DrillFeedRow(
    Length? DiameterAbove, Length? DiameterUpTo, Length FeedLow, Length FeedHigh, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => FormattableString.Invariant($"above {DiameterAbove?.Inches ?? 0:G6} in");

    /// <summary>The table of feeds.</summary>
    public static TableDefinition<DrillFeedRow> Definition { get; } = new(
        "drill-feeds", ["diameter_above_in", "diameter_up_to_in", "feed_low_in_per_rev", "feed_high_in_per_rev"],
        line => new(
            InchesOrNull(line.PositiveOrNull("diameter_above_in")),
            InchesOrNull(line.PositiveOrNull("diameter_up_to_in")),
            Length.FromInches(line.Positive("feed_low_in_per_rev")),
            Length.FromInches(line.Positive("feed_high_in_per_rev")), line.Citation()));

    private static Length? InchesOrNull(double? inches) => inches is { } given ? Length.FromInches(given) : null;
}

/// <summary>Specific cutting force of a material group, kc = kc1.1 h^−mc.</summary>
/// <param name="Group">Number of the VDI 3323 group.</param>
/// <param name="Material">Words for the group.</param>
/// <param name="HardnessHb">Brinell hardness that the row stands for.</param>
/// <param name="TensileStrength">Tensile strength; null where not given.</param>
/// <param name="Kc11">Specific cutting force at 1 mm chip thickness and width.</param>
/// <param name="ExponentMc">Exponent mc.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record KienzleRow(
    int Group, string Material, double HardnessHb, Pressure? TensileStrength, Pressure Kc11, double ExponentMc,
    Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => FormattableString.Invariant($"{Group}");

    /// <summary>The table of groups.</summary>
    public static TableDefinition<KienzleRow> Definition { get; } = new(
        "kienzle", ["group", "material", "hardness_hb", "tensile_strength_mpa", "kc11_n_per_mm2", "exponent_mc"],
        line => new(
            line.WholeNumber("group"), line.Text("material"), line.Positive("hardness_hb"),
            line.PositiveOrNull("tensile_strength_mpa") is { } strength ? Pressure.FromMegapascals(strength) : null,
            Pressure.FromNewtonsPerSquareMillimeter(line.Positive("kc11_n_per_mm2")), line.Positive("exponent_mc"),
            line.Citation()));
}

/// <summary>A workshop material and the published rows that stand for it.</summary>
/// <param name="Id">Short name as a machine file writes it.</param>
/// <param name="Name">Words for a reader.</param>
/// <param name="HardnessLowHb">Lower Brinell hardness; null where none is stated.</param>
/// <param name="HardnessHighHb">Upper Brinell hardness.</param>
/// <param name="DrillingMaterial">Row of the work material factors.</param>
/// <param name="KienzleGroup">Row of the specific cutting forces; null for none.</param>
/// <param name="SpeedKey">Row of the cutting speeds.</param>
/// <param name="Family">Materials that a hardness chooses among, such as "iron, grey".</param>
/// <param name="PowerLaw">Row of the drilling power laws; empty for none.</param>
/// <param name="TappingForce">Row of the cutting facts with the specific cutting force of tapping; empty for none.</param>
/// <param name="HoleSawSpeed">Row of the cutting facts with the speed of a hole saw; empty for one by the drilling speed.</param>
/// <param name="Citation">Where the choice comes from.</param>
public sealed record MaterialRow(
    string Id, string Name, double? HardnessLowHb, double? HardnessHighHb, string DrillingMaterial, int? KienzleGroup,
    string SpeedKey, string Family, string PowerLaw, string TappingForce, string HoleSawSpeed, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => Id;

    /// <summary>The table of materials.</summary>
    public static TableDefinition<MaterialRow> Definition { get; } = new(
        "materials",
        ["id", "name", "hardness_low_hb", "hardness_high_hb", "drilling_material", "kienzle_group", "speed_set",
            "speed_material", "speed_hardness_low_hb", "speed_condition", "family",
            "power_law_material", "tapping_force", "hole_saw_speed"],
        line => new(
            line.Text("id"), line.Text("name"), line.PositiveOrNull("hardness_low_hb"),
            line.PositiveOrNull("hardness_high_hb"), line.Text("drilling_material"),
            line.WholeNumberOrNull("kienzle_group"),
            CuttingSpeedRow.KeyOf(
                line.Text("speed_set"), line.Text("speed_material"), line.PositiveOrNull("speed_hardness_low_hb"),
                line.TextOrEmpty("speed_condition")),
            line.Text("family"), line.TextOrEmpty("power_law_material"), line.TextOrEmpty("tapping_force"),
            line.TextOrEmpty("hole_saw_speed"), line.Citation()));

    /// <summary>Whether the material is listed at a hardness.</summary>
    /// <param name="hardnessHb">Brinell hardness.</param>
    /// <returns>True within its span; false where it has none.</returns>
    public bool Covers(double hardnessHb) => hardnessHb >= HardnessLowHb && hardnessHb <= HardnessHighHb;
}
