using Spindlewright.Foundations;
using Spindlewright.Studies.Frequencies;
using static System.FormattableString;

namespace Spindlewright.Studies.Findings;

/// <summary>What frequency does to torque, in sentences.</summary>
public static class FrequencyFindings
{
    /// <summary>Torque at standstill over the frequencies, and what is left at twice the base frequency.</summary>
    /// <param name="results">The results, of which this reads torques and frequencies alone: all findings together ask for every study.</param>
    /// <returns>The findings, with the bound beside each modelled torque.</returns>
    public static IReadOnlyList<Finding> Of(StudyResults results) => [Standstill(results), TwiceBase(results)];

    private static Finding Standstill(StudyResults results)
    {
        var study = results.Frequencies;
        var (most, atBase, lowest, without) = (
            study.LargestLockedRotor, study.LockedRotorAtBase, study.LockedRotorAtLowest, study.LockedRotorAtLowestWithoutDrops);
        var bound = Invariant($"bound {results.Torques.Bound.Motor.NewtonMeters:0.0} N·m");
        string Pair(Sided<TorqueAt> at) =>
            Invariant($"{at.Capability.Torque.NewtonMeters:0.0} to {at.Hazard.Torque.NewtonMeters:0.0} N·m");
        return new(
            "Torque at standstill against frequency",
            Invariant($"At the motor shaft it is largest at {most.Capability.Frequency.Hertz:0} to {most.Hazard.Frequency.Hertz:0} Hz, {Pair(most)} as modelled, against {Pair(atBase)} at the base frequency of {atBase.Hazard.Frequency.Hertz:0.#} Hz ({bound})."),
            Invariant($"At {lowest.Hazard.Frequency.Hertz:0.#} Hz {Pair(lowest)} are left; with the drops of winding and output stage made good it would be {Pair(without)} ({bound}). The drop, not the frequency, takes it away."));
    }

    private static Finding TwiceBase(StudyResults results)
    {
        var twice = results.Frequencies.TwiceBase;
        static string Range(Sided<double> pair) =>
            Invariant($"{Math.Min(pair.Capability, pair.Hazard):0.00} to {Math.Max(pair.Capability, pair.Hazard):0.00}");
        return new(
            "Twice the base frequency",
            Invariant($"At {twice.Frequency.Hertz:0.#} Hz{(twice.WithinSettings ? "" : ", which the settings do not reach,")} locked-rotor torque is {Range(twice.LockedRotor)} and pull-out torque {Range(twice.PullOut)} of that at base frequency as modelled (bound {results.Torques.Bound.Motor.NewtonMeters:0.0} N·m at the motor shaft at any frequency), while what turns stores {twice.StoredEnergy:0} times the energy."),
            "Fast running is weak against the drill and strong against what is caught: the energy is there before the motor gives any torque.");
    }
}
