using System.Diagnostics;
using System.Text;
using System.Text.Json.Nodes;
using Spindlewright.Notebooks.Format;
using static Spindlewright.Kernel.Tests.NotebookText;

namespace Spindlewright.Kernel.Tests.Format;

/// <summary>
/// The format is that of the nbformat documentation, "The Notebook file format" (4.0 to 4.5, from memory of its JSON
/// schema); the layout of the bytes is that of Python's <c>json.dumps(indent=1, sort_keys=True, ensure_ascii=False)</c>.
/// </summary>
public sealed class ReaderTests
{
    [Fact]
    public void Attachments_raw_cells_and_unknown_fields_pass_through_byte_for_byte() =>
        Assert.Equal(Rich, Encoding.UTF8.GetString(Read(Rich).ToBytes()));

    [Fact]
    public void Keys_in_another_order_give_the_same_bytes()
    {
        var shuffled = JsonNode.Parse(Rich)!.AsObject();
        foreach (var (key, value) in shuffled.Reverse().ToList())
        {
            shuffled.Remove(key);
            shuffled.Add(key, value);
        }

        Assert.Equal(Rich, Encoding.UTF8.GetString(Read(shuffled.ToJsonString()).ToBytes()));
    }

    [Fact]
    public void A_byte_order_mark_is_passed_over() =>
        Assert.Equal(3, NotebookReader.Read([0xEF, 0xBB, 0xBF, .. Bytes(Rich)]).Cells.Count);

    [Fact]
    public void Cells_tell_what_they_hold()
    {
        var cells = Read(Rich).Cells;
        Assert.Equal([CellKind.Markdown, CellKind.Raw, CellKind.Code], cells.Select(cell => cell.Kind));
        Assert.Equal("# Stall — 😀\n![](attachment:belt.png)", cells[0].Source);
        Assert.Equal(["parameters"], cells[2].Tags);
        Assert.Equal(3, cells[2].ExecutionCount);
        Assert.Equal(4, cells[2].Outputs.Count);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(4)]
    public void Older_minor_versions_are_given_identifiers_that_stay(int minor)
    {
        var text = $$"""
            {"nbformat": 4, "nbformat_minor": {{minor}}, "metadata": {}, "cells": [
              {"cell_type": "markdown", "metadata": {}, "source": "same"},
              {"cell_type": "markdown", "metadata": {}, "source": "same"},
              {"cell_type": "code", "metadata": {}, "source": ["a\n", "b"], "outputs": [], "execution_count": null}]}
            """;
        var first = Read(text);
        Assert.Equal(first.Cells.Select(cell => cell.Id), Read(text).Cells.Select(cell => cell.Id));
        Assert.Equal(3, first.Cells.Select(cell => cell.Id).Distinct().Count());
        Assert.Equal(5, first.Root["nbformat_minor"]!.GetValue<int>());
        var again = NotebookReader.Read(first.ToBytes());
        Assert.Equal(first.ToBytes(), again.ToBytes());
    }

    [Fact]
    public void A_later_minor_version_is_kept()
    {
        var read = Read("""{"nbformat": 4, "nbformat_minor": 7, "metadata": {}, "cells": [], "later": 1}""");
        Assert.Equal(7, read.Root["nbformat_minor"]!.GetValue<int>());
    }

    [Fact]
    public void A_changed_source_is_stored_as_lines()
    {
        var notebook = Read(Rich);
        notebook.Cells[2].Source = "a\n\nb";
        notebook.Cells[2].ClearOutputs();
        var again = NotebookReader.Read(notebook.ToBytes());
        Assert.Equal("""["a\n","\n","b"]""", again.Cells[2].Node["source"]!.ToJsonString());
        Assert.Null(again.Cells[2].ExecutionCount);
        Assert.Equal("a\n\nb", again.Cells[2].Source);
    }

    private const string Head = "{\"nbformat\": 4, \"nbformat_minor\": 5, \"metadata\": {}, \"cells\": ";
    private const string Code = "\"cell_type\": \"code\", \"metadata\": {}, \"source\": \"\", \"execution_count\": null";

