namespace Spindlewright.Foundations.Tables;

/// <summary>A printed factor table's line: an argument and one or more factors.</summary>
/// <param name="Argument">The argument as printed.</param>
/// <param name="Factors">The factors as printed, by column.</param>
/// <param name="Misprint">The column whose printed value is a misprint; empty for none.</param>
/// <param name="ClosedForm">What the closed form gives in the misprint's place; null where there is none.</param>
/// <param name="Citation">Where it comes from; the note gives the reason of a misprint.</param>
public sealed record FactorRow(
    double Argument, IReadOnlyDictionary<string, double> Factors, string Misprint, double? ClosedForm,
    Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => FormattableString.Invariant($"{Argument:G6}");

    /// <summary>Defines a factor table.</summary>
    /// <param name="name">Name of the table.</param>
    /// <param name="argument">Column of the argument.</param>
    /// <param name="factors">Columns of the factors.</param>
    /// <returns>The definition.</returns>
    public static TableDefinition<FactorRow> Define(string name, string argument, params string[] factors) => new(
        name, [argument, .. factors, "misprint", "closed_form"],
        line =>
        {
            var misprint = line.TextOrEmpty("misprint");
            if (misprint.Length > 0 && !factors.Contains(misprint))
                throw line.Error("misprint", $"'{misprint}' is no factor; {NearestName.Suggest(misprint, factors)}");
            return new(
                line.Positive(argument),
                factors.ToDictionary(factor => factor, line.Positive, StringComparer.Ordinal),
                misprint, line.PositiveOrNull("closed_form"), line.Citation());
        });

    /// <summary>Gathers one factor of a table for interpolation, misprints left out.</summary>
    /// <param name="rows">The table.</param>
    /// <param name="column">Column of the factor.</param>
    /// <param name="argument">The argument with its unit, for messages.</param>
    /// <returns>The factor against the argument.</returns>
    public static FactorTable Gather(Table<FactorRow> rows, string column, string argument) => new(
        $"{rows.Name} {column}", argument,
        rows.Where(row => row.Misprint != column).Select(row => (row.Argument, row.Factors[column]))
            .OrderBy(point => point.Argument));
}

/// <summary>The factors of the handbook method for drilling thrust, torque and power. Immutable.</summary>
/// <remarks>
/// The tables of `mh31-drilling` are master. Kd, wear and efficiency stand in their own tables. Every factor is a plain
/// number: inch and metric ones serve their own formula and are never mixed.
/// </remarks>
public sealed record DrillingFactors
{
    /// <summary>Definition of the chisel edge factors.</summary>
    public static TableDefinition<FactorRow> ChiselDefinition { get; } = FactorRow.Define(
        "drilling-chisel", "chisel_over_diameter", "torque_factor_a", "thrust_factor_b", "thrust_factor_j");

    /// <summary>Definition of the metric feed factors.</summary>
    public static TableDefinition<FactorRow> FeedMetricDefinition { get; } =
        FactorRow.Define("drilling-feed-metric", "feed_mm_per_rev", "feed_factor");

    /// <summary>Definition of the inch feed factors.</summary>
    public static TableDefinition<FactorRow> FeedInchDefinition { get; } =
        FactorRow.Define("drilling-feed-inch", "feed_in_per_rev", "feed_factor");

    /// <summary>Definition of the metric diameter factors.</summary>
    public static TableDefinition<FactorRow> DiameterMetricDefinition { get; } =
        FactorRow.Define("drilling-diameter-metric", "diameter_mm", "thrust_factor", "torque_factor");

    /// <summary>Definition of the inch diameter factors.</summary>
    public static TableDefinition<FactorRow> DiameterInchDefinition { get; } =
        FactorRow.Define("drilling-diameter-inch", "diameter_in", "thrust_factor", "torque_factor");

    /// <summary>Gathers the factors from their tables.</summary>
    /// <param name="chisel">Chisel edge factors.</param>
    /// <param name="feedMetric">Feed factors, mm/rev.</param>
    /// <param name="feedInch">Feed factors, in/rev.</param>
    /// <param name="diameterMetric">Diameter factors, mm.</param>
    /// <param name="diameterInch">Diameter factors, in.</param>
    public DrillingFactors(
        Table<FactorRow> chisel, Table<FactorRow> feedMetric, Table<FactorRow> feedInch,
        Table<FactorRow> diameterMetric, Table<FactorRow> diameterInch)
    {
        const string chiselEdge = "chisel edge over drill diameter";
        Printed = [chisel, feedMetric, feedInch, diameterMetric, diameterInch];
        ChiselTorqueA = FactorRow.Gather(chisel, "torque_factor_a", chiselEdge);
        ChiselThrustB = FactorRow.Gather(chisel, "thrust_factor_b", chiselEdge);
        ChiselThrustJ = FactorRow.Gather(chisel, "thrust_factor_j", chiselEdge);
        FeedMetric = FactorRow.Gather(feedMetric, "feed_factor", "feed in mm/rev");
        FeedInch = FactorRow.Gather(feedInch, "feed_factor", "feed in in/rev");
        ThrustMetric = FactorRow.Gather(diameterMetric, "thrust_factor", "drill diameter in mm");
        TorqueMetric = FactorRow.Gather(diameterMetric, "torque_factor", "drill diameter in mm");
        ThrustInch = FactorRow.Gather(diameterInch, "thrust_factor", "drill diameter in in");
        TorqueInch = FactorRow.Gather(diameterInch, "torque_factor", "drill diameter in in");
    }

    /// <summary>The tables as printed, misprints and all.</summary>
    public IReadOnlyList<Table<FactorRow>> Printed { get; }

    /// <summary>A, chisel edge factor for torque.</summary>
    public FactorTable ChiselTorqueA { get; init; }

    /// <summary>B, chisel edge factor for thrust.</summary>
    public FactorTable ChiselThrustB { get; init; }

    /// <summary>J, second chisel edge factor for thrust.</summary>
    public FactorTable ChiselThrustJ { get; init; }

    /// <summary>Ff against feed in mm/rev.</summary>
    public FactorTable FeedMetric { get; init; }

    /// <summary>Ff against feed in in/rev.</summary>
    public FactorTable FeedInch { get; init; }

    /// <summary>FT against drill diameter in mm.</summary>
    public FactorTable ThrustMetric { get; init; }

    /// <summary>FM against drill diameter in mm.</summary>
    public FactorTable TorqueMetric { get; init; }

    /// <summary>FT against drill diameter in inches.</summary>
    public FactorTable ThrustInch { get; init; }

    /// <summary>FM against drill diameter in inches.</summary>
    public FactorTable TorqueInch { get; init; }

    /// <summary>The factor of a printed table and column.</summary>
    /// <param name="table">Name of the table, such as "drilling-feed-metric".</param>
    /// <param name="column">Column of the factor, such as "feed_factor".</param>
    /// <returns>The factor against its argument.</returns>
    /// <exception cref="UnknownRowException">No such table or column.</exception>
    public FactorTable Of(string table, string column)
    {
        FactorTable[] all =
        [
            ChiselTorqueA, ChiselThrustB, ChiselThrustJ, FeedMetric, FeedInch, ThrustMetric, TorqueMetric, ThrustInch,
            TorqueInch,
        ];
        var name = $"{table} {column}";
        return Array.Find(all, factor => factor.Name == name)
            ?? throw new UnknownRowException("drilling factors", name, [.. all.Select(factor => factor.Name)]);
    }
}
