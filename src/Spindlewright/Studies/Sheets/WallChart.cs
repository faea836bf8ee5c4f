using Spindlewright.Belts;
using Spindlewright.Cutting;
using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Studies.Sheets;

/// <summary>A line of the wall chart: all diameters at one cutting speed.</summary>
/// <param name="Words">Which operations, such as "reaming, countersinking".</param>
/// <param name="CuttingSpeed">Surface speed of the line.</param>
/// <param name="Range">Low and high end of the tables; null for the owner's own line.</param>
/// <param name="IsOwn">True for the line of the owner's experience.</param>
public sealed record WallLine(string Words, Speed CuttingSpeed, (Speed Slowest, Speed Fastest)? Range, bool IsOwn)
{
    /// <summary>Spindle speed of a diameter on the line.</summary>
    /// <param name="diameter">Above 0.</param>
    /// <returns>Spindle speed.</returns>
    public RotationalSpeed At(Length diameter) => Cutting.CuttingSpeed.SpindleSpeed(CuttingSpeed, diameter);
}

/// <summary>A frequency on the scale of a belt position.</summary>
/// <param name="Frequency">Output frequency.</param>
/// <param name="Speed">Unloaded spindle speed there.</param>
public sealed record WallTick(Frequency Frequency, RotationalSpeed Speed);

/// <summary>The scale of a belt position: which frequency turns it at which speed.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Ticks">From the lowest to the highest frequency that is permitted on it.</param>
/// <param name="EndsAtLimit">True where the spindle's highest speed ends it, not the settings.</param>
public sealed record WallScale(BeltPosition Belt, IReadOnlyList<WallTick> Ticks, bool EndsAtLimit);

/// <summary>Spindle speed against drill diameter in one material, and what each belt position reaches.</summary>
/// <param name="Material">The material.</param>
/// <param name="Lines">Lines of the operations, fastest first.</param>
/// <param name="Scales">One a belt position, in the machine's order; none for a position that its limit leaves no frequency.</param>
/// <param name="Citations">Where the cutting speeds come from.</param>
public sealed record WallChart(
    CuttingMaterial Material, IReadOnlyList<WallLine> Lines, IReadOnlyList<WallScale> Scales, IReadOnlyList<Citation> Citations)
{
    /// <summary>Lines nearer than this are one line with two names.</summary>
    private const double SameLine = 1.12;

    private static readonly OperationKind[] Kinds =
    [
        OperationKind.Drilling, OperationKind.Reaming, OperationKind.Countersinking, OperationKind.Counterboring,
        OperationKind.HoleSawing, OperationKind.Tapping,
    ];

    private static readonly double[] DialledHz = [5, 7, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100, 120, 150, 200, 300, 400];

    /// <summary>Makes the chart of a material.</summary>
    /// <param name="results">Results of the machine.</param>
    /// <param name="material">The material.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The chart.</returns>
    public static WallChart Of(StudyResults results, CuttingMaterial material, Handbook handbook)
    {
        var speeds = Kinds.Select(kind => (Kind: kind, Speeds: OperationSpeeds.Of(kind, material, handbook)))
            .Where(each => each.Speeds is not null).Select(each => (each.Kind, Speeds: each.Speeds!)).ToList();
        var lines = Merged(speeds);
        if (ExperienceLine.Of(material, results.Press.Experience) is { } own) lines.Add(new("your own drilling", own.Middle, null, true));
        return new(
            material, [.. lines.OrderByDescending(line => line.CuttingSpeed)],
            [.. results.Press.Belts.Select(belt => Scale(results, belt)).OfType<WallScale>()],
            [.. speeds.SelectMany(each => each.Speeds.Sources).DistinctBy(source => (source.Source, source.Provenance))]);
    }

    private static List<WallLine> Merged(List<(OperationKind Kind, OperationSpeeds Speeds)> speeds)
    {
        List<WallLine> lines = [];
        foreach (var (kind, range) in speeds)
        {
            var at = lines.FindIndex(line => Math.Max(line.CuttingSpeed / range.Middle, range.Middle / line.CuttingSpeed) < SameLine);
            if (at < 0) lines.Add(new(kind.InWords(), range.Middle, (range.Slowest, range.Fastest), false));
            else lines[at] = lines[at] with { Words = $"{lines[at].Words}, {kind.InWords()}" };
        }
        return lines;
    }

    private static WallScale? Scale(StudyResults results, BeltPosition belt)
    {
        var (press, speeds) = (results.Press, results.Speeds.Belts.Single(each => each.Belt.Name == belt.Name));
        var lowest = press.Inverter.LowestFrequency.Hertz;
        var settings = press.Inverter.HighestFrequency.Hertz;
        var highest = Math.Min(settings, speeds.Permitted.Frequency?.Hertz ?? settings);
        if (highest < lowest) return null;
        double[] hertz = [lowest, .. DialledHz.Where(each => each > lowest && each < highest), highest];
        return new(belt, [.. hertz.Distinct().Select(each => Frequency.FromHertz(each)).Select(frequency => new WallTick(
            frequency, belt.SpindleSpeed(press.Motor.Circuit.Capability.SynchronousSpeedAt(frequency))))], highest < settings);
    }
}
