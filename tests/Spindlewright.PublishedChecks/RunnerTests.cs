using Spindlewright.Checks;
using Spindlewright.Foundations.Tables;

namespace Spindlewright.PublishedChecks;

/// <summary>That a check can fail: the runner with evaluators made for the purpose.</summary>
public sealed class RunnerTests
{
    private static readonly Handbook Handbook = Handbook.FromEmbedded();

    private const string Header =
        "id,area,subject,method,inputs,quantity,value,unit,tolerance_relative,tolerance_absolute,tolerance_reason,"
        + "source,provenance,note\n";

    [Theory]
    [InlineData(100.9, "A", Outcome.Pass)]
    [InlineData(99.1, "A", Outcome.Pass)]
    [InlineData(101.1, "A", Outcome.Fail)]
    [InlineData(double.NaN, "A", Outcome.Fail)]
    [InlineData(double.PositiveInfinity, "A", Outcome.Fail)]
    [InlineData(100, "mA", Outcome.Fail)]
    public void A_verdict_follows_the_tolerance_and_the_unit(double computed, string unit, Outcome expected)
    {
        var verdict = Run("0.01,", new Fixed(_ => new(computed, unit, "made up")));
        Assert.Equal(expected, verdict.Outcome);
    }

    [Fact]
    public void An_absolute_tolerance_is_in_the_unit_of_the_check()
    {
        Assert.Equal(Outcome.Pass, Run(",2", new Fixed(_ => new(101.9, "A", ""))).Outcome);
        Assert.Equal(Outcome.Fail, Run(",2", new Fixed(_ => new(102.1, "A", ""))).Outcome);
    }

    [Fact]
    public void A_missing_input_fails_the_check_and_says_which()
    {
        var verdict = Run("0.01,", new Fixed(check => new(check.Inputs.Number("speed"), "A", "")));
        Assert.Equal(Outcome.Fail, verdict.Outcome);
        Assert.Contains("'speed' is not given; given: slip", verdict.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_quantity_without_an_evaluator_is_not_evaluated_rather_than_passed() =>
        Assert.Equal(Outcome.NotEvaluated, Run("0.01,", null).Outcome);

    [Fact]
    public void Two_evaluators_of_one_quantity_are_refused()
    {
        var evaluator = new Fixed(_ => new(1, "A", ""));
        Assert.Throws<ArgumentException>(() => CheckEvaluators.None.With(evaluator, evaluator));
    }

    [Theory]
    [InlineData(",")]
    [InlineData("0.01,2")]
    [InlineData("-0.01,")]
    public void A_check_has_exactly_one_tolerance_above_zero(string tolerances) =>
        Assert.Throws<TableException>(() => Run(tolerances, null));

    private static Verdict Run(string tolerances, Fixed? evaluator)
    {
        var row = $"a,motor,s,m,slip=0.05,stator current,100,A,{tolerances},made up,this-project,own arithmetic,\n";
        var checks = TableReader.Read(Check.Definition, Header + row, Handbook.References);
        var evaluators = evaluator is null ? CheckEvaluators.None : CheckEvaluators.None.With(evaluator);
        return Assert.Single(CheckRunner.Run(checks, evaluators, Handbook));
    }

    private sealed class Fixed(Func<Check, Evaluation> evaluate) : ICheckEvaluator
    {
        public string Area => "motor";

        public IReadOnlyCollection<string> Quantities { get; } = ["stator current"];

        public Evaluation Evaluate(Check check, Handbook handbook) => evaluate(check);
    }
}
