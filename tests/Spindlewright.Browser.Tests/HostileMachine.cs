namespace Spindlewright.Browser.Tests;

/// <summary>A machine file whose texts would do something if any writer let them through unescaped.</summary>
internal static class HostileMachine
{
    public const string Name = "hostile";
    public const string Title = "<script>alert(1)</script>";
    public const string Image = "</title><img src=x onerror=alert(2)>";
    public const string Template = "<b>bold</b> %{x} $y$ &amp;";
    public const string Work = "</svg><svg onload=alert(3)>";
    public const string Found = "</script><i>found</i> ]]> {{1+1}}";

    public static IReadOnlyList<string> Texts { get; } = [Title, Image, Template, Work, Found];

    public static string Text()
    {
        var text = File.ReadAllText(Repository.File("data/machines/boatyard-fittings-bench.toml"));
        foreach (var (old, hostile) in new[]
        {
            ("title = \"Boatyard fittings bench\"", $"title = \"{Title}\""),
            ("name = \"1\"", $"name = \"{Image}\""),
            ("name = \"2\"", $"name = \"{Template}\""),
            ("name = \"cleat bolt holes in bronze\"", $"name = \"{Work}\""),
            ("description = \"single-phase motor, fixed speed, same pulleys\"", $"description = \"{Found}\""),
        })
        {
            Assert.Contains(old, text, StringComparison.Ordinal);
            text = text.Replace(old, hostile, StringComparison.Ordinal);
        }
        return text;
    }
}
