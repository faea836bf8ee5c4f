using Spindlewright.Foundations;
using Spindlewright.Foundations.Sampling;
using Spindlewright.Hands;
using Spindlewright.Machines;
using Spindlewright.Studies.Overpowering;
using Spindlewright.Studies.Torques;
using Spindlewright.Studies.Work;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Studies.Uncertainty;

/// <summary>How sure the overpowering speeds are, how likely a hand is overpowered, and what moves the answer.</summary>
/// <param name="Inputs">What is uncertain, with its provenance.</param>
/// <param name="Plan">How samples were drawn.</param>
/// <param name="LockedRotorAtLowest">Locked-rotor torque at the motor shaft at the lowest frequency, N·m.</param>
/// <param name="PullOutAtBase">Pull-out torque at the motor shaft at the highest frequency up to base, N·m.</param>
/// <param name="Bound">No-credit bound at the motor shaft.</param>
/// <param name="Belts">One row a belt position.</param>
/// <param name="Work">One row an operation that cuts and that a belt position reaches.</param>
/// <param name="Convergence">Crossing of the strong hand on the position with the largest ratio, after more and more samples, r/min.</param>
/// <remarks>
/// Every sample is one machine and one hand. The conditions of an overpowering speed hold in every sample on its own; where they
/// fail in more than one of forty, the answer is "no speed of this belt position". The bound stands beside every answer.
/// </remarks>
public sealed record UncertaintyStudy(
    IReadOnlyList<VariedInput> Inputs, SamplingPlan Plan, SampledFigure LockedRotorAtLowest, SampledFigure PullOutAtBase, Torque Bound,
    IReadOnlyList<UncertainBelt> Belts, IReadOnlyList<UncertainWork> Work, IReadOnlyList<SampledStep> Convergence)
{
    private const int SpeedsShown = 25;
    private const double MostUnanswered = 0.025;

    // The strong hand is stated, so that the population's spread does not move it; the others enter operations alone.
    private static readonly string[] Idle = [UncertainFigures.HandTorque, UncertainFigures.BeltTension, UncertainFigures.CuttingTorque];

    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="torques">Its torques; the bound is theirs.</param>
    /// <param name="strength">The hands of a sample.</param>
    /// <param name="seed">Seed of the samples.</param>
    /// <param name="work">What the machine is to do; null for hands alone.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <param name="cancellation">Ends the run.</param>
    /// <returns>The study.</returns>
    public static UncertaintyStudy Of(
        DrillPress press, TorqueStudy torques, HandStrength strength, ulong seed, WorkStudy? work = null, IProgress<double>? progress = null,
        CancellationToken cancellation = default)
    {
        var inputs = UncertainMachine.Of(press, strength);
        var plan = new SamplingPlan(press.Uncertainty.Samples, seed);
        var samples = new CrossingSamples(press, inputs, strength, work is null ? [] : WorkToTry.Of(work));
        var run = SampledRun.Of(
            new UncertainInputs([.. inputs.Select(input => new UncertainInput(input.Name, input.Distribution))]), plan,
            samples.Names, samples.Compute, progress, cancellation: cancellation);
        var moved = Moved(samples, inputs);
        return new(
            inputs, plan, Figure(run.ResultsOf(CrossingSamples.LockedRotor)), Figure(run.ResultsOf(CrossingSamples.PullOut)),
            torques.Bound.Motor,
            [.. torques.Spindle.Select((spindle, place) => AtBelt(press, samples, run, spindle, place, Drivers(samples, run, place, inputs, moved)))],
            [.. samples.Work.Select(each => OfWork(each, run))],
            new SampleSummary(run.ResultsOf(CrossingSamples.Crossing(SlowestPlace(press), samples.Hands[^1].Name))).Convergence());
    }

    private static int SlowestPlace(DrillPress press) => press.Belts.Index().MaxBy(each => each.Item.Ratio).Index;

    private static UncertainWork OfWork(WorkToTry each, SampledRun run)
    {
        var margin = run.ResultsOf(each.Margin);
        return new(
            each.Name, each.Belt, each.Bound, Figure(run.ResultsOf(each.Needed)), Figure(margin), new SampleSummary(margin).AtMost(1),
            each.SlipNm is null ? null : new SampleSummary(run.ResultsOf(each.SlipMargin)).AtMost(1));
    }

    private static UncertainBelt AtBelt(
        DrillPress press, CrossingSamples samples, SampledRun run, SpindleTorques spindle, int place,
        IReadOnlyList<CrossingDriver> drivers) => new(
        spindle.Belt, spindle.Bound,
        [
            .. samples.Hands.Select(hand => new UncertainHand(
                hand, Answer(press, samples, run, place, hand), Figure(run.ResultsOf(CrossingSamples.Crossing(place, hand.Name))))),
        ],
        Chances(samples, run, place), drivers);

    private static OverpoweringSpeed Answer(DrillPress press, CrossingSamples samples, SampledRun run, int place, StatedHand hand)
    {
        var summary = new SampleSummary(run.ResultsOf(CrossingSamples.Conditioned(place, hand.Name)));
        var middle = summary.Middle();
        var unanswered = 1 - summary.Reached().Estimate;
        if (unanswered > MostUnanswered || double.IsInfinity(middle.Most))
            return new OverpoweringSpeed.NoSpeed(Invariant(
                $"in {100 * unanswered:0} of 100 machines that it may be, the conditions of such a speed do not hold; see the bound"));
        RotationalSpeed Speed(double rpm) => RotationalSpeed.FromRevolutionsPerMinute(rpm);
        var lowest = samples.SpeedAt(place, 0);
        return middle.Most <= lowest
            ? new OverpoweringSpeed.AlreadyAtStandstill(Speed(lowest))
            : new OverpoweringSpeed.Within([(Speed(middle.Least), Speed(middle.Most))]);
    }

    private static IReadOnlyList<ChanceAtSpeed> Chances(CrossingSamples samples, SampledRun run, int place)
    {
        var summary = new SampleSummary(run.ResultsOf(CrossingSamples.Crossing(place, CrossingSamples.Population)));
        return
        [
            .. Enumerable.Range(0, SpeedsShown).Select(i => samples.SpeedAt(place, (double)i / (SpeedsShown - 1)))
                .Select(rpm => new ChanceAtSpeed(
                    RotationalSpeed.FromRevolutionsPerMinute(rpm), summary.AtMost(rpm * (1 + 1e-12)))),
        ];
    }

    /// <summary>Crossings of the strong hand with one figure after the other at its 5th and 95th percentile, the others at their medians.</summary>
    /// <returns>One array a belt position; two numbers a figure.</returns>
    private static double[][] Moved(CrossingSamples samples, IReadOnlyList<VariedInput> inputs)
    {
        double[] medians = [.. inputs.Select(input => input.Distribution.Median)];
        double[] Row(int input, double share)
        {
            var row = (double[])medians.Clone();
            row[input] = inputs[input].Distribution.Quantile(share);
            return row;
        }

        return samples.CrossingsOf([.. inputs.SelectMany((_, place) => new[] { Row(place, 0.05), Row(place, 0.95) })], samples.Hands[^1]);
    }

    private static IReadOnlyList<CrossingDriver> Drivers(
        CrossingSamples samples, SampledRun run, int place, IReadOnlyList<VariedInput> inputs, double[][] moved)
    {
        var ranks = Sensitivity.ByRank(run, CrossingSamples.Crossing(place, samples.Hands[^1].Name)).ToDictionary(rank => rank.Input);
        return
        [
            .. inputs.Index()
                .Where(each => !Idle.Contains(each.Item.Name))
                .Select(each => new CrossingDriver(
                    each.Item, ranks[each.Item.Name].Coefficient, moved[place][2 * each.Index], moved[place][2 * each.Index + 1]))
                .OrderByDescending(driver => driver.Swing).ThenByDescending(driver => Math.Abs(driver.RankCorrelation)),
        ];
    }

    private static SampledFigure Figure(ReadOnlySpan<double> results)
    {
        var summary = new SampleSummary(results);
        return new(summary.Quantile(0.5).Estimate, summary.Middle(), summary.Reached());
    }
}
