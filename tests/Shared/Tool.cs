namespace Spindlewright.TestSupport;

/// <summary>Programs outside the project that some tests need.</summary>
internal static class Tool
{
    private const string Variable = "SPINDLEWRIGHT_REQUIRE";

    /// <summary>
    /// Skips the test where a program is absent; fails it instead where SPINDLEWRIGHT_REQUIRE names the program, so
    /// that a run meant to be whole cannot pass by skipping.
    /// </summary>
    /// <param name="name">The program, such as "chromium".</param>
    /// <param name="isThere">Whether it was found.</param>
    /// <param name="reason">Where it was looked for.</param>
    /// <param name="required">The programs that a run asks for; what SPINDLEWRIGHT_REQUIRE names unless given.</param>
    public static void Need(string name, bool isThere, string reason, string? required = null)
    {
        if (isThere) return;
        required ??= Environment.GetEnvironmentVariable(Variable) ?? "";
        if (required.Split([',', ' ', ';']).Contains(name, StringComparer.OrdinalIgnoreCase))
            Assert.Fail($"{Variable} asks for {name}: {reason}");
        Assert.Skip($"{name} is absent: {reason}");
    }
}
