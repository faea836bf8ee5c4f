namespace Spindlewright.Studies.Sizing;

/// <summary>One respect in which candidates are compared.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Unit">Its unit; empty for a bare number.</param>
/// <param name="LessIsBetter">True where less is better.</param>
public sealed record Measure(string Name, string Unit, bool LessIsBetter)
{
    /// <summary>Worst short-time torque over needed torque.</summary>
    public static Measure TorqueMargin { get; } = new("worst torque margin", "", false);

    /// <summary>Share of the speeds of the work that is served.</summary>
    public static Measure SpeedCoverage { get; } = new("speeds served", "%", false);

    /// <summary>Largest drill, the mean over materials, into the full and piloted.</summary>
    public static Measure LargestDrill { get; } = new("largest drill, mean over materials", "mm", false);

    /// <summary>Hottest winding over the operations.</summary>
    public static Measure Winding { get; } = new("hottest winding", "°C", true);

    /// <summary>Input current at rated motor power.</summary>
    public static Measure InputCurrent { get; } = new("supply current", "A", true);

    /// <summary>Energy that turns at the highest speed permitted.</summary>
    public static Measure StoredEnergy { get; } = new("stored energy", "J", true);

    /// <summary>No-credit bound at the spindle, slowest position.</summary>
    public static Measure Bound { get; } = new("torque bound", "N·m", true);

    /// <summary>Mass of the motor.</summary>
    public static Measure Mass { get; } = new("mass of the motor", "kg", true);

    /// <summary>Price; compared only where every candidate that meets all has one.</summary>
    public static Measure Price { get; } = new("price", "", true);

    /// <summary>All, in the order of a row of costs.</summary>
    public static IReadOnlyList<Measure> All { get; } =
        [TorqueMargin, SpeedCoverage, LargestDrill, Winding, InputCurrent, StoredEnergy, Bound, Mass, Price];
}
