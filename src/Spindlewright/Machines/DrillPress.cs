using Spindlewright.Belts;
using Spindlewright.Cutting;
using Spindlewright.Foundations;
using Spindlewright.Hands;
using Spindlewright.Inverters;
using Spindlewright.Mains;
using Spindlewright.Motors;
using Spindlewright.Motors.Heat;
using Spindlewright.Spindles;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Machines;

/// <summary>How quantities are shown.</summary>
public enum DisplayUnits
{
    /// <summary>Millimetres, newton-metres.</summary>
    Metric,

    /// <summary>Inches, pound-force inches.</summary>
    Inch,
}

/// <summary>The assembled machine: everything between the socket and the drill point.</summary>
public sealed record DrillPress
{
    /// <summary>
    /// Most volts per hertz at the base frequency over the motor's rated ones before a machine is refused. Above it the
    /// core saturates at every speed, not only at the slow end. Own choice.
    /// </summary>
    public const double MostBaseOverflux = 1.2;

    /// <summary>Makes a machine from its parts.</summary>
    /// <param name="title">What the owner calls it.</param>
    /// <param name="supply">The socket.</param>
    /// <param name="inverter">The inverter as set.</param>
    /// <param name="motor">The motor as connected.</param>
    /// <param name="belts">At least one belt position; names differ.</param>
    /// <param name="spindle">The spindle.</param>
    /// <exception cref="PartException">The parts do not go together.</exception>
    public DrillPress(
        string title, Supply supply, Inverter inverter, MachineMotor motor, IReadOnlyList<BeltPosition> belts,
        Spindle spindle)
    {
        (Title, Supply, Inverter, Motor, Belts, Spindle) = (title, supply, inverter, motor, belts, spindle);
        if (belts.Count == 0) throw new PartException("machine", "belt positions", "none", "one or more");
        if (belts.GroupBy(belt => belt.Name).FirstOrDefault(group => group.Count() > 1) is { } twice)
            throw new PartException("belt", "name", $"'{twice.Key}' twice", "names that differ");
        RefuseOverflux();
        Warnings = MachineWarnings.Of(this);
    }

    /// <summary>What the owner calls it.</summary>
    public string Title { get; }

    /// <summary>The socket.</summary>
    public Supply Supply { get; }

    /// <summary>The inverter as set.</summary>
    public Inverter Inverter { get; }

    /// <summary>The motor as connected.</summary>
    public MachineMotor Motor { get; }

    /// <summary>Belt positions in the owner's order.</summary>
    public IReadOnlyList<BeltPosition> Belts { get; }

    /// <summary>The spindle.</summary>
    public Spindle Spindle { get; }

    /// <summary>Holes to drill; may be empty.</summary>
    public IReadOnlyList<WorkItem> Work { get; init; } = [];

    /// <summary>The owner's own materials; may be empty.</summary>
    public IReadOnlyList<CuttingMaterial> OwnMaterials { get; init; } = [];

    /// <summary>What the owner found to work; may be empty.</summary>
    public IReadOnlyList<Experience> Experience { get; init; } = [];

    /// <summary>How the drill is pushed.</summary>
    public QuillFeed Quill { get; init; } = QuillFeed.Usual;

    /// <summary>Section, centre distance and tension of the belts; null where they were not described.</summary>
    public Belting? Belting { get; init; }

    /// <summary>Hands and reaction to compare with.</summary>
    public required Person Person { get; init; }

    /// <summary>What the study of contact needs; null where it was not read from a file.</summary>
    public ContactInputs? Contact { get; init; }

    /// <summary>The machine before the conversion; null where it was not described.</summary>
    public AsFound? AsFound { get; init; }

    /// <summary>What heats and cools the motor; null where it was not read from a file.</summary>
    public HeatingData? Heating { get; init; }

    /// <summary>The working day; null where none was described.</summary>
    public WorkingDay? Day { get; init; }

    /// <summary>Spreads of the owner's own, and how many samples to draw.</summary>
    public OwnUncertainty Uncertainty { get; init; } = OwnUncertainty.None;

    /// <summary>What is wanted on the sheets for the wall.</summary>
    public SheetWishes Sheets { get; init; } = SheetWishes.Usual;

    /// <summary>What may be bought, altered and set; null where it was not read from a file.</summary>
    public SizingWishes? Sizing { get; init; }

