using UnitsNet;

namespace Spindlewright.Foundations.Tables;

/// <summary>What a tool is made of: its speed over that of high-speed steel and its exponent of tool life.</summary>
/// <param name="Id">Short name as a machine file writes it.</param>
/// <param name="Name">Words for a reader.</param>
/// <param name="SpeedFactor">Cutting speed over that of high-speed steel.</param>
/// <param name="TaylorExponent">n of v·Tⁿ = C; a wide range, because it depends on the work as well.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record ToolMaterialRow(
    string Id, string Name, Interval SpeedFactor, Interval TaylorExponent, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => Id;

    /// <summary>The table of tool materials.</summary>
    public static TableDefinition<ToolMaterialRow> Definition { get; } = new(
        "tool-materials", ["id", "name", "speed_low", "speed_high", "taylor_n_low", "taylor_n_high"],
        line => new(
            line.Text("id"), line.Text("name"), Interval.Of(line.Positive("speed_low"), line.Positive("speed_high")),
            Interval.Of(line.Positive("taylor_n_low"), line.Positive("taylor_n_high")), line.Citation()));
}

/// <summary>How a drill's point is ground.</summary>
/// <param name="Id">"standard" or "split".</param>
/// <param name="Name">Words for a reader.</param>
/// <param name="ChiselOverDiameter">Chisel-edge length over diameter.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record DrillPointRow(string Id, string Name, double ChiselOverDiameter, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => Id;

    /// <summary>The table of points.</summary>
    public static TableDefinition<DrillPointRow> Definition { get; } = new(
        "drill-points", ["id", "name", "chisel_over_diameter"],
        line => new(line.Text("id"), line.Text("name"), line.Positive("chisel_over_diameter"), line.Citation()));
}

/// <summary>Torque and thrust of a drill as power laws of diameter and feed, 10 C D^q s^y with D in mm and s in mm/rev.</summary>
/// <param name="Material">The handbook's words for the material.</param>
/// <param name="Torque">The law of torque, N·m.</param>
/// <param name="Thrust">The law of thrust, N.</param>
/// <param name="ReferenceStrength">Tensile strength at which it stands; null where it does not scale with strength.</param>
/// <param name="ReferenceHardnessHb">Hardness at which it stands; null where it does not scale with hardness.</param>
/// <param name="ScalingExponent">Exponent of strength or hardness over the reference; 0 for none.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record PowerLawRow(
    string Material, PowerLaw Torque, PowerLaw Thrust, Pressure? ReferenceStrength, double? ReferenceHardnessHb,
    double ScalingExponent, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => Material;

    /// <summary>The table of power laws.</summary>
    public static TableDefinition<PowerLawRow> Definition { get; } = new(
        "drilling-power-law",
        ["material", "torque_coefficient", "torque_diameter_exponent", "torque_feed_exponent", "thrust_coefficient",
            "thrust_diameter_exponent", "thrust_feed_exponent", "reference_strength_mpa", "reference_hardness_hb",
            "scaling_exponent"],
        line => new(
            line.Text("material"), Law(line, "torque"), Law(line, "thrust"),
            line.PositiveOrNull("reference_strength_mpa") is { } strength ? Pressure.FromMegapascals(strength) : null,
            line.PositiveOrNull("reference_hardness_hb"), line.PositiveOrNull("scaling_exponent") ?? 0, line.Citation()));

    private static PowerLaw Law(TableLine line, string of) => new(
        line.Positive($"{of}_coefficient"), line.Positive($"{of}_diameter_exponent"), line.Positive($"{of}_feed_exponent"));
}

/// <summary>A power law 10 C D^q s^y.</summary>
/// <param name="Coefficient">C.</param>
/// <param name="DiameterExponent">q.</param>
/// <param name="FeedExponent">y.</param>
public readonly record struct PowerLaw(double Coefficient, double DiameterExponent, double FeedExponent)
{
    /// <summary>The law's value.</summary>
    /// <param name="diameter">Drill diameter, above 0.</param>
    /// <param name="feedPerRevolution">Feed a revolution, above 0.</param>
    /// <returns>Newton-metres for torque, newtons for thrust.</returns>
    public double At(Length diameter, Length feedPerRevolution) => 10 * Coefficient
        * Math.Pow(diameter.Millimeters, DiameterExponent) * Math.Pow(feedPerRevolution.Millimeters, FeedExponent);
}

