using Spindlewright.Belts;
using Spindlewright.Machines;
using Spindlewright.Studies.Heat;
using Spindlewright.Studies.Speeds;
using UnitsNet;

namespace Spindlewright.Studies.Sheets;

/// <summary>Spindle speed at one frequency of a belt position.</summary>
/// <param name="Unloaded">At the motor's synchronous speed.</param>
/// <param name="Loaded">At the stated torque; null where the motor stalls at it.</param>
/// <param name="PassesLimit">True where the unloaded spindle turns past its highest speed.</param>
public sealed record PlateSpeed(RotationalSpeed Unloaded, RotationalSpeed? Loaded, bool PassesLimit);

/// <summary>One belt position of the speed plate.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="HighestPermitted">
/// Highest frequency at which the spindle stays within its highest speed, at most that of the settings; null where that speed is unknown.
/// </param>
/// <param name="StatedTorque">Torque at the spindle for the loaded speeds.</param>
/// <param name="Bound">No-credit bound at the spindle.</param>
/// <param name="Speeds">One a frequency of the plate.</param>
public sealed record PlateRow(
    BeltPosition Belt, Frequency? HighestPermitted, Torque StatedTorque, Torque Bound, IReadOnlyList<PlateSpeed> Speeds);

/// <summary>The speeds of every belt position at a few frequencies, as a plate on the machine shows them.</summary>
/// <param name="Frequencies">The frequencies, lowest first.</param>
/// <param name="Rows">One a belt position, in the machine's order.</param>
public sealed record SpeedPlate(IReadOnlyList<Frequency> Frequencies, IReadOnlyList<PlateRow> Rows)
{
    private static readonly double[] DialledHz = [5, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100, 120, 150, 200, 300];

    /// <summary>Least step between neighbours on the plate.</summary>
    private const double LeastStep = 1.18;

    /// <summary>Makes the plate.</summary>
    /// <param name="results">Results of the machine.</param>
    /// <param name="most">Most frequencies, 3 or more.</param>
    /// <returns>The plate.</returns>
    public static SpeedPlate Of(StudyResults results, int most = 7)
    {
        var press = results.Press;
        var frequencies = Chosen(press, most);
        var drive = new Drive(press, Foundations.Side.Capability);
        return new(frequencies, [.. results.Heat.Spindle.Select(spindle => Row(results, drive, spindle, frequencies))]);
    }

    private static PlateRow Row(StudyResults results, Drive drive, SpindleEnvelope spindle, List<Frequency> frequencies)
    {
        var (press, belt) = (results.Press, spindle.Belt);
        var permitted = results.Speeds.Belts.Single(each => each.Belt.Name == belt.Name).Permitted.Frequency;
        var motor = press.Motor.RatedTorque * SpeedChart.StatedShare;
        return new(
            belt, permitted is { } limit ? UnitMath.Min(limit, press.Inverter.HighestFrequency) : null,
            SpeedChart.StatedTorque(press, belt), spindle.Bound, [.. frequencies.Select(frequency =>
            {
                var loaded = FrequencyFor.LoadedRpm(drive, frequency.Hertz, motor);
                return new PlateSpeed(
                    belt.SpindleSpeed(press.Motor.Circuit.Capability.SynchronousSpeedAt(frequency)),
                    loaded > 0 ? belt.SpindleSpeed(RotationalSpeed.FromRevolutionsPerMinute(loaded)) : null,
                    permitted is { } highest && frequency > highest);
            })]);
    }

    /// <summary>The ends and the base frequency, then again and again the dialled frequency that halves the widest step best.</summary>
    private static List<Frequency> Chosen(DrillPress press, int most)
    {
        var (lowest, highest) = (press.Inverter.LowestFrequency.Hertz, press.Inverter.HighestFrequency.Hertz);
        double[] ends = [lowest, Math.Clamp(press.Inverter.Curve.BaseFrequency.Hertz, lowest, highest), highest];
        List<double> chosen = [.. ends.Distinct().Order()];
        while (chosen.Count < most)
        {
            double Fit(double hertz)
            {
                var (below, above) = (chosen.Last(each => each < hertz), chosen.First(each => each > hertz));
                return Math.Min(hertz / below, above / hertz);
            }
            var between = DialledHz.Where(each => each > lowest && each < highest && !chosen.Contains(each)).ToList();
            if (between.Count == 0 || between.MaxBy(Fit) is var next && Fit(next) < LeastStep) break;
            chosen.Add(next);
            chosen.Sort();
        }
        return [.. chosen.Select(each => Frequency.FromHertz(each))];
    }
}
