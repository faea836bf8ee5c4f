using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Motors.Heat;

/// <summary>One stage of a duty: so much loss at such a speed for such a time.</summary>
/// <param name="Time">How long it lasts, 0 or more.</param>
/// <param name="Loss">All losses with the winding at coolant temperature, 0 or more.</param>
/// <param name="Speed">Speed of the motor.</param>
/// <param name="LossPerKelvinW">Watts that each kelvin of rise adds, because resistance grows; 0 or more.</param>
public sealed record DutyStage(Duration Time, Power Loss, RotationalSpeed Speed, double LossPerKelvinW = 0)
{
    private const string Part = "duty";

    /// <summary>How long it lasts.</summary>
    public Duration Time { get; } = Guard.NotNegative(Time, Part, "time");

    /// <summary>All losses with the winding at coolant temperature.</summary>
    public Power Loss { get; } = Guard.NotNegative(Loss, Part, "loss");

    /// <summary>Watts that each kelvin of rise adds.</summary>
    public double LossPerKelvinW { get; } = Guard.Within(LossPerKelvinW, 0, double.MaxValue, Part, "loss a kelvin");

    /// <summary>A stage at standstill with the motor switched off.</summary>
    /// <param name="time">How long it lasts.</param>
    /// <returns>A stage without loss.</returns>
    public static DutyStage Off(Duration time) => new(time, Power.Zero, RotationalSpeed.Zero);
}

/// <summary>A duty repeated without end: where the rise settles.</summary>
/// <remarks>
/// Each stage maps the rise at its start to the rise at its end by a straight line, so the settled duty is the fixed point
/// of the product of these lines, and the highest rise stands at the end of a stage.
/// </remarks>
public sealed record DutyCycle
{
    private readonly ThermalBody body;

    /// <summary>Makes a duty.</summary>
    /// <param name="body">The motor.</param>
    /// <param name="stages">Its stages in order; together they last longer than 0.</param>
    /// <exception cref="PartException">No stage, or no time.</exception>
    public DutyCycle(ThermalBody body, IReadOnlyList<DutyStage> stages)
    {
        this.body = body;
        Stages = stages;
        Guard.Positive(Period, "duty", "time of all stages");
    }

    /// <summary>The stages in order.</summary>
    public IReadOnlyList<DutyStage> Stages { get; }

    /// <summary>Time of one cycle.</summary>
    public Duration Period => Duration.FromSeconds(Stages.Sum(stage => stage.Time.Seconds));

    /// <summary>Rise at the end of each stage once the duty has settled; null where it never settles.</summary>
    /// <returns>One rise a stage, in order.</returns>
    public IReadOnlyList<TemperatureDelta>? Settled()
    {
        var (gain, offset) = Stages.Aggregate((Gain: 1.0, OffsetK: 0.0), (whole, stage) =>
        {
            var (stageGain, stageOffset) = Step(stage);
            return (stageGain * whole.Gain, stageGain * whole.OffsetK + stageOffset);
        });
        if (gain >= 1) return null;
        return Over(TemperatureDelta.FromKelvins(offset / (1 - gain)));
    }

    /// <summary>The highest rise of the settled duty; null where it never settles.</summary>
    public TemperatureDelta? HighestRise => Settled()?.Max();

    /// <summary>Rises over one cycle from a given start.</summary>
    /// <param name="start">Rise at the start of the first stage.</param>
    /// <returns>Rise at the end of each stage.</returns>
    public IReadOnlyList<TemperatureDelta> Over(TemperatureDelta start)
    {
        var rises = new List<TemperatureDelta>();
        var rise = start.Kelvins;
        foreach (var stage in Stages)
        {
            var (gain, offset) = Step(stage);
            rise = gain * rise + offset;
            rises.Add(TemperatureDelta.FromKelvins(rise));
        }
        return rises;
    }

    private (double Gain, double OffsetK) Step(DutyStage stage) => FirstOrder.Step(
        (double)stage.Loss.Watts, body.ConductanceWPerK(stage.Speed) - stage.LossPerKelvinW, body.CapacityJPerK,
        stage.Time.Seconds);
}
