using UnitsNet;

namespace Spindlewright.Foundations.Tables;

/// <summary>The efficiency limit of one class, pole number and rated power.</summary>
/// <param name="EfficiencyClass">IE1 to IE4.</param>
/// <param name="Poles">Number of poles.</param>
/// <param name="RatedPower">Rated shaft power.</param>
/// <param name="Efficiency">Limit at rated load, 0 to 1.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record EfficiencyRow(
    string EfficiencyClass, int Poles, Power RatedPower, double Efficiency, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => FormattableString.Invariant($"{EfficiencyClass} {Poles} poles {RatedPower.Kilowatts:G6} kW");

    /// <summary>The table of limits.</summary>
    public static TableDefinition<EfficiencyRow> Definition { get; } = new(
        "motor-efficiency", ["efficiency_class", "poles", "rated_power_kw", "efficiency_percent"],
        line => new(
            line.Text("efficiency_class"), line.WholeNumber("poles"),
            Power.FromKilowatts(line.Positive("rated_power_kw")),
            line.Positive("efficiency_percent") / 100, line.Citation()));
}

/// <summary>One cubic in log10(rated power / 1 kW) that gives the limits between the printed powers.</summary>
/// <param name="EfficiencyClass">IE2 or IE3.</param>
/// <param name="Poles">Number of poles.</param>
/// <param name="PowerLow">Lower end of the powers it holds for.</param>
/// <param name="PowerHigh">Upper end.</param>
/// <param name="A">Coefficient of the cube.</param>
/// <param name="B">Coefficient of the square.</param>
/// <param name="C">Coefficient of the logarithm.</param>
/// <param name="D">Constant.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record EfficiencyCurveRow(
    string EfficiencyClass, int Poles, Power PowerLow, Power PowerHigh, double A, double B, double C, double D,
    Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key =>
        FormattableString.Invariant($"{EfficiencyClass} {Poles} poles from {PowerLow.Kilowatts:G6} kW");

    /// <summary>The table of cubics.</summary>
    public static TableDefinition<EfficiencyCurveRow> Definition { get; } = new(
        "motor-efficiency-coefficients",
        ["efficiency_class", "poles", "power_low_kw", "power_high_kw", "a", "b", "c", "d"],
        line => new(
            line.Text("efficiency_class"), line.WholeNumber("poles"),
            Power.FromKilowatts(line.Positive("power_low_kw")),
            Power.FromKilowatts(line.Positive("power_high_kw")), line.NumberIn("a"), line.NumberIn("b"),
            line.NumberIn("c"), line.NumberIn("d"), line.Citation()));

    /// <summary>The limit at a rated power.</summary>
    /// <param name="ratedPower">Within the range of this row.</param>
    /// <returns>Efficiency, 0 to 1: A L³ + B L² + C L + D percent with L = log10(P / 1 kW).</returns>
    public double At(Power ratedPower)
    {
        var l = Math.Log10((double)ratedPower.Kilowatts);
        return (((A * l + B) * l + C) * l + D) / 100;
    }
}

/// <summary>Rated-load efficiency limits by class, poles and power at 50 Hz. Immutable.</summary>
/// <param name="Limits">The printed limits.</param>
/// <param name="Curves">The cubics between them.</param>
/// <remarks>
/// A printed power gives the printed limit. Between printed powers the cubic of the class answers where there is one
/// (`iec-60034-30-1`, from memory); otherwise the limit is taken linear in the logarithm of power (own choice).
/// </remarks>
public sealed record MotorEfficiency(Table<EfficiencyRow> Limits, Table<EfficiencyCurveRow> Curves)
{
    /// <summary>The limit at a rated power.</summary>
    /// <param name="efficiencyClass">IE1, IE2, IE3 or IE4.</param>
    /// <param name="poles">2, 4, 6 or 8.</param>
    /// <param name="ratedPower">Within the printed powers of the class.</param>
    /// <returns>Efficiency, 0 to 1, with where it comes from.</returns>
    /// <exception cref="UnknownRowException">No such class or pole number.</exception>
    /// <exception cref="PartException">The power is outside the printed range.</exception>
    public Sourced<double> At(string efficiencyClass, int poles, Power ratedPower)
    {
        var rows = Limits.Where(row => row.EfficiencyClass == efficiencyClass && row.Poles == poles)
            .OrderBy(row => row.RatedPower.Kilowatts).ToArray();
        if (rows.Length == 0)
            throw new UnknownRowException(
                Limits.Name, Words(efficiencyClass, poles),
                [.. Limits.Select(row => Words(row.EfficiencyClass, row.Poles)).Distinct()]);
        Guard.Within(
            ratedPower, rows[0].RatedPower, rows[^1].RatedPower, "efficiency limit", "rated power",
            "the printed range");

        var kilowatts = (double)ratedPower.Kilowatts;
        if (Array.Find(rows, row => (double)row.RatedPower.Kilowatts == kilowatts) is { } printed)
            return printed.Citation.On(printed.Efficiency);
        if (Curves.FirstOrDefault(row => Holds(row, efficiencyClass, poles, kilowatts)) is { } curve)
            return curve.Citation.On(curve.At(ratedPower));
        return Between(rows, kilowatts);
    }

    private static string Words(string efficiencyClass, int poles) =>
        FormattableString.Invariant($"{efficiencyClass} {poles} poles");

    private static bool Holds(EfficiencyCurveRow row, string efficiencyClass, int poles, double kilowatts) =>
        row.EfficiencyClass == efficiencyClass && row.Poles == poles
        && kilowatts >= (double)row.PowerLow.Kilowatts && kilowatts <= (double)row.PowerHigh.Kilowatts;

    private static Sourced<double> Between(EfficiencyRow[] rows, double kilowatts)
    {
        var upper = Array.FindIndex(rows, row => (double)row.RatedPower.Kilowatts > kilowatts);
        var (low, high) = (rows[upper - 1], rows[upper]);
        var share = Math.Log(kilowatts / (double)low.RatedPower.Kilowatts)
            / Math.Log((double)(high.RatedPower.Kilowatts / low.RatedPower.Kilowatts));
        return new(
            low.Efficiency + share * (high.Efficiency - low.Efficiency), Provenance.OwnChoice, low.Citation.Source,
            "linear in the logarithm of power between two printed limits");
    }
}
