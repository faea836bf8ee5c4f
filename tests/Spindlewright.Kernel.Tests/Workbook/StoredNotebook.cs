using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Spindlewright.Notebooks.Format;

namespace Spindlewright.Kernel.Tests.Workbook;

/// <summary>An executed notebook as the repository keeps it, and how two of them are compared.</summary>
internal static partial class StoredNotebook
{
    /// <summary>
    /// Relative. Another processor or mathematical library differs in the last of sixteen digits, which some thousand
    /// operations raise to no more than 1e-12; no printed digit, of at most six, hides in what is left.
    /// </summary>
    internal const double Tolerance = 1e-9;

    /// <summary>Drawings hold millimetres with two decimals: one unit of the last, where bytes are not promised.</summary>
    private const double DrawingTolerance = 0.0101;

    private const string Svg = "image/svg+xml";

    private static readonly bool IsWhereStored =
        OperatingSystem.IsLinux() && RuntimeInformation.ProcessArchitecture == Architecture.X64;

    /// <summary>
    /// Takes away the HTML wherever a drawing or plain text says the same: a forge shows those two, and they change
    /// only where the result does.
    /// </summary>
    internal static Notebook Of(Notebook executed)
    {
        var stored = executed.Copy();
        foreach (var data in stored.Cells.SelectMany(cell => cell.Outputs).Select(output => output!["data"]).OfType<JsonObject>())
            if (data.ContainsKey(Svg) || data.ContainsKey("text/plain"))
                data.Remove("text/html");
        return stored;
    }

    /// <summary>Says in what two notebooks differ: text exactly, numbers to the tolerance, drawings to the byte.</summary>
    internal static IEnumerable<string> Differences(Notebook stored, Notebook executed)
    {
        if (stored.Cells.Count != executed.Cells.Count)
            return [$"{stored.Name}: {stored.Cells.Count} cells stored, {executed.Cells.Count} executed"];
        return stored.Cells.Zip(executed.Cells).SelectMany(pair => Differences(stored.Name, pair.First, pair.Second));
    }

    /// <summary>Whether two texts are the same but for numbers that differ by no more than a share of their size.</summary>
    internal static bool ReadsAlike(string one, string other, double relative, double absolute = 0)
    {
        if (Number().Replace(one, "#") != Number().Replace(other, "#"))
            return false;
        return Number().Matches(one).Zip(Number().Matches(other)).All(pair => Close(pair.First.ValueSpan, pair.Second.ValueSpan));

        bool Close(ReadOnlySpan<char> first, ReadOnlySpan<char> second)
        {
            var (a, b) = (double.Parse(first, CultureInfo.InvariantCulture), double.Parse(second, CultureInfo.InvariantCulture));
            return Math.Abs(a - b) <= Math.Max(absolute, relative * Math.Max(Math.Abs(a), Math.Abs(b)));
        }
    }

    private static IEnumerable<string> Differences(string notebook, Cell stored, Cell executed)
    {
        if (stored.Source != executed.Source || stored.ExecutionCount != executed.ExecutionCount
            || stored.Outputs.Count != executed.Outputs.Count)
            return [$"{notebook}: {stored}: other source, number or count of outputs"];
        return stored.Outputs.Zip(executed.Outputs)
            .Where(pair => !AreAlike(pair.First!.AsObject(), pair.Second!.AsObject()))
            .Select(pair => $"{notebook}: {stored}: stored {pair.First!.ToJsonString()}, executed {pair.Second!.ToJsonString()}");
    }

    private static bool AreAlike(JsonObject stored, JsonObject executed)
    {
        var (one, other) = (Drawing(stored), Drawing(executed));
        return (IsWhereStored ? one == other : ReadsAlike(one, other, 0, DrawingTolerance))
            && ReadsAlike(WithoutDrawing(stored), WithoutDrawing(executed), Tolerance);
    }

    private static string Drawing(JsonObject output) => MultilineText.Join(output["data"]?[Svg] ?? "");

    private static string WithoutDrawing(JsonObject output)
    {
        var copy = output.DeepClone();
        (copy["data"] as JsonObject)?.Remove(Svg);
        return copy.ToJsonString();
    }

    [GeneratedRegex(@"(?<![\w.])-?\d+(\.\d+)?([eE][+-]?\d+)?")]
    private static partial Regex Number();
}