    /// <summary>How quantities are shown.</summary>
    public DisplayUnits DisplayUnits { get; init; }

    /// <summary>Every default that stands in for a figure the machine file did not give.</summary>
    public IReadOnlyList<AppliedDefault> Defaults { get; init; } = [];

    /// <summary>What must be said first, most important first.</summary>
    public IReadOnlyList<string> Warnings { get; }

    /// <summary>The same machine with the inverter set to another V/f law.</summary>
    /// <param name="curve">The law.</param>
    /// <returns>A new machine, checked as any other.</returns>
    /// <exception cref="PartException">The law does not go with the machine.</exception>
    public DrillPress WithCurve(VoltsPerHertzCurve curve) => With(Inverter.WithCurve(curve), Motor, Belts);

    /// <summary>The same machine with another motor.</summary>
    /// <param name="motor">The motor.</param>
    /// <returns>A new machine, checked as any other.</returns>
    /// <exception cref="PartException">The motor does not go with the machine.</exception>
    public DrillPress WithMotor(MachineMotor motor) => With(Inverter, motor, Belts);

    /// <summary>The same machine held to one belt position.</summary>
    /// <param name="belt">The position.</param>
    /// <returns>A new machine without the others.</returns>
    public DrillPress At(BeltPosition belt) => With(Inverter, Motor, [belt]);

    /// <summary>The same machine with winding and bars at one temperature.</summary>
    /// <param name="temperature">−40 °C to 250 °C.</param>
    /// <returns>A new machine whose two temperatures are the same.</returns>
    public DrillPress WithWinding(Temperature temperature) => With(Inverter, Motor with { Winding = (temperature, temperature) }, Belts);

    /// <summary>The same machine with another inverter, motor and belts.</summary>
    /// <param name="inverter">The inverter as set.</param>
    /// <param name="motor">The motor as connected.</param>
    /// <param name="belts">At least one belt position.</param>
    /// <returns>A new machine, checked as any other.</returns>
    /// <exception cref="PartException">The parts do not go together.</exception>
    public DrillPress With(Inverter inverter, MachineMotor motor, IReadOnlyList<BeltPosition> belts) =>
        new(Title, Supply, inverter, motor, belts, Spindle)
        {
            Work = Work,
            OwnMaterials = OwnMaterials,
            Experience = Experience,
            Quill = Quill,
            Belting = Belting,
            Person = Person,
            Contact = Contact,
            AsFound = AsFound,
            Heating = Heating,
            Day = Day,
            Uncertainty = Uncertainty,
            Sheets = Sheets,
            Sizing = Sizing,
            DisplayUnits = DisplayUnits,
            Defaults = Defaults,
        };

    internal ContactInputs ContactOrUsual => Contact ?? ContactInputs.Usual(Motor.RatedPower, Motor.Circuit.Hazard.Poles);

    internal WorkingDay DayOrUsual => Day ?? WorkingDay.Usual(Inverter.Curve.BaseFrequency);

    private void RefuseOverflux()
    {
        var curve = Inverter.Curve;
        var rated = Motor.Circuit.Hazard;
        // The link cannot give more than its ceiling, whatever is set: only volts that can arrive count.
        var volts = Math.Min(
            curve.BaseVoltage.Volts, Inverter.Link.Ceiling(Supply.Nominal, Side.Hazard).Volts);
        var overflux = volts / curve.BaseFrequency.Hertz / (rated.RatedLineVoltage.Volts / rated.RatedFrequency.Hertz);
        if (overflux > MostBaseOverflux)
            throw new PartException(
                "motor", "volts per hertz",
                Invariant($"{volts:0} V at {curve.BaseFrequency.Hertz:0.#} Hz, {overflux:0.00} times the rated {rated.RatedLineVoltage.Volts:0} V at {rated.RatedFrequency.Hertz:0.#} Hz of the {Motor.Connection.ToString().ToLowerInvariant()} connection"),
                Invariant($"at most {MostBaseOverflux:0.0} times"),
                Motor.Connection == Connection.Delta
                    ? "the core saturates and the winding overheats; connect in star, or set a lower base voltage or a higher base frequency"
                    : "the core saturates and the winding overheats; set a lower base voltage or a higher base frequency");
    }
}
