using Spindlewright.Cutting;
using Spindlewright.Foundations.Tables;
using Spindlewright.Hands;
using Spindlewright.Machines;
using Spindlewright.Studies.Before;
using Spindlewright.Studies.Findings;
using Spindlewright.Studies.Frequencies;
using Spindlewright.Studies.Heat;
using Spindlewright.Studies.Overpowering;
using Spindlewright.Studies.Speeds;
using Spindlewright.Studies.SupplyAndBill;
using Spindlewright.Studies.Torques;
using Spindlewright.Studies.Voltages;
using Spindlewright.Studies.Work;

namespace Spindlewright.Studies;

/// <summary>The results of all studies of one machine.</summary>
public sealed record StudyResults
{
    /// <summary>The machine.</summary>
    public required DrillPress Press { get; init; }

    /// <summary>The seed of everything drawn at random.</summary>
    public required ulong Seed { get; init; }

    /// <summary>The V/f law as the motor meets it.</summary>
    public required VoltageStudy Voltages { get; init; }

    /// <summary>Spindle speeds.</summary>
    public required SpeedStudy Speeds { get; init; }

    /// <summary>The three torques.</summary>
    public required TorqueStudy Torques { get; init; }

    /// <summary>What frequency does to torque.</summary>
    public required FrequencyStudy Frequencies { get; init; }

    /// <summary>Hands against the spindle.</summary>
    public required OverpoweringStudy Hands { get; init; }

    /// <summary>The holes of the machine file.</summary>
    public required WorkStudy Work { get; init; }

    /// <summary>What heat allows.</summary>
    public required HeatStudy Heat { get; init; }

    /// <summary>What the supply sees.</summary>
    public required SupplyStudy Supply { get; init; }

    /// <summary>The machine as found; null where it was not described.</summary>
    public required BeforeStudy? Before { get; init; }

    /// <summary>What it comes to, in sentences.</summary>
    public IReadOnlyList<Finding> Findings => FindingsStudy.Of(this);

    /// <summary>Names of the steps of <see cref="Of"/>, in order, for progress.</summary>
    public static IReadOnlyList<string> Steps { get; } =
        ["voltages", "speeds", "torques", "hands at the chuck", "holes", "machine as found", "heat", "supply", "torque against frequency"];

    /// <summary>Runs every study: the one function behind results.json, the report and the notebooks.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="handbook">Tables.</param>
    /// <param name="seed">Seed of everything drawn at random.</param>
    /// <param name="progress">Told each step's name as it begins; may be null.</param>
    /// <returns>The results.</returns>
    public static StudyResults Of(
        DrillPress press, Handbook handbook, ulong seed = DefaultSeed, Action<string>? progress = null)
    {
        T Step<T>(int index, Func<T> study)
        {
            progress?.Invoke(Steps[index]);
            return study();
        }

        var voltages = Step(0, () => VoltageStudy.Of(press));
        var speeds = Step(1, () => SpeedStudy.Of(press));
        var torques = Step(2, () => TorqueStudy.Of(press));
        return new()
        {
            Press = press,
            Seed = seed,
            Voltages = voltages,
            Speeds = speeds,
            Torques = torques,
            Hands = Step(3, () => OverpoweringStudy.Of(press, torques, HandStrength.OfHandbook(handbook))),
            Work = Step(4, () => WorkStudy.Of(press, torques, new TabulatedFactors(handbook.Drilling))),
            Before = Step(5, () => BeforeStudy.Of(press)),
            Heat = Step(6, () => HeatStudy.Of(press, torques, handbook)),
            Supply = Step(7, () => SupplyStudy.Of(press, handbook)),
            Frequencies = Step(8, () => FrequencyStudy.Of(press)),
        };
    }

    /// <summary>The seed where none is given.</summary>
    public const ulong DefaultSeed = 1;
}
