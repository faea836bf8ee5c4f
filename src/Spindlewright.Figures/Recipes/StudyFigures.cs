using Spindlewright.Figures.Catalogue;
using Spindlewright.Studies;

namespace Spindlewright.Figures.Recipes;

/// <summary>The figures of the studies, in the order in which a report shows them.</summary>
public static class StudyFigures
{
    /// <summary>The catalogue.</summary>
    public static FigureCatalogue<StudyResults> Catalogue { get; } = new(
        new SpeedBands(), new TorqueAgainstSpindleSpeed(), new LockedRotorAgainstFrequency(), new VoltsPerHertz(),
        new ForceAtTheChuck(), new SpindleEnvelopes(), new ContinuousTorqueOfTheMotor(), new InputOfTheInverter());
}
