using Spindlewright.Foundations.Reading;

namespace Spindlewright.Tests.Reading;

/// <summary>The reference page of units.</summary>
public class UnitsPageTests
{
    [Fact]
    public void The_page_in_docs_is_the_generated_one() =>
        Repository.PageIsCurrent("docs/units.md", UnitsPage.Markdown());
}
