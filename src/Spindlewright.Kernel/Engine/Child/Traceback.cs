using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Kernel.Engine.Child;

/// <summary>Tells errors in terms of cells and lines, without paths.</summary>
/// <remarks>
/// Frames outside cells are left out: which of them there are depends on what the runtime has inlined so far, so that
/// the same error would read differently in a child that has run for a while.
/// </remarks>
internal static partial class Traceback
{
    /// <summary>The file name under which a cell is compiled, and by which its frames are recognised.</summary>
    internal static string CellName(int cell) => string.Create(CultureInfo.InvariantCulture, $"cell [{cell}]");

    /// <summary>An error that code raised as it ran.</summary>
    internal static ErrorEvent Of(long request, Exception fault, string directory)
    {
        var lines = new List<string>();
        (int Cell, int Line)? place = null;
        for (var each = fault; each is not null; each = each.InnerException)
        {
            var lead = lines.Count == 0 ? "" : "because of ";
            lines.Add($"{lead}{each.GetType().Name}: {StripPath(each.Message, directory)}");
            (int Cell, int Line)? own = null;
            foreach (var frame in new StackTrace(each, fNeedFileInfo: true).GetFrames())
            {
                if (CellOf(frame) is { } at)
                {
                    own ??= at;
                    lines.Add($"   {CellName(at.Cell)}, line {at.Line.ToString(CultureInfo.InvariantCulture)}{Function(frame)}");
                }
            }

            // The innermost cause that happened in a cell is the place to look at.
            place = own ?? place;
        }

        return new ErrorEvent(
            request, fault.GetType().Name, StripPath(fault.Message, directory), lines, place?.Cell, place?.Line);
    }

    /// <summary>Code that does not compile.</summary>
    internal static ErrorEvent Of(long request, int cell, IEnumerable<Diagnostic> diagnostics)
    {
        var errors = diagnostics.Where(each => each.Severity == DiagnosticSeverity.Error).ToList();
        var lines = errors.ConvertAll(each => Tell(cell, each));
        int? line = errors.Count > 0 ? errors[0].Location.GetLineSpan().StartLinePosition.Line + 1 : null;
        var message = lines.Count > 0 ? lines[0] : "The code does not compile.";
        return new ErrorEvent(request, "CompilationError", message, lines, cell, line);
    }

    /// <summary>The compiler's errors and warnings as data.</summary>
    internal static IReadOnlyList<CodeDiagnostic> Items(IEnumerable<Diagnostic> diagnostics) =>
    [
        .. diagnostics.Where(each => each.Severity >= DiagnosticSeverity.Warning).Select(each =>
        {
            var span = each.Location.GetLineSpan().Span;
            return new CodeDiagnostic(
                each.Severity == DiagnosticSeverity.Error ? "error" : "warning", each.Id,
                each.GetMessage(CultureInfo.InvariantCulture),
                span.Start.Line, span.Start.Character, span.End.Line, span.End.Character);
        }),
    ];

    private static string Tell(int cell, Diagnostic diagnostic)
    {
        var start = diagnostic.Location.GetLineSpan().StartLinePosition;
        return string.Create(CultureInfo.InvariantCulture,
            $"{CellName(cell)}, line {start.Line + 1}, column {start.Character + 1}: {diagnostic.Id}: {diagnostic.GetMessage(CultureInfo.InvariantCulture)}");
    }

    private static (int Cell, int Line)? CellOf(StackFrame frame)
    {
        var match = CellFile().Match(frame.GetFileName() ?? "");
        return match.Success
            ? (int.Parse(match.Groups[1].ValueSpan, CultureInfo.InvariantCulture), frame.GetFileLineNumber())
            : null;
    }

    /// <summary>The name of the function in the cell; empty for the cell's own statements.</summary>
    private static string Function(StackFrame frame)
    {
        var method = frame.GetMethod();
        var name = method?.Name == "MoveNext" ? method.DeclaringType?.Name : method?.Name;
        var match = WrittenName().Match(name ?? "");
        var written = match.Success ? match.Groups[1].Value : name ?? "";
        return written.Length == 0 || written.StartsWith('<') || written.Contains("Initialize", StringComparison.Ordinal)
            ? "" : $", in {written}";
    }

    /// <summary>Messages of file errors hold the whole path; the part that is the session's folder says nothing.</summary>
    private static string StripPath(string message, string directory) =>
        directory.Length > 1 ? message.Replace($"{directory}{Path.DirectorySeparatorChar}", "", StringComparison.Ordinal) : message;

    [GeneratedRegex(@"cell \[(\d+)\]$")]
    private static partial Regex CellFile();

    [GeneratedRegex(@"^<(?:<[^>]*>g__)?([^>|]*)")]
    private static partial Regex WrittenName();
}
