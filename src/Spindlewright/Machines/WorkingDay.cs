using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Machines;

/// <summary>One kind of work of a day, repeated: a time under load, a time running unloaded, a time switched off.</summary>
public sealed record DayTask
{
    private const string Part = "task";

    /// <summary>Makes a task.</summary>
    /// <param name="name">What the owner calls it.</param>
    /// <param name="frequency">Output frequency, 0.5 Hz to 400 Hz.</param>
    /// <param name="load">Motor torque under load over rated torque, 0 to 3.</param>
    /// <param name="loaded">Time under load in one repeat, above 0.</param>
    /// <param name="idle">Time running unloaded in one repeat, 0 or more.</param>
    /// <param name="off">Time switched off in one repeat, 0 or more.</param>
    /// <param name="repeats">How often in a day, 1 to 100 000.</param>
    /// <exception cref="PartException">A value is out of range.</exception>
    public DayTask(string name, Frequency frequency, double load, Duration loaded, Duration idle, Duration off, int repeats)
    {
        Name = name;
        Frequency = Guard.Within(frequency, Frequency.FromHertz(0.5), Frequency.FromHertz(400), Part, "frequency");
        Load = Guard.Within(load, 0, 3, Part, "load", "of rated motor torque");
        Loaded = Guard.Positive(loaded, Part, "time under load");
        Idle = Guard.NotNegative(idle, Part, "time unloaded");
        Off = Guard.NotNegative(off, Part, "time off");
        Repeats = repeats is >= 1 and <= 100_000
            ? repeats
            : throw new PartException(Part, "repeats", $"{repeats}", "1 to 100000");
    }

    /// <summary>What the owner calls it.</summary>
    public string Name { get; }

    /// <summary>Output frequency.</summary>
    public Frequency Frequency { get; }

    /// <summary>Motor torque under load over rated torque.</summary>
    public double Load { get; }

    /// <summary>Time under load in one repeat.</summary>
    public Duration Loaded { get; }

    /// <summary>Time running unloaded in one repeat.</summary>
    public Duration Idle { get; }

    /// <summary>Time switched off in one repeat.</summary>
    public Duration Off { get; }

    /// <summary>How often in a day.</summary>
    public int Repeats { get; }

    /// <summary>Time of one repeat.</summary>
    public Duration Period => Loaded + Idle + Off;
}

/// <summary>A working day: its tasks, and how long the inverter stays switched on.</summary>
public sealed record WorkingDay
{
    private const string Part = "day";

    /// <summary>Makes a day.</summary>
    /// <param name="switchedOn">How long the inverter is on the supply; not shorter than the tasks, not above 24 h.</param>
    /// <param name="tasks">At least one.</param>
    /// <exception cref="PartException">No task, or more work than time.</exception>
    public WorkingDay(Duration switchedOn, IReadOnlyList<DayTask> tasks)
    {
        Tasks = tasks.Count > 0 ? tasks : throw new PartException(Part, "tasks", "none", "one or more");
        var work = Duration.FromHours(tasks.Sum(task => task.Period.Hours * task.Repeats));
        SwitchedOn = Guard.Within(
            switchedOn, work * (1 - 1e-9), Duration.FromHours(24), Part, "switched on", "the tasks with their pauses take the least of it");
    }

    /// <summary>How long the inverter is on the supply.</summary>
    public Duration SwitchedOn { get; }

    /// <summary>The tasks.</summary>
    public IReadOnlyList<DayTask> Tasks { get; }

    /// <summary>What <see cref="Usual"/> is, in words.</summary>
    internal const string UsualInWords =
        "60 holes at base frequency: 30 s at half of rated torque, 15 s unloaded, 75 s off; switched on for 8 h";

    /// <summary>A day where none was described; own choice.</summary>
    /// <param name="baseFrequency">Base frequency of the inverter.</param>
    /// <returns>Sixty holes at base frequency and half of rated torque, and the inverter on for eight hours.</returns>
    public static WorkingDay Usual(Frequency baseFrequency) => new(
        Duration.FromHours(8),
        [new DayTask(
            "holes", baseFrequency, 0.5, Duration.FromSeconds(30), Duration.FromSeconds(15), Duration.FromSeconds(75), 60)]);
}
