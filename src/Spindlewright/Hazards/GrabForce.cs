using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Hazards;

/// <summary>What a turning surface takes hold of: a part of the body as a mass behind a spring.</summary>
/// <param name="Name">"hand" or "lower arm".</param>
/// <param name="Mass">Effective mass, above 0.</param>
/// <param name="NewtonsPerMetre">Spring constant in N/m, above 0.</param>
/// <param name="Provenance">How the two figures reached us.</param>
/// <param name="Source">Key into <c>data/references.json</c>.</param>
/// <remarks>The figures are for blunt contact with a robot, not for a rotating tool: nothing better was found.</remarks>
public sealed record ContactBody(string Name, Mass Mass, double NewtonsPerMetre, Provenance Provenance, string Source)
{
    private const string Part = "contact";

    /// <summary>Effective mass.</summary>
    public Mass Mass { get; } = Guard.Positive(Mass, Part, "effective mass");

    /// <summary>Spring constant in N/m.</summary>
    public double NewtonsPerMetre { get; } = Guard.Positive(NewtonsPerMetre, Part, "spring constant");

    /// <summary>The hand of the handbook.</summary>
    /// <param name="handbook">Tables.</param>
    /// <returns>Mass and spring.</returns>
    public static ContactBody HandOf(Handbook handbook) => Of("hand", "hand", handbook);

    /// <summary>The lower arm of the handbook.</summary>
    /// <param name="handbook">Tables.</param>
    /// <returns>Mass and spring.</returns>
    public static ContactBody LowerArmOf(Handbook handbook) => Of("lower arm", "lower-arm", handbook);

    private static ContactBody Of(string name, string key, Handbook handbook)
    {
        var (mass, spring) = (handbook.Injury[$"{key}-mass"], handbook.Injury[$"{key}-spring"]);
        return new(
            name, Mass.FromKilograms(mass.Value!.Value), 1000 * spring.Value!.Value, spring.Citation.Provenance, spring.Citation.Source);
    }
}

/// <summary>The largest force when a turning, driven surface catches something that gives like a spring.</summary>
/// <remarks>
/// <para>
/// Own derivation. The surface has the mass m = J/r² and the speed v, and is driven by Fd = T/r all the while. Energy: ½·m·v² + Fd·x
/// = ½·k·x². With F = k·x this is F² − 2·Fd·F − k·m·v² = 0, so F = Fd + √(Fd² + k·m·v²): twice the driving force where it starts
/// from rest, more where it turns. Where the caught part can move freely, the reduced mass μ = m·M/(m + M) stands for m (the
/// energy of both about their common speed); held fast, μ = m. On a free part only the share μ/m of Fd bends the spring, the rest
/// carries both along; the whole of Fd is counted all the same, on the high side, so that it also holds for a part caught half-way.
/// </para>
/// <para>A second derivation, the equation of motion m·x″ = Fd − k·x from x = 0 with speed v, has its largest k·x at
/// Fd + √(Fd² + k·m·v²) as well: an oscillation about Fd/k with amplitude √((Fd/k)² + m·v²/k).</para>
/// </remarks>
public static class GrabForce
{
    private const string Part = "grab";

    /// <summary>Largest force.</summary>
    /// <param name="driving">Driving force at the surface, 0 or more.</param>
    /// <param name="body">What is caught.</param>
    /// <param name="moving">Mass that moves: see <see cref="TrappedMass"/> and <see cref="FreeMass"/>; 0 or more.</param>
    /// <param name="surface">Speed of the surface, 0 or more.</param>
    /// <returns>Fd + √(Fd² + k·μ·v²).</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static Force Of(Force driving, ContactBody body, Mass moving, Speed surface)
    {
        ArgumentNullException.ThrowIfNull(body);
        var drivingN = Guard.NotNegative(driving, Part, "driving force").Newtons;
        var kilograms = Guard.NotNegative(moving, Part, "moving mass").Kilograms;
        var metresPerSecond = Guard.NotNegative(surface, Part, "speed of the surface").MetersPerSecond;
        return Force.FromNewtons(
            drivingN + Math.Sqrt(drivingN * drivingN + body.NewtonsPerMetre * kilograms * metresPerSecond * metresPerSecond));
    }

    /// <summary>Mass that moves where the caught part is held fast: all of the surface's.</summary>
    /// <param name="inertia">Of everything that turns, seen from the spindle; 0 or more.</param>
    /// <param name="diameter">Of the surface, above 0.</param>
    /// <returns>J/r².</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static Mass TrappedMass(MassMomentOfInertia inertia, Length diameter)
    {
        var radius = Guard.Positive(diameter, Part, "diameter").Meters / 2;
        return Mass.FromKilograms(Guard.NotNegative(inertia, Part, "inertia").KilogramSquareMeters / (radius * radius));
    }

    /// <summary>Mass that moves where the caught part is free to be carried along.</summary>
    /// <param name="body">What is caught.</param>
    /// <param name="trapped">Mass of the surface.</param>
    /// <returns>The reduced mass m·M/(m + M), never above either.</returns>
    public static Mass FreeMass(ContactBody body, Mass trapped) => Mass.FromKilograms(
        trapped.Kilograms * body.Mass.Kilograms / (trapped.Kilograms + body.Mass.Kilograms));

    /// <summary>Speed at which a body of any mass, not driven, just reaches a force on a part of the body that is free.</summary>
    /// <param name="limit">The force, above 0.</param>
    /// <param name="body">What is touched.</param>
    /// <returns>v = F/√(k·M); the machine's mass is taken as without end.</returns>
    /// <exception cref="PartException">The force is not above 0.</exception>
    public static Speed SpeedLimit(Force limit, ContactBody body) => Speed.FromMetersPerSecond(
        Guard.Positive(limit, Part, "force").Newtons / Math.Sqrt(body.NewtonsPerMetre * body.Mass.Kilograms));

    /// <summary>Energy that the spring of a part of the body holds at a force.</summary>
    /// <param name="limit">The force, 0 or more.</param>
    /// <param name="body">What is touched.</param>
    /// <returns>F²/(2·k).</returns>
    public static Energy EnergyAt(Force limit, ContactBody body) => Energy.FromJoules(
        Math.Pow(Guard.NotNegative(limit, Part, "force").Newtons, 2) / (2 * body.NewtonsPerMetre));
}
