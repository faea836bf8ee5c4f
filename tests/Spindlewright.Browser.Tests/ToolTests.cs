namespace Spindlewright.Browser.Tests;

/// <summary>A test whose program is absent skips, unless the run asks for the program.</summary>
public class ToolTests
{
    [Fact]
    public void A_program_that_is_there_lets_the_test_go_on() => Tool.Need("chromium", true, "found", "chromium");

    [Fact]
    public void An_absent_program_skips_the_test_with_the_reason()
    {
        var skipped = Outcome("jupyter");
        Assert.StartsWith("$XunitDynamicSkip$", skipped.Message, StringComparison.Ordinal);
        Assert.EndsWith("chromium is absent: no such file", skipped.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_absent_program_that_is_asked_for_fails_the_test()
    {
        var failed = Outcome("jupyter,chromium");
        Assert.StartsWith("SPINDLEWRIGHT_REQUIRE asks for chromium", failed.Message, StringComparison.Ordinal);
    }

    /// <summary>How an absent program ends a test. xunit's own recorders let a skip through, which would skip this one.</summary>
    private static Exception Outcome(string required)
    {
        try
        {
            Tool.Need("chromium", false, "no such file", required);
        }
        catch (Exception ended)
        {
            return ended;
        }
        throw new InvalidOperationException("the test went on without its program");
    }
}
