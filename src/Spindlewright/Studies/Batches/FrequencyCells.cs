using Spindlewright.Inverters;
using Spindlewright.Studies.Overpowering;

namespace Spindlewright.Studies.Batches;

/// <summary>Ends of the cells in which crossings are looked for, with what the law sets there.</summary>
internal sealed class FrequencyCells
{
    /// <summary>The last end.</summary>
    internal const int Last = OverpoweringStudy.Steps;

    // Room for a whole vector from the last end on.
    private const int Room = Last + 8;

    internal FrequencyCells(Inverter inverter)
    {
        Curve = inverter.Curve;
        (LowestHz, TopHz) = (inverter.LowestFrequency.Hertz, OverpoweringStudy.TopHz(inverter));
        for (var end = 0; end < Room; end++)
        {
            Hz[end] = LowestHz + (TopHz - LowestHz) * Math.Min(end, Last) / Last;
            LineV[end] = Curve.LineVolts(Hz[end]);
        }
    }

    internal VoltsPerHertzCurve Curve { get; }

    internal double LowestHz { get; }

    internal double TopHz { get; }

    /// <summary>Frequencies, the last repeated.</summary>
    internal double[] Hz { get; } = new double[Room];

    /// <summary>Line voltages of the law.</summary>
    internal double[] LineV { get; } = new double[Room];
}
