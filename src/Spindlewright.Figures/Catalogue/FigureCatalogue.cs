using System.Collections.Immutable;
using Spindlewright.Foundations;

namespace Spindlewright.Figures.Catalogue;

/// <summary>The figures that can be made from one kind of results, in the order in which they are shown.</summary>
/// <typeparam name="TResults">The results they read.</typeparam>
public sealed class FigureCatalogue<TResults>
{
    /// <summary>Lists recipes.</summary>
    /// <param name="recipes">The recipes in order; ids and names each once.</param>
    /// <exception cref="PartException">An id or a name twice, or words missing.</exception>
    public FigureCatalogue(params ImmutableArray<IFigureRecipe<TResults>> recipes)
    {
        Recipes = recipes;
        var ids = new HashSet<string>(StringComparer.Ordinal);
        var names = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var recipe in recipes)
        {
            if (!ids.Add(Check.Id(recipe.Id, Part)))
                throw new PartException(Part, "id", $"'{recipe.Id}' twice", "each id once");
            if (!names.Add(Check.Words(recipe.Name, Part, $"name of {recipe.Id}")))
                throw new PartException(Part, "name", $"'{recipe.Name}' twice", "each name once");
            Check.Words(recipe.Description, Part, $"description of {recipe.Id}");
        }
    }

    /// <summary>The recipes in order.</summary>
    public ImmutableArray<IFigureRecipe<TResults>> Recipes { get; }

    /// <summary>Makes one figure.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="results">The results it reads.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="PartException">No such id; the message lists those there are.</exception>
    public Figure Make(string id, TResults results)
    {
        var recipe = Recipes.FirstOrDefault(r => r.Id == id)
            ?? throw new PartException(Part, "id", $"'{id}'", string.Join(", ", Recipes.Select(r => r.Id)));
        return Make(recipe, results);
    }

    /// <summary>Makes every figure that the results allow.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The figures in order.</returns>
    public ImmutableArray<Figure> MakeAll(TResults results) =>
        [.. Recipes.Where(r => r.AppliesTo(results)).Select(r => Make(r, results))];

    private const string Part = "figure catalogue";

    private static Figure Make(IFigureRecipe<TResults> recipe, TResults results)
    {
        var figure = recipe.Make(results);
        return figure.Id == recipe.Id
            ? figure
            : throw new PartException(Part, $"figure of recipe {recipe.Id}", $"id '{figure.Id}'", $"id '{recipe.Id}'");
    }
}
