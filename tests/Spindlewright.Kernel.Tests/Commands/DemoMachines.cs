using Spindlewright.Foundations.Tables;

namespace Spindlewright.Kernel.Tests.Commands;

/// <summary>The demo machines that come with the project, for tests that change one line of them.</summary>
internal static class DemoMachines
{
    internal static IReadOnlyList<string> Names { get; } =
        ["boatyard-fittings-bench", "school-workshop", "measured-six-pole-bench"];

    internal static string Text(string name) => EmbeddedTables.Read($"data/machines/{name}.toml");

    /// <summary>The boatyard bench with one text replaced; the replaced text must be there.</summary>
    internal static string Boatyard(string replace, string with)
    {
        var text = Text(Names[0]);
        Assert.Contains(replace, text, StringComparison.Ordinal);
        return text.Replace(replace, with, StringComparison.Ordinal);
    }
}
