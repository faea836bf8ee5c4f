using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Motors.Heat;

/// <summary>What heats and cools a motor, as far as its nameplate does not say.</summary>
/// <remarks>
/// The capability side is the hot one throughout: it heats faster, cools slower and stands in warmer air. The other side is
/// the cool one. Heat says nothing about what a hand could meet.
/// </remarks>
public sealed record HeatingData
{
    private const string Part = "heat";

    /// <summary>Coolant temperature for which motors are rated (IEC 60034-1, second hand).</summary>
    public static Temperature RatedCoolant { get; } = Temperature.FromDegreesCelsius(40);

    /// <summary>Letter of the insulation class: B, F or H.</summary>
    public required string InsulationClass { get; init; }

    /// <summary>Mean winding temperature that the class allows: the rated coolant and the rise of the class.</summary>
    public required Temperature ClassLimit { get; init; }

    /// <summary>Rise of the winding at rated load from a sinusoidal supply, 10 K to 150 K.</summary>
    public required Sided<TemperatureDelta> RatedRise
    {
        get;
        init => field = value.Map(rise => Guard.Within(
            rise, TemperatureDelta.FromKelvins(10), TemperatureDelta.FromKelvins(150), Part, "rise at rated load"));
    }

    /// <summary>Thermal time constant at rated speed, 0.5 min to 600 min.</summary>
    public required Sided<Duration> RunningTimeConstant
    {
        get;
        init => field = value.Map(time => Guard.Within(
            time, Duration.FromMinutes(0.5), Duration.FromMinutes(600), Part, "time constant"));
    }

    /// <summary>Time constant at standstill over that at rated speed, 1 to 10.</summary>
    public required Sided<double> StandstillOverRunning
    {
        get;
        init => field = value.Map(ratio => Guard.Within(
            ratio, 1, 10, Part, "standstill over running", "a motor at rest cools slower"));
    }

    /// <summary>Temperature of the air around the motor, −20 °C to 60 °C.</summary>
    public required Sided<Temperature> Coolant
    {
        get;
        init => field = value.Map(air => Guard.Within(
            air, Temperature.FromDegreesCelsius(-20), Temperature.FromDegreesCelsius(60), Part, "air temperature"));
    }

    /// <summary>Loss that the inverter's waveform adds, over the losses at rated load, 0 to 0.5.</summary>
    public required Sided<double> WaveformLoss
    {
        get;
        init => field = value.Map(share => Guard.Within(share, 0, 0.5, Part, "waveform loss"));
    }

    /// <summary>Current density in the winding at rated current, 1 A/mm² to 20 A/mm².</summary>
    public required Sided<ElectricCurrentDensity> RatedCurrentDensity
    {
        get;
        init => field = value.Map(density => Guard.Within(
            density, ElectricCurrentDensity.FromAmperesPerSquareMeter(1e6),
            ElectricCurrentDensity.FromAmperesPerSquareMeter(20e6), Part, "current density"));
    }

    /// <summary>What moves the air.</summary>
    public Ventilation Ventilation { get; init; } = Ventilation.Self;

    /// <summary>The data where nothing was given: class F, and the defaults of the handbook.</summary>
    /// <param name="handbook">Tables.</param>
    /// <returns>Paired defaults.</returns>
    public static HeatingData Usual(Handbook handbook)
    {
        var facts = handbook.MotorFacts;
        return new()
        {
            InsulationClass = "F",
            ClassLimit = LimitOf("F", handbook),
            RatedRise = HotAndCool(facts["rise-at-rated-load"], kelvins => TemperatureDelta.FromKelvins(kelvins)),
            RunningTimeConstant = CoolAndHot(facts["heating-time-constant"], minutes => Duration.FromMinutes(minutes)),
            StandstillOverRunning = HotAndCool(facts["standstill-over-running"], ratio => ratio),
            Coolant = HotAndCool(facts["workshop-air"], celsius => Temperature.FromDegreesCelsius(celsius)),
            WaveformLoss = HotAndCool(facts["inverter-waveform-loss"], share => share),
            RatedCurrentDensity = HotAndCool(
                facts["winding-current-density"], each => ElectricCurrentDensity.FromAmperesPerSquareMeter(each * 1e6)),
        };
    }

    /// <summary>Mean winding temperature that an insulation class allows.</summary>
    /// <param name="insulationClass">B, F or H.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>40 °C and the rise of the class.</returns>
    /// <exception cref="PartException">No such class.</exception>
    public static Temperature LimitOf(string insulationClass, Handbook handbook)
    {
        if (insulationClass is not ("B" or "F" or "H"))
            throw new PartException(Part, "insulation class", $"'{insulationClass}'", "B, F or H");
        var rise = handbook.MotorFacts[$"class-{insulationClass.ToLowerInvariant()}-rise"].Required().Value;
        return RatedCoolant + TemperatureDelta.FromKelvins(rise);
    }

    private static Sided<T> HotAndCool<T>(FactRow fact, Func<double, T> make) =>
        new(make(fact.Range().Value.Most), make(fact.Range().Value.Least));

    /// <summary>A short time constant heats sooner, so the lower end is the hot one.</summary>
    private static Sided<T> CoolAndHot<T>(FactRow fact, Func<double, T> make) =>
        new(make(fact.Range().Value.Least), make(fact.Range().Value.Most));
}
