using System.Globalization;
using System.Text;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;

namespace Spindlewright.Checks;

/// <summary>Writes verdicts as a page of Markdown, <c>docs/validation.md</c>.</summary>
public static class ValidationPage
{
    private static readonly string[] Areas = ["motor", "inverter", "drilling", "belt", "hazard", "heat", "supply"];
    private static readonly string[] Columns =
    [
        "quantity", "inputs", "published", "computed", "deviation", "allowed", "outcome", "provenance, source",
        "method, exact answer, note",
    ];

    private static readonly bool[] PublishedThenOther = [true, false];
    private static readonly Outcome[] Outcomes = [Outcome.Pass, Outcome.Fail, Outcome.NotEvaluated];

    /// <summary>Writes the page.</summary>
    /// <param name="verdicts">The verdicts.</param>
    /// <param name="references">The bibliography.</param>
    /// <returns>Markdown text with LF line ends, the same for the same verdicts.</returns>
    public static string Write(IReadOnlyList<Verdict> verdicts, References references)
    {
        var page = new StringBuilder();
        Line(page, "# Validation");
        Line(page);
        Line(page, "Written by the library from `data/checks.csv`; do not edit. Each row sets a number from outside");
        Line(page, "this project beside the one that this library computes. Only rows read in the source itself");
        Line(page, "(published) or in somebody else's transcription of it (second hand) count as published. Rows from");
        Line(page, "memory are shown as such and counted apart; so is our own arithmetic, which only guards against");
        Line(page, "change.");
        Line(page);
        WriteSummary(page, verdicts);
        foreach (var area in Areas)
            WriteArea(page, area, [.. verdicts.Where(verdict => verdict.Check.Area == area)]);
        WriteSources(page, verdicts, references);
        return page.ToString();
    }

    private static void WriteSummary(StringBuilder page, IReadOnlyList<Verdict> verdicts)
    {
        Line(page, "| area | published: pass | fail | not evaluated | other: pass | fail | not evaluated |");
        Line(page, "| --- | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var area in Areas)
        {
            var counts =
                from published in PublishedThenOther
                from outcome in Outcomes
                select verdicts.Count(verdict => verdict.Check.Area == area && verdict.Outcome == outcome
                    && verdict.Check.CountsAsPublished == published);
            Line(page, $"| {area} | {string.Join(" | ", counts)} |");
        }
        Line(page);
        var passes = verdicts.Count(verdict => verdict.Outcome == Outcome.Pass && verdict.Check.CountsAsPublished
            && verdict.Check.Area is "motor" or "drilling");
        Line(page, string.Create(
            CultureInfo.InvariantCulture, $"{passes} published checks over motor and drilling pass. A row that is not"));
        Line(page, "evaluated says what it waits for; it counts for nothing.");
        Line(page);
    }

    private static void WriteArea(StringBuilder page, string area, Verdict[] verdicts)
    {
        if (verdicts.Length == 0) return;
        Line(page, $"## {area.WithCapital()}");
        foreach (var subject in verdicts.GroupBy(verdict => verdict.Check.Subject))
        {
            Line(page);
            Line(page, $"### {Escaped(subject.Key)}");
            Line(page);
            Line(page, $"| {string.Join(" | ", Columns)} |");
            Line(page, "| --- | --- | ---: | ---: | ---: | --- | --- | --- | --- |");
            foreach (var verdict in subject) Line(page, Row(verdict));
        }
        Line(page);
    }

    private static string Row(Verdict verdict)
    {
        var check = verdict.Check;
        string[] cells =
        [
            check.Quantity, check.Inputs.ToString(), $"{Number(check.Value)} {Unit(check.Unit)}".TrimEnd(),
            verdict.Evaluation is { } computed ? Number(computed.Value) : "", DeviationOf(verdict), AllowedOf(check),
            OutcomeWords(verdict.Outcome), $"{check.Citation.Provenance.InWords()}, {check.Citation.Source}",
            Remark(verdict),
        ];
        return $"| {string.Join(" | ", cells.Select(Escaped))} |";
    }

    private static string Remark(Verdict verdict)
    {
        var exact = verdict.Evaluation?.Exact is { } value ? $"exact circuit gives {Number(value)}" : "";
        string[] parts =
        [
            verdict.Evaluation?.Method ?? verdict.Check.Method, exact, verdict.Check.Citation.Note, verdict.Problem,
        ];
        return string.Join("; ", parts.Where(part => part.Length > 0));
    }

    private static string DeviationOf(Verdict verdict) => verdict.Deviation switch
    {
        null => "",
        { } deviation when verdict.Check.Tolerance.Absolute is { } allowed =>
            $"{Signed(deviation, allowed < 0.1 ? "+0.0000;-0.0000;0.0000" : "+0.00;-0.00;0.00")} {Unit(verdict.Check.Unit)}".TrimEnd(),
        { } deviation => Signed(100 * deviation / Math.Abs(verdict.Check.Value), "+0.000;-0.000;0.000") + " %",
    };

    private static string AllowedOf(Check check)
    {
        var size = check.Tolerance.Relative is { } relative
            ? (100 * relative).ToString("G4", CultureInfo.InvariantCulture) + " %"
            : $"{Number(check.Tolerance.Absolute!.Value)} {Unit(check.Unit)}".TrimEnd();
        return $"{size} ({check.Tolerance.Reason})";
    }

    private static void WriteSources(StringBuilder page, IReadOnlyList<Verdict> verdicts, References references)
    {
        Line(page, "## Sources");
        Line(page);
        var keys = verdicts.Select(verdict => verdict.Check.Citation.Source).Distinct();
        foreach (var key in keys.Order(StringComparer.Ordinal))
            Line(page, $"- `{key}`: {Escaped(references[key].ToString())}");
    }

    private static string OutcomeWords(Outcome outcome) => outcome switch
    {
        Outcome.Pass => "pass",
        Outcome.Fail => "**fail**",
        _ => "not evaluated",
    };

    private static string Number(double value) => value.ToString("G6", CultureInfo.InvariantCulture);

    private static string Signed(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    private static string Unit(string unit) => unit == "1" ? "" : unit;

    private static string Escaped(string text) => text.Replace("|", "\\|", StringComparison.Ordinal)
        .Replace("<", "&lt;", StringComparison.Ordinal);

    private static void Line(StringBuilder page, string text = "") => page.Append(text).Append('\n');
}
