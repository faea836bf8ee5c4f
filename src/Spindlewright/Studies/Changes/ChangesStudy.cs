using Spindlewright.Belts;
using Spindlewright.Foundations.Sampling;
using Spindlewright.Hands;
using Spindlewright.Machines;
using Spindlewright.Studies.Torques;
using Spindlewright.Studies.Uncertainty;
using UnitsNet;

namespace Spindlewright.Studies.Changes;

/// <summary>What one change makes of bound and crossings.</summary>
/// <param name="What">What is changed.</param>
/// <param name="Change">To what.</param>
/// <param name="Belt">The belt position.</param>
/// <param name="Bound">No-credit bound at the spindle.</param>
/// <param name="Slowest">Spindle speed at the lowest frequency: a crossing there is one from standstill.</param>
/// <param name="Hands">Weak hand first, strong hand beside it, everything else being as uncertain as before.</param>
public sealed record ChangedMachine(
    string What, string Change, BeltPosition Belt, Torque Bound, RotationalSpeed Slowest, IReadOnlyList<UncertainHand> Hands);

/// <summary>What moves the overpowering speed: settings and parts, changed one at a time, beside what each does to the bound.</summary>
/// <param name="Machines">The machine as described first.</param>
/// <param name="Samples">Machines drawn for each row.</param>
/// <remarks>
/// <para>
/// Drop and slip compensation leave the bound as it is. A boost beyond rated volts per hertz puts it up; that the boost is taken out
/// again is a setting and no measure. Belt position, size and poles are parts and change the bound.
/// </para>
/// <para>
/// Another size has the same circuit in per unit, another number of poles the same circuit (own choice); real motors differ more. Slip
/// compensation is taken to follow the load down to standstill, so that the hand meets a higher frequency than the one set.
/// </para>
/// </remarks>
public sealed record ChangesStudy(IReadOnlyList<ChangedMachine> Machines, int Samples)
{
    // Twenty machines take as long as the one of the study of uncertainty: each is drawn a few times less often.
    private const int MostSamples = 500;

    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="strength">The hands of a sample.</param>
    /// <param name="seed">Seed of the samples; the same for every row, so that rows differ by their change alone.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <returns>The study.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static ChangesStudy Of(DrillPress press, HandStrength strength, ulong seed, CancellationToken cancellation = default)
    {
        var plan = new SamplingPlan(Math.Min(press.Uncertainty.Samples, MostSamples), seed);
        return new([.. MachineChanges.Of(press).Select(change => Row(change, strength, plan, cancellation))], plan.Count);
    }

    private static ChangedMachine Row(MachineChange change, HandStrength strength, SamplingPlan plan, CancellationToken cancellation)
    {
        var (press, belt) = (change.Press, change.Press.Belts[0]);
        var inputs = UncertainMachine.Of(press, strength);
        var samples = new CrossingSamples(press, inputs, strength, slipCompensation: change.SlipCompensation);
        var run = UncertaintyStudy.Draw(inputs, plan, samples, null, cancellation);
        return new(
            change.What, change.Change, belt, TorqueBound.Of(press).AtSpindle(belt), RotationalSpeed.FromRevolutionsPerMinute(samples.SpeedAt(0, 0)),
            UncertaintyStudy.Hands(samples, run, 0));
    }
}
