using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Hands;
using Spindlewright.Hazards;
using Spindlewright.Machines;
using Spindlewright.Studies.Torques;
using UnitsNet;

namespace Spindlewright.Studies.Contact;

/// <summary>A turning surface that something may touch.</summary>
/// <param name="Name">"chuck body", "tool shank" or "wrapped roll".</param>
/// <param name="Diameter">Hazard side: the one with the larger force.</param>
public sealed record Surface(string Name, Length Diameter);

/// <summary>One figure for each of the torques that stand side by side.</summary>
/// <typeparam name="T">A torque or a force.</typeparam>
/// <param name="Bound">Of the no-credit bound.</param>
/// <param name="IdealBoost">With stator flux held at its rated value, hazard side.</param>
/// <param name="AsModelled">On the set curve, hazard side.</param>
/// <param name="CurrentLimited">As modelled and held to the current limit; not credited.</param>
public sealed record SideBySide<T>(T Bound, T IdealBoost, T AsModelled, T CurrentLimited)
{
    /// <summary>Applies a function to all four.</summary>
    /// <typeparam name="TOut">What the function gives.</typeparam>
    /// <param name="map">The function.</param>
    /// <returns>The four results.</returns>
    public SideBySide<TOut> Map<TOut>(Func<T, TOut> map) => new(map(Bound), map(IdealBoost), map(AsModelled), map(CurrentLimited));
}

/// <summary>Forces at one surface, at one frequency of one belt position.</summary>
/// <param name="Surface">The surface.</param>
/// <param name="Steady">Tangential force 2·T/d.</param>
/// <param name="FromRest">Largest force where something that gives like a hand is loaded from standstill: twice the steady one.</param>
/// <param name="FreeHand">Largest force on a hand that is carried along, at synchronous speed, with inertia.</param>
/// <param name="HeldFast">The same on a hand that is held fast.</param>
public sealed record ForcesAtSurface(
    Surface Surface, SideBySide<Force> Steady, SideBySide<Force> FromRest, SideBySide<Force> FreeHand, SideBySide<Force> HeldFast);

/// <summary>Torques and forces at one frequency of one belt position.</summary>
/// <param name="Frequency">Output frequency.</param>
/// <param name="Speed">Synchronous spindle speed.</param>
/// <param name="Torque">At the spindle; the largest over 0 &lt; s ≤ 1.</param>
/// <param name="Energy">Of everything that turns, at that speed, hazard side.</param>
/// <param name="Surfaces">One a surface.</param>
public sealed record ForcePoint(
    Frequency Frequency, RotationalSpeed Speed, SideBySide<Torque> Torque, Energy Energy, IReadOnlyList<ForcesAtSurface> Surfaces);

/// <summary>Forces at one belt position.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Bound">No-credit bound at the spindle.</param>
/// <param name="Inertia">Of everything that turns, seen from the spindle, hazard side.</param>
/// <param name="Points">One a frequency, rising.</param>
public sealed record ForcesAtBelt(BeltPosition Belt, Torque Bound, MassMomentOfInertia Inertia, IReadOnlyList<ForcePoint> Points)
{
    /// <summary>Synchronous spindle speed at the highest frequency.</summary>
    public RotationalSpeed Fastest => Points[^1].Speed;

    /// <summary>The points at the lowest, the base and the highest frequency, as far as they differ and are set.</summary>
    /// <param name="baseFrequency">Of the V/f law.</param>
    /// <returns>One to three points, rising.</returns>
    public IReadOnlyList<ForcePoint> Ends(Frequency baseFrequency) =>
        [.. Points.Where((point, place) => place == 0 || place == Points.Count - 1 || point.Frequency.Hertz == baseFrequency.Hertz)];
}

/// <summary>Force at chuck body, tool shank and wrapped roll, over every belt position and frequency.</summary>
/// <param name="Body">What is caught.</param>
/// <param name="Belts">One a belt position.</param>
/// <remarks>
/// Inertia stands on the hazard side; a belt that would slip is not credited. The torque is the largest over the slips, since a machine
/// that was held is not stopped. See <see cref="GrabForce"/> for the equation.
/// </remarks>
public sealed record SurfaceForceStudy(ContactBody Body, IReadOnlyList<ForcesAtBelt> Belts)
{
    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="torques">Its torques.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The forces.</returns>
    public static SurfaceForceStudy Of(DrillPress press, TorqueStudy torques, Handbook handbook)
    {
        var (body, drive) = (ContactBody.HandOf(handbook), new Drive(press, Side.Hazard));
        var limited = torques.Motor.ToDictionary(
            at => at.Frequency.Hertz, at => Torque.FromNewtonMeters(TorqueStudy.AtCurrentLimitNm(press, drive, at.Frequency.Hertz)));
        return new(body, [.. torques.Spindle.Select(spindle => AtBelt(press, spindle, body, limited))]);
    }

    /// <summary>The surfaces of a machine.</summary>
    /// <param name="press">The machine.</param>
    /// <returns>Chuck body, tool shank, wrapped roll.</returns>
    public static IReadOnlyList<Surface> SurfacesOf(DrillPress press) =>
    [
        new("chuck body", press.Spindle.ChuckDiameter), new("tool shank", press.ContactOrUsual.ToolShank.Hazard),
        new("wrapped roll", press.ContactOrUsual.Roll.Hazard),
    ];

    private static ForcesAtBelt AtBelt(
        DrillPress press, SpindleTorques spindle, ContactBody body, Dictionary<double, Torque> limited)
    {
        var inertia = press.ContactOrUsual.AtSpindle(spindle.Belt.Ratio, Side.Hazard);
        var surfaces = SurfacesOf(press);
        var friction = press.Spindle.FrictionTorque.Hazard;
        return new(spindle.Belt, spindle.Bound, inertia, [.. spindle.Points.Select(at =>
        {
            var held = spindle.Belt.SpindleTorque(limited[at.Frequency.Hertz], Side.Hazard) - friction;
            var torque = new SideBySide<Torque>(
                spindle.Bound, at.IdealBoost.Hazard, at.PullOut.Hazard, UnitMath.Max(Torque.Zero, held));
            return new ForcePoint(
                at.Frequency, at.SynchronousSpeed, torque, RunDown.EnergyOf(inertia, at.SynchronousSpeed),
                [.. surfaces.Select(surface => At(surface, torque, inertia, at.SynchronousSpeed, body))]);
        })]);
    }

    /// <summary>Forces at one surface at a torque and a speed.</summary>
    internal static ForcesAtSurface At(
        Surface surface, SideBySide<Torque> torque, MassMomentOfInertia inertia, RotationalSpeed speed, ContactBody body)
    {
        var steady = torque.Map(each => SurfaceForce.Of(each, surface.Diameter));
        var trapped = GrabForce.TrappedMass(inertia, surface.Diameter);
        var free = GrabForce.FreeMass(body, trapped);
        var surfaceSpeed = Speed.FromMetersPerSecond(speed.RadiansPerSecond * surface.Diameter.Meters / 2);
        return new(
            surface, steady, steady.Map(force => GrabForce.Of(force, body, Mass.Zero, Speed.Zero)),
            steady.Map(force => GrabForce.Of(force, body, free, surfaceSpeed)),
            steady.Map(force => GrabForce.Of(force, body, trapped, surfaceSpeed)));
    }
}
