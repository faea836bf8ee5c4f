using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Studies.Ratios;

/// <summary>What a conversion is to reach.</summary>
/// <param name="Slowest">Slowest spindle speed wanted.</param>
/// <param name="Fastest">Fastest spindle speed wanted.</param>
/// <param name="Poles">Poles of the motor: 2, 4, 6 or 8.</param>
/// <param name="Lowest">Lowest frequency.</param>
/// <param name="Highest">Highest frequency.</param>
/// <param name="ExistingDriven">Diameters that the spindle's pulley has already; empty to choose both.</param>
/// <param name="Profile">Section of the belt: no pulley is taken below its least diameter.</param>
public sealed record ConversionWish(
    RotationalSpeed Slowest, RotationalSpeed Fastest, int Poles, Frequency Lowest, Frequency Highest,
    IReadOnlyList<Length> ExistingDriven, BeltProfileRow Profile)
{
    private const string Part = "conversion";

    /// <summary>Slowest spindle speed wanted.</summary>
    public RotationalSpeed Slowest { get; } = Guard.Positive(Slowest, Part, "slowest speed");

    /// <summary>Fastest spindle speed wanted.</summary>
    public RotationalSpeed Fastest { get; } = Fastest >= Slowest
        ? Fastest
        : throw new PartException(Part, "fastest speed", "below the slowest", "the slowest speed or more");

    /// <summary>Poles of the motor.</summary>
    public int Poles { get; } = Poles is 2 or 4 or 6 or 8
        ? Poles : throw new PartException(Part, "poles", FormattableString.Invariant($"{Poles}"), "2, 4, 6 or 8");

    /// <summary>Highest frequency.</summary>
    public Frequency Highest { get; } = Highest > Lowest && Lowest > Frequency.Zero
        ? Highest
        : throw new PartException(Part, "frequencies", "out of order or not above 0", "a lowest above 0 and a highest above it");

    internal RotationalSpeed Motor(Frequency frequency) =>
        RotationalSpeed.FromRevolutionsPerMinute(120 * frequency.Hertz / Poles);
}

/// <summary>One pair of pulleys for a belt position.</summary>
/// <param name="Exact">Ratio that puts its end, or its share of the way between the ends, at the wanted speed.</param>
/// <param name="Pair">The pair.</param>
/// <param name="ToTurn">Driving diameter to turn for the exact ratio on the same driven pulley; null where it is below the section's least.</param>
/// <param name="Slowest">Unloaded spindle speed at the lowest frequency.</param>
/// <param name="Fastest">Unloaded spindle speed at the highest frequency.</param>
/// <param name="DrivenExists">True where the driven pulley is there already.</param>
public sealed record PulleyChoice(
    double Exact, PulleyPair Pair, Length? ToTurn, RotationalSpeed Slowest, RotationalSpeed Fastest, bool DrivenExists);

/// <summary>Which pulleys to turn or buy, one pair a belt position, slow end first.</summary>
/// <param name="Choices">One a position.</param>
/// <param name="Covers">True where the positions reach every speed that is wanted without a gap.</param>
/// <param name="Words">How it came out.</param>
/// <remarks>
/// One position spans a speed range of highest over lowest frequency. The slow position puts its slow end at the slowest speed,
/// the fast one its fast end at the fastest speed, further ones lie evenly between on a logarithmic scale, as many as it takes to
/// leave no gap. Speeds are unloaded: load costs the motor's slip, at the slow end most of all.
/// </remarks>
public sealed record ConversionDesign(IReadOnlyList<PulleyChoice> Choices, bool Covers, string Words)
{
    private const int MostPositions = 8;

    /// <summary>Designs the pulleys.</summary>
    /// <param name="wish">What is to be reached.</param>
    /// <param name="handbook">Tables: the diameters that are sold.</param>
    /// <returns>The pairs.</returns>
    /// <exception cref="PartException">More than eight positions would be needed.</exception>
    public static ConversionDesign Of(ConversionWish wish, Handbook handbook)
    {
        var span = wish.Highest / wish.Lowest;
        var (slowRatio, fastRatio) = (wish.Motor(wish.Lowest) / wish.Slowest, wish.Motor(wish.Highest) / wish.Fastest);
        // Where one position spans more than is wanted its fast end decides: the motor then turns faster for every speed, which
        // is more torque at the spindle, and a larger bound.
        var positions = fastRatio >= slowRatio ? 1 : 1 + (int)Math.Ceiling(Math.Log(slowRatio / fastRatio) / Math.Log(span) - 1e-9);
        if (positions > MostPositions)
            throw new PartException(
                "conversion", "belt positions needed", FormattableString.Invariant($"{positions}"),
                FormattableString.Invariant($"up to {MostPositions}"), "widen the frequencies or narrow the speeds");
        var choices = Enumerable.Range(0, positions)
            .Select(i => positions == 1 ? fastRatio : slowRatio * Math.Pow(fastRatio / slowRatio, i / (positions - 1.0)))
            .Select(ratio => Nearest(wish, handbook, ratio)).ToList();
        var covers = !choices.Zip(choices.Skip(1)).Any(pair => pair.Second.Slowest > pair.First.Fastest * 1.001)
            && choices[0].Slowest <= wish.Slowest * 1.05 && choices[^1].Fastest >= wish.Fastest * 0.95;
        return new(choices, covers, FormattableString.Invariant(
            $"{positions} belt position{(positions == 1 ? "" : "s")}: one spans {span:0.0} to 1 from {wish.Lowest.Hertz:0.#} to {wish.Highest.Hertz:0.#} Hz; wanted is {wish.Fastest / wish.Slowest:0.0} to 1. {(covers ? "With these pulleys every speed is reached, unloaded." : "With pulleys of these diameters a part is not reached within 5 %: turn a pulley, or use an intermediate one.")}"));
    }

    private static PulleyChoice Nearest(ConversionWish wish, Handbook handbook, double ratio)
    {
        var sold = handbook.PulleyDiameters.Select(row => row.Diameter).Where(diameter => diameter >= wish.Profile.LeastPulley).ToList();
        var driven = wish.ExistingDriven.Count > 0 ? wish.ExistingDriven : sold;
        var pair = (from large in driven from small in sold select new PulleyPair(small, large))
            .OrderBy(each => Math.Round(Math.Abs(Math.Log(each.Ratio / ratio)), 3)).ThenBy(each => each.Driven + each.Driving).First();
        var exact = pair.Driven / ratio;
        return new(
            ratio, pair, exact >= wish.Profile.LeastPulley ? exact : null, wish.Motor(wish.Lowest) / pair.Ratio,
            wish.Motor(wish.Highest) / pair.Ratio, wish.ExistingDriven.Count > 0);
    }
}
