using Spindlewright.Foundations;
using Spindlewright.Studies;
using Spindlewright.Studies.Frequencies;
using UnitsNet;
using static System.FormattableString;
using static Spindlewright.Figures.Recipes.StudyTables;

namespace Spindlewright.Figures.Recipes;

/// <summary>Tables of what frequency, boost and temperature do to torque.</summary>
public static class FrequencyTables
{
    /// <summary>Locked-rotor torque at the frequencies that surprise.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Standstill(StudyResults results)
    {
        var study = results.Frequencies;
        var bound = results.Torques.Bound.Motor.NewtonMeters;
        Table Of(params (string Name, Sided<TorqueAt> At)[] rows) => new(
            "locked-rotor", "Locked-rotor torque against frequency",
            [
                Name("where"), Name("frequency, capability to hazard side"), new("capability side", "N·m", Format: TwoDecimals),
                new("hazard side", "N·m", Format: TwoDecimals), new("over base, capability side", Format: TwoDecimals),
                new("over base, hazard side", Format: TwoDecimals), new("bound", "N·m", Format: OneDecimal),
            ],
            [.. rows.Select(row => Row(
                row.Name, Hertz(row.At), row.At.Capability.Torque.NewtonMeters, row.At.Hazard.Torque.NewtonMeters,
                row.At.Capability.Torque / study.LockedRotorAtBase.Capability.Torque,
                row.At.Hazard.Torque / study.LockedRotorAtBase.Hazard.Torque, bound))],
            caption: "Air-gap torque at the motor shaft.");
        return Of(
            ("lowest frequency, as modelled", study.LockedRotorAtLowest),
            ("lowest frequency, without the drops of winding and output stage", study.LockedRotorAtLowestWithoutDrops),
            ("where it is largest", study.LargestLockedRotor), ("base frequency", study.LockedRotorAtBase),
            ("twice base frequency", AtTwiceBase(study)));
    }

    /// <summary>What boost does at the lowest frequency.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Boosts(StudyResults results)
    {
        var rated = results.Press.Motor.RatedCurrent;
        return new(
            "boosts", Invariant($"What boost does at {results.Press.Inverter.LowestFrequency.Hertz:0.#} Hz"),
            [
                new("boost over base voltage", "%", Format: OneDecimal), new("locked-rotor, capability side", "N·m", Format: TwoDecimals),
                new("locked-rotor, hazard side", "N·m", Format: TwoDecimals), new("pull-out, capability side", "N·m", Format: TwoDecimals),
                new("pull-out, hazard side", "N·m", Format: TwoDecimals), new("bound", "N·m", Format: OneDecimal),
                new("no-load current over rated, capability side", Format: TwoDecimals),
                new("no-load current over rated, hazard side", Format: TwoDecimals),
                new("flux at no load over rated, hazard side", Format: TwoDecimals),
            ],
            [.. results.Frequencies.Boosts.Select(boost => Row(
                100 * boost.Share, boost.Points[0].LockedRotor.Capability.NewtonMeters, boost.Points[0].LockedRotor.Hazard.NewtonMeters,
                boost.Points[0].PullOut.Capability.NewtonMeters, boost.Points[0].PullOut.Hazard.NewtonMeters, boost.Bound.NewtonMeters,
                boost.NoLoadCurrent.Capability / rated, boost.NoLoadCurrent.Hazard / rated, boost.NoLoadFlux.Hazard))],
            caption: "A straight law with that boost at 0 Hz, whatever law is set; torques at the motor shaft.",
            footnotes: ["No-load current: the larger of cold and hot winding. Above 1 the motor overheats at the slow end with nothing to drive, and its fan hardly turns."]);
    }

    private static Sided<TorqueAt> AtTwiceBase(FrequencyStudy study)
    {
        TorqueAt On(Side side) => new(
            study.TwiceBase.Frequency, study.LockedRotorAtBase.On(side).Torque * study.TwiceBase.LockedRotor.On(side));
        return new(On(Side.Capability), On(Side.Hazard));
    }

    private static string Hertz(Sided<TorqueAt> at)
    {
        static string Of(Frequency frequency) => Invariant($"{frequency.Hertz:0.0}");
        var (low, high) = (Of(at.Capability.Frequency), Of(at.Hazard.Frequency));
        return low == high ? $"{low} Hz" : $"{low} to {high} Hz";
    }
}
