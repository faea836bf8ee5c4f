using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Belts;

/// <summary>The belts as fitted: section, distance between the axes and the tension as found by span deflection.</summary>
public sealed record Belting
{
    private const string Part = "belts";

    /// <summary>Section.</summary>
    public required BeltProfileRow Profile { get; init; }

    /// <summary>Belts side by side on each pair of pulleys, 1 to 8.</summary>
    public int Count { get; init => field = value is >= 1 and <= 8
        ? value : throw new PartException(Part, "number of belts", FormattableString.Invariant($"{value}"), "1 to 8"); } = 1;

    /// <summary>Between the axes, motor end first; the last one serves further pairs.</summary>
    public required IReadOnlyList<Length> CentreDistances { get; init; }

    /// <summary>Force at the middle of a span of one belt.</summary>
    public required Force DeflectionForce { get; init => field = Guard.Positive(value, Part, "deflection force"); }

    /// <summary>Deflection there over the span, 0.002 to 0.1.</summary>
    public required double DeflectionOverSpan { get; init => field = Guard.Within(value, 0.002, 0.1, Part, "deflection over span"); }

    /// <summary>Effective friction, least to most.</summary>
    public required Interval EffectiveFriction { get; init; }

    /// <summary>Spread of each reading of the tension test, either way.</summary>
    public required double ReadingSpread { get; init; }

    /// <summary>The layouts of a belt position, motor end first; empty where its pulleys are not known.</summary>
    /// <param name="position">The belt position.</param>
    /// <returns>One a pair of pulleys.</returns>
    public IReadOnlyList<BeltLayout> Layouts(BeltPosition position) =>
        [.. position.Pulleys.Select((pair, i) => new BeltLayout(pair, CentreDistances[Math.Min(i, CentreDistances.Count - 1)]))];

    /// <summary>Torque at the spindle at which a belt slips.</summary>
    /// <param name="position">The belt position.</param>
    /// <param name="motor">Motor speed, for the centrifugal part.</param>
    /// <returns>Least and most; null where the pulleys are not known.</returns>
    public BeltSlip? SlipAtSpindle(BeltPosition position, RotationalSpeed motor)
    {
        var layouts = Layouts(position);
        if (layouts.Count == 0) return null;
        List<(Torque Least, Torque Most)> each = [];
        var (speed, toSpindle) = (motor, position.Ratio);
        foreach (var layout in layouts)
        {
            toSpindle /= layout.Pair.Ratio;
            var belt = Speed.FromMetersPerSecond(speed.RadiansPerSecond * layout.Pair.Driving.Meters / 2);
            each.Add((DrivenTorque(layout, belt, false) * toSpindle, DrivenTorque(layout, belt, true) * toSpindle));
            speed /= layout.Pair.Ratio;
        }
        var slips = each.Index().MinBy(row => row.Item.Least.NewtonMeters);
        return new(slips.Item.Least, each.Min(row => row.Most), slips.Index, layouts);
    }

    /// <summary>Torque on the driven pulley of one pair when its belts slip on either pulley.</summary>
    private Torque DrivenTorque(BeltLayout layout, Speed belt, bool most)
    {
        var tension = new BeltTension(DeflectionForce, layout.Span * DeflectionOverSpan, layout.Span, ReadingSpread).Range;
        var friction = most ? EffectiveFriction.Most : EffectiveFriction.Least;
        var pull = BeltGrip.Pull(
            most ? tension.Most : tension.Least, BeltGrip.Centrifugal(Profile.Mass, belt),
            BeltGrip.TensionRatio(friction, layout.WrapOfSmaller));
        return Torque.FromNewtonMeters(Count * pull.Newtons * layout.Pair.Driven.Meters / 2);
    }
}

/// <summary>Torque at the spindle at which a belt slips.</summary>
/// <param name="Least">Low tension and friction.</param>
/// <param name="Most">High tension and friction.</param>
/// <param name="Pair">Which pair of pulleys slips first, from 0 at the motor.</param>
/// <param name="Layouts">Geometry of every pair.</param>
public sealed record BeltSlip(Torque Least, Torque Most, int Pair, IReadOnlyList<BeltLayout> Layouts);
