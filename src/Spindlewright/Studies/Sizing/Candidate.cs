using Spindlewright.Belts;
using Spindlewright.Inverters;
using Spindlewright.Machines;
using Spindlewright.Motors;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Studies.Sizing;

/// <summary>What kind of machine a candidate is.</summary>
public enum CandidateKind
{
    /// <summary>The machine as found: old motor, fixed speeds.</summary>
    AsFound,

    /// <summary>The inexpensive rival: the old motor with an intermediate pulley, fixed speeds.</summary>
    IntermediatePulley,

    /// <summary>A three-phase motor on an inverter.</summary>
    Converted,
}

/// <summary>A motor that may be put on the machine.</summary>
public sealed record MotorChoice
{
    /// <summary>What it is called, such as "0.55 kW 6-pole IE3".</summary>
    public required string Name { get; init; }

    /// <summary>The motor as connected.</summary>
    public required MachineMotor Motor { get; init; }

    /// <summary>The inverter that feeds it: the machine's, or one of its make that carries the motor's rated current.</summary>
    public required Inverter Inverter { get; init; }

    /// <summary>Input current at rated motor power: from nominal supply and low losses to lowest supply and high ones.</summary>
    public required Foundations.Interval InputA { get; init; }

    /// <summary>Frame, shaft, mass and rotor; null where the tables do not reach.</summary>
    public MotorBuild? Build { get; init; }

    /// <summary>Price in the owner's currency; null where not given.</summary>
    public double? Price { get; init; }

    /// <summary>True for the motor of the machine file.</summary>
    public bool IsDescribed { get; init; }

    /// <summary>Number of poles.</summary>
    public int Poles => Motor.Circuit.Capability.Poles;

    /// <summary>Highest frequency that the motor may turn at; null where no limit is known.</summary>
    public Frequency? Highest { get; init; }
}

/// <summary>How the pulleys came about.</summary>
public enum PulleyWay
{
    /// <summary>As described in the machine file.</summary>
    AsTheyAre,

    /// <summary>Chosen anew for the speeds of the owner's work.</summary>
    Regeared,

    /// <summary>As found, and an intermediate pulley that may be put between.</summary>
    Intermediate,
}

/// <summary>A set of belt positions.</summary>
/// <param name="Way">How they came about.</param>
/// <param name="Belts">The positions.</param>
public sealed record PulleySet(PulleyWay Way, IReadOnlyList<BeltPosition> Belts)
{
    /// <summary>In words, to stand after a motor's name.</summary>
    public string Words => Way switch
    {
        PulleyWay.AsTheyAre => "pulleys as they are",
        PulleyWay.Regeared => Invariant($"regeared ({string.Join(" and ", Belts.Select(belt => Invariant($"{belt.Ratio:0.00}")))} to 1)"),
        _ => "an intermediate pulley",
    };

    /// <summary>The position with the largest ratio: slowest, and with the largest bound.</summary>
    public BeltPosition Slowest => Belts.MaxBy(belt => belt.Ratio)!;
}

/// <summary>A V/f law that may be set.</summary>
/// <param name="Words">In words.</param>
/// <param name="Curve">The law.</param>
public sealed record LawChoice(string Words, VoltsPerHertzCurve Curve);

/// <summary>Lowest and highest frequency that may be set.</summary>
/// <param name="Lowest">Lowest output frequency.</param>
/// <param name="Highest">Highest output frequency.</param>
public readonly record struct FrequencyLimits(Frequency Lowest, Frequency Highest)
{
    /// <summary>In words.</summary>
    public string Words => Invariant($"{Lowest.Hertz:0.#} to {Highest.Hertz:0.#} Hz");
}

/// <summary>One machine that the owner may end up with.</summary>
/// <param name="Number">0 for the machine as found, 1 for its rival with an intermediate pulley, 2 and up for conversions.</param>
/// <param name="Kind">What kind of machine.</param>
/// <param name="Pulleys">Its belt positions.</param>
public sealed record Candidate(int Number, CandidateKind Kind, PulleySet Pulleys)
{
    /// <summary>The motor; null for the old one.</summary>
    public MotorChoice? Motor { get; init; }

    /// <summary>The law; null at fixed speeds.</summary>
    public LawChoice? Law { get; init; }

    /// <summary>The limits; null at fixed speeds.</summary>
    public FrequencyLimits? Limits { get; init; }

    /// <summary>True for the conversion of the machine file, changed in nothing.</summary>
    public bool IsDescribed { get; init; }

    /// <summary>In words.</summary>
    public string Words => Kind switch
    {
        CandidateKind.AsFound => "the machine as found",
        CandidateKind.IntermediatePulley => "the old motor with an intermediate pulley",
        _ => Invariant($"{Motor!.Name}, {Pulleys.Words}, {Limits!.Value.Words}, {Law!.Words}"),
    };

    /// <summary>Price in the owner's currency; null where a part of it was not given.</summary>
    public double? Price { get; init; }

    /// <summary>The machine, to run any study on.</summary>
    /// <param name="press">The machine of the file.</param>
    /// <returns>The same machine with this candidate's motor, inverter, settings and belts.</returns>
    /// <exception cref="InvalidOperationException">The candidate has fixed speeds.</exception>
    /// <exception cref="Foundations.PartException">The parts do not go together.</exception>
    public DrillPress Machine(DrillPress press) => this is { Motor: { } motor, Law: { } law, Limits: { } limits }
        ? press.With(motor.Inverter.Set(limits.Lowest, limits.Highest, law.Curve), motor.Motor, Pulleys.Belts)
        : throw new InvalidOperationException($"{Words} has fixed speeds: no study of inverters runs on it.");
}
