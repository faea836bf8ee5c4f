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
    public void At_least_forty_checks_over_motor_and_drilling_count_as_published() =>
        Assert.True(Verdicts.Count(verdict =>
            verdict.Check.CountsAsPublished && verdict.Check.Area is "motor" or "drilling") >= 40);

    [Fact]
    public void No_check_repeats_another()
    {
        var seen = new HashSet<(string, string, string, string)>();
        foreach (var check in Verdicts.Select(verdict => verdict.Check))
            Assert.True(seen.Add((check.Subject, check.Method, check.Inputs.ToString(), check.Quantity)), check.Id);
    }

    [Fact]
    public void A_motor_check_names_a_circuit_of_the_handbook()
    {
        foreach (var check in Verdicts.Select(verdict => verdict.Check).Where(check => check.Area == "motor"))
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
