using System.Globalization;
using Spindlewright.Figures;
using Spindlewright.Figures.Html;
using Spindlewright.Figures.Recipes;
using Spindlewright.Figures.Wording;
using Spindlewright.Foundations.Reading;
using Spindlewright.Kernel.Engine.Child;
using Spindlewright.Motors;
using Spindlewright.Notebooks.Protocol;
using Spindlewright.Studies;
using Spindlewright.Studies.Findings;
using UnitsNet;
using P = global::Plotly.NET;

namespace Spindlewright.Kernel.Showing;

/// <summary>How quantities, results, tables and figures look below a cell.</summary>
public sealed class DomainFormatters : IChildFormatters
{
    private const string PlainText = MimeBundle.PlainText;
    private const string Html = "text/html";

    private int charts;

    /// <inheritdoc/>
    public void Register(IFormatterRegistry registry)
    {
        // A session begins: a reader's own charts are counted from one again, so that their ids are stable.
        charts = 0;
        registry.Add<Figure>(MimeBundle.FigureRecord, FigureJson.Write);
        registry.Add<Figure>(PlainText, FigureText.Plain);
        Tabular<Table>(registry, table => table);
        Tabular<OperatingPoint>(registry, OperatingPointTable.Of);
        registry.Add<P.GenericChart>(Html, chart => ChartHtml.Write(chart, $"own-chart-{++charts}"));
        registry.Add<P.GenericChart>(PlainText, _ => "An interactive chart.");
        registry.Add<CautionSection>(Html, CautionHtml.Section);
        registry.Add<CautionSection>(PlainText, section => string.Join('\n', [section.Title, .. section.Lines.Select(line => $"- {line}")]));
        registry.Add<Finding>(PlainText, finding => $"{finding.Title}: {finding.Text}");
        Quantities(registry);
    }

    private static void Tabular<T>(IFormatterRegistry registry, Func<T, Table> table)
    {
        registry.Add<T>(Html, value => TableHtml.Write(table(value)));
        registry.Add<T>(PlainText, value => TableText.Write(table(value)));
    }

    private static void Quantities(IFormatterRegistry registry)
    {
        // A kind of quantity that this project has no spelling for keeps the unit it came in.
        registry.Add<IQuantity>(PlainText, value => value.ToString(null, CultureInfo.InvariantCulture));
        Quantity(registry, QuantityKinds.Power);
        Quantity(registry, QuantityKinds.Energy);
        Quantity(registry, QuantityKinds.Voltage);
        Quantity(registry, QuantityKinds.Current);
        Quantity(registry, QuantityKinds.Frequency);
        Quantity(registry, QuantityKinds.Resistance);
        Quantity(registry, QuantityKinds.RotationalSpeed);
        Quantity(registry, QuantityKinds.Torque);
        Quantity(registry, QuantityKinds.MomentOfInertia);
        Quantity(registry, QuantityKinds.Force);
        Quantity(registry, QuantityKinds.Mass);
        Quantity(registry, QuantityKinds.Length);
        Quantity(registry, QuantityKinds.Angle);
        Quantity(registry, QuantityKinds.Speed);
        Quantity(registry, QuantityKinds.Temperature);
        Quantity(registry, QuantityKinds.TemperatureRise);
        Quantity(registry, QuantityKinds.Duration);
        Quantity(registry, QuantityKinds.Ratio);
    }

    private static void Quantity<T>(IFormatterRegistry registry, QuantityKind<T> kind) where T : struct, IQuantity =>
        registry.Add<T>(PlainText, value => QuantityWriter.Write(value, kind));
}
