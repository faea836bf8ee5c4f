namespace Spindlewright.Figures.Catalogue;

/// <summary>One figure of the catalogue: a small class that turns results into a <see cref="Figure"/>.</summary>
/// <typeparam name="TResults">The results it reads.</typeparam>
public interface IFigureRecipe<in TResults>
{
    /// <summary>The figure's id: unique, lower-case words joined by hyphens.</summary>
    string Id { get; }

    /// <summary>A short name for lists, such as "speed bands".</summary>
    string Name { get; }

    /// <summary>One sentence: which question the figure answers.</summary>
    string Description { get; }

    /// <summary>True where the results hold what the figure needs.</summary>
    /// <param name="results">The results.</param>
    /// <returns>True unless the recipe says otherwise.</returns>
    bool AppliesTo(TResults results) => true;

    /// <summary>Makes the figure.</summary>
    /// <param name="results">The results.</param>
    /// <returns>A figure whose id is <see cref="Id"/>.</returns>
    Figure Make(TResults results);
}
