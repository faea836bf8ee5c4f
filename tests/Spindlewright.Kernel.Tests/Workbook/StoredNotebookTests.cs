using Spindlewright.Notebooks.Format;

namespace Spindlewright.Kernel.Tests.Workbook;

/// <summary>The comparison itself: what it lets pass and what it does not.</summary>
public class StoredNotebookTests
{
    [Theory]
    [InlineData("11.1 N·m", "11.1 N·m", true)]
    [InlineData("11.1 N·m", "11.2 N·m", false)]
    [InlineData("11.1 N·m", "11.1 Nm", false)]
    [InlineData("0.3333333333333333", "0.3333333333333334", true)]
    [InlineData("1.00000000", "1.00000001", false)]
    [InlineData("-1e-12", "1e-12", false)]
    [InlineData("1 2", "1 2 3", false)]
    [InlineData("I2² · R2", "I2² · R3", false)]
    public void Text_is_compared_exactly_and_numbers_to_a_tolerance(string one, string other, bool alike) =>
        Assert.Equal(alike, StoredNotebook.ReadsAlike(one, other, StoredNotebook.Tolerance));

    [Theory]
    [InlineData("<svg/>", "<svg />", "f", "f")]
    [InlineData("<svg/>", "<svg/>", "bound 26.5", "bound 26.6")]
    public void A_changed_drawing_or_text_is_told_with_its_cell(string drawing, string otherDrawing, string text, string otherText)
    {
        Assert.Empty(StoredNotebook.Differences(Shown(drawing, text), Shown(drawing, text)));
        var told = Assert.Single(StoredNotebook.Differences(Shown(drawing, text), Shown(otherDrawing, otherText)));
        Assert.Contains("cell 1 (id \"c1\")", told, StringComparison.Ordinal);
    }

    [Fact]
    public void Html_goes_where_a_drawing_or_text_stands_and_stays_where_it_stands_alone()
    {
        var executed = Shown("<svg/>", "f");
        var data = executed.Cells[0].Outputs[0]!["data"]!.AsObject();
        data["text/html"] = "<b>f</b>";
        Assert.Equal(["image/svg+xml", "text/plain"], Keys(StoredNotebook.Of(executed)));
        data.Remove("image/svg+xml");
        Assert.Equal(["text/plain"], Keys(StoredNotebook.Of(executed)));
        data.Remove("text/plain");
        Assert.Equal(["text/html"], Keys(StoredNotebook.Of(executed)));

        static IEnumerable<string> Keys(Notebook notebook) =>
            notebook.Cells[0].Outputs[0]!["data"]!.AsObject().Select(each => each.Key).Order(StringComparer.Ordinal);
    }

    private static Notebook Shown(string drawing, string text)
    {
        var notebook = NotebookText.Read(NotebookText.Of("1"));
        notebook.Cells[0].Outputs.Add(new System.Text.Json.Nodes.JsonObject
        {
            ["output_type"] = "display_data",
            ["metadata"] = new System.Text.Json.Nodes.JsonObject(),
            ["data"] = new System.Text.Json.Nodes.JsonObject { ["image/svg+xml"] = drawing, ["text/plain"] = text },
        });
        return notebook;
    }
}
