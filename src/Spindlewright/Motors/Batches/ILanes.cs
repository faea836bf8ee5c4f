namespace Spindlewright.Motors.Batches;

/// <summary>Some numbers worked on at once, each by itself: no lane ever sees another.</summary>
/// <typeparam name="T">The type itself.</typeparam>
/// <remarks>
/// <para>
/// One form of every formula serves vectors of 512, 256 and 128 bits. Only operations that IEEE 754 rounds exactly are
/// offered (sum, difference, product, quotient, root) and nothing is fused, so that a lane holds the same bits whatever
/// the width and whatever the hardware.
/// </para>
/// <para>
/// Why not <c>Vector512</c> alone, which falls back by itself: its fallback is correct but slow, 41 ns an operating point against
/// 2 ns for <c>Vector256</c> on a processor without AVX-512.
/// </para>
/// </remarks>
internal interface ILanes<T> where T : struct, ILanes<T>
{
    /// <summary>How many numbers.</summary>
    static abstract int Count { get; }

    static abstract T operator +(T a, T b);

    static abstract T operator -(T a, T b);

    static abstract T operator *(T a, T b);

    static abstract T operator /(T a, T b);

    /// <summary>Both conditions.</summary>
    static abstract T operator &(T a, T b);

    /// <summary>Either condition.</summary>
    static abstract T operator |(T a, T b);

    /// <summary>A condition a lane, for <see cref="Choose"/> and <see cref="Any"/>; false where a number is NaN.</summary>
    static abstract T operator <(T a, T b);

    /// <inheritdoc cref="op_LessThan"/>
    static abstract T operator >(T a, T b);

    /// <summary>Where both are the same number.</summary>
    static abstract T Same(T a, T b);

    static abstract T Sqrt(T a);

    /// <summary>One number or the other, lane by lane.</summary>
    static abstract T Choose(T where, T then, T otherwise);

    /// <summary>Whether a condition holds in any lane.</summary>
    static abstract bool Any(T where);

    /// <summary>A bit a lane, the first lane lowest, set where a condition holds.</summary>
    static abstract ulong Bits(T where);

    /// <summary>The smaller number, lane by lane; the first where one is NaN.</summary>
    static abstract T Smaller(T a, T b);

    /// <summary>The larger number, lane by lane; the first where one is NaN.</summary>
    static abstract T Larger(T a, T b);

    /// <summary>The same number in all lanes.</summary>
    static abstract T All(double number);

    /// <summary>Numbers that follow one another.</summary>
    static abstract T Load(ReadOnlySpan<double> from, int start);

    /// <summary>Writes numbers that follow one another.</summary>
    static abstract void Store(T lanes, Span<double> to, int start);
}