    [Theory]
    [InlineData("", "is not JSON that can be read")]
    [InlineData("motor", "line 1, byte 1: is not JSON that can be read")]
    [InlineData("{\"nbformat\": 4,}", "is not JSON that can be read")]
    [InlineData("[1]", "holds a list; accepted: a JSON object with \"cells\"")]
    [InlineData("{}", "field \"nbformat\": is missing or null; accepted: the number 4")]
    [InlineData("{\"nbformat\": \"4\"}", "field \"nbformat\": is a string; accepted: the number 4")]
    [InlineData("{\"nbformat\": 3, \"worksheets\": []}", "field \"nbformat\": is 3; accepted: 4 (4.0 to 4.5). Open the notebook")]
    [InlineData("{\"nbformat\": 5, \"nbformat_minor\": 0}", "field \"nbformat\": is 5; accepted: 4 (4.0 to 4.5). It comes from a later")]
    [InlineData("{\"nbformat\": 4}", "field \"nbformat_minor\": is missing or null")]
    [InlineData("{\"nbformat\": 4, \"nbformat\": 4}", "is not JSON that can be read")]
    [InlineData("{\"nbformat\": 4, \"nbformat_minor\": 5, \"metadata\": {}}", "field \"cells\": is missing or null; accepted: a list of cells")]
    [InlineData("{\"nbformat\": 4, \"nbformat_minor\": 5, \"metadata\": [], \"cells\": []}", "field \"metadata\": is a list; accepted: an object")]
    [InlineData(Head + "{}}", "field \"cells\": is an object; accepted: a list of cells")]
    [InlineData(Head + "[1]}", "cell 1: is the number 1; accepted: an object")]
    [InlineData(Head + "[{\"id\": \"a\", \"cell_type\": \"heading\"}]}", "cell 1 (id \"a\"), field \"cell_type\": is \"heading\"; accepted: \"code\"")]
    [InlineData(Head + "[{\"id\": \"a b\", " + Code + "}]}", "cell 1, field \"id\": is \"a b\"; accepted: 1 to 64 letters")]
    [InlineData(Head + "[{\"id\": 7, " + Code + "}]}", "cell 1, field \"id\": is the number 7")]
    [InlineData(Head + "[{\"id\": \"a\", " + Code + "}, {\"id\": \"a\", " + Code + "}]}", "cell 2 (id \"a\"), field \"id\": is the same as that of cell 1")]
    [InlineData(Head + "[{\"cell_type\": \"raw\", \"source\": 5}]}", "cell 1, field \"source\": is the number 5; accepted: a string or a list of strings")]
    [InlineData(Head + "[{\"cell_type\": \"raw\", \"source\": [\"a\", 5]}]}", "cell 1, field \"source\": is a list; accepted: a string or a list of strings")]
    [InlineData(Head + "[{\"cell_type\": \"raw\", \"source\": \"\", \"metadata\": {\"tags\": \"parameters\"}}]}", "cell 1, field \"tags\": is \"parameters\"; accepted: a list of strings")]
    [InlineData(Head + "[{\"cell_type\": \"markdown\", \"source\": \"\", \"attachments\": {\"a\": 1}}]}", "field \"attachments\": is an object; accepted: an object of objects")]
    [InlineData(Head + "[{\"cell_type\": \"code\", \"source\": \"\", \"execution_count\": \"3\"}]}", "field \"execution_count\": is \"3\"; accepted: a whole number or null")]
    [InlineData(Head + "[{" + Code + ", \"outputs\": {}}]}", "cell 1, field \"outputs\": is an object; accepted: a list of outputs")]
    [InlineData(Head + "[{" + Code + ", \"outputs\": [{\"output_type\": \"picture\"}]}]}", "cell 1, output 1, field \"output_type\": is \"picture\"")]
    [InlineData(Head + "[{" + Code + ", \"outputs\": [{\"output_type\": \"stream\", \"name\": \"stdout\"}]}]}", "cell 1, output 1, field \"text\": is missing")]
    [InlineData(Head + "[{" + Code + ", \"outputs\": [{\"output_type\": \"error\", \"ename\": \"\", \"evalue\": \"\", \"traceback\": \"t\"}]}]}", "field \"traceback\": is \"t\"; accepted: a list of strings")]
    [InlineData(Head + "[{" + Code + ", \"outputs\": [{\"output_type\": \"display_data\", \"data\": {\"text/plain\": {}}}]}]}", "field \"data\": is an object; accepted: an object by MIME type")]
    [InlineData(Head + "[{\"cell_type\": \"raw\", \"source\": \"\\ud800\"}]}", "holds a string that is not text")]
    public void What_is_wrong_is_told_with_its_place(string text, string part)
    {
        var fault = Assert.Throws<NotebookFormatException>(() => Read(text));
        Assert.StartsWith("n.ipynb: ", fault.Message);
        Assert.Contains(part, fault.Message);
    }

    [Fact]
    public void Text_that_is_not_UTF8_is_refused() =>
        Assert.Contains("not UTF-8", Assert.Throws<NotebookFormatException>(() => NotebookReader.Read([0x7B, 0xFF, 0x7D])).Message);

    [Fact]
    public void Size_nesting_and_count_are_limited()
    {
        var small = new NotebookLimits(MostBytes: 100, MostDepth: 20, MostCells: 2);
        Assert.Contains("accepted: up to 100 bytes", Assert.Throws<NotebookFormatException>(() => Read(Rich, small)).Message);
        Assert.Contains("not JSON that can be read", Assert.Throws<NotebookFormatException>(
            () => Read(new string('[', 100_000))).Message);
        Assert.Contains("has 3 cells; accepted: up to 2", Assert.Throws<NotebookFormatException>(
            () => Read(Rich, small with { MostBytes = 10_000 })).Message);
    }

    [Fact]
    public void A_large_file_is_refused_before_it_is_read()
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory().FullName, "large.ipynb");
        using (var file = File.Create(path))
            file.SetLength(40L << 30); // sparse: 40 GiB that take no room
        var clock = Stopwatch.StartNew();
        Assert.StartsWith("large.ipynb: is 42949672960 bytes",
            Assert.Throws<NotebookFormatException>(() => NotebookReader.ReadFile(path)).Message);
        Assert.True(clock.ElapsedMilliseconds < 1000);
        File.Delete(path);
        Assert.Contains("there is no such file", Assert.Throws<NotebookFormatException>(() => NotebookReader.ReadFile(path)).Message);
    }

    [Fact]
    public void A_hundred_thousand_damaged_notebooks_crash_nothing()
    {
        var random = new Random(20240117);
        var (read, refused) = (0, 0);
        for (var round = 0; round < 100_000; round++)
        {
            var bytes = Mutation.Of(Bytes(Rich), random);
            try
            {
                var notebook = NotebookReader.Read(bytes);
                var written = notebook.ToBytes();
                Assert.Equal(written, NotebookReader.Read(written).ToBytes());
                foreach (var cell in notebook.Cells)
                    _ = (cell.Source, cell.Tags, cell.Outputs, cell.ExecutionCount, cell.Kind, cell.Id);
                read++;
            }
            catch (NotebookFormatException)
            {
                refused++;
            }
        }

        // Both happen often, or the test looks at nothing.
        Assert.True(read > 5_000 && refused > 5_000, $"{read} read, {refused} refused");
    }
}
