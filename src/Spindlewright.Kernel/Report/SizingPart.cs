using System.Collections.Immutable;
using Spindlewright.Figures;
using Spindlewright.Figures.Html;
using Spindlewright.Figures.Recipes;
using Spindlewright.Studies.Sizing;
using static Spindlewright.Figures.Html.Markup;

namespace Spindlewright.Kernel.Report;

/// <summary>Which motor, which pulleys: the recommendation in words, then its figures and tables.</summary>
internal static class SizingPart
{
    /// <summary>What cannot be had together is read before any choice.</summary>
    private const string Conflicts = "sizing-conflicts";

    /// <summary>Tables that only a reader who doubts the choice wants: folded away on the screen, and not printed.</summary>
    private static readonly ImmutableHashSet<string> Folded = ["sizing-work", "sizing-survival", "sizing-fell-out", "sizing-unbeaten", "sizing-beliefs"];

    /// <summary>Whether a figure is shown in this part.</summary>
    internal static bool Holds(Figure figure) => StudyFigures.OfSizing.Contains(figure.Id);

    /// <summary>Whether a table is shown in this part.</summary>
    internal static bool Holds(Table table) => table.Id.StartsWith("sizing-", StringComparison.Ordinal);

    /// <summary>The part.</summary>
    /// <param name="study">The study.</param>
    /// <param name="figures">Its figures.</param>
    /// <param name="tables">Its tables.</param>
    internal static ReportPart Of(SizingStudy study, IReadOnlyList<Figure> figures, IReadOnlyList<Table> tables)
    {
        var first = tables.Where(table => table.Id == Conflicts).ToList();
        var folded = tables.Where(table => Folded.Contains(table.Id)).ToList();
        var open = tables.Except(first).Except(folded).ToList();
        var body = string.Concat(first.Select(table => TableHtml.Write(table)))
            + Words(study)
            + string.Concat(figures.Select(figure => FigureHtml.Write(figure)))
            + string.Concat(open.Select(table => TableHtml.Write(table)))
            + string.Concat(folded.Select(table => $"<details class=\"sw-appendix\"><summary>{Escape(table.Title)}</summary>\n{TableHtml.Write(table)}</details>\n"));
        return new(
            "which-motor-which-pulleys", "Which motor, which pulleys", body,
            [
                .. figures.Select(figure => (figure.Id, figure.Title)),
                .. first.Concat(open).Concat(folded).Select(table => (table.Id, table.Title)),
            ]);
    }

    private static string Words(SizingStudy study)
    {
        var choice = study.Recommendation.Choice;
        var answer = FormattableString.Invariant(
            $"Recommended: {choice.Candidate.Words}; torque bound {choice.Bound.NewtonMeters:0.0} N·m at the spindle.");
        return $"<p class=\"sw-answer\">{Escape(answer)}</p>\n<p>{Escape(ChoiceRule.Words)}</p>\n<h3>Why, with the numbers to follow by hand</h3>\n{Items(study.Recommendation.Reasons)}"
            + $"<h3>What it costs in hazard</h3>\n{Items(study.Recommendation.HazardPrice)}";
    }

    private static string Items(IEnumerable<string> sentences) =>
        $"<ul>\n{string.Concat(sentences.Select(words => $"<li>{Escape(words)}</li>\n"))}</ul>\n";
}
