using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Studies.Torques;
using Spindlewright.Studies.Work;

namespace Spindlewright.Studies.Contact;

/// <summary>Can it hurt? Everything that the study of contact answers, compared with published figures and never approved.</summary>
/// <param name="Forces">Force at surfaces.</param>
/// <param name="Mechanisms">In the order of accidents.</param>
/// <param name="TwoWays">The same speed by belt and by frequency.</param>
/// <param name="Design">Numbers to design by.</param>
/// <param name="Tools">What must hold the work against each tool of the machine file.</param>
/// <param name="Controls">Yes/no questions.</param>
/// <param name="StallTest">Sheet for measuring torque.</param>
public sealed record ContactStudy(
    SurfaceForceStudy Forces, MechanismStudy Mechanisms, SameSpeedTwoWays TwoWays, HoldingAndStopping Design, IReadOnlyList<HeldTool> Tools,
    IReadOnlyList<ControlQuestion> Controls, StallTestSheet StallTest)
{
    /// <summary>What no published figure was found for: printed with every comparison.</summary>
    public static IReadOnlyList<string> Gaps { get; } =
    [
        "No published criterion for a caught glove tearing free.", "No torsional failure torque of the forearm.",
        "No torque data for two hands at a chuck.", "No published limit of the stop time of drilling machines was seen.",
        "Figures of contact with robots are for blunt contact, not for rotating tools.",
    ];

    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="torques">Its torques.</param>
    /// <param name="work">Its operations.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The study.</returns>
    public static ContactStudy Of(DrillPress press, TorqueStudy torques, WorkStudy work, Handbook handbook)
    {
        var forces = SurfaceForceStudy.Of(press, torques, handbook);
        return new(
            forces, MechanismStudy.Of(press, forces, handbook), SameSpeedTwoWays.Of(press, torques),
            HoldingAndStopping.Of(press, torques, handbook), HeldTool.Of(press, torques, work),
            ControlQuestion.Of(press, handbook.References), StallTestSheet.Of(press, torques));
    }
}
