using System.Globalization;
using Spindlewright.Foundations.Tables;

namespace Spindlewright.Checks;

/// <summary>How a check came out.</summary>
public enum Outcome
{
    /// <summary>The computed number lies within the tolerance.</summary>
    Pass,

    /// <summary>It lies outside, or could not be computed.</summary>
    Fail,

    /// <summary>No evaluator computes this quantity yet.</summary>
    NotEvaluated,
}

/// <summary>What became of a check.</summary>
/// <param name="Check">The check with the published number.</param>
/// <param name="Outcome">How it came out.</param>
/// <param name="Evaluation">What was computed; null where nothing was.</param>
/// <param name="Problem">Why nothing was computed; empty otherwise.</param>
public sealed record Verdict(Check Check, Outcome Outcome, Evaluation? Evaluation, string Problem = "")
{
    /// <summary>Computed less published number, in the unit of the check; null where nothing was computed.</summary>
    public double? Deviation => Evaluation is { } evaluation ? evaluation.Value - Check.Value : null;

    /// <summary>The largest deviation that passes, in the unit of the check.</summary>
    public double Allowed => Check.Tolerance.Allowed(Check.Value);

    /// <summary>One line for a log or a failing test.</summary>
    /// <returns>The check, the published and the computed number, the deviation and what is allowed.</returns>
    public override string ToString()
    {
        if (Evaluation is not { } evaluation) return $"{Check.Id}: {Outcome}; {Problem}";
        var invariant = CultureInfo.InvariantCulture;
        return string.Create(invariant, $"{Check.Id}: {Outcome}; published {Check.Value:G6}, ")
            + string.Create(invariant, $"computed {evaluation.Value:G6} {Check.Unit} ({evaluation.Method}), ")
            + string.Create(invariant, $"deviation {Deviation:G3}, allowed {Allowed:G3} ({Check.Tolerance.Reason})");
    }
}

/// <summary>Runs checks: the one place where a computed number meets a published one.</summary>
public static class CheckRunner
{
    /// <summary>Runs all checks of the library with all its evaluators.</summary>
    /// <param name="handbook">The tables.</param>
    /// <returns>A verdict for each check, in their order.</returns>
    public static IReadOnlyList<Verdict> RunAll(Handbook handbook) =>
        Run(Check.FromEmbedded(handbook.References), CheckEvaluators.All, handbook);

    /// <summary>Runs checks.</summary>
    /// <param name="checks">The checks.</param>
    /// <param name="evaluators">What computes them.</param>
    /// <param name="handbook">The tables.</param>
    /// <returns>A verdict for each check, in their order.</returns>
    public static IReadOnlyList<Verdict> Run(
        IEnumerable<Check> checks, CheckEvaluators evaluators, Handbook handbook) =>
        [.. checks.Select(check => Run(check, evaluators, handbook))];

    private static Verdict Run(Check check, CheckEvaluators evaluators, Handbook handbook)
    {
        if (evaluators.For(check) is not { } evaluator)
            return new(check, Outcome.NotEvaluated, null, NotComputed.Reason(check));
        Evaluation evaluation;
        try
        {
            evaluation = evaluator.Evaluate(check, handbook);
        }
        catch (Exception error) when (error is ArgumentException or InvalidOperationException)
        {
            return new(check, Outcome.Fail, null, error.Message);
        }
        if (evaluation.Unit != check.Unit)
            return new(check, Outcome.Fail, null, $"computed in '{evaluation.Unit}', published in '{check.Unit}'");
        // Written so that NaN fails.
        var passes = Math.Abs(evaluation.Value - check.Value) <= check.Tolerance.Allowed(check.Value);
        return new(check, passes ? Outcome.Pass : Outcome.Fail, evaluation);
    }
}
