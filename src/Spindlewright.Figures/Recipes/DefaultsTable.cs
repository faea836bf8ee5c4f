using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Spindlewright.Foundations;
using Spindlewright.Machines;
using static Spindlewright.Figures.Recipes.StudyTables;

namespace Spindlewright.Figures.Recipes;

/// <summary>The defaults that were put in; one that is the same in several entries of a list stands once.</summary>
internal static partial class DefaultsTable
{
    internal static Table Of(IReadOnlyList<AppliedDefault> defaults) => new(
        "defaults", "Defaults that stand in for what was not given",
        [
            Name("key"), Name("meaning"), Name("will it drill"), Name("what could a hand meet"), Name("provenance"),
            Name("source"), Name("reason"),
        ],
        [.. defaults.GroupBy(each => each with { Key = EntryNumber().Replace(each.Key, "[]") })
            .Select(group => RowOf(group.Key, [.. group.Select(each => each.Key)]))],
        caption: "Give the key in the machine file to replace a default. Two values are a pair: one for each question.");

    private static ImmutableArray<Cell> RowOf(AppliedDefault each, IReadOnlyList<string> keys) => Row(
        keys.Count == 1 ? keys[0] : each.Key.Replace("[]", $"[{Runs([.. keys.Select(Number)])}]", StringComparison.Ordinal),
        each.Meaning, Plain(each.Capability), Plain(each.Hazard), each.Provenance.InWords(), each.Source, each.Reason);

    /// <summary>A value without the quotation marks that it has in a machine file.</summary>
    private static string Plain(string value) => value.Trim('"');

    private static int Number(string key) =>
        int.Parse(EntryNumber().Match(key).Groups[1].Value, CultureInfo.InvariantCulture);

    /// <summary>Numbers as runs, such as "1–3, 5".</summary>
    private static string Runs(int[] numbers) => string.Join(", ", numbers
        .Select((number, index) => (number, start: number - index)).GroupBy(each => each.start, each => each.number)
        .Select(run => run.Count() == 1
            ? run.First().ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{run.First()}–{run.Last()}")));

    [GeneratedRegex(@"\[(\d+)\]")]
    private static partial Regex EntryNumber();
}
