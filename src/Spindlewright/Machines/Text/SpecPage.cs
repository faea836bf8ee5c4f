using System.Globalization;
using System.Text;
using Spindlewright.Foundations;

namespace Spindlewright.Machines.Text;

/// <summary>Prints the declared sections as a reference page.</summary>
public static class SpecPage
{
    /// <summary>The sections and their keys, one table a section.</summary>
    /// <param name="root">The declaration of the whole text.</param>
    /// <returns>Markdown with LF line ends, without a title.</returns>
    public static string Markdown(SectionSpec root)
    {
        ArgumentNullException.ThrowIfNull(root);
        var page = new StringBuilder();
        Add(page, root, "");
        return page.ToString();
    }

    private static void Add(StringBuilder page, SectionSpec spec, string parent)
    {
        page.Append(CultureInfo.InvariantCulture,
            $"## {(spec.Name.Length == 0 ? "Before the first section" : $"`{spec.Header(parent)}`")}\n\n");
        var times = spec.Repeats ? " It may stand several times." : "";
        var need = spec.Name.Length == 0 ? "" : spec.Required ? " Required." : " May be left out.";
        page.Append(CultureInfo.InvariantCulture, $"{spec.Meaning}.{need}{times}\n\n");
        if (spec.Keys.Count > 0)
            page.Append("| key | meaning | written as | left out | example |\n| --- | --- | --- | --- | --- |\n");
        foreach (var key in spec.Keys)
            page.Append(CultureInfo.InvariantCulture,
                $"| `{key.Name}` | {Cell(key.Meaning)} | {Cell(key.AnyForm.Name)} | {Cell(LeftOut(key))} | ")
                .Append(CultureInfo.InvariantCulture, $"`{Cell(key.Example)}` |\n");
        if (spec.Keys.Count > 0) page.Append('\n');
        foreach (var inner in spec.Sections) Add(page, inner, spec.PathIn(parent));
    }

    private static string LeftOut(KeySpec key)
    {
        if (key.Required) return "required";
        if (key.DefaultText is not { } pair) return key.DefaultInWords;
        var values = pair.Capability == pair.Hazard ? pair.Capability
            : $"{pair.Capability} (capability), {pair.Hazard} (hazard)";
        var source = pair.Source.Length == 0 ? "" : $", {pair.Source}";
        var note = pair.Note.Length == 0 ? "" : $"; {pair.Note}";
        return $"{values}: {pair.Provenance.InWords()}{source}{note}";
    }

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);
}
