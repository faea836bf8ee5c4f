using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Motors;

/// <summary>Usual dimensions, mass and inertia of a motor of which only power and poles are known.</summary>
/// <param name="Frame">Shaft height, foot to shaft axis.</param>
/// <param name="Shaft">Shaft diameter.</param>
/// <param name="Mass">Short core of a low efficiency class, and long core of IE3 (hazard side: the heavier).</param>
/// <param name="Inertia">Rotor and motor pulley; see <see cref="UsualInertia"/>.</param>
/// <param name="Citations">Where frame, shaft, mass and inertia come from, in that order.</param>
/// <remarks>
/// Totally enclosed, fan-cooled, aluminium, on feet. Outputs go with frames by custom (IEC 60072-1, from memory): makers also put more into a
/// frame, and cast-iron motors are heavier by a third to a half. A figure read on the motor itself comes before any of these.
/// </remarks>
public sealed record MotorBuild(
    Length Frame, Length Shaft, Sided<Mass> Mass, Sided<MassMomentOfInertia> Inertia, IReadOnlyList<Citation> Citations)
{
    private const string Part = "motor build";

    /// <summary>How far a power may pass the usual output of a frame: horsepower and preferred kilowatts stand for each other within it.</summary>
    /// <remarks>1/4 hp is 0.186 kW and stands for 0.18, 3/4 hp is 0.559 kW and stands for 0.55; outputs differ by a third and more.</remarks>
    private const double PowersAlike = 1.04;

    private const double CatalogueRotorKgM2 = 0.00261;
    private const double CatalogueRotorW = 750;

    /// <summary>The usual build of a rating: the smallest frame whose usual outputs reach the power.</summary>
    /// <param name="rated">Rated shaft power, above 0 and at most the largest usual output known for the poles.</param>
    /// <param name="poles">2, 4, 6 or 8.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The build; a power between two usual outputs takes the larger frame.</returns>
    /// <exception cref="PartException">No frame is known for the power and poles.</exception>
    public static MotorBuild Of(Power rated, int poles, Handbook handbook)
    {
        var watts = (double)Guard.Positive(rated, Part, "rated power").Watts;
        var known = FrameFacts.ShaftHeightsMm.Select(height => (Height: height, Row: FrameFacts.Outputs(handbook, height, poles)))
            .Where(each => each.Row is not null).Select(each => (each.Height, Row: each.Row!, MostW: 1000 * each.Row!.Range().Value.Most)).ToList();
        if (known.Count == 0) throw new PartException(Part, "number of poles", Invariant($"{poles}"), "2, 4, 6 or 8", "other numbers have no usual frame here");
        var fits = known.FindIndex(each => watts <= each.MostW * PowersAlike);
        if (fits < 0)
            throw new PartException(
                Part, "rated power", Invariant($"{watts / 1000:0.###} kW with {poles} poles"),
                Invariant($"at most {known[^1].MostW / 1000:0.###} kW with {poles} poles"), "larger motors have no usual frame here");
        var (frame, outputs, _) = known[fits];
        var (shaftMm, shaft) = FrameFacts.ShaftOf(handbook, frame);
        var mass = FrameFacts.Mass(handbook, frame);
        return new(
            Length.FromMillimeters(frame), Length.FromMillimeters(shaftMm),
            new(UnitsNet.Mass.FromKilograms(mass.Range().Value.Least), UnitsNet.Mass.FromKilograms(mass.Range().Value.Most)), UsualInertia(rated, poles),
            [outputs.Citation, shaft.Citation, mass.Citation, InertiaCitation]);
    }

    /// <summary>Where <see cref="UsualInertia"/> comes from.</summary>
    public static Citation InertiaCitation { get; } = new(
        "motor-catalogues", Provenance.OwnChoice,
        "a catalogue rotor scaled by rated power, once and twice; other than 4 poles: by power or by torque, whichever widens the pair");

    /// <summary>Inertia of rotor and motor pulley of a small motor where nothing is given.</summary>
    /// <param name="rated">Rated power, above 0.</param>
    /// <param name="poles">Number of poles, even, 2 or more.</param>
    /// <returns>J0·(P/P0)·min(1, poles/4) and twice J0·(P/P0)·max(1, poles/4), with J0 = 0.00261 kg·m² of a four-pole rotor of P0 = 0.75 kW.</returns>
    /// <exception cref="PartException">The power is not above 0, or there are fewer than 2 poles.</exception>
    /// <remarks>
    /// Own choice. Rotor volume D²L grows with torque, hence with power times poles; the diameter grows along with it, so that inertia
    /// D⁴L grows faster still. A rotor of six or eight poles is therefore scaled by torque on the hazard side, and doubled as every rotor
    /// is; one of two poles is not made smaller there, since the pulley on its shaft does not shrink with the poles. The capability side
    /// takes the smaller of both scalings.
    /// </remarks>
    public static Sided<MassMomentOfInertia> UsualInertia(Power rated, int poles)
    {
        if (poles < 2) throw new PartException(Part, "number of poles", Invariant($"{poles}"), "2 or more");
        var byPower = CatalogueRotorKgM2 / CatalogueRotorW * (double)Guard.Positive(rated, Part, "rated power").Watts;
        var byTorque = byPower * poles / 4;
        return new(
            MassMomentOfInertia.FromKilogramSquareMeters(Math.Min(byPower, byTorque)),
            MassMomentOfInertia.FromKilogramSquareMeters(2 * Math.Max(byPower, byTorque)));
    }
}
