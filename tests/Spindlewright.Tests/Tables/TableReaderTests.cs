using Spindlewright.Foundations.Tables;

namespace Spindlewright.Tests.Tables;

public sealed class TableReaderTests
{
    private const string Header = "condition,wear_factor,source,provenance,note\n";

    private const string Dull = "dull,1.5,trade-practice,common practice,\n";

    private static readonly References References = References.FromEmbedded();

    [Fact]
    public void A_good_text_gives_its_rows_with_comments_at_the_head_and_quoted_commas()
    {
        var table = Read(
            "# one\n# two\n" + Header + "\"dull, but usable\",1.4,trade-practice,common practice,\"a \"\"note\"\"\"\n");
        var row = Assert.Single(table);
        Assert.Equal("dull, but usable", row.Key);
        Assert.Equal(1.4, row.Factor);
        Assert.Equal("a \"note\"", row.Citation.Note);
    }

    [Theory]
    [InlineData("sharp,one,trade-practice,common practice,\n", "wear_factor", "'one' is no number")]
    [InlineData("sharp,NaN,trade-practice,common practice,\n", "wear_factor", "'NaN' is no number")]
    [InlineData("sharp,1e999,trade-practice,common practice,\n", "wear_factor", "is no number")]
    [InlineData("sharp,-1,trade-practice,common practice,\n", "wear_factor", "not above 0")]
    [InlineData("sharp,,trade-practice,common practice,\n", "wear_factor", "empty")]
    [InlineData(",1,trade-practice,common practice,\n", "condition", "empty")]
    [InlineData("sharp,1,trade-practise,common practice,\n", "source", "did you mean 'trade-practice'?")]
    [InlineData("sharp,1,,common practice,\n", "source", "empty")]
    [InlineData("sharp,1,trade-practice,hearsay,\n", "provenance", "'hearsay' is no provenance")]
    [InlineData("sharp,1,trade-practice,common practice\n", "", "4 cells where the header has 5")]
    [InlineData("sharp,1,5,trade-practice,common practice,\n", "", "6 cells where the header has 5")]
    public void A_bad_cell_is_named_with_file_line_and_column(string row, string column, string problem)
    {
        var error = Assert.Throws<TableException>(() => Read("# head\n" + Header + Dull + row));
        Assert.Equal(("data/drilling-wear.csv", 4, column), (error.File, error.Line, error.Column));
        Assert.Contains(problem, error.Message, StringComparison.Ordinal);
        Assert.StartsWith("data/drilling-wear.csv, line 4", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_or_unknown_column_is_named()
    {
        var missing = Assert.Throws<TableException>(() => Read("condition,source,provenance,note\na,b,c,d\n"));
        Assert.Equal("wear_factor", missing.Column);
        var header = Header.Replace("note", "note,notes", StringComparison.Ordinal);
        var unknown = Assert.Throws<TableException>(() => Read(header + "a\n"));
        Assert.Equal("notes", unknown.Column);
        Assert.Contains("did you mean 'note'?", unknown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_row_that_stands_twice_names_the_first_line()
    {
        const string row = "sharp,1,trade-practice,common practice,\n";
        var error = Assert.Throws<TableException>(() => Read(Header + row + row));
        Assert.Equal(3, error.Line);
        Assert.Contains("'sharp' stands already in line 2", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("# only a comment\n")]
    [InlineData(Header)]
    [InlineData("condition,condition,wear_factor,source,provenance,note\na,b,1,trade-practice,common practice,\n")]
    public void A_text_without_rows_or_with_a_column_twice_is_refused(string text) =>
        Assert.Throws<TableException>(() => Read(text));

    [Theory]
    [InlineData("[]", "one object")]
    [InlineData("{ \"a\": 1 }", "expected an object")]
    [InlineData("{ \"A b\": {} }", "lower-case")]
    [InlineData("{ \"a\": { \"knd\": \"book\" } }", "did you mean 'kind'?")]
    [InlineData("{ \"a\": { \"kind\": \"book\" } }", "'author' is missing")]
    [InlineData("{ \"a\": {", "no JSON")]
    public void A_bad_bibliography_says_what_is_wrong(string json, string problem)
    {
        var error = Assert.Throws<TableException>(() => References.Parse("data/references.json", json));
        Assert.Contains(problem, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_citation_key_suggests_the_nearest()
    {
        var error = Assert.Throws<UnknownRowException>(() => References["mh31-driling"]);
        Assert.Equal("mh31-drilling", error.Nearest);
    }

    private static Table<WearRow> Read(string text) => TableReader.Read(WearRow.Definition, text, References);
}
