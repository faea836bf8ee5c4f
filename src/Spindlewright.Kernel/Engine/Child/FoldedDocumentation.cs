using System.Globalization;
using System.Reflection;
using System.Xml;
using System.Xml.Linq;
using Microsoft.CodeAnalysis;

namespace Spindlewright.Kernel.Engine.Child;

/// <summary>What an assembly's documentation file says, with everything folded into the summary.</summary>
/// <remarks>
/// Language help shows nothing but the summary of a member. Units and ranges stand with the parameters, equations,
/// validity and sources in the remarks: that is what a person in front of a notebook wants to know.
/// </remarks>
internal sealed class FoldedDocumentation : DocumentationProvider
{
    private readonly string file;
    private readonly Lazy<Dictionary<string, string>> members;

    private FoldedDocumentation(string file)
    {
        this.file = file;
        members = new(() => Read(file));
    }

    /// <summary>The documentation beside an assembly; empty where there is none.</summary>
    internal static DocumentationProvider Of(Assembly assembly)
    {
        var file = Path.ChangeExtension(assembly.Location, ".xml");
        return File.Exists(file) ? new FoldedDocumentation(file) : Default;
    }

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is FoldedDocumentation other && other.file == file;

    /// <inheritdoc/>
    public override int GetHashCode() => file.GetHashCode(StringComparison.Ordinal);

    /// <inheritdoc/>
    protected override string? GetDocumentationForSymbol(
        string documentationMemberID, CultureInfo preferredCulture, CancellationToken cancellationToken = default) =>
        members.Value.GetValueOrDefault(documentationMemberID);

    private static Dictionary<string, string> Read(string file)
    {
        try
        {
            var members = XDocument.Load(file, LoadOptions.PreserveWhitespace).Descendants("member");
            return members.Where(member => member.Attribute("name") is not null)
                .GroupBy(member => member.Attribute("name")!.Value)
                .ToDictionary(group => group.Key, group => Folded(group.First()));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or XmlException)
        {
            return []; // Help without words is better than no help.
        }
    }

    private static string Folded(XElement member)
    {
        var summary = member.Element("summary") is { } told ? new XElement(told) : new XElement("summary");
        foreach (var one in member.Elements("param"))
            Add(summary, $"{one.Attribute("name")?.Value}: ", one);
        if (member.Element("returns") is { } returns)
            Add(summary, "Returns: ", returns);
        foreach (var one in member.Elements("exception"))
            Add(summary, $"Raises {LastName(one.Attribute("cref")?.Value ?? "")}: ", one);
        if (member.Element("remarks") is { } remarks)
            Add(summary, "", remarks);
        return summary.ToString(SaveOptions.DisableFormatting);
    }

    private static void Add(XElement summary, string lead, XElement part) =>
        summary.Add(new XElement("para", lead, part.Nodes()));

    private static string LastName(string reference) => reference[(reference.LastIndexOf('.') + 1)..];
}
