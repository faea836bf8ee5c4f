using Spindlewright.Foundations;
using Spindlewright.Hands;
using Spindlewright.Motors.Batches;
using Spindlewright.Studies.Overpowering;
using UnitsNet;

namespace Spindlewright.Studies.Batches;

/// <summary>Spindles and hands of the samples, one place a sample.</summary>
/// <param name="Ratio">Motor speed over spindle speed, above 0.</param>
/// <param name="Efficiency">Of the belts, above 0 to 1.</param>
/// <param name="FrictionNm">Drag of the spindle in N·m, 0 or more.</param>
/// <param name="HandNm">What the hand can put on the chuck body in N·m, above 0.</param>
public readonly record struct HandColumns(
    ReadOnlyMemory<double> Ratio, ReadOnlyMemory<double> Efficiency, ReadOnlyMemory<double> FrictionNm,
    ReadOnlyMemory<double> HandNm);

/// <summary>Overpowering speeds of many samples.</summary>
public sealed class OverpoweringColumns
{
    private readonly Duration longestReaction;

    internal OverpoweringColumns(int count, Duration longestReaction)
    {
        this.longestReaction = longestReaction;
        (Outcomes, CrossingHz, CrossingRpm) = (new OverpoweringOutcome[count], new double[count], new double[count]);
    }

    /// <summary>How many samples.</summary>
    public int Count => Outcomes.Length;

    /// <summary>Which condition decides each sample.</summary>
    public ReadOnlyMemory<OverpoweringOutcome> Outcome => Outcomes;

    /// <summary>Output frequency in Hz where the hand is first passed, conditions left out; NaN where it is not.</summary>
    public ReadOnlyMemory<double> Hz => CrossingHz;

    /// <summary>The same as synchronous spindle speed in r/min.</summary>
    public ReadOnlyMemory<double> Rpm => CrossingRpm;

    internal OverpoweringOutcome[] Outcomes { get; }

    internal double[] CrossingHz { get; }

    internal double[] CrossingRpm { get; }

    /// <summary>The answer of one sample, as the study of one machine gives it.</summary>
    /// <param name="sample">0 to <see cref="Count"/> − 1.</param>
    /// <returns>The answer, conditions applied.</returns>
    public OverpoweringSpeed Answer(int sample) => OverpoweringAnswer.Speed(
        Outcomes[sample],
        Outcomes[sample] == OverpoweringOutcome.NeverPassed ? default : RotationalSpeed.FromRevolutionsPerMinute(CrossingRpm[sample]),
        longestReaction);
}

/// <summary>Finds the overpowering speeds of many samples at once.</summary>
/// <remarks>
/// <para>
/// What <see cref="OverpoweringStudy"/> finds for one machine, which is the reference: the first frequency from the lowest to base at which
/// pull-out torque passes the hand's, and the same conditions on the answer. It says when the spindle wins, never when a hand may be put there.
/// </para>
/// <para>
/// The study looks at 256 cells, this at every eighth of their ends and at all about a peak: a torque that passed the hand and fell below it
/// again between two without peaking at either would be missed.
/// </para>
/// </remarks>
public static class OverpoweringBatch
{
    // A sample takes microseconds: small blocks keep progress and cancellation quick.
    private const int BlockLength = 512;

    /// <summary>Finds them.</summary>
    /// <param name="drives">Drives of the samples.</param>
    /// <param name="hands">Spindles and hands, as many.</param>
    /// <param name="person">Whose reaction time conditions the answers.</param>
    /// <param name="run">How it is run.</param>
    /// <returns>The speeds, whole: a run that is cancelled returns nothing.</returns>
    /// <exception cref="PartException">Columns are not of one length.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static OverpoweringColumns Of(DriveColumns drives, in HandColumns hands, Person person, BatchRun run)
    {
        BatchSolver.SameLength(hands.Ratio.Length, drives.Count, "number of ratios", "samples");
        BatchSolver.SameLength(hands.Efficiency.Length, drives.Count, "number of efficiencies", "samples");
        BatchSolver.SameLength(hands.FrictionNm.Length, drives.Count, "number of spindle frictions", "samples");
        BatchSolver.SameLength(hands.HandNm.Length, drives.Count, "number of hands", "samples");
        var into = new OverpoweringColumns(drives.Count, person.LongestReaction);
        var grid = new FrequencyCells(drives.Inverter);
        var oneTurnRpm = person.OneTurnSpeed.RevolutionsPerMinute;
        Blocks.Run(drives.Count, run, new OverpoweringWork(drives, hands, grid, oneTurnRpm, into), BlockLength);
        return into;
    }
}
