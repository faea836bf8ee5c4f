using System.Text;

namespace Spindlewright.Machines.Text;

/// <summary>Writes a commented text to start from, out of the declared sections.</summary>
public static class SpecTemplate
{
    private const int Width = 100;

    /// <summary>The text: required keys and those shown in templates with their examples, the others behind a # with what holds without them.</summary>
    /// <param name="root">The declaration of the whole text.</param>
    /// <param name="opening">Lines that stand first, as remarks.</param>
    /// <returns>TOML with LF line ends.</returns>
    public static string Toml(SectionSpec root, string opening = "")
    {
        ArgumentNullException.ThrowIfNull(root);
        var text = new StringBuilder();
        Remark(text, opening);
        Add(text, root, "");
        return text.ToString().TrimEnd('\n') + "\n";
    }

    private static void Add(StringBuilder text, SectionSpec spec, string parent)
    {
        if (text.Length > 0) text.Append('\n');
        Remark(text, spec.Meaning.Length == 0 ? "" : $"{spec.Meaning}.");
        // An optional section is shown behind a # as a whole, since its header alone would ask for its required keys.
        var mark = spec.Required || spec.Name.Length == 0 ? "" : "# ";
        if (spec.Name.Length > 0) text.Append(mark).Append(spec.Header(parent)).Append('\n');
        foreach (var key in spec.Keys)
        {
            Remark(text, Words(key));
            text.Append(key.Required || key.ShownInTemplate ? mark : "# ").Append(key.Name).Append(" = ").Append(key.Example).Append('\n');
        }
        foreach (var inner in spec.Sections) Add(text, inner, spec.PathIn(parent));
    }

    private static string Words(KeySpec key)
    {
        var words = $"{key.Meaning}.";
        if (key.DefaultText is { } pair)
            words += pair.Capability == pair.Hazard ? $" Left out: {pair.Capability}."
                : $" Left out: {pair.Capability} for what it will drill, {pair.Hazard} for what a hand could meet.";
        else if (key.DefaultInWords.Length > 0) words += $" Left out: {key.DefaultInWords}.";
        return words;
    }

    private static void Remark(StringBuilder text, string words)
    {
        foreach (var paragraph in words.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            var line = new StringBuilder("#");
            foreach (var word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                if (line.Length + word.Length >= Width)
                {
                    text.Append(line).Append('\n');
                    line.Clear().Append('#');
                }
                line.Append(' ').Append(word);
            }
            text.Append(line).Append('\n');
        }
    }
}
