using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Cutting.Operations;

/// <summary>Feeds a revolution that the tables give an operation.</summary>
/// <param name="Least">Low end, for the harder materials.</param>
/// <param name="Most">High end.</param>
/// <param name="Used">The one that is taken where none is asked for.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record OperationFeeds(Length Least, Length Most, Length Used, Citation Source)
{
    /// <summary>Feeds of a twist drill by its diameter.</summary>
    /// <param name="material">A hard one gets the lower feed, another the middle.</param>
    /// <param name="diameter">Drill diameter.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The feeds.</returns>
    public static OperationFeeds OfDrill(CuttingMaterial material, Length diameter, Handbook handbook)
    {
        var row = handbook.DrillFeeds.First(row =>
            diameter > (row.DiameterAbove ?? Length.Zero) && (row.DiameterUpTo is not { } upTo || diameter <= upTo));
        return new(row.FeedLow, row.FeedHigh, material.IsHard ? row.FeedLow : (row.FeedLow + row.FeedHigh) / 2, row.Citation);
    }

    /// <summary>Feeds of an operation.</summary>
    /// <param name="operation">The operation.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The feeds; null for spin testing.</returns>
    public static OperationFeeds? Of(Operation operation, Handbook handbook)
    {
        var (facts, drill) = (handbook.CuttingFacts, OfDrill(operation.Material, operation.Diameter, handbook));
        OperationFeeds? feeds = operation.Kind switch
        {
            OperationKind.Drilling or OperationKind.OpeningOut or OperationKind.Countersinking => drill,
            OperationKind.DeepDrilling => drill.Times(facts["deep-hole"]),
            OperationKind.Reaming => drill.Times(facts["reaming-feed"]),
            OperationKind.Counterboring => drill.Times(facts["counterbore-feed"]),
            OperationKind.HoleSawing => Given(facts["hole-saw-feed"]),
            OperationKind.SeatCutting => Given(facts["seat-feed"]),
            OperationKind.Tapping when operation.Tap is { } tap => new(tap.Pitch, tap.Pitch, tap.Pitch, facts["tapping-feed-over-lead"].Citation),
            _ => null,
        };
        if (feeds is null) return null;
        var byHand = operation.Cooling == Cooling.ByHand && Operation.DrillsFromTable(operation.Kind);
        return byHand ? feeds.Times(facts["hand-oil"].Required().Value) : feeds;
    }

    private static OperationFeeds Given(FactRow fact) => new(
        Length.FromMillimeters(fact.Range().Value.Least), Length.FromMillimeters(fact.Range().Value.Most),
        Length.FromMillimeters(fact.Required().Value), fact.Citation);

    private OperationFeeds Times(double factor) => new(Least * factor, Most * factor, Used * factor, Source);

    private OperationFeeds Times(FactRow fact)
    {
        var range = fact.Range().Value;
        return new(Least * range.Least, Most * range.Most, Used * ((range.Least + range.Most) / 2), fact.Citation);
    }
}
