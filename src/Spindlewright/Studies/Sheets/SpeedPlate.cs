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
    /// <summary>Frequencies that people dial; the ends and the base frequency of the settings come first.</summary>
    private static readonly double[] UsualHz = [50, 60, 25, 30, 75, 80, 100, 120, 40, 20, 15, 10, 150, 200];

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
        var permitted = results.Speeds.Belts.Single(each => each.Belt.Name == belt.Name).HighestPermitted;
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

    private static List<Frequency> Chosen(DrillPress press, int most)
    {
        var (lowest, highest) = (press.Inverter.LowestFrequency.Hertz, press.Inverter.HighestFrequency.Hertz);
        List<double> chosen = [lowest];
        double[] wanted = [highest, Math.Clamp(press.Inverter.Curve.BaseFrequency.Hertz, lowest, highest), .. UsualHz];
        foreach (var hertz in wanted)
            if (chosen.Count < most && hertz >= lowest && hertz <= highest
                && chosen.All(each => Math.Max(each, hertz) >= LeastStep * Math.Min(each, hertz)))
                chosen.Add(hertz);
        return [.. chosen.Order().Select(each => Frequency.FromHertz(each))];
    }
}
