using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Cutting;

/// <summary>Power laws of drilling torque and thrust with the factor for a material's strength or hardness.</summary>
/// <param name="Torque">Law of torque, N·m.</param>
/// <param name="Thrust">Law of thrust, N.</param>
/// <param name="Factor">Multiplies both; above 0.</param>
/// <remarks>M = 10 Cm D^q s^y K; P = 10 Cp D^q s^y K (Kosilova and Meshcheryakov, volume 2, table 32); sharp standard drill.</remarks>
public sealed record ScaledPowerLaw(PowerLaw Torque, PowerLaw Thrust, double Factor)
{
    /// <summary>Torque of a drill.</summary>
    /// <param name="diameter">Drill diameter.</param>
    /// <param name="feedPerRevolution">Feed a revolution.</param>
    /// <returns>Cutting torque.</returns>
    public Torque TorqueAt(Length diameter, Length feedPerRevolution) =>
        UnitsNet.Torque.FromNewtonMeters(Torque.At(diameter, feedPerRevolution) * Factor);

    /// <summary>Thrust of a drill.</summary>
    /// <param name="diameter">Drill diameter.</param>
    /// <param name="feedPerRevolution">Feed a revolution.</param>
    /// <returns>Thrust along the spindle.</returns>
    public Force ThrustAt(Length diameter, Length feedPerRevolution) =>
        Force.FromNewtons(Thrust.At(diameter, feedPerRevolution) * Factor);

    internal static Sourced<ScaledPowerLaw>? Of(MaterialRow row, KienzleRow? group, Handbook handbook)
    {
        if (handbook.PowerLawOf(row) is not { } law) return null;
        var over = (law.ReferenceStrength, group?.TensileStrength, law.ReferenceHardnessHb, row.HardnessLowHb) switch
        {
            ({ } reference, { } strength, _, _) => strength / reference,
            (_, _, { } reference, { } low) => (low + row.HardnessHighHb!.Value) / 2 / reference,
            _ => 1,
        };
        return law.Citation.On(new ScaledPowerLaw(law.Torque, law.Thrust, Math.Pow(over, law.ScalingExponent)));
    }
}
