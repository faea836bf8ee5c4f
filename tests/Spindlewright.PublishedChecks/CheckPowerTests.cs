using System.Globalization;
using Spindlewright.Checks;
using Spindlewright.Foundations.Tables;

namespace Spindlewright.PublishedChecks;

/// <summary>That the checks of the library themselves can fail: wrong answers and changed inputs are noticed.</summary>
public sealed class CheckPowerTests
{
    private static readonly Handbook Handbook = Handbook.FromEmbedded();

    private static readonly IReadOnlyList<Verdict> Evaluated =
        [.. CheckRunner.RunAll(Handbook).Where(verdict => verdict.Outcome != Outcome.NotEvaluated)];

    /// <summary>Inputs that physics makes idle for one quantity, though they describe the state.</summary>
    private static readonly (string Id, string Input)[] Idle =
    [
        // At R1 = 0 under constant volts per hertz nothing depends on frequency: that is what these checks say.
        ("rashid-15-6-breakdown-torque-r1-zero-30-hz", "frequency_hz"),
        ("msl-default-slip-frequency-r1-zero", "frequency_hz"),
        ("msl-default-slip-frequency-r1-zero-5-hz", "frequency_hz"),
        ("msl-default-slip-frequency-r1-zero-50-hz", "frequency_hz"),
        // Slip speed alone gives the speed; the flux does not enter.
        ("dubey-6-15-speed", "rated_speed_r_per_min"),
        // The power balance of the rated point alone gives R1.
        ("nagrath-9-6-round-trip-stator-resistance", "breakdown_over_rated"),
        ("krause-3hp-round-trip-stator-resistance", "breakdown_over_rated"),
    ];

    [Fact]
    public void A_wrong_answer_fails_every_check()
    {
        foreach (var verdict in Evaluated)
        {
            // Wherever within its tolerance the true answer lies, this one lies outside.
            var wrong = new Wrong(CheckEvaluators.All.For(verdict.Check)!, 2.1 * verdict.Allowed);
            var again = Assert.Single(CheckRunner.Run([verdict.Check], CheckEvaluators.None.With(wrong), Handbook));
            Assert.True(again.Outcome == Outcome.Fail, again.ToString());
        }
    }

    [Fact]
    public void Every_number_put_in_counts()
    {
        var ignored =
            from verdict in Evaluated
            let check = verdict.Check
            from name in check.Inputs.Names
            where double.TryParse(check.Inputs.Word(name), NumberStyles.Float, CultureInfo.InvariantCulture, out _)
                && !Idle.Contains((check.Id, name)) && Changed(check, name) == verdict.Evaluation!.Value
            select $"{check.Id}: {name}";
        Assert.Empty(ignored);
    }

    [Fact]
    public void An_unknown_form_of_the_circuit_fails_and_says_what_is_accepted()
    {
        var check = Evaluated.First(verdict => verdict.Check.Method == "exact circuit").Check with { Method = "a guess" };
        var verdict = Assert.Single(CheckRunner.Run([check], CheckEvaluators.All, Handbook));
        Assert.Equal(Outcome.Fail, verdict.Outcome);
        Assert.Contains("'a guess' is no form of the circuit; accepted: exact circuit", verdict.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_unit_of_another_quantity_fails()
    {
        foreach (var check in Evaluated.Select(verdict => verdict.Check with { Unit = verdict.Check.Unit == "kg" ? "N m" : "kg" }))
            Assert.Equal(Outcome.Fail, Assert.Single(CheckRunner.Run([check], CheckEvaluators.All, Handbook)).Outcome);
    }

    /// <summary>What comes out with one input changed; null where the changed input is refused.</summary>
    private static double? Changed(Check check, string name)
    {
        var inputs = string.Join("; ", check.Inputs.Names.Select(each =>
            $"{each}={(each == name ? More(check.Inputs.Number(each)) : check.Inputs.Word(each))}"));
        var text = string.Join(',', Check.Definition.Columns) + ",source,provenance,note\n"
            + $"a,{check.Area},{check.Subject},\"{check.Method}\",{inputs},\"{check.Quantity}\",1,{check.Unit},1,,changed,this-project,own arithmetic,\n";
        var changed = TableReader.Read(Check.Definition, text, Handbook.References);
        return Assert.Single(CheckRunner.Run(changed, CheckEvaluators.All, Handbook)).Evaluation?.Value;
    }

    private static string More(double number) => (1.01 * number + 1e-4).ToString("R", CultureInfo.InvariantCulture);

    private sealed class Wrong(ICheckEvaluator right, double by) : ICheckEvaluator
    {
        public string Area => right.Area;

        public IReadOnlyCollection<string> Quantities => right.Quantities;

        public Evaluation Evaluate(Check check, Handbook handbook)
        {
            var evaluation = right.Evaluate(check, handbook);
            return evaluation with { Value = evaluation.Value + by };
        }
    }
}
