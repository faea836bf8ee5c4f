using System.Text.RegularExpressions;
using Spindlewright.Machines.Text;

namespace Spindlewright.Tests.MachineText;

/// <summary>What is generated from declarations.</summary>
public class SpecOutputTests
{
    [Fact]
    public void The_template_reads_without_faults_as_it_is_and_with_every_option_taken()
    {
        var template = SpecTemplate.Toml(BenchSpec.Root, "First line.\nSecond line.");
        Assert.StartsWith("# First line.\n# Second line.\n", template, StringComparison.Ordinal);
        Assert.Empty(BenchSpec.Read(template).Faults.Lines());
        var full = Regex.Replace(template, @"^# (\[+[a-z.]+\]+|[a-z0-9_]+ = .*)$", "$1", RegexOptions.Multiline);
        var read = BenchSpec.Read(full);
        Assert.Empty(read.Faults.Lines());
        Assert.All(BenchSpec.Motor.Keys, key => Assert.True(read.Root.Only(BenchSpec.Motor)!.Has(key)));
        Assert.Single(read.Root.Each(BenchSpec.Belt));
    }

    [Fact]
    public void The_template_tells_both_sides_of_a_default()
    {
        Assert.Contains(
            "# Friction at the shaft. Left out: \"0.2 N·m\" for what it will drill, \"0 N·m\" for what a hand could\n# meet.\n"
            + "# friction = \"0.05 N·m\"\n",
            SpecTemplate.Toml(BenchSpec.Root), StringComparison.Ordinal);
    }

    [Fact]
    public void The_reference_page_has_a_row_for_every_key_with_its_default_and_provenance()
    {
        var page = SpecPage.Markdown(BenchSpec.Root);
        Assert.Contains("## `[motor.circuit]`\n", page, StringComparison.Ordinal);
        Assert.Contains("## `[[belt]]`\n", page, StringComparison.Ordinal);
        Assert.Contains("| `rated_power` | Shaft power on the plate | power | required | `\"0.75 kW\"` |\n", page,
            StringComparison.Ordinal);
        Assert.Contains(
            "\"0.2 N·m\" (capability), \"0 N·m\" (hazard): own choice; wide on purpose", page, StringComparison.Ordinal);
    }
}
