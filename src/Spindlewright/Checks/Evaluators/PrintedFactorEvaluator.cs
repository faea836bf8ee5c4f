using Spindlewright.Foundations.Tables;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Checks that the printed drilling factors can be interpolated: a row is left out and found again.</summary>
internal sealed class PrintedFactorEvaluator : ICheckEvaluator
{
    public string Area => "drilling";

    public IReadOnlyCollection<string> Quantities { get; } = ["factor with its printed row left out"];

    public Evaluation Evaluate(Check check, Handbook handbook)
    {
        var at = check.Inputs.Number("at");
        var factor = handbook.Drilling.Of(check.Subject, check.Inputs.Word("column"));
        return new(factor.Without(at).At(at), "1", "log-log interpolation between the two neighbours");
    }
}
