using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[day]</c> with its tasks <c>[[day.task]]</c>: what heat and bill are computed for.</summary>
internal static class DaySection
{
    private static readonly KeySpec<Duration> SwitchedOn = Key.Required(
        "switched_on", Forms.Quantity(QuantityKinds.Duration), "How long a day the inverter is on the supply", "\"8 h\"");

    private static readonly KeySpec<string> Name = Key.Required("name", Forms.Text(80), "What the owner calls the task", "\"bracket holes\"");

    private static readonly KeySpec<Frequency> TaskFrequency = Key.Required(
        "frequency", Forms.Quantity(QuantityKinds.Frequency), "Output frequency", "\"50 Hz\"");

    private static readonly KeySpec<Ratio> Load = Key.Required(
        "load", Forms.Quantity(QuantityKinds.Ratio), "Motor torque under load over rated torque", "\"50 %\"");

    private static readonly KeySpec<Duration> Loaded = Key.Required(
        "loaded", Forms.Quantity(QuantityKinds.Duration), "Time under load in one repeat", "\"30 s\"") with
    { Quantity = "time under load" };

    private static readonly KeySpec<Duration> Idle = Key.Optional(
        "idle", Forms.Quantity(QuantityKinds.Duration), "Time running unloaded in one repeat", "\"15 s\"", "none") with
    { Quantity = "time unloaded" };

    private static readonly KeySpec<Duration> Off = Key.Optional(
        "off", Forms.Quantity(QuantityKinds.Duration), "Time switched off in one repeat", "\"75 s\"", "none") with
    { Quantity = "time off" };

    private static readonly KeySpec<int> Repeats = Key.Required(
        "repeats", Forms.WholeNumber(1, 100_000), "How often in a day", "60");

    private static readonly SectionSpec Task = new(
        "task", "One kind of work of the day", [Name, TaskFrequency, Load, Loaded, Idle, Off, Repeats])
    { Repeats = true };

    internal static SectionSpec Spec { get; } =
        new("day", "A working day, for heat and energy", [SwitchedOn]) { Sections = [Task] };

    /// <summary>The day of the section, or the usual one, which is noted.</summary>
    internal static WorkingDay? Read(Section? section, Frequency baseFrequency, DefaultsTaken defaults)
    {
        if (section is not null)
        {
            var tasks = section.Each(Task).Select(Read).OfType<DayTask>().ToList();
            return section.Make(() => new WorkingDay(section.Get(SwitchedOn)!.Value, tasks));
        }
        defaults.Add(new(
            "day.switched_on", "The working day", WorkingDay.UsualInWords, WorkingDay.UsualInWords, Provenance.OwnChoice, "this-project",
            "describe your own day in [day] and [[day.task]]"));
        return WorkingDay.Usual(baseFrequency);
    }

    private static DayTask? Read(Section task) => task.Make(() => new DayTask(
        task.Get(Name)!, task.Get(TaskFrequency)!.Value, task.Get(Load)!.Value.DecimalFractions,
        task.Get(Loaded)!.Value, task.Get(Idle) ?? Duration.Zero, task.Get(Off) ?? Duration.Zero, task.Get(Repeats)!.Value));
}
