using System.Text.Json.Nodes;

namespace Spindlewright.Tests.Tables;

/// <summary>data/datapackage.json (Frictionless Data Package, an open standard) against its files.</summary>
public sealed class DataPackageTests
{
    private static readonly JsonArray Resources =
        JsonNode.Parse(Repository.Read("data/datapackage.json"))!["resources"]!.AsArray();

    private static readonly string[] Types = ["string", "number", "integer"];

    [Fact]
    public void It_describes_every_table_and_no_other()
    {
        var described = Resources.Select(resource => resource!["path"]!.GetValue<string>())
            .Order(StringComparer.Ordinal);
        Assert.Equal(Repository.DataFiles.Select(file => Path.GetFileName(file)!), described);
    }

    [Fact]
    public void Its_fields_are_the_headers_and_its_sources_the_rows()
    {
        foreach (var resource in Resources)
        {
            var (header, rows) = Lines(resource!["path"]!.GetValue<string>());
            var fields = resource["schema"]!["fields"]!.AsArray();
            Assert.Equal(header, fields.Select(field => field!["name"]!.GetValue<string>()));
            Assert.All(fields, field => Assert.Contains(field!["type"]!.GetValue<string>(), Types));
            Assert.NotEmpty(resource["licenses"]!.AsArray());

            var named = resource["sources"]!.AsArray()
                .Select(source => source!["path"]!.GetValue<string>().Split('#')[1]).ToArray();
            Assert.All(named, key => Assert.Contains(rows, row => row.Contains($",{key},", StringComparison.Ordinal)));
        }
    }

    [Fact]
    public void Columns_are_lower_case_words_and_no_cell_holds_a_range()
    {
        foreach (var file in Repository.DataFiles)
        {
            var (header, rows) = Lines(Path.GetFileName(file));
            Assert.All(header, column => Assert.Matches("^[a-z][a-z0-9_]*$", column));
            Assert.All(rows, row => Assert.DoesNotMatch("(^|,)[0-9.]+ ?(-|to) ?[0-9.]+(,|$)", row));
        }
    }

    private static (string[] Header, string[] Rows) Lines(string file)
    {
        var lines = Repository.Read($"data/{file}").Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Where(line => line[0] != '#').ToArray();
        return (lines[0].Split(','), lines[1..]);
    }
}
