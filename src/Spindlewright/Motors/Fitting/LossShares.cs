using Spindlewright.Foundations;

namespace Spindlewright.Motors.Fitting;

/// <summary>How the rated losses that a nameplate implies are taken to be shared out.</summary>
/// <param name="Core">Core loss over all losses, 0 to 0.6.</param>
/// <param name="Rotational">Friction and windage over all losses, 0 to 0.4.</param>
/// <param name="Stray">Stray-load loss over all losses, 0 to 0.2.</param>
/// <remarks>
/// What is left after rotor loss (slip) goes to the stator winding and so sets R1. A larger core share leaves a
/// smaller R1 and more torque at the slow end; hence the hazard side takes the larger one. Own choice.
/// </remarks>
public sealed record LossShares(double Core, double Rotational, double Stray)
{
    private const string Part = "loss shares";

    /// <summary>The pair used where nothing is measured.</summary>
    public static Sided<LossShares> Default { get; } = new(new(0.15, 0.05, 0.02), new(0.30, 0.10, 0.02));

    /// <summary>All losses in the windings: a bare circuit.</summary>
    public static LossShares WindingsOnly { get; } = new(0, 0, 0);

    /// <summary>Core loss over all losses.</summary>
    public double Core { get; } = Guard.Within(Core, 0, 0.6, Part, "core share");

    /// <summary>Friction and windage over all losses.</summary>
    public double Rotational { get; } = Guard.Within(Rotational, 0, 0.4, Part, "friction and windage share");

    /// <summary>Stray-load loss over all losses.</summary>
    public double Stray { get; } = Guard.Within(Stray, 0, 0.2, Part, "stray-load share");
}
