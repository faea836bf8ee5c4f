using System.Globalization;
using UnitsNet;

namespace Spindlewright.Studies.Overpowering;

/// <summary>
/// The lowest spindle speed at which the modelled torque exceeds a stated hand torque. It says when the spindle wins,
/// never when a hand may be put there.
/// </summary>
public abstract record OverpoweringSpeed
{
    private OverpoweringSpeed() { }

    /// <summary>The answer in words.</summary>
    public abstract string Words { get; }

    /// <summary>No speed of this belt position can be named.</summary>
    /// <param name="Reason">Why none: which condition fails.</param>
    public sealed record NoSpeed(string Reason) : OverpoweringSpeed
    {
        /// <inheritdoc/>
        public override string Words => $"no speed of this belt position: {Reason}";
    }

    /// <summary>The spindle wins already at the lowest frequency of the settings, from standstill on.</summary>
    /// <param name="Lowest">Spindle speed at that frequency.</param>
    public sealed record AlreadyAtStandstill(RotationalSpeed Lowest) : OverpoweringSpeed
    {
        /// <inheritdoc/>
        public override string Words => string.Create(
            CultureInfo.InvariantCulture,
            $"already at standstill, at the lowest frequency set ({Lowest.RevolutionsPerMinute:0.#} r/min)");
    }

    /// <summary>The spindle wins from this speed on.</summary>
    /// <param name="Speed">Synchronous spindle speed.</param>
    public sealed record At(RotationalSpeed Speed) : OverpoweringSpeed
    {
        /// <inheritdoc/>
        public override string Words =>
            string.Create(CultureInfo.InvariantCulture, $"at {Speed.RevolutionsPerMinute:0.#} r/min");
    }

    /// <summary>The speed is known only to lie in intervals, the inputs being uncertain.</summary>
    /// <param name="Speeds">One interval or more, rising.</param>
    public sealed record Within(IReadOnlyList<(RotationalSpeed Least, RotationalSpeed Most)> Speeds) : OverpoweringSpeed
    {
        /// <inheritdoc/>
        public override string Words => string.Join(" or ", Speeds.Select(each => string.Create(
            CultureInfo.InvariantCulture,
            $"between {each.Least.RevolutionsPerMinute:0.#} and {each.Most.RevolutionsPerMinute:0.#} r/min")));
    }
}
