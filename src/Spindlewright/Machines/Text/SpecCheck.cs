using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;

namespace Spindlewright.Machines.Text;

/// <summary>Holds the tables of a text against the declared sections, reading every value on the way.</summary>
internal sealed class SpecCheck
{
    private const int MostNamesListed = 12;

    private readonly MachineText _text;
    private readonly SectionSpec _root;

    private SpecCheck(MachineText text, SectionSpec root) => (_text, _root) = (text, root);

    /// <summary>Fills the sections of a text and collects its faults.</summary>
    /// <param name="text">The text.</param>
    /// <param name="table">Its tables.</param>
    public static void Fill(MachineText text, TableNode table) =>
        new SpecCheck(text, text.Root.Spec).Fill(text.Root, table);

    private void Fill(Section section, TableNode table)
    {
        foreach (var entry in table.Entries)
        {
            var key = section.Spec.Keys.FirstOrDefault(spec => spec.Name == entry.Name);
            var inner = section.Spec.Sections.FirstOrDefault(spec => spec.Name == entry.Name);
            if (key is not null) section.Keep(key, key.AnyForm.ReadBoxed(entry.Value, Sink(section, key.Name)));
            else if (inner is not null) FillSection(section, inner, entry);
            else if (_text.SyntaxIsClean) Unknown(section, entry);
        }
        if (_text.SyntaxIsClean) Missing(section, table);
    }

    private void FillSection(Section parent, SectionSpec spec, Entry entry)
    {
        switch (entry.Value)
        {
            case TableNode table when !spec.Repeats:
                Open(parent, spec, table);
                break;
            case ListNode list when spec.Repeats && list.Items.All(item => item is TableNode):
                for (var i = 0; i < list.Items.Count; i++)
                    Open(parent, spec, (TableNode)list.Items[i], i + 1);
                break;
            default:
                var header = spec.Header(parent.SpecPath);
                Sink(parent, spec.Name).Add(entry.Place, entry.Value.Described, $"a section {header}", spec.Repeats
                    ? $"this section may stand several times; write it as {header} with its keys below"
                    : $"this section stands once; write it as {header} with its keys below");
                parent.MarkFaulty();
                break;
        }
    }

    private void Open(Section parent, SectionSpec spec, TableNode table, int number = 0)
    {
        var section = new Section(_text, spec, parent, table, number);
        parent.Keep(section);
        Fill(section, table);
    }

    private void Missing(Section section, TableNode table)
    {
        foreach (var key in section.Spec.Keys)
            if (key.Required && table.Find(key.Name) is null)
            {
                Sink(section, key.Name).Add(
                    section.Place, "", key.AnyForm.Accepted, $"the key is missing; write {key.Name} = {key.Example}");
                section.MarkFaulty();
            }
        foreach (var inner in section.Spec.Sections)
            if (inner.Required && table.Find(inner.Name) is null)
            {
                var header = inner.Header(section.SpecPath);
                Sink(section, inner.Name).Add(section.Place, "", header, $"the section {header} is missing");
                section.MarkFaulty();
            }
    }

    private void Unknown(Section section, Entry entry)
    {
        section.MarkFaulty();
        var names = section.Spec.Keys.Select(key => key.Name)
            .Concat(section.Spec.Sections.Select(inner => inner.Name)).ToList();
        var (sort, where) = (entry.Value is TableNode or ListNode { Items: [TableNode, ..] } ? "section" : "key",
            section.Path.Length == 0 ? "here" : $"in {section.Spec.Header(ParentOf(section.SpecPath))}");
        var near = NearestName.Of(entry.Name, names);
        var home = near is null ? Home(entry.Name, sort) : null;
        var advice = near is not null ? $"; did you mean {near}?" : home is not null ? $"; it belongs in {home}" : "";
        Sink(section, Printable.Of(entry.Name)).Add(
            entry.Place, entry.Name, Listed(names), $"the {sort} {Printable.Of(entry.Name)} is not known {where}{advice}");
    }

    /// <summary>The header of the first section that knows a name; null where none does.</summary>
    private string? Home(string name, string sort)
    {
        foreach (var (spec, parent) in Everywhere(_root, ""))
        {
            if (sort == "key" && spec.Name.Length > 0 && spec.Keys.Any(key => key.Name == name)) return spec.Header(parent);
            if (sort == "section" && spec.Name.Length > 0 && spec.Sections.Any(inner => inner.Name == name))
                return spec.Header(parent);
        }
        return null;
    }

    private static IEnumerable<(SectionSpec Spec, string Parent)> Everywhere(SectionSpec spec, string parent)
    {
        yield return (spec, parent);
        foreach (var inner in spec.Sections)
            foreach (var found in Everywhere(inner, spec.PathIn(parent)))
                yield return found;
    }

    private static string Listed(List<string> names) => names.Count <= MostNamesListed ? string.Join(", ", names)
        : $"{string.Join(", ", names.Take(MostNamesListed))} and others";

    private static string ParentOf(string path) =>
        path.LastIndexOf('.') is var dot and >= 0 ? path[..dot] : "";

    private FaultSink Sink(Section section, string name) => new(_text.Faults, PathIn(section, name));

    private static string PathIn(Section section, string name) =>
        section.Path.Length == 0 ? name : $"{section.Path}.{name}";
}
