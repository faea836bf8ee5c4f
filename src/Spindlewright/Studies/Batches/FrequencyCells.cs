using Spindlewright.Inverters;
using Spindlewright.Studies.Overpowering;

namespace Spindlewright.Studies.Batches;

/// <summary>Ends of the cells in which crossings are looked for, with what the law sets there.</summary>
internal sealed class FrequencyCells
{
    /// <summary>The last end.</summary>
    internal const int Last = OverpoweringStudy.Steps;

    /// <summary>How many cells stand between two posts, at which torques are looked at first.</summary>
    internal const int PostStride = 8;

    // Room for a whole vector from the last end on.
    private const int Room = 9;

    internal FrequencyCells(Inverter inverter)
    {
        Curve = inverter.Curve;
        (LowestHz, TopHz) = (inverter.LowestFrequency.Hertz, OverpoweringStudy.TopHz(inverter));
        (Hz, LineV) = Ends(1);
        (PostHz, PostLineV) = Ends(PostStride);
        BendsHz = [.. OverpoweringStudy.BendsHz(inverter)];
        WatchedHz = OverpoweringStudy.WatchedHz(inverter);
        WatchedLineV = [.. WatchedHz.Select(Curve.LineVolts)];
    }

    internal VoltsPerHertzCurve Curve { get; }

    internal double LowestHz { get; }

    internal double TopHz { get; }

    /// <summary>Frequencies of the ends, the last repeated.</summary>
    internal double[] Hz { get; }

    /// <summary>Line voltages of the law there.</summary>
    internal double[] LineV { get; }

    /// <summary>Frequencies of the posts, the last repeated.</summary>
    internal double[] PostHz { get; }

    /// <summary>Line voltages of the law there.</summary>
    internal double[] PostLineV { get; }

    /// <summary>The law's bends between the lowest frequency and the top.</summary>
    internal double[] BendsHz { get; }

    /// <summary>Frequencies at which locked-rotor torque is watched.</summary>
    internal double[] WatchedHz { get; }

    /// <summary>Line voltages of the law there.</summary>
    internal double[] WatchedLineV { get; }

    private (double[] Hz, double[] LineV) Ends(int stride)
    {
        double[] hz = [.. Enumerable.Range(0, Last / stride + Room).Select(
            end => LowestHz + (TopHz - LowestHz) * Math.Min(end * stride, Last) / Last)];
        return (hz, [.. hz.Select(Curve.LineVolts)]);
    }
}
