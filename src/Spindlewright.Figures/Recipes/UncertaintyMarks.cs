using System.Collections.Immutable;
using Spindlewright.Studies;
using Spindlewright.Studies.Uncertainty;

namespace Spindlewright.Figures.Recipes;

/// <summary>Words and marks that the figures of uncertainty share.</summary>
internal static class UncertaintyMarks
{
    internal const string Caution =
        "These speeds say when the modelled spindle wins, never when a hand may be put there. The bound beside each belt position is the same at every speed and has no interval: nothing uncertain is credited in it.";

    /// <summary>Belt position with its bound, which stands beside every modelled speed.</summary>
    internal static string WithBound(UncertainBelt row) =>
        FormattableString.Invariant($"position {row.Belt.Name} (bound {row.Bound.NewtonMeters:0} N·m)");

    internal static double LowestRpm(UncertainBelt row) => row.Chances[0].Speed.RevolutionsPerMinute;

    internal static double TopRpm(UncertainBelt row) => row.Chances[^1].Speed.RevolutionsPerMinute;

    /// <summary>A value held on the axis: what is never reached stands at the fastest speed looked at.</summary>
    internal static double Held(UncertainBelt row, double rpm) => Math.Min(rpm, TopRpm(row));

    internal static ImmutableArray<SourceNote> Sources(StudyResults results) =>
    [
        StudyMarks.OwnModel,
        new(results.Hands.Strength.Source, $"hand torque: {results.Hands.Strength.Sample}", results.Hands.Strength.Provenance),
    ];

    internal static string Samples(StudyResults results) => FormattableString.Invariant(
        $"{results.Uncertainty.Plan.Count} machines drawn from what is uncertain (Latin hypercube, seed {results.Seed}).");
}
