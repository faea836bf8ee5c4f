using System.Collections.Immutable;
using Spindlewright.Figures.Catalogue;
using Spindlewright.Studies;

namespace Spindlewright.Figures.Recipes;

/// <summary>The figures of the studies, in the order in which a report shows them: it opens with the first.</summary>
public static class StudyFigures
{
    private static readonly IFigureRecipe<StudyResults>[] sizing = [new BoundAgainstMargin(), new TorqueOfTheFinalists(), new BeforeAndRecommended()];

    /// <summary>The catalogue.</summary>
    public static FigureCatalogue<StudyResults> Catalogue { get; } = new(
    [
        new TorqueAgainstSpindleSpeed(), new SpeedBands(), new LockedRotorAgainstFrequency(), new VoltsPerHertz(),
        new TorqueAgainstFrequency(), new TorqueAgainstMotorSpeed(), new BoostLaw(), new WhatBoostDoes(), new WhatTemperatureDoes(),
        new ForceAtTheChuck(), new ForceAgainstSpeed(), new BeltOrFrequency(), new BeforeAndAfter(), new SpindleEnvelopes(), new ContinuousTorqueOfTheMotor(), new InputOfTheInverter(),
        new SpeedOverFrequency(), new WorkOverEnvelopes(), new FeedByHand(),
        new SlipOfTheBelts(), new IntervalsOfCrossings(), new ChanceOfBeingOverpowered(), new WhatMovesTheCrossing(), .. sizing,
    ]);

    /// <summary>Ids of the figures of the sizing study, which a report shows with its recommendation.</summary>
    public static ImmutableArray<string> OfSizing { get; } = [.. sizing.Select(recipe => recipe.Id)];
}
