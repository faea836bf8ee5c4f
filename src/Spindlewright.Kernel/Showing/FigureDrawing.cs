using Spindlewright.Figures;
using Spindlewright.Figures.Html;
using Spindlewright.Figures.Svg;
using Spindlewright.Figures.Wording;
using Spindlewright.Foundations;
using Spindlewright.Notebooks.Protocol;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Showing;

/// <summary>Draws the figure records that a child sends: as a page fragment, as a picture and in words.</summary>
/// <remarks>The child sends what is shown; the parent, which code in a cell cannot touch, decides how.</remarks>
internal sealed class FigureDrawing : IOutputTransformer
{
    internal const string Svg = "image/svg+xml";
    internal const string Html = "text/html";

    /// <inheritdoc/>
    public MimeBundle Transform(MimeBundle bundle)
    {
        if (bundle.Find(MimeBundle.FigureRecord) is not { } record) return bundle;
        try
        {
            var figure = FigureJson.ReadFigure(record);
            return new(new Dictionary<string, string>
            {
                [Html] = FigureHtml.Write(figure),
                [Svg] = SvgWriter.Write(figure),
                [MimeBundle.PlainText] = FigureText.Plain(figure),
            });
        }
        catch (Exception fault) when (fault is PartException or FormatException or System.Text.Json.JsonException)
        {
            return MimeBundle.Plain($"The figure's record cannot be drawn: {fault.Message}");
        }
    }
}
