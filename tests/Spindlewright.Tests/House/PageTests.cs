using Spindlewright.Machines;
using Spindlewright.Machines.Text;

namespace Spindlewright.Tests.House;

/// <summary>Generated pages equal what is generated.</summary>
public class PageTests
{
    [Fact]
    public void The_reference_of_the_machine_file_is_current() =>
        Repository.PageIsCurrent("docs/machine-file.md", SpecPage.Markdown(MachineFile.Spec));
}
