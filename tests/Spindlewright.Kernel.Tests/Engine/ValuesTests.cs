using Spindlewright.Kernel.Engine.Child;
using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Kernel.Tests.Engine;

/// <summary>The hook by which the program's own types are shown; it works on the state of the whole process.</summary>
public sealed class ValuesTests
{
    [Fact]
    public void Registered_types_are_shown_as_registered_and_as_plain_text()
    {
        Values.Reset([new Own()]);
        var bundle = Values.Bundle(new Derived("shaft"));
        Assert.Equal([MimeBundle.FigureRecord, "text/html", MimeBundle.PlainText], bundle.Data.Keys);
        Assert.Equal("{\"name\":\"shaft\"}", bundle.Find(MimeBundle.FigureRecord));
        Assert.Equal("<b>shaft</b>", bundle.Find("text/html"));
        Assert.Contains("shaft", bundle.Find(MimeBundle.PlainText));

        Values.Reset([]);
        Assert.Null(Values.Bundle(new Derived("shaft")).Find(MimeBundle.FigureRecord));
    }

    [Fact]
    public void Null_and_text_are_shown()
    {
        Assert.Equal("a", Values.Bundle("a").Find(MimeBundle.PlainText));
        Assert.Equal("<null>", Values.Bundle(null).Find(MimeBundle.PlainText));
    }

    private sealed class Own : IChildFormatters
    {
        public void Register(IFormatterRegistry registry)
        {
            registry.Add<Drawn>(MimeBundle.FigureRecord, drawn => $"{{\"name\":\"{drawn.Name}\"}}");
            registry.Add<Drawn>("text/html", drawn => $"<b>{drawn.Name}</b>");
        }
    }

    public record Drawn(string Name);

    public sealed record Derived(string Name) : Drawn(Name);
}
