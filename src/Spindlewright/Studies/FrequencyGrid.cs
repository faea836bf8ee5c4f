using Spindlewright.Inverters;

namespace Spindlewright.Studies;

/// <summary>The frequencies at which curves are tabulated.</summary>
internal static class FrequencyGrid
{
    private const double StepHz = 1;

    /// <summary>Whole hertz between the lowest and the highest frequency of the settings, with both ends and the base frequency.</summary>
    internal static IReadOnlyList<double> Of(Inverter inverter)
    {
        var (lowest, highest) = (inverter.LowestFrequency.Hertz, inverter.HighestFrequency.Hertz);
        var steps = new SortedSet<double> { lowest, highest };
        if (inverter.Curve.BaseFrequency.Hertz is var hertz && hertz <= highest) steps.Add(hertz);
        for (var f = Math.Ceiling(lowest / StepHz) * StepHz; f < highest; f += StepHz)
            steps.Add(f);
        return [.. steps];
    }
}
