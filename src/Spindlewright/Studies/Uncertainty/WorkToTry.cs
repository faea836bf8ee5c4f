using Spindlewright.Belts;
using Spindlewright.Machines;
using Spindlewright.Studies.Work;
using UnitsNet;

namespace Spindlewright.Studies.Uncertainty;

/// <summary>An operation that every drawn machine is tried with, on the belt position that has most torque for it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Belt">The belt position.</param>
/// <param name="FrequencyHz">Output frequency there.</param>
/// <param name="NeededNm">Cutting torque by the handbook, N·m at the spindle.</param>
/// <param name="SlipNm">Torque at the spindle at which the belt slips, low and high; null where no belt is described.</param>
/// <param name="Bound">No-credit bound at the spindle.</param>
internal sealed record WorkToTry(
    string Name, BeltPosition Belt, double FrequencyHz, double NeededNm, (double Least, double Most)? SlipNm, Torque Bound)
{
    /// <summary>Result: cutting torque, N·m.</summary>
    internal string Needed => Name + ": cutting torque";

    /// <summary>Result: pull-out torque at the spindle over cutting torque.</summary>
    internal string Margin => Name + ": pull-out torque over cutting torque";

    /// <summary>Result: torque at which the belt slips over cutting torque; infinite where no belt is described.</summary>
    internal string SlipMargin => Name + ": belt slip over cutting torque";

    internal IReadOnlyList<string> ResultNames => [Needed, Margin, SlipMargin];

    /// <summary>The operations of a machine that cut and that a belt position reaches.</summary>
    internal static IReadOnlyList<WorkToTry> Of(WorkStudy work) =>
    [
        .. work.Items.Select((result, place) => result.Best is { Margin: not null, Frequency: { } frequency } best
                ? new WorkToTry(
                    FormattableString.Invariant($"{place + 1}. {result.Item.Name}"), best.Belt, frequency.Hertz, result.Torque.NewtonMeters,
                    best.Slip is { } slip ? (slip.Least.NewtonMeters, slip.Most.NewtonMeters) : null, best.Bound)
                : null).OfType<WorkToTry>(),
    ];

    /// <summary>Fills in the results of one sample; returns the place after them.</summary>
    internal int Fill(
        DrawPlaces places, double[] row, double pullOutNm, int sample, ReadOnlySpan<Memory<double>> results, int place)
    {
        var neededNm = NeededNm * row[places.CuttingTorque];
        var hasNm = pullOutNm * Belt.Ratio * places.EfficiencyOf(Belt, row) - row[places.SpindleFriction];
        results[place].Span[sample] = neededNm;
        results[place + 1].Span[sample] = Math.Max(0, hasNm) / neededNm;
        results[place + 2].Span[sample] = SlipNm is { } slip
            ? (slip.Least + (slip.Most - slip.Least) * row[places.BeltTension]) / neededNm
            : double.PositiveInfinity;
        return place + 3;
    }
}
