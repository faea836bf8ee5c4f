using Spindlewright.Checks;
using Spindlewright.Foundations.Tables;

namespace Spindlewright.PublishedChecks;

public sealed class PublishedCheckTests
{
    private static readonly Handbook Handbook = Handbook.FromEmbedded();

    private static readonly IReadOnlyList<Verdict> Verdicts = CheckRunner.RunAll(Handbook);

    public static TheoryData<string> Evaluated { get; } =
        [.. Verdicts.Where(verdict => verdict.Outcome != Outcome.NotEvaluated).Select(verdict => verdict.Check.Id)];

    [Theory]
    [MemberData(nameof(Evaluated))]
    public void A_computed_number_meets_the_published_one(string id)
    {
        var verdict = Verdicts.Single(verdict => verdict.Check.Id == id);
        Assert.True(verdict.Outcome == Outcome.Pass, verdict.ToString());
    }

    [Fact]
    public void No_check_fails() =>
        Assert.Empty(Verdicts.Where(verdict => verdict.Outcome == Outcome.Fail).Select(verdict => verdict.ToString()));

    [Fact]
    public void At_least_forty_published_checks_over_motor_and_drilling_pass() =>
        Assert.InRange(Verdicts.Count(verdict => verdict.Outcome == Outcome.Pass
            && verdict.Check.CountsAsPublished && verdict.Check.Area is "motor" or "drilling"), 40, int.MaxValue);

    [Fact]
    public void Every_check_says_why_its_tolerance_is_what_it_is_and_cites_a_source_that_exists()
    {
        Assert.NotEmpty(Verdicts);
        foreach (var check in Verdicts.Select(verdict => verdict.Check))
        {
            Assert.False(string.IsNullOrWhiteSpace(check.Tolerance.Reason), check.Id);
            Assert.NotNull(Handbook.References[check.Citation.Source]);
        }
    }

    [Fact]
    public void No_check_repeats_another()
    {
        var seen = new HashSet<(string, string, string, string)>();
        foreach (var check in Verdicts.Select(verdict => verdict.Check))
            Assert.True(seen.Add((check.Subject, check.Method, Sorted(check.Inputs), check.Quantity)), check.Id);

        static string Sorted(CheckInputs inputs) => string.Join("; ", inputs.Names.Order(StringComparer.Ordinal)
            .Select(name => $"{name}={inputs.Word(name)}"));
    }

    [Fact]
    public void A_check_that_is_not_evaluated_has_a_reason_and_no_reason_is_left_over()
    {
        var waiting = Verdicts.Where(verdict => verdict.Outcome == Outcome.NotEvaluated)
            .Select(verdict => (verdict.Check.Area, verdict.Check.Quantity)).ToHashSet();
        Assert.Equal(waiting.Order(), NotComputed.Quantities.Order());
    }

    [Fact]
    public void The_exact_answer_stands_beside_every_repeated_approximation()
    {
        foreach (var verdict in Verdicts.Where(verdict => verdict.Check.Area == "motor"))
        {
            var check = verdict.Check;
            var approximates = check.Method is "no shunt branch" or "shunt branch at the terminals"
                && Handbook.MotorCircuits[check.Subject].Xm is not null;
            Assert.True(approximates == verdict.Evaluation?.Exact is not null, check.Id);
        }
    }

    [Fact]
    public void A_motor_check_names_a_circuit_of_the_handbook()
    {
        foreach (var check in Verdicts.Select(verdict => verdict.Check).Where(check => check.Area == "motor" && check.Subject != "efficiency-limits"))
            Assert.True(Handbook.MotorCircuits.TryFind(check.Subject, out _), check.Id);
    }

    [Fact]
    public void The_validation_page_is_the_one_that_is_committed()
    {
        var path = Path.Combine(Root(), "docs", "validation.md");
        var page = ValidationPage.Write(Verdicts, Handbook.References);
        // Where the variable is set the page is written instead: the way to renew it after a change.
        if (Environment.GetEnvironmentVariable("SPINDLEWRIGHT_WRITE_DOCS") is { Length: > 0 })
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, page);
        }
        Assert.Equal(File.ReadAllText(path), page);
    }

    private static string Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "Spindlewright.slnx")))
                return folder.FullName;
        throw new InvalidOperationException($"no Spindlewright.slnx above {AppContext.BaseDirectory}");
    }
}
