using System.Collections.Immutable;
using Spindlewright.Cutting;
using Spindlewright.Figures.Catalogue;
using Spindlewright.Foundations;
using Spindlewright.Studies;
using Spindlewright.Studies.Feeding;

namespace Spindlewright.Figures.Recipes;

/// <summary>Feed that the arm gives over drill diameter, with and without a pilot hole.</summary>
public sealed class FeedByHand : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "feed-by-hand";

    /// <inheritdoc/>
    public string Name => "feed by hand";

    /// <inheritdoc/>
    public string Description => "What feed does an arm at the lever give, and where is a pilot hole needed?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var study = results.Feeding;
        var marks = ImmutableArray.CreateBuilder<Mark>();
        var wanted = study.Rows.DistinctBy(row => row.Diameter).ToList();
        marks.Add(new Points(
            Role.Handbook, StudyMarks.Values(wanted, row => row.Diameter.Millimeters),
            StudyMarks.Values(wanted, row => row.HandbookFeed.Millimeters), legend: "low end of the handbook's feeds"));
        foreach (var group in study.Rows.GroupBy(row => row.Material.Id))
        {
            var rows = group.ToList();
            Add(marks, rows, rows[0].Material.Id, row => row.Solid, "into the full", Role.AsModelled);
            Add(marks, rows, rows[0].Material.Id, row => row.Piloted, "with a pilot hole", Role.IdealBoost);
        }
        return new(
            Id, "Feed that an arm gives",
            new Axis("drill diameter", "mm", AxisScale.Logarithmic), new Axis("feed", "mm/rev", AxisScale.Logarithmic),
            marks.ToImmutable(),
            sources: [new("mh31-drilling", "thrust solved for feed", Provenance.Published), new("mh31-work-factors", "factors of materials", Provenance.FromMemory)],
            notes:
            [
                FormattableString.Invariant($"{study.Thrust.Newtons:0} N of thrust kept up at the lever, normal wear, standard point. Pilot hole: {100 * Studies.Work.LargestDrillStudy.PilotShare:0} % of the diameter, which clears the chisel edge."),
                "Where a line ends the thrust cuts nothing any more: the drill rubs.",
            ]);
    }

    private static void Add(
        ImmutableArray<Mark>.Builder marks, List<HandFeedRow> rows, string material, Func<HandFeedRow, HandFeed> of, string how, Role role)
    {
        if (rows.All(row => of(row).FeedPerRevolution is null)) return;
        marks.Add(new Curve(
            role, StudyMarks.Values(rows, row => row.Diameter.Millimeters),
            StudyMarks.Values(rows, row => of(row).FeedPerRevolution?.Millimeters ?? double.NaN), material, material, legend: how));
    }
}