/// <summary>A drill that can be bought.</summary>
/// <param name="Series">metric, fractional, number or letter.</param>
/// <param name="Name">As it is stamped: "8.5", "5/16", "7", "F".</param>
/// <param name="Diameter">Its diameter.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record DrillSizeRow(string Series, string Name, Length Diameter, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => $"{Series} {Name}";

    /// <summary>The size with its series, as a reader says it.</summary>
    public string InWords => Series switch
    {
        "metric" => $"{Name} mm",
        "fractional" => $"{Name} in",
        _ => $"{Series} {Name}",
    };

    /// <summary>The table of sizes.</summary>
    public static TableDefinition<DrillSizeRow> Definition { get; } = new(
        "drill-sizes", ["series", "name", "diameter_mm", "diameter_in"],
        line => new(
            line.OneOf("series", ("metric", "metric"), ("fractional", "fractional"), ("number", "number"), ("letter", "letter")),
            line.Text("name"), Diameters(line), line.Citation()));

    private static Length Diameters(TableLine line) =>
        (line.PositiveOrNull("diameter_mm"), line.PositiveOrNull("diameter_in")) switch
        {
            ({ } millimetres, null) => Length.FromMillimeters(millimetres),
            (null, { } inches) => Length.FromInches(inches),
            _ => throw line.Error("diameter_mm", "exactly one of diameter_mm and diameter_in is given"),
        };
}

/// <summary>A thread and the drill before the tap.</summary>
/// <param name="Name">Its designation, such as "M8" or "1/4-20 UNC".</param>
/// <param name="Major">Major diameter.</param>
/// <param name="Pitch">Pitch, which is the lead of a single start.</param>
/// <param name="TapDrill">Diameter of the hole.</param>
/// <param name="Series">coarse or fine.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record ThreadRow(
    string Name, Length Major, Length Pitch, Length TapDrill, string Series, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => Name;

    /// <summary>True for a coarse pitch.</summary>
    public bool IsCoarse => Series == "coarse";

    /// <summary>Height of thread cut, over that of a full thread of 60°: (D − hole)/(1.0825 P).</summary>
    /// <remarks>5/8 of the triangle's height stands in a full internal thread; 1.0825 = 2 × 5/8 × √3/2.</remarks>
    public double Engagement => (Major - TapDrill) / (Pitch * (1.25 * Math.Sqrt(3) / 2));

    /// <summary>The table of threads.</summary>
    public static TableDefinition<ThreadRow> Definition { get; } = new(
        "threads", ["name", "major_mm", "pitch_mm", "tap_drill_mm", "series"],
        line => new(
            line.Text("name"), Length.FromMillimeters(line.Positive("major_mm")),
            Length.FromMillimeters(line.Positive("pitch_mm")), Length.FromMillimeters(line.Positive("tap_drill_mm")),
            line.OneOf("series", ("coarse", "coarse"), ("fine", "fine")), line.Citation()));
}

/// <summary>Clearance holes for a bolt.</summary>
/// <param name="Major">Major diameter of its thread.</param>
/// <param name="Fine">Fine series.</param>
/// <param name="Medium">Medium series.</param>
/// <param name="Coarse">Coarse series.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record ClearanceHoleRow(Length Major, Length Fine, Length Medium, Length Coarse, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => FormattableString.Invariant($"{Major.Millimeters:0.##} mm");

    /// <summary>The table of clearance holes.</summary>
    public static TableDefinition<ClearanceHoleRow> Definition { get; } = new(
        "clearance-holes", ["major_mm", "fine_mm", "medium_mm", "coarse_mm"],
        line =>
        {
            Length Size(string column) => Length.FromMillimeters(line.Positive(column));
            return new(Size("major_mm"), Size("fine_mm"), Size("medium_mm"), Size("coarse_mm"), line.Citation());
        });
}
