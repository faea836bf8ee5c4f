namespace Spindlewright.Foundations;

/// <summary>Which question a figure serves.</summary>
public enum Side
{
    /// <summary>"Will it drill?" The figure that gives the machine the least.</summary>
    Capability,

    /// <summary>"What could a hand meet?" The figure that gives the machine the most.</summary>
    Hazard,
}

/// <summary>A pair of values, one for each <see cref="Side"/>. Equal where the user gave the figure.</summary>
/// <typeparam name="T">A quantity, a number or a part.</typeparam>
/// <param name="Capability">Serves "will it drill".</param>
/// <param name="Hazard">Serves "what could a hand meet".</param>
/// <remarks>
/// Not an interval: the capability value may be the larger number (a dead-time drop of 8 V takes torque away, one of
/// 0 V does not).
/// </remarks>
public sealed record Sided<T>(T Capability, T Hazard)
{
    /// <summary>The value for one side.</summary>
    /// <param name="side">The side.</param>
    /// <returns>The value.</returns>
    public T On(Side side) => side == Side.Capability ? Capability : Hazard;

    /// <summary>Applies a function to both sides.</summary>
    /// <typeparam name="TOut">What the function gives.</typeparam>
    /// <param name="map">The function.</param>
    /// <returns>The pair of results.</returns>
    public Sided<TOut> Map<TOut>(Func<T, TOut> map) => new(map(Capability), map(Hazard));
}

/// <summary>Ways to make a <see cref="Sided{T}"/>.</summary>
public static class Sided
{
    /// <summary>The same value on both sides: the user gave it, so that no default is in doubt.</summary>
    /// <typeparam name="T">The value's type.</typeparam>
    /// <param name="value">The value.</param>
    /// <returns>The pair.</returns>
    public static Sided<T> Same<T>(T value) => new(value, value);
}
