using Spindlewright.Foundations.Tables;
using Spindlewright.Hands;
using Spindlewright.Machines;
using Spindlewright.Studies.Before;
using Spindlewright.Studies.Changes;
using Spindlewright.Studies.Contact;
using Spindlewright.Studies.Feeding;
using Spindlewright.Studies.Findings;
using Spindlewright.Studies.Frequencies;
using Spindlewright.Studies.Heat;
using Spindlewright.Studies.Overpowering;
using Spindlewright.Studies.Ratios;
using Spindlewright.Studies.Sizing;
using Spindlewright.Studies.Speeds;
using Spindlewright.Studies.SupplyAndBill;
using Spindlewright.Studies.Torques;
using Spindlewright.Studies.Uncertainty;
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

    /// <summary>What a hand, a sleeve or loose work would meet.</summary>
    public required ContactStudy Contact { get; init; }

    /// <summary>The operations of the machine file.</summary>
    public required WorkStudy Work { get; init; }

    /// <summary>All belt positions over frequency, and which to take for a wanted speed.</summary>
    /// <remarks>Computed when first asked for: every wanted speed is looked for on every position, and few notebooks ask.</remarks>
    public SpeedChart Chart => Charted.Value;

    /// <summary>The largest drill by material and belt position.</summary>
    public required LargestDrillStudy LargestDrills { get; init; }

    /// <summary>Feed as the outcome of arm and lever.</summary>
    /// <remarks>Computed when first asked for, as <see cref="Chart"/> is.</remarks>
    public HandFeedStudy Feeding => Fed.Value;

    /// <summary>Geometry, grip and design of the belts.</summary>
    public required RatioStudy Ratios { get; init; }

    /// <summary>What the tables of cutting speeds say to this machine's speeds.</summary>
    public required CuttingSpeedStudy CuttingSpeeds { get; init; }

    /// <summary>What heat allows.</summary>
    public required HeatStudy Heat { get; init; }

    /// <summary>What the supply sees.</summary>
    public required SupplyStudy Supply { get; init; }

    /// <summary>How sure the overpowering speeds and the operations are.</summary>
    /// <remarks>Computed when first asked for: some thousand machines take longer than most other studies, and few readers of results ask.</remarks>
    public UncertaintyStudy Uncertainty => Sampled.Value;

    /// <summary>What settings and parts, changed one at a time, do to bound and crossings.</summary>
    /// <remarks>Computed when first asked for, as <see cref="Uncertainty"/> is.</remarks>
    public ChangesStudy Changes => Changed.Value;

    /// <summary>Which motor, which pulleys; null where no work is described.</summary>
    /// <remarks>Computed when first asked for, as <see cref="Uncertainty"/> is.</remarks>
    public SizingStudy? Sizing => Sized.Value;

    private Lazy<SpeedChart> Charted { get; init; } = null!;

    private Lazy<HandFeedStudy> Fed { get; init; } = null!;

    private Lazy<SizingStudy?> Sized { get; init; } = null!;

    private Lazy<UncertaintyStudy> Sampled { get; init; } = null!;

    private Lazy<ChangesStudy> Changed { get; init; } = null!;

    /// <summary>The machine as found; null where it was not described.</summary>
    public required BeforeStudy? Before { get; init; }

    /// <summary>What it comes to, in sentences.</summary>
    public IReadOnlyList<Finding> Findings => FindingsStudy.Of(this);

    /// <summary>Names of the steps of <see cref="Of"/>, in order, for progress.</summary>
    public static IReadOnlyList<string> Steps { get; } =
        ["voltages", "speeds", "torques", "hands at the chuck", "machine as found", "heat", "supply", "torque against frequency", "work",
            "largest drills", "belts", "cutting speeds", "contact", "speed chart", "hand feed", "uncertainty", "changes", "sizing"];

    /// <summary>Runs every study: the one function behind results.json, the report and the notebooks.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="handbook">Tables.</param>
    /// <param name="seed">Seed of everything drawn at random.</param>
    /// <param name="progress">Told each step's name as it begins; may be null.</param>
    /// <param name="cancellation">Ends it; nothing is returned then.</param>
    /// <returns>The results.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static StudyResults Of(
        DrillPress press, Handbook handbook, ulong seed = DefaultSeed, Action<string>? progress = null,
        CancellationToken cancellation = default)
    {
        T Step<T>(int index, Func<T> study)
        {
            cancellation.ThrowIfCancellationRequested();
            progress?.Invoke(Steps[index]);
            return study();
        }

        var strength = HandStrength.OfHandbook(handbook);
        var voltages = Step(0, () => VoltageStudy.Of(press));
        var speeds = Step(1, () => SpeedStudy.Of(press));
        var torques = Step(2, () => TorqueStudy.Of(press));
        var heat = Step(5, () => HeatStudy.Of(press, torques, handbook));
        var work = Step(8, () => WorkStudy.Of(press, torques, heat, handbook));
        var results = new StudyResults
        {
            Press = press,
            Seed = seed,
            Voltages = voltages,
            Speeds = speeds,
            Torques = torques,
            Hands = Step(3, () => OverpoweringStudy.Of(press, torques, strength)),
            Before = Step(4, () => BeforeStudy.Of(press)),
            Heat = heat,
            Supply = Step(6, () => SupplyStudy.Of(press, handbook)),
            Frequencies = Step(7, () => FrequencyStudy.Of(press)),
            Work = work,
            Charted = new(() => SpeedChart.Of(press, heat)),
            LargestDrills = Step(9, () => LargestDrillStudy.Of(press, heat, handbook)),
            Fed = new(() => HandFeedStudy.Of(press, heat, handbook)),
            Ratios = Step(10, () => RatioStudy.Of(press, torques, handbook)),
            CuttingSpeeds = Step(11, () => CuttingSpeedStudy.Of(press, speeds, handbook)),
            Contact = Step(12, () => ContactStudy.Of(press, torques, work, handbook)),
            Sampled = new(() => UncertaintyStudy.Of(
                press, torques, strength, seed, work, cancellation: cancellation)),
            Sized = new(() => SizingStudy.Of(press, handbook, seed, cancellation: cancellation)),
            Changed = new(() => ChangesStudy.Of(press, strength, seed, cancellation)),
        };
        // Who is told of the steps waits for all of them.
        if (progress is null) return results;
        Step(13, () => results.Chart);
        Step(14, () => results.Feeding);
        Step(15, () => results.Uncertainty);
        Step(16, () => results.Changes);
        Step(17, () => results.Sizing);
        return results;
    }

    /// <summary>The seed where none is given.</summary>
    public const ulong DefaultSeed = 1;
}
