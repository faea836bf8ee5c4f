using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Sampling;
using Spindlewright.Machines;
using Spindlewright.Studies.Overpowering;
using UnitsNet;

namespace Spindlewright.Studies.Uncertainty;

/// <summary>A figure as the samples spread it.</summary>
/// <param name="Median">Median; infinite for "never reached".</param>
/// <param name="Middle">The middle 95 % of the samples.</param>
/// <param name="Reached">Share of the samples in which there is such a figure at all.</param>
public sealed record SampledFigure(double Median, Interval Middle, SampledShare Reached);

/// <summary>How likely it is that the spindle has overpowered a hand of the population by a speed.</summary>
/// <param name="Speed">Synchronous spindle speed.</param>
/// <param name="Chance">Share of machine and hand drawn together, with the doubt of so many samples.</param>
public sealed record ChanceAtSpeed(RotationalSpeed Speed, SampledShare Chance);

/// <summary>What one uncertain figure does to the crossing of the strong hand.</summary>
/// <param name="Input">The figure.</param>
/// <param name="RankCorrelation">Spearman's, −1 to 1.</param>
/// <param name="Low">Crossing in r/min with the figure at its 5th percentile and all others at their medians; infinite for none.</param>
/// <param name="High">The same at its 95th percentile.</param>
public sealed record CrossingDriver(VariedInput Input, double RankCorrelation, double Low, double High)
{
    /// <summary>How far the two stand apart, r/min; infinite where only one of them is reached, 0 where neither is.</summary>
    public double Swing => double.IsInfinity(Low) && double.IsInfinity(High) ? 0 : Math.Abs(High - Low);
}

/// <summary>One stated hand against one belt position, the machine being uncertain.</summary>
/// <param name="Hand">The hand.</param>
/// <param name="Answer">The overpowering speed with its interval, or that there is none.</param>
/// <param name="Crossing">
/// Spindle speed in r/min where the modelled torque first passes the hand's, conditions left out. An intermediate, not an answer.
/// </param>
public sealed record UncertainHand(StatedHand Hand, OverpoweringSpeed Answer, SampledFigure Crossing);

/// <summary>One operation of the machine file on the belt position that has most torque for it, machine and cutting coefficients being uncertain.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Belt">The belt position.</param>
/// <param name="Bound">No-credit bound at the spindle.</param>
/// <param name="Needed">Cutting torque at the spindle, N·m.</param>
/// <param name="Margin">Pull-out torque at the spindle over cutting torque.</param>
/// <param name="Stalls">Share of the samples in which the motor stalls: the margin is 1 or less.</param>
/// <param name="Slips">Share of the samples in which the belt slips; null where no belt is described.</param>
public sealed record UncertainWork(
    string Name, BeltPosition Belt, Torque Bound, SampledFigure Needed, SampledFigure Margin, SampledShare Stalls, SampledShare? Slips);

/// <summary>One belt position, the machine and the hands being uncertain.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Bound">No-credit bound at the spindle: it has no interval, since nothing uncertain is credited in it.</param>
/// <param name="Hands">Weak hand first, strong hand beside it.</param>
/// <param name="Chances">Rising speeds, up to base frequency.</param>
/// <param name="Drivers">What moves the crossing of the strong hand, most first.</param>
public sealed record UncertainBelt(
    BeltPosition Belt, Torque Bound, IReadOnlyList<UncertainHand> Hands, IReadOnlyList<ChanceAtSpeed> Chances,
    IReadOnlyList<CrossingDriver> Drivers);
