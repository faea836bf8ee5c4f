using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Spindlewright.Checks;
using Spindlewright.Figures;
using Spindlewright.Figures.Html;
using Spindlewright.Figures.Interactive;
using Spindlewright.Figures.Recipes;
using Spindlewright.Figures.Sheets;
using Spindlewright.Figures.Svg;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Kernel.Commands;
using Spindlewright.Kernel.Showing;
using Spindlewright.Notebooks.Format;
using Spindlewright.Studies;
using Spindlewright.Studies.Results;

namespace Spindlewright.Kernel.Report;

/// <summary>One file of the output folder.</summary>
/// <param name="Name">Relative to the folder, with forward slashes.</param>
/// <param name="Bytes">Its whole content.</param>
internal sealed record ReportFile(string Name, byte[] Bytes);

/// <summary>Makes every file of a report, and writes them so that a reader never meets half of one.</summary>
internal static class ReportFiles
{
    private const string ProvenanceName = "provenance.json";

    /// <summary>Makes the files of a report, the machine file among them.</summary>
    /// <param name="input">The machine file.</param>
    /// <param name="results">The results of all studies.</param>
    /// <param name="verdicts">The published checks.</param>
    /// <param name="handbook">Tables.</param>
    /// <param name="links">Pages beside the report.</param>
    /// <returns>The files, <c>index.html</c> first.</returns>
    internal static ImmutableArray<ReportFile> Of(
        MachineInput input, StudyResults results, IReadOnlyList<Verdict> verdicts, Handbook handbook,
        IReadOnlyList<ReportLink> links)
    {
        var figures = StudyFigures.Catalogue.MakeAll(results);
        List<string> leftOut = [];
        var sheets = WallSheets.All(results, handbook, fault => leftOut.Add(fault.Message));
        var page = new ReportPage(
            results, figures, StudyTables.All(results), verdicts, handbook, links, SheetFiles.Section(sheets, leftOut)).Write();
        return
        [
            Text("index.html", page),
            Machine(input),
            new("results.json", StableJson.Write(ResultsDocument.Of(results))),
            .. figures.Select(figure => Text($"figures/{figure.Id}.svg", SvgWriter.Write(figure))),
            .. SheetFiles.Of(sheets),
            Text("plotly-licence.txt", PlotlyScript.Licence),
        ];
    }

    /// <summary>The machine file, laid where the cells of notebooks look for it.</summary>
    internal static ReportFile Machine(MachineInput input) => new(Workbook.MachineFileName, input.Bytes);

    /// <summary>Writes the files one by one, each whole, and last of all what they came from.</summary>
    /// <param name="folder">The output folder; made where it is missing.</param>
    /// <param name="files">The files.</param>
    /// <param name="input">The machine file.</param>
    internal static void Write(string folder, IReadOnlyList<ReportFile> files, MachineInput input)
    {
        foreach (var file in files) AtomicFile.Write(Path.Combine(folder, file.Name), file.Bytes);
        var hashes = new JsonObject([.. files.Select(file => KeyValuePair.Create<string, JsonNode?>(file.Name, Hash(file.Bytes)))]);
        var provenance = new JsonObject
        {
            ["program"] = "Spindlewright",
            ["version"] = typeof(StudyResults).Assembly.GetName().Version!.ToString(3),
            ["runtime"] = Environment.Version.ToString(),
            ["operating_system"] = Environment.OSVersion.Platform.ToString(),
            ["written_utc"] = DateTime.UtcNow.ToString("yyyy-MM-ddTHH:mm:ssZ", System.Globalization.CultureInfo.InvariantCulture),
            ["machine_file"] = new JsonObject { ["name"] = input.Name, ["sha256"] = Hash(input.Bytes) },
            ["files_sha256"] = hashes,
        };
        AtomicFile.Write(Path.Combine(folder, ProvenanceName), StableJson.Write(provenance));
    }

    private static ReportFile Text(string name, string text) => new(name, Encoding.UTF8.GetBytes(text));

    private static string Hash(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}
