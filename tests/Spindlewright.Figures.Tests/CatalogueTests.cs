using Spindlewright.Figures.Catalogue;
using Spindlewright.Foundations;

namespace Spindlewright.Figures.Tests;

public class CatalogueTests
{
    private sealed record Recipe(
        string Id, string Name, Func<SpecimenResults, Figure> Draw, Func<SpecimenResults, bool>? Wanted = null)
            : IFigureRecipe<SpecimenResults>
    {
        public string Description => "Answers a question.";

        public bool AppliesTo(SpecimenResults results) => Wanted?.Invoke(results) ?? true;

        public Figure Make(SpecimenResults results) => Draw(results);
    }

    private static readonly Recipe Bands = new("speed-bands", "Speed bands", _ => Specimens.SpeedBands());
    private static readonly Recipe Volts = new("volts-per-hertz", "V/f curve", _ => Specimens.VoltsPerHertz());

    [Fact]
    public void Figures_come_in_order_and_only_where_they_apply()
    {
        var none = Volts with { Wanted = _ => false };
        Assert.Equal(["speed-bands", "volts-per-hertz"],
            new FigureCatalogue<SpecimenResults>(Bands, Volts).MakeAll(SpecimenResults.Bench).Select(f => f.Id));
        Assert.Equal(["speed-bands"], new FigureCatalogue<SpecimenResults>(Bands, none).MakeAll(SpecimenResults.Bench)
            .Select(f => f.Id));
    }

    [Fact]
    public void An_id_or_a_name_stands_once()
    {
        Assert.Throws<PartException>(() => new FigureCatalogue<SpecimenResults>(Bands, Bands with { Name = "Other" }));
        Assert.Throws<PartException>(
            () => new FigureCatalogue<SpecimenResults>(Bands, Volts with { Name = "speed bands" }));
        Assert.Throws<PartException>(() => new FigureCatalogue<SpecimenResults>(Bands with { Id = "Not Kebab" }));
    }

    [Fact]
    public void An_unknown_id_is_answered_with_those_there_are()
    {
        var fault = Assert.Throws<PartException>(
            () => new FigureCatalogue<SpecimenResults>(Bands, Volts).Make("speed", SpecimenResults.Bench));
        Assert.Contains("speed-bands, volts-per-hertz", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_recipe_makes_the_figure_it_promises() => Assert.Throws<PartException>(
        () => new FigureCatalogue<SpecimenResults>(Bands with { Id = "other" }).MakeAll(SpecimenResults.Bench));
}
